"""The prompter: the line to say now and the one after it in large type, with the clock of the talk."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QMouseEvent, QResizeEvent, QShowEvent, QTextDocument
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from studyboard.desk.look import Look
from studyboard.desk.performance import Performance
from studyboard.desk.session import Session
from studyboard.model.beats import Beat
from studyboard.model.order import VisitKind
from studyboard.model.script import Part, word_spans
from studyboard.notation.labels import move_label
from studyboard.timing.clock import clock, over_or_under
from studyboard.timing.run_through import Stop

_LARGEST, _SMALLEST = 2.6, 1.15
#: How many words of the next line are shown.
_NEXT_WORDS = 24


class Prompter(QWidget):
    """What the presenter reads during a run-through.

    It shows the beat that is told, the next one quietly below it, what the next press does on the board, and how
    the time stands. Space, Down and Page Down go on; Up and Page Up go back; Backspace comes back from wandering.

    left: the presenter wants to leave the run-through (Escape)
    """

    left = Signal()

    def __init__(self, session: Session, performance: Performance, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._performance = performance
        self._look = look
        self.setObjectName("paper")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Prompter")

        self._elapsed = _label("Elapsed and planned time")
        self._late = _label("Ahead of or behind the plan")
        self._beat_clock = _label("Time of this beat")
        self._where = _label("Where the talk is")
        self._now = _label("The line to say now")
        self._now.setWordWrap(True)
        self._now.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self._now.setTextFormat(Qt.TextFormat.RichText)
        self._now.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)
        self._press = _label("What the next press does")
        self._press.setWordWrap(True)
        self._next = _label("The line after that")
        self._next.setWordWrap(True)
        self._next.setTextFormat(Qt.TextFormat.RichText)
        self._next.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)

        clocks = QHBoxLayout()
        clocks.addWidget(self._elapsed)
        clocks.addSpacing(20)
        clocks.addWidget(self._late)
        clocks.addStretch(1)
        clocks.addWidget(self._beat_clock)
        self._card = QFrame()
        self._card.setObjectName("card")
        inside = QVBoxLayout(self._card)
        inside.setContentsMargins(24, 18, 24, 18)
        inside.setSpacing(10)
        inside.addWidget(self._where)
        inside.addWidget(self._now, 1)
        inside.addWidget(self._press)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 12, 16, 12)
        layout.setSpacing(12)
        layout.addLayout(clocks)
        layout.addWidget(self._card, 1)
        layout.addWidget(self._next)

        performance.moved.connect(self.refresh)
        performance.ended.connect(self.refresh)
        performance.ticked.connect(self._show_clock)
        look.changed.connect(self._dress)
        self._dress()

    def refresh(self) -> None:
        """Show where the run-through stands; nothing is done while nobody sees it."""
        if not self.isVisible():
            return
        run = self._performance.run
        if not run.beats:
            self._where.setText("Nothing to tell yet")
            self._now.setText("Write a spoken line, then come back to rehearse it.")
            self._press.setText("")
            self._next.setText("")
            self._show_clock()
            return
        at = self._performance.beat
        beat = run.beats[at]
        self._where.setText(self._title(beat))
        self._fit(self._rich(beat))
        self._press.setText(self._press_text())
        after = run.beats[at + 1] if at + 1 < len(run.beats) else None
        if after is None:
            self._next.setText(f"<span style='color:{self._ink('ink_quiet')}'>The talk ends here.</span>")
        else:
            ink, said = self._ink("ink_quiet"), escape(_beginning(after.spoken.text))
            self._next.setText(f"<span style='color:{ink}'><b>{escape(self._title(after))}</b>&nbsp; {said}</span>")
        self._show_clock()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Drive the run-through by the keys of a presenter's remote and the ones beside them."""
        match event.key():
            case Qt.Key.Key_Space | Qt.Key.Key_Down | Qt.Key.Key_PageDown | Qt.Key.Key_Return | Qt.Key.Key_Right:
                self._performance.advance()
            case Qt.Key.Key_Up | Qt.Key.Key_PageUp | Qt.Key.Key_Left:
                self._performance.retreat()
            case Qt.Key.Key_Backspace:
                self._performance.come_back()
            case Qt.Key.Key_Escape:
                self.left.emit()
            case _:
                super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click goes on, as a press of the key does."""
        self.setFocus()
        if event.button() == Qt.MouseButton.LeftButton:
            self._performance.advance()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the line to the new size."""
        super().resizeEvent(event)
        self.refresh()

    def showEvent(self, event: QShowEvent) -> None:
        """Show where the run-through stands."""
        super().showEvent(event)
        self.refresh()

    def _title(self, beat: Beat) -> str:
        if isinstance(beat.key, Part):
            return beat.key.value.capitalize()
        label = move_label(self._session.positions, beat.key) if beat.key in self._session.study.nodes else ""
        return f"{label} · side-line" if beat.depth else label

    def _rich(self, beat: Beat) -> str:
        """The spoken line with the moves that are played at its words as tags before them."""
        text = beat.spoken.text
        if not text:
            quiet = self._ink("ink_quiet")
            return f"<span style='color:{quiet}'><i>Nothing is said here.</i></span>"
        tags: dict[int, list[str]] = {}
        for cue in beat.spoken.cues:
            if cue.node is not None and cue.node in self._session.study.nodes:
                tags.setdefault(cue.word, []).append(self._tag(self._session.positions.san(cue.node)))
        pieces: list[str] = []
        at = 0
        for word, (start, _) in enumerate(word_spans(text)):
            if word in tags:
                pieces += [escape(text[at:start]), *tags[word]]
                at = start
        pieces.append(escape(text[at:]))
        pieces += tags.get(len(word_spans(text)), [])
        think = self._think(beat)
        return "".join(pieces).replace("\n", "<br>") + think

    def _tag(self, san: str) -> str:
        return (
            f"<span style='color:{self._ink('accent')};background:{self._ink('accent_soft')};font-weight:600'>"
            f"&nbsp;{escape(san)}&nbsp;</span> "
        )

    def _think(self, beat: Beat) -> str:
        if not beat.think:
            return ""
        ink, ground = self._ink("think"), self._ink("think_soft")
        return f" <span style='color:{ink};background:{ground}'>&nbsp;think pause, {beat.think:.0f} s&nbsp;</span>"

    def _press_text(self) -> str:
        run = self._performance.run
        if run.wandering:
            return "Off the running order: Backspace comes back."
        if not self._performance.active:
            what = "Space begins" if self._performance.begin_by is None else "Space begins the take"
            return f"{what}." if not self._performance.beat else f"{what} here."
        upcoming = run.next_stop
        return "Space ends the run-through." if upcoming is None else f"Next on the board: {self._stop_text(upcoming)}"

    def _stop_text(self, stop: Stop) -> str:
        visit = stop.visit
        if visit.kind is VisitKind.LINE and visit.part is not None:
            return f"nothing moves; {visit.part.value}"
        label = move_label(self._session.positions, visit.node) if visit.node in self._session.study.nodes else ""
        if visit.kind is VisitKind.BACK:
            return f"back to {label}"
        return label

    def _show_clock(self) -> None:
        run = self._performance.run
        total = sum(run.planned)
        self._elapsed.setText(f"{clock(run.elapsed)} / {clock(total)}")
        if not run.begun:
            slot = "" if run.slot is None else f"planned {over_or_under(total - run.slot)}"
            self._late.setText(slot)
            self._beat_clock.setText("")
            return
        late = run.late
        word = "behind" if late > 0 else "ahead"
        self._late.setText("on time" if abs(late) < 1 else f"{abs(late):.0f} s {word}")
        colour = "over" if late > 3 else "ink_quiet"
        self._late.setStyleSheet(f"color: {self._ink(colour)};")
        seconds, planned = run.beat_seconds(run.beat), run.planned[run.beat]
        self._beat_clock.setText(f"this beat {seconds:.0f} of {planned:.0f} s")
        self._beat_clock.setStyleSheet(f"color: {self._ink('over' if seconds > planned + 1 else 'ink_quiet')};")

    def _fit(self, rich: str) -> None:
        """Set the line in the largest type in which all of it can be seen."""
        width = max(200, self._card.width() - 56)
        height = max(80, self._now.height() - 8)
        factor = _LARGEST
        while factor > _SMALLEST:
            document = QTextDocument()
            document.setDefaultFont(self._look.spoken_font(factor))
            document.setHtml(rich)
            document.setTextWidth(width)
            if document.size().height() <= height:
                break
            factor -= 0.15
        self._now.setFont(self._look.spoken_font(max(factor, _SMALLEST)))
        self._now.setText(rich)

    def _ink(self, token: str) -> str:
        return self._look.color(token).name()

    def _dress(self) -> None:
        look = self._look
        self._elapsed.setFont(look.move_font(1.7))
        digits = QFontMetricsF(self._elapsed.font()).horizontalAdvance("00:00 / 00:00")
        self._elapsed.setMinimumWidth(int(digits))
        self._late.setFont(look.ui_font(1.25))
        self._beat_clock.setFont(look.ui_font(1.25))
        self._where.setFont(look.move_font(1.1))
        self._press.setFont(look.ui_font(1.1))
        self._next.setFont(look.spoken_font(1.3))
        quiet = f"color: {self._ink('ink_quiet')};"
        for label in (self._late, self._beat_clock):
            label.setStyleSheet(quiet)
        self._where.setStyleSheet(f"color: {self._ink('accent')};")
        self._press.setStyleSheet(quiet)
        self.refresh()


def _beginning(text: str) -> str:
    """As much of a line as shows how it goes on."""
    words = text.split()
    return " ".join(words) if len(words) <= _NEXT_WORDS else f"{' '.join(words[:_NEXT_WORDS])} …"


def _label(name: str) -> QLabel:
    label = QLabel()
    label.setAccessibleName(name)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
    return label
