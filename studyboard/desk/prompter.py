"""The prompter: the line to say now in large type, the one after it below, and the clock of the talk above."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QMouseEvent, QResizeEvent, QShowEvent, QWheelEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from studyboard.desk.board_accessible import show_as_document
from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.lanes_rows import part_name
from studyboard.desk.look import Look
from studyboard.desk.performance import Performance
from studyboard.desk.prompter_line import PrompterLine, Run, words_between
from studyboard.desk.session import Session
from studyboard.model.beats import Beat
from studyboard.model.order import VisitKind
from studyboard.model.script import Part, word_spans
from studyboard.notation.labels import move_label
from studyboard.timing.clock import clock, over_or_under
from studyboard.timing.run_through import Stop
from studyboard.translation import tr
from studyboard.writing.pronunciation import hints_in

#: The next line is shown where the present one stays at least that large (sizes of controls).
_COMFORTABLE = 1.5
#: How many words of the next line are shown, with room and without.
_NEXT_WORDS = (24, 8)
#: A prompter lower than so many lines of text keeps everything but the line small.
_ROOMY = 24
#: How often it is fitted at most where fitting changes its size.
_FITS = 3
#: At both ends of a tag, so that its ground reaches beyond its letters.
_BLANK = "\N{NO-BREAK SPACE}"


class Prompter(QWidget):
    """What the presenter reads during a run-through.

    It shows the beat that is told, the next one quietly below it, what the next press does on the board, and how
    the time stands. Where room is short the next beat goes first, then the line gets smaller, and at last it moves
    along with the talk. Space, Down and Page Down go on; Up and Page Up go back; Backspace comes back from wandering.

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
        self.setAccessibleName(tr("Prompter"))
        show_as_document(self)

        self._held = self._fitting = False
        self._elapsed, self._late = QLabel(), ElidedLabel()
        self._beat_clock, self._where = ElidedLabel(), ElidedLabel()
        self._now = PrompterLine(look)
        self._press, self._next = QLabel(), QLabel()
        self._next.setWordWrap(True)
        self._next.setTextFormat(Qt.TextFormat.RichText)
        self._next.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        for label, name in (
            (self._elapsed, tr("Elapsed and planned time")),
            (self._late, tr("Ahead of or behind the plan")),
            (self._beat_clock, tr("Time of this beat")),
            (self._where, tr("Where the talk is")),
            (self._press, tr("What the next press does")),
            (self._next, tr("The line after that")),
        ):
            label.setAccessibleName(name)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        self._lay_out()

        performance.moved.connect(self._moved)
        performance.ended.connect(self._moved)
        performance.ticked.connect(self._show_clock)
        look.changed.connect(self._dress)
        self._dress()

    def set_least_type(self, size: float) -> None:
        """Ask for type of this size at least (times that of controls)."""
        self._now.least = size
        self.refresh()

    def refresh(self) -> None:
        """Show where the run-through stands; nothing is done while nobody sees it, or before the talk is planned."""
        if not self.isVisible():
            return
        if not self._performance.is_ready:
            # A long talk is being planned: the run-through tells when it can be shown.
            self._session.plan_now()
            return
        run = self._performance.run
        if not run.beats:
            self._where.setText(tr("Nothing to tell yet"))
            self._now.show_runs((Run(tr("Write a spoken line, then come back to rehearse it.")),))
            self._press.setText("")
            self._next.setText("")
        else:
            beat = run.beats[self._performance.beat]
            self._where.setText(self._title(beat))
            self._now.show_runs(self._runs(beat))
            self._press.setText(self._press_text())
        self._fit()
        self._show_clock()

    def sizeHint(self) -> QSize:
        """Room for a few lines in large type."""
        line = self.fontMetrics().lineSpacing()
        return QSize(34 * line, 18 * line)

    def hasHeightForWidth(self) -> bool:
        """It takes what room it is given; its words must not push the panes below it together."""
        return False

    def minimumSizeHint(self) -> QSize:
        """The clock, where the talk is, and two lines."""
        line = self.fontMetrics().lineSpacing()
        return QSize(14 * line, 5 * line + self._now.minimumSizeHint().height())

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

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Look ahead or back in a line that moves; it is followed again from the next press."""
        self._held = True
        self._now.scroll_by(-event.angleDelta().y())
        event.accept()

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
            return part_name(beat.key)
        label = move_label(self._session.positions, beat.key) if beat.key in self._session.study.nodes else ""
        return tr("{label} · side-line", label=label) if beat.depth else label

    def _runs(self, beat: Beat) -> list[Run]:
        """The spoken line with the moves that are played at its words as tags before them."""
        text = beat.spoken.text
        if not text:
            return [Run(tr("Nothing is said here."), ink="ink_quiet", slanted=True), *self._think(beat)]
        tags: dict[int, list[str]] = {}
        for cue in beat.spoken.cues:
            if cue.node is not None and cue.node in self._session.study.nodes:
                tags.setdefault(cue.word, []).append(self._session.positions.san(cue.node))
        starts = [start for start, _ in word_spans(text)]
        runs: list[Run] = []
        at = 0
        for word, start in enumerate((*starts, len(text))):
            if word in tags or word == len(starts):
                runs += self._said(text, starts, at, start)
                at = start
            for san in tags.get(word, ()):
                tag = f"{_BLANK}{san}{_BLANK}"
                runs += (Run(tag, (), "accent", "accent_soft", strong=True), Run(" "))
        return [*(run for run in runs if run.text), *self._think(beat)]

    def _said(self, text: str, starts: list[int], begin: int, end: int) -> list[Run]:
        """Some of the spoken line, with how its harder words are said behind them."""
        runs: list[Run] = []
        at = begin
        for hint in hints_in(text[begin:end], self._session.study.pronunciations):
            behind = begin + hint.end
            runs.append(Run(text[at:behind], words_between(starts, at, behind)))
            runs.append(Run(f"{_BLANK}[{hint.said}]", (), "ink_quiet", slanted=True))
            at = behind
        return [*runs, Run(text[at:end], words_between(starts, at, end))]

    def _think(self, beat: Beat) -> list[Run]:
        if not beat.think:
            return []
        words = tr("think pause, {seconds:.0f} s", seconds=beat.think)
        return [Run(" "), Run(words, (), "think", "think_soft")]

    def _press_text(self) -> str:
        run = self._performance.run
        if run.wandering:
            return tr("Off the running order: Backspace comes back.")
        if not self._performance.active:
            what = tr("Space begins") if self._performance.begin_by is None else tr("Space begins the take")
            return tr("{what}.", what=what) if not self._performance.beat else tr("{what} here.", what=what)
        upcoming = run.next_stop
        return (
            tr("Space ends the run-through.")
            if upcoming is None
            else tr("Next on the board: {what}", what=self._stop_text(upcoming))
        )

    def _stop_text(self, stop: Stop) -> str:
        visit = stop.visit
        if visit.kind is VisitKind.LINE and visit.part is not None:
            return tr("nothing moves; {value}", value=part_name(visit.part))
        label = move_label(self._session.positions, visit.node) if visit.node in self._session.study.nodes else ""
        if visit.kind is VisitKind.BACK:
            return tr("back to {label}", label=label)
        return label

    def _show_clock(self) -> None:
        run = self._performance.run
        total = sum(run.planned)
        self._elapsed.setText(f"{clock(run.elapsed)} / {clock(total)}")
        if not run.begun:
            slot = "" if run.slot is None else tr("planned {distance}", distance=over_or_under(total - run.slot))
            self._late.setText(slot)
            self._beat_clock.setText("")
            return
        late = run.late
        told = tr("{seconds:.0f} s behind", seconds=late) if late > 0 else tr("{seconds:.0f} s ahead", seconds=-late)
        left = tr("{time} left", time=clock(run.left))
        told = tr("on time") if abs(late) < 1 else told
        self._late.setText(f"{told} · {left}")
        self._late.shorter = told
        colour = "over" if late > 3 else "ink_quiet"
        self._late.setStyleSheet(f"color: {self._ink(colour)};")
        seconds, planned = run.beat_seconds(run.beat), run.planned[run.beat]
        self._beat_clock.setText(tr("this beat {seconds:.0f} of {planned:.0f} s", seconds=seconds, planned=planned))
        self._beat_clock.shorter = tr("{seconds:.0f} of {planned:.0f} s", seconds=seconds, planned=planned)
        self._follow(seconds / planned if planned else 1.0)
        self._beat_clock.setStyleSheet(f"color: {self._ink('over' if seconds > planned + 1 else 'ink_quiet')};")

    def _moved(self) -> None:
        self._held = False
        self.refresh()

    def _follow(self, share: float) -> None:
        """Bring the words into view that are due: by the time, between the cue that was played and the next one."""
        run = self._performance.run
        stop = run.stop
        if self._held or run.wandering or stop is None or not self._now.moves:
            return
        spoken = run.beats[self._performance.beat].spoken
        cue_of = {cue.node: cue.word for cue in spoken.cues if cue.node is not None}
        words = len(word_spans(spoken.text))
        upcoming = run.next_stop
        latest = words
        if upcoming is not None and upcoming.beat == self._performance.beat:
            latest = cue_of.get(upcoming.visit.node, words)
        earliest = min(cue_of.get(stop.visit.node, 0), latest)
        self._now.follow(max(earliest, min(latest, share * words)))

    def _fit(self) -> None:
        """Give the line the largest type in which all of it is seen, the next one the room that is left.

        Showing and hiding lays the panes out at once, which may resize this one: then it is fitted once more.
        """
        if self._fitting:
            return
        self._fitting = True
        try:
            for _ in range(_FITS):
                size = self.size()
                self._fit_here()
                if size == self.size():
                    break
        finally:
            self._fitting = False

    def _fit_here(self) -> None:
        roomy = self.height() >= _ROOMY * self.fontMetrics().lineSpacing()
        self._arrange(roomy=roomy)
        run = self._performance.run
        at = self._performance.beat + 1
        after = run.beats[at] if at < len(run.beats) else None
        self._next.setText(self._next_text(after, roomy=roomy) if run.beats else "")
        self._next.setVisible(bool(run.beats))
        self._settle()
        if self._now.fit() < _COMFORTABLE and not self._next.isHidden():
            self._next.hide()
            self._settle()
            self._now.fit()

    def _next_text(self, after: Beat | None, *, roomy: bool) -> str:
        ink = self._ink("ink_quiet")
        if after is None:
            ended = escape(tr("The talk ends here."))
            return f"<span style='color:{ink}'>{ended}</span>"
        said = escape(_beginning(after.spoken.text, _NEXT_WORDS[0 if roomy else 1]))
        return f"<span style='color:{ink}'><b>{escape(self._title(after))}</b>&nbsp; {said}</span>"

    def _arrange(self, *, roomy: bool) -> None:
        """Fonts and margins for the room that there is; what the next press does stands beside the title or below."""
        look = self._look
        self._elapsed.setFont(look.move_font(1.7 if roomy else 1.25))
        self._elapsed.setMinimumWidth(int(QFontMetricsF(self._elapsed.font()).horizontalAdvance("00:00 / 00:00")))
        for label in (self._late, self._beat_clock):
            label.setFont(look.ui_font(1.25 if roomy else 1.0))
        self._where.setFont(look.move_font(1.1 if roomy else 1.0))
        self._press.setFont(look.ui_font(1.1 if roomy else 1.0))
        self._next.setFont(look.spoken_font(1.3 if roomy else 1.05))
        self._inside.setContentsMargins(*((24, 18, 24, 18) if roomy else (12, 6, 12, 6)))
        self._inside.setSpacing(10 if roomy else 4)
        outer = self.layout()
        if outer is not None:
            outer.setContentsMargins(*((16, 12, 16, 12) if roomy else (4, 2, 4, 2)))
            outer.setSpacing(12 if roomy else 6)
        # What stands above and below the card keeps off the frame that shows where the keyboard is.
        aside = 0 if roomy else 10
        self._clocks.setContentsMargins(aside, 0, aside, 0)
        self._next.setContentsMargins(aside, 0, aside, 0)
        words = QFontMetricsF(self._press.font()).horizontalAdvance(self._press.text())
        title = self._where.sizeHint().width()
        beside = not roomy and title + words + 48 <= self.width() - 40
        if beside != (self._head.indexOf(self._press) >= 0):
            (self._inside if beside else self._head).removeWidget(self._press)
            (self._head if beside else self._inside).addWidget(self._press)
        self._press.setWordWrap(not beside)

    def _settle(self) -> None:
        """Let the layouts take effect at once, so that the line can be measured."""
        for layout in (self.layout(), self._card.layout()):
            if layout is not None:
                layout.invalidate()
                layout.activate()

    def _lay_out(self) -> None:
        self._clocks = clocks = QHBoxLayout()
        clocks.setSpacing(14)
        clocks.addWidget(self._elapsed)
        clocks.addWidget(self._late)
        clocks.addStretch(1)
        clocks.addWidget(self._beat_clock)
        self._card = QFrame()
        self._card.setObjectName("card")
        self._head = QHBoxLayout()
        self._head.setSpacing(16)
        self._head.addWidget(self._where, 1)
        self._inside = QVBoxLayout(self._card)
        self._inside.addLayout(self._head)
        self._inside.addWidget(self._now, 1)
        self._inside.addWidget(self._press)
        layout = QVBoxLayout(self)
        layout.addLayout(clocks)
        layout.addWidget(self._card, 1)
        layout.addWidget(self._next)

    def _ink(self, token: str) -> str:
        return self._look.color(token).name()

    def _dress(self) -> None:
        quiet = f"color: {self._ink('ink_quiet')};"
        for label in (self._late, self._beat_clock, self._press):
            label.setStyleSheet(quiet)
        self._where.setStyleSheet(f"color: {self._ink('accent')};")
        self._now.redress()
        self.refresh()


def _beginning(text: str, most: int) -> str:
    """As much of a line as shows how it goes on: *most* words."""
    words = text.split()
    return " ".join(words) if len(words) <= most else f"{' '.join(words[:most])} …"
