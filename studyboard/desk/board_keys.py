"""What the keys do while the board has the focus."""

from __future__ import annotations

from typing import Protocol

import chess
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from studyboard.desk.board_answers import BoardAnswers
from studyboard.desk.board_hand import BoardHand
from studyboard.desk.board_marking import KINDS, BoardMarking
from studyboard.translation import tr

_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)
#: Numbers what is drawn from now on; the figures before it choose the kind.
_NUMBERING = Qt.Key.Key_6
#: What a typed move can begin with; M and the figures 1 to 6 choose marks instead.
_BEGINS_MOVE = frozenset("abcdefghKQRBNkqrnoO0")


class KeyedBoard(Protocol):
    """What the keys need of a board."""

    @property
    def flipped(self) -> bool: ...
    def begin_picking(self) -> None: ...
    def begin_entry(self, text: str = "") -> None: ...
    def describe_cursor(self) -> None: ...
    def say(self, words: str) -> None: ...
    @property
    def answers(self) -> BoardAnswers: ...


class BoardKeys:
    """Turns keys into moves and marks.

    Enter shows a cursor that the arrows move; Enter again picks up and puts down, or starts and ends a mark. A letter
    opens the field for typed moves. M turns marking on or off, 1 to 5 choose what is drawn, 6 numbers what is drawn.
    While marking, Shift and Enter take hold of the mark at the cursor and put it down again, 1 to 5 change what a held
    mark means, and Delete wipes the one at the cursor away. Escape leaves, step by step, whatever is going on.
    """

    def __init__(self, board: KeyedBoard, hand: BoardHand, marking: BoardMarking) -> None:
        self._board = board
        self._hand = hand
        self._marking = marking

    def wants(self, event: QKeyEvent) -> bool:
        """Whether a key belongs to the board before it is anyone's shortcut."""
        if event.modifiers() & ~(Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier):
            return False
        key, picking = Qt.Key(event.key()), self._hand.cursor is not None
        if key in _ARROWS:
            return picking
        if key == Qt.Key.Key_Escape:
            return picking or self._marking.on or self._hand.held is not None or bool(self._board.answers.shown)
        if key == Qt.Key.Key_Space:
            return picking
        if key == Qt.Key.Key_Delete:
            return picking and self._marking.on
        chooses = key in (Qt.Key.Key_M, _NUMBERING) or _kind_key(event) is not None
        return key in _ENTER or chooses or _begins_move(event)

    def press(self, event: QKeyEvent) -> bool:
        """Do what a key asks for; False where the board has no use for it."""
        if not self.wants(event):
            return False
        key = Qt.Key(event.key())
        if key in _ARROWS:
            self._step(*_ARROWS[key])
        elif key in _ENTER:
            self._enter(hold=bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        elif key == Qt.Key.Key_Delete:
            self._wipe()
        elif key == Qt.Key.Key_Escape:
            self._leave()
        elif key == Qt.Key.Key_M:
            self._marking.turn(not self._marking.on)
        elif key == _NUMBERING:
            self._marking.number(not self._marking.numbering)
            self._marking.turn(True)
            self._board.say(tr("Numbering on") if self._marking.numbering else tr("Numbering off"))
        elif (number := _kind_key(event)) is not None:
            if self._marking.holding:
                self._marking.alter_held(KINDS[number])
            else:
                self._marking.choose(KINDS[number])
                self._marking.turn(True)
        else:
            self._board.begin_entry(event.text())
        return True

    def _step(self, right: int, up: int) -> None:
        cursor = self._hand.cursor
        if cursor is None:
            return
        turn = -1 if self._board.flipped else 1
        file = min(7, max(0, chess.square_file(cursor) + right * turn))
        rank = min(7, max(0, chess.square_rank(cursor) + up * turn))
        square = chess.square(file, rank)
        self._hand.begin_picking(square)
        self._marking.reach(square)
        self._board.describe_cursor()

    def _wipe(self) -> None:
        cursor = self._hand.cursor
        index = None if cursor is None else self._marking.at(cursor)
        if index is None:
            self._board.say(tr("No mark is drawn here."))
        else:
            self._marking.cancel()
            self._marking.wipe(index)

    def _enter(self, *, hold: bool) -> None:
        cursor = self._hand.cursor
        if cursor is None:
            self._board.begin_picking()
            self._board.describe_cursor()
        elif not self._marking.on:
            self._hand.choose(cursor)
        elif hold and not self._marking.drawing:
            if not self._marking.take_hold(cursor):
                self._board.say(tr("No mark is drawn here."))
        elif self._marking.drawing or self._marking.single:
            if not self._marking.drawing:
                self._marking.begin(cursor)
            self._marking.finish()
        else:
            self._marking.begin(cursor)

    def _leave(self) -> None:
        if self._board.answers.shown:
            self._board.answers.end()
        elif self._marking.drawing:
            self._marking.cancel()
        elif self._hand.held is not None:
            self._hand.drop()
        elif self._hand.cursor is not None:
            self._hand.end_picking()
        else:
            self._marking.turn(False)


def _kind_key(event: QKeyEvent) -> int | None:
    number = event.key() - Qt.Key.Key_1
    return number if 0 <= number < len(KINDS) else None


def _begins_move(event: QKeyEvent) -> bool:
    return event.text() != "" and event.text() in _BEGINS_MOVE
