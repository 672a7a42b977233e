"""Answers that the board shows for a moment: what a piece does, and what the last move has changed."""

from __future__ import annotations

import chess
from PySide6.QtCore import QObject, Signal

from studyboard.board.on_demand import Answer, move_answers, square_answers
from studyboard.desk.session import Session
from studyboard.picture.answers import answers_scene
from studyboard.picture.primitives import Layer


class BoardAnswers(QObject):
    """What is shown over the board because somebody asked.

    State: the answers, none where nobody has asked; the square that they are about, None for those about a move. A
    step, an edit or Escape ends them.

    changed: other answers are shown, or none any more
    """

    changed = Signal()

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._answers: tuple[Answer, ...] = ()
        self._square: chess.Square | None = None
        session.stepped.connect(lambda _: self.end())
        session.opened.connect(self.end)
        session.changed.connect(lambda changed: self.end() if changed.headers else None)

    @property
    def shown(self) -> tuple[Answer, ...]:
        """What is shown now."""
        return self._answers

    @property
    def square(self) -> chess.Square | None:
        """The square that was asked about; None while nothing is shown, or a move was asked about."""
        return self._square

    @property
    def words(self) -> str:
        """All of it in words, for a screen reader."""
        return " ".join(answer.words for answer in self._answers)

    def ask_square(self, square: chess.Square) -> None:
        """Show what the piece on this square does, or who looks at the empty square; asked again, end it."""
        if square == self._square:
            self.end()
        else:
            self._show(square_answers(self._session.board, square), square)

    def ask_move(self) -> bool:
        """Show what the move to the shown position has changed, or end that; False where no move led here."""
        node = self._session.study.node(self._session.node)
        if node.move is None or node.parent is None:
            return False
        if self._answers and self._square is None:
            self.end()
        else:
            self._show(move_answers(self._session.positions.board(node.parent), node.move), None)
        return True

    def end(self) -> None:
        """Show nothing any more."""
        if self._answers:
            self._show((), None)

    def scene(self, *, flipped: bool) -> Layer:
        """What is drawn of it."""
        return answers_scene(self._answers, flipped=flipped)

    def _show(self, answers: tuple[Answer, ...], square: chess.Square | None) -> None:
        self._answers, self._square = answers, square
        self.changed.emit()
