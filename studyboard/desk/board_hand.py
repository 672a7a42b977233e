"""The piece that is held over the board, by pointer or by keyboard."""

from __future__ import annotations

from collections.abc import Callable

import chess
from PySide6.QtCore import QObject, QPointF, Signal

from studyboard.board.moves import can_move, legal_targets


class BoardHand(QObject):
    """Picks a piece up and puts it down.

    State: the square whose piece is held and where it may go; while it is dragged, where the pointer is; while the
    keyboard picks, the square of its cursor.

    changed: paint again
    played: a piece was put where it may go; carries both squares
    let_go: a dragged piece was put where it may not go; carries its square and the pointer's place (px)
    """

    changed = Signal()
    played = Signal(int, int)
    let_go = Signal(int, QPointF)

    def __init__(self, board: Callable[[], chess.Board], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._board = board
        self._held: chess.Square | None = None
        self._targets: frozenset[chess.Square] = frozenset()
        self._grip: QPointF | None = None
        self._held_before = False
        self._dragged = False
        self._cursor: chess.Square | None = None

    @property
    def held(self) -> chess.Square | None:
        """The square whose piece is held."""
        return self._held

    @property
    def targets(self) -> frozenset[chess.Square]:
        """Where the held piece may go."""
        return self._targets

    @property
    def grip(self) -> QPointF | None:
        """Where the pointer drags the held piece (px), None while it stands on its square."""
        return self._grip

    @property
    def dragged(self) -> bool:
        """True where the last piece that was put down had been dragged there."""
        return self._dragged

    @property
    def cursor(self) -> chess.Square | None:
        """The square of the keyboard's cursor, None while the keyboard does not pick."""
        return self._cursor

    def press(self, square: chess.Square | None) -> None:
        """The pointer was pressed on a square, or beside the board."""
        self._held_before = square is not None and square == self._held
        if square is None:
            self.drop()
        elif square not in self._targets and can_move(self._board(), square):
            self._hold(square)

    def drag(self, position: QPointF) -> None:
        """The pointer has gone to *position* (px) with the button pressed."""
        if self._held is not None:
            self._grip = position
            self.changed.emit()

    def release(self, square: chess.Square | None, position: QPointF) -> None:
        """The pointer was released over a square, or beside the board."""
        held, dragged = self._held, self._grip is not None
        self._grip, self._dragged = None, dragged
        if held is None:
            return
        if square in self._targets and square is not None:
            self.drop()
            self.played.emit(held, square)
        elif dragged and square != held:
            self.drop()
            self.let_go.emit(held, position)
        elif dragged:
            self.changed.emit()
        elif square != held or self._held_before:
            self.drop()

    def choose(self, square: chess.Square) -> None:
        """The keyboard picks up what stands on this square, or puts the held piece there."""
        self._dragged = False
        if square in self._targets and self._held is not None:
            held = self._held
            self.drop()
            self.played.emit(held, square)
        elif square == self._held:
            self.drop()
        elif can_move(self._board(), square):
            self._hold(square)

    def drop(self) -> None:
        """Hold nothing any more."""
        if self._held is not None or self._grip is not None:
            self._held, self._targets, self._grip = None, frozenset(), None
            self.changed.emit()

    def begin_picking(self, square: chess.Square) -> None:
        """Show the keyboard's cursor on a square."""
        self._cursor = square
        self.changed.emit()

    def end_picking(self) -> None:
        """Put the keyboard's cursor and the held piece away."""
        self._cursor = None
        self.drop()
        self.changed.emit()

    def _hold(self, square: chess.Square) -> None:
        self._held, self._targets = square, legal_targets(self._board(), square)
        self.changed.emit()
