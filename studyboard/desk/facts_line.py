"""The facts of the shown position, in words under the board."""

from __future__ import annotations

import html
import re

import chess
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPixmap
from PySide6.QtWidgets import QLabel, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from studyboard.board.facts import Fact, FactKind, facts
from studyboard.board.on_demand import Answer
from studyboard.desk.board_accessible import show_as_list
from studyboard.desk.board_announce import announce
from studyboard.desk.board_signs import answer_sample
from studyboard.desk.look import Look
from studyboard.desk.painted_parts import SentenceParts
from studyboard.desk.session import Session
from studyboard.model.study import Changed
from studyboard.translation import tr, tr_later

_SQUARE = re.compile(r"\b[a-h][1-8]\b")
_HEADINGS = {
    FactKind.HANGS: tr_later("Hangs"),
    FactKind.PINNED: tr_later("Pinned"),
    FactKind.CHECK: tr_later("Check"),
    FactKind.END: tr_later("End"),
    FactKind.LINE: tr_later("Line"),
    FactKind.FORK: tr_later("Fork"),
    FactKind.GUARD: tr_later("Guard"),
    FactKind.TRAPPED: tr_later("Trapped"),
    FactKind.PAWNS: tr_later("Pawns"),
    FactKind.BISHOPS: tr_later("Bishops"),
    FactKind.CASTLING: tr_later("Castling"),
    FactKind.COVER: tr_later("Cover"),
    FactKind.DRAW: tr_later("Draw"),
    FactKind.ONLY_MOVE: tr_later("Only move"),
    FactKind.KING: tr_later("King"),
    FactKind.DISCOVERY: tr_later("Discovery"),
}
#: What presses is told in a stronger colour than what only is so.
_PRESSING = frozenset((FactKind.HANGS, FactKind.CHECK, FactKind.END))


