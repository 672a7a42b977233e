"""The hand on the lanes: a branch is taken, carried to another place, and let go there."""

from __future__ import annotations

from PySide6.QtCore import QObject, QPointF, QTimer

from studyboard.desk.gliding_view import GlidingView
from studyboard.desk.lanes_canvas import LaneCanvas
from studyboard.desk.lanes_drag import Beside, Onto
from studyboard.desk.session import Session
from studyboard.model import pasting
from studyboard.model.edits import MoveChild
from studyboard.model.positions import Positions

#: How far the pointer moves before a branch is carried (px).
_DRAG = 8
#: At how little from an edge of the view the picture goes on below what is carried (px), how often (ms), how far (px).
_EDGE, _TICK, _STEP = 36, 16, 9


class LaneHand(QObject):
    """What the pointer carries over the lanes.

    State: the branch that was taken and where, and where the pointer is in the view.
    """

    def __init__(self, view: GlidingView, canvas: LaneCanvas, session: Session) -> None:
        super().__init__(view)
        self._view = view
        self._canvas = canvas
        self._session = session
        self._taken: tuple[int, QPointF] | None = None
        self._at = QPointF()
        self._scroll = QTimer(self)
        self._scroll.setInterval(_TICK)
        self._scroll.timeout.connect(self._go_on_scrolling)

    @property
    def carrying(self) -> bool:
        """True while a branch is carried."""
        return self._canvas.held is not None

    @property
    def taken(self) -> bool:
        """True while the pointer is down on a branch, carried or not yet."""
        return self._taken is not None

    def take(self, branch: int, at: QPointF) -> None:
        """The pointer went down on the first node of a branch, at this point of the view."""
        if branch != self._session.study.root:
            self._taken = (branch, at)

    def carry(self, at: QPointF) -> None:
        """The pointer has moved to this point of the view."""
        if self._taken is None:
            return
        branch, begin = self._taken
        if not self.carrying and (at - begin).manhattanLength() < _DRAG:
            return
        self._at = at
        place = self._view.to_picture(at)
        self._canvas.drag(branch, place.x(), place.y())
        if self._pull().isNull():
            self._scroll.stop()
        elif not self._scroll.isActive():
            self._scroll.start()
        self._view.viewport().update()

    def let_go(self) -> None:
        """The pointer came up: the branch goes where it is held, or it is said why not."""
        drop = self._canvas.drop
        self.cancel()
        session = self._session
        if isinstance(drop, Beside):
            if session.study.nodes[drop.parent].children[drop.place] != drop.side_line:
                session.do(MoveChild(drop.side_line, drop.place))
        elif isinstance(drop, Onto):
            if drop.why_not:
                session.refused.emit(drop.why_not)
                return
            move = session.study.nodes[drop.branch].move
            if session.attempt(pasting.cut_and_paste, drop.branch, drop.node) and move is not None:
                session.show(Positions(session.study).child_by_move(drop.node, move))

    def cancel(self) -> None:
        """Everything stays where it was."""
        self._taken = None
        self._scroll.stop()
        self._canvas.end_drag()
        self._view.viewport().update()

    def _pull(self) -> QPointF:
        """Towards which edges the pointer is so near that the picture goes on (px)."""
        view = self._view.viewport().rect()
        x = -_STEP if self._at.x() < _EDGE else _STEP if self._at.x() > view.width() - _EDGE else 0
        y = -_STEP if self._at.y() < _EDGE else _STEP if self._at.y() > view.height() - _EDGE else 0
        return QPointF(x, y)

    def _go_on_scrolling(self) -> None:
        before = self._view.place
        self._view.scroll_to(before + self._pull())
        if self._view.place == before:
            self._scroll.stop()
            return
        self.carry(self._at)
