"""Drawing marks on the board of a session."""

from __future__ import annotations

import chess
from PySide6.QtCore import QObject, Signal

from studyboard.board.marking import clear_marks, drawn_mark, toggle_mark
from studyboard.desk.session import Session
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind

#: The kinds of marks in the order of their number keys.
KINDS = (MarkKind.THREAT, MarkKind.TARGET, MarkKind.ROUTE, MarkKind.KEY_SQUARE, MarkKind.GUARD)


class BoardMarking(QObject):
    """Whether marks are being drawn, of which kind, and the one that is under way.

    State: on or off, the kind, and from where to where is being drawn.

    changed: paint again
    turned: marking was turned on or off
    kind_changed: another kind was chosen
    """

    changed = Signal()
    turned = Signal(bool)
    kind_changed = Signal(object)

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._on = False
        self._kind = MarkKind.THREAT
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
    def drawing(self) -> bool:
        """True between the start and the end of a mark."""
        return self._origin is not None

    @property
    def single(self) -> bool:
        """True where marks of this kind have one square only."""
        return SQUARES_OF[self._kind] == (1, 1)

    @property
    def preview(self) -> Mark | None:
        """The mark that is under way."""
        return None if self._origin is None else drawn_mark(self._kind, self._origin, self._end)

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

    def reach(self, square: chess.Square | None) -> None:
        """Draw on to this square; off the board nothing changes."""
        if self._origin is not None and square is not None and square != self._end:
            self._end = square
            self.changed.emit()

    def finish(self) -> bool:
        """Draw the mark that is under way, or wipe away the same one; False where nothing came of it."""
        mark = self.preview
        self.cancel()
        if mark is None:
            return False
        return self._session.do(toggle_mark(self._session.study.node(self._session.node), mark))

    def cancel(self) -> None:
        """Forget the mark that is under way."""
        if self._origin is not None:
            self._origin = self._end = None
            self.changed.emit()

    def clear(self) -> None:
        """Wipe all marks of the shown node away."""
        node = self._session.study.node(self._session.node)
        if node.marks:
            self._session.do(clear_marks(node))