class FactsLine(QWidget):
    """Material, what hangs and what is pinned; as one likes, everything further that can be counted.

    State: the facts of the shown position, looked for after the board has been painted, so that stepping never waits
    for them; and which one the keyboard has chosen. Up and down choose, Escape chooses none. What somebody has asked
    stands in their place, each part beside a sample of how the board shows it, until it is put away.

    pointed: the pointer or the keyboard is on squares of a sentence, or has left them; carries a tuple of squares
    """

    pointed = Signal(object)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._look = look
        self._facts: tuple[Fact, ...] = ()
        self._chosen: int | None = None
        self._answers: tuple[Answer, ...] = ()
        self._further = False
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAccessibleName(tr("Facts of the position"))
        show_as_list(self, SentenceParts(self._sentences, lambda: self._chosen, self.rect))
        self._words = QLabel()
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.RichText)
        self._words.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self._words.setTextInteractionFlags(
            Qt.TextInteractionFlag.LinksAccessibleByMouse | Qt.TextInteractionFlag.TextSelectableByMouse
        )
        self._words.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._words.setOpenExternalLinks(False)
        self._words.setToolTip(
            tr(
                "Hanging is judged by the captures on that square alone. "
                "Point at a square's name to see it on the board."
            )
        )
        self._words.linkHovered.connect(self._point)
        self._words.linkActivated.connect(self._point)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QScrollArea.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.viewport().setAutoFillBackground(False)
        self._words.setAutoFillBackground(False)
        self._scroll.setWidget(self._words)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._scroll)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        # The board is painted first: this waits until the events of the step have been worked off.
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(40)
        self._soon.timeout.connect(self.refresh)
        session.stepped.connect(lambda _: self._soon.start())
        session.opened.connect(self._soon.start)
        session.changed.connect(self._on_changed)
        look.changed.connect(self._dress)
        self._dress()

    @property
    def facts(self) -> tuple[Fact, ...]:
        """What is shown."""
        return self._facts

    def _sentences(self) -> tuple[str, ...]:
        return tuple(one.words for one in self._answers or self._facts)

    def refresh(self) -> None:
        """Look the facts of the shown position up and show them."""
        self._soon.stop()
        *found, material = facts(self._session.board)
        self._facts = (material, *found, *(self._further_facts() if self._further else ()))
        self._chosen = None
        if self._answers:
            return
        self.pointed.emit(())
        self._words.setText(self._html())
        self.setAccessibleDescription(" ".join(fact.words for fact in self._facts))
        self._scroll.verticalScrollBar().setValue(0)

    @property
    def further(self) -> bool:
        """True where forks, lines, guards, pawns and the rest are told too."""
        return self._further

    def show_further(self, shown: bool) -> None:
        """Tell forks, lines, guards, pawns, castling and what the last move covers too, or only what presses."""
        if shown != self._further:
            self._further = shown
            self.refresh()

    def _further_facts(self) -> tuple[Fact, ...]:
        from studyboard.board.further_facts import further_facts

        node = self._session.study.node(self._session.node)
        before = None if node.parent is None else self._session.positions.board(node.parent)
        return further_facts(self._session.board, before, node.move)

    @property
    def answers(self) -> tuple[Answer, ...]:
        """What stands in the place of the facts."""
        return self._answers

    def show_answers(self, answers: tuple[Answer, ...]) -> None:
        """Tell what somebody has asked, or the facts again where that is nothing."""
        self._answers = answers
        if not answers:
            self.refresh()
            return
        self._chosen = None
        self.pointed.emit(())
        self._words.setText(self._answers_html())
        self.setAccessibleDescription(" ".join(answer.words for answer in answers))
        self._scroll.verticalScrollBar().setValue(0)

    def sizeHint(self) -> QSize:
        """Room for four lines."""
        line = self._words.fontMetrics().lineSpacing()
        return QSize(320, 4 * line + 8)

    def minimumSizeHint(self) -> QSize:
        """Room for two lines."""
        return QSize(160, 2 * self._words.fontMetrics().lineSpacing() + 6)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget."""
        step = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}.get(Qt.Key(event.key()))
        if self._answers:
            super().keyPressEvent(event)
        elif step is not None and not event.modifiers():
            last = len(self._facts) - 1
            self._choose(0 if self._chosen is None else min(last, max(0, self._chosen + step)))
        elif event.key() == Qt.Key.Key_Escape and self._chosen is not None:
            self._choose(None)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """See QWidget."""
        super().focusInEvent(event)
        if self._chosen is None and self._facts:
            self._choose(0)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """See QWidget."""
        super().focusOutEvent(event)
        self._choose(None)

    def _choose(self, number: int | None) -> None:
        if self._answers:
            return
        self._chosen = number
        self._words.setText(self._html())
        self.pointed.emit(() if number is None else self._facts[number].squares)
        if number is not None:
            announce(self, lambda: self._facts[number].words)

    def _html(self) -> str:
        quiet, over = self._look.color("ink_quiet").name(), self._look.color("over").name()
        chosen = f"background-color:{self._look.color('selection').name()};"
        rows = []
        for number, fact in enumerate(self._facts):
            if fact.kind is FactKind.MATERIAL:
                words = f"<b>{html.escape(fact.words)}</b>"
            else:
                color = over if fact.kind in _PRESSING else quiet
                heading = f'<span style="color:{color}; font-weight:600">{tr(_HEADINGS[fact.kind])}</span>'
                words = f"{heading}&nbsp; {self._linked(fact)}"
            ground = chosen if number == self._chosen else ""
            rows.append(f'<p style="margin:0 0 6px 0;{ground}">{words}</p>')
        return "".join(rows)

    def _answers_html(self) -> str:
        subject, *parts = self._answers
        rows = [f'<p style="margin:0 0 6px 0;"><b>{html.escape(subject.words)}</b></p>']
        for answer in parts:
            words = self._linked_words(answer.words, answer.squares)
            if not answer.squares:
                rows.append(f'<p style="margin:0 0 6px 0;">{words}</p>')
                continue
            side = round(1.5 * self._words.fontMetrics().height())
            sample = _inline(answer_sample(answer.aspect, side, self.devicePixelRatioF(), self._look.board_palette))
            image = f'<img src="{sample}" width="{side}" height="{side}" style="vertical-align:middle">'
            rows.append(f'<p style="margin:0 0 6px 0;">{image}&nbsp; {words}</p>')
        ending = html.escape(tr("Escape ends this."))
        rows.append(f'<p style="margin:0;color:{self._look.color("ink_quiet").name()}">{ending}</p>')
        return "".join(rows)

    def _linked(self, fact: Fact) -> str:
        return self._linked_words(fact.words, fact.squares)

    def _linked_words(self, words: str, about: tuple[chess.Square, ...]) -> str:
        ink = self._look.color("ink").name()

        def link(found: re.Match[str]) -> str:
            named = chess.parse_square(found[0])
            squares = (named, *(square for square in about if square != named and not self._answers))
            target = ",".join(chess.square_name(square) for square in squares)
            return f'<a href="{target}" style="color:{ink}">{found[0]}</a>'

        return _SQUARE.sub(link, html.escape(words))

    def _point(self, target: str) -> None:
        self.pointed.emit(tuple(chess.parse_square(name) for name in target.split(",") if name))

    def _on_changed(self, changed: Changed) -> None:
        if changed.headers:
            self._soon.start()

    def _dress(self) -> None:
        self._words.setFont(self._look.ui_font(0.95))
        self.setStyleSheet("QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; }")
        if self._answers:
            self.show_answers(self._answers)
        else:
            self.refresh()


def _inline(pixmap: QPixmap) -> str:
    """A picture as an address that can stand in a text."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    pixmap.save(buffer, "PNG")
    buffer.close()
    return f"data:image/png;base64,{data.toBase64().toStdString()}"
