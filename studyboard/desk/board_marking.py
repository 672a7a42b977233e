"""Drawing marks on the board of a session."""

from __future__ import annotations

from collections.abc import Callable

import chess
from PySide6.QtCore import QObject, Signal

from studyboard.board import marking
from studyboard.desk.session import Session
from studyboard.model.edits import Edit
from studyboard.model.errors import EditRefusedError
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.model.node import Node

#: The kinds of marks in the order of their number keys.
KINDS = (MarkKind.THREAT, MarkKind.TARGET, MarkKind.ROUTE, MarkKind.KEY_SQUARE, MarkKind.GUARD)


class BoardMarking(QObject):
    """Whether marks are being drawn, of which kind, and the one that is under way.

    State: on or off, the kind, whether new marks are numbered, and what is under way: a mark from where to where, or
    one square of a drawn mark that is held to be put elsewhere.

    changed: paint again
    turned: marking was turned on or off
    kind_changed: another kind was chosen, or numbering was turned on or off
    """

    changed = Signal()
    turned = Signal(bool)
    kind_changed = Signal(object)

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._on = False
        self._kind = MarkKind.THREAT
        self._numbering = False
        self._hold: tuple[int, int] | None = None
        self._origin: chess.Square | None = None
        self._end: chess.Square | None = None

    @property
    def on(self) -> bool:
        """True while pressing on the board draws marks."""
        return self._on

    @property
    def kind(self) -> MarkKind:
        """The kind of mark that is drawn."""
        return self._kind

    @property
    def numbering(self) -> bool:
        """True where new marks get the next number of the node's sequence."""
        return self._numbering

    def number(self, on: bool) -> None:
        """Number new marks, or not."""
        if on != self._numbering:
            self._numbering = on
            self.kind_changed.emit(self._kind)

    @property
    def holding(self) -> bool:
        """True while a square of a drawn mark is held."""
        return self._hold is not None

    @property
    def drawing(self) -> bool:
        """True between the start and the end of a mark, or while one is held."""
        return self._origin is not None

    @property
    def single(self) -> bool:
        """True where marks of this kind have one square only."""
        return SQUARES_OF[self._kind] == (1, 1)

    @property
    def preview(self) -> Mark | None:
        """The mark that is under way."""
        if self._origin is None or self._end is None:
            return None
        if self._hold is not None:
            index, stop = self._hold
            marks = self._node.marks
            return marking.moved_stop(marks[index], stop, self._end) if index < len(marks) else None
        return marking.drawn_mark(self._kind, self._origin, self._end)

    def turn(self, on: bool) -> None:
        """Turn marking on or off."""
        if on != self._on:
            self._on = on
            self.cancel()
            self.turned.emit(on)
            self.changed.emit()

    def choose(self, kind: MarkKind) -> None:
        """Draw marks of this kind from now on."""
        if kind is not self._kind:
            self._kind = kind
            self.kind_changed.emit(kind)
            self.changed.emit()

    def begin(self, square: chess.Square) -> None:
        """Start a mark on this square."""
        self._origin = self._end = square
        self.changed.emit()

    def take_hold(self, square: chess.Square) -> bool:
        """Hold the mark that has this square, to put that end of it elsewhere; False where none has it."""
        self._hold = marking.stop_at(self._node.marks, square)
        if self._hold is not None:
            self.begin(square)
        return self._hold is not None

    def reach(self, square: chess.Square | None) -> None:
        """Draw on to this square; off the board nothing changes."""
        if self._origin is not None and square is not None and square != self._end:
            self._end = square
            self.changed.emit()

    def finish(self) -> bool:
        """Draw the mark that is under way, wipe the same one, or put the held one; False where nothing came of it."""
        hold, end, moved, mark = self._hold, self._end, self._end != self._origin, self.preview
        self.cancel()
        if hold is not None and end is not None:
            return moved and self._attempt(marking.move_stop, *hold, end)
        if mark is None:
            return False
        return self._session.do(marking.toggle_mark(self._node, mark, numbered=self._numbering))

    def cancel(self) -> None:
        """Forget the mark that is under way."""
        if self._origin is not None:
            self._origin = self._end = self._hold = None
            self.changed.emit()

    def clear(self) -> None:
        """Wipe all marks of the shown node away."""
        if self._node.marks:
            self._session.do(marking.clear_marks(self._node))

    def at(self, square: chess.Square) -> int | None:
        """Which mark of the shown node one means by this square: the last one drawn there; None for none."""
        found = marking.stop_at(self._node.marks, square)
        return None if found is None else found[0]

    def wipe(self, index: int) -> bool:
        """Wipe one mark of the shown node away."""
        return self._session.do(marking.remove_mark(self._node, index))

    def alter(self, index: int, kind: MarkKind) -> bool:
        """Give one mark of the shown node another meaning, or say why that cannot be."""
        self.cancel()
        return self._attempt(marking.change_kind, index, kind)

    def alter_held(self, kind: MarkKind) -> bool:
        """Give the mark that is held another meaning; it stays where it is."""
        return self._hold is not None and self.alter(self._hold[0], kind)

    def number_one(self, index: int) -> bool:
        """Give one mark its number in the sequence, or take it off."""
        return self._attempt(marking.number_mark, index)

    def number_all(self) -> bool:
        """Number all marks of the shown node in the order in which they were drawn, or take the numbers off."""
        return self._attempt(marking.number_marks)

    @property
    def _node(self) -> Node:
        return self._session.study.node(self._session.node)

    def _attempt(self, make: Callable[..., Edit], *arguments: object) -> bool:
        try:
            edit = make(self._node, *arguments)
        except EditRefusedError as reason:
            self._session.refused.emit(str(reason))
            return False
        return self._session.do(edit)
