"""The facts of the shown position, in words under the board."""

from __future__ import annotations

import html
import re

import chess
from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtWidgets import QLabel, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from studyboard.board.facts import Fact, FactKind, facts
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.model.study import Changed

_SQUARE = re.compile(r"\b[a-h][1-8]\b")
_HEADINGS = {FactKind.HANGS: "Hangs", FactKind.PINNED: "Pinned", FactKind.CHECK: "Check", FactKind.END: "End"}


class FactsLine(QWidget):
    """Material, what hangs and what is pinned.

    State: the facts of the shown position; they are looked for after the board has been painted, so that stepping
    never waits for them.

    pointed: the pointer or the keyboard is on squares of a sentence, or has left them; carries a tuple of squares
    """

    pointed = Signal(object)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._look = look
        self._facts: tuple[Fact, ...] = ()
        self.setAccessibleName("Facts of the position")
        self._words = QLabel()
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.RichText)
        self._words.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self._words.setTextInteractionFlags(
            Qt.TextInteractionFlag.LinksAccessibleByMouse
            | Qt.TextInteractionFlag.LinksAccessibleByKeyboard
            | Qt.TextInteractionFlag.TextSelectableByMouse
        )
        self._words.setOpenExternalLinks(False)
        self._words.setToolTip(
            "Hanging is judged by the captures on that square alone. Point at a square's name to see it on the board."
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

    def refresh(self) -> None:
        """Look the facts of the shown position up and show them."""
        self._soon.stop()
        self._facts = facts(self._session.board)
        self.pointed.emit(())
        self._words.setText(self._html())
        self._words.setAccessibleDescription(" ".join(fact.words for fact in self._facts))
        self._scroll.verticalScrollBar().setValue(0)

    def sizeHint(self) -> QSize:
        """Room for four lines."""
        line = self._words.fontMetrics().lineSpacing()
        return QSize(320, 4 * line + 8)

    def minimumSizeHint(self) -> QSize:
        """Room for two lines."""
        return QSize(160, 2 * self._words.fontMetrics().lineSpacing() + 6)

    def _html(self) -> str:
        quiet, over = self._look.color("ink_quiet").name(), self._look.color("over").name()
        material = [fact for fact in self._facts if fact.kind is FactKind.MATERIAL]
        rows = [f"<b>{html.escape(fact.words)}</b>" for fact in material]
        for fact in self._facts:
            if fact.kind is FactKind.MATERIAL:
                continue
            color = quiet if fact.kind is FactKind.PINNED else over
            heading = f'<span style="color:{color}; font-weight:600">{_HEADINGS[fact.kind]}</span>'
            rows.append(f"{heading}&nbsp; {self._linked(fact)}")
        return "".join(f'<p style="margin:0 0 3px 0">{row}</p>' for row in rows)

    def _linked(self, fact: Fact) -> str:
        ink = self._look.color("ink").name()

        def link(found: re.Match[str]) -> str:
            named = chess.parse_square(found[0])
            squares = (named, *(square for square in fact.squares if square != named))
            target = ",".join(chess.square_name(square) for square in squares)
            return f'<a href="{target}" style="color:{ink}">{found[0]}</a>'

        return _SQUARE.sub(link, html.escape(fact.words))

    def _point(self, target: str) -> None:
        self.pointed.emit(tuple(chess.parse_square(name) for name in target.split(",") if name))

    def _on_changed(self, changed: Changed) -> None:
        if changed.headers:
            self._soon.start()

    def _dress(self) -> None:
        self._words.setFont(self._look.ui_font(0.95))
        self.setStyleSheet("QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; }")
        self.refresh()
