"""The lanes: the main line and every side-line beside the move that it replaces, row by row."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEasingCurve, QEvent, QPoint, QPointF, QRect, Qt, QTimer, QVariantAnimation, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QFrame, QToolTip, QWidget

from studyboard.desk import lanes_steps
from studyboard.desk.announcing import announce
from studyboard.desk.lanes_canvas import LaneCanvas, Spot, Target
from studyboard.desk.lanes_geometry import Box
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.model import stepping
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Changed

#: How long the lanes take to bring a row into view (ms).
_GLIDE = 140


class Lanes(QAbstractScrollArea):
    """The tree of the study that a session shows, with what is said at each move and how long it takes.

    State: the row that is current, what is folded, and how far the view is scrolled.

    part_chosen: a line that belongs to no move has become current; carries its Part
    edit_requested: a row was double-clicked or Return pressed; carries the id of the node or the Part
    menu_requested: a menu is wanted; carries the id of the node, and where on the screen
    """

    part_chosen = Signal(object)
    edit_requested = Signal(object)
    menu_requested = Signal(int, QPoint)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._look = look
        self._canvas = LaneCanvas(session, look, 640)
        self._glide = QVariantAnimation(self)
        self._glide.setDuration(_GLIDE)
        self._glide.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._glide.valueChanged.connect(self._scroll_to)
        self._pan_from: tuple[QPointF, QPoint] | None = None

        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Lanes")
        self.viewport().setMouseTracking(True)
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.verticalScrollBar().sliderPressed.connect(self._glide.stop)
        self.horizontalScrollBar().sliderPressed.connect(self._glide.stop)

        session.opened.connect(self._reopen)
        session.changed.connect(self._take_in)
        session.stepped.connect(self._step)
        session.planned.connect(self._retime)
        look.changed.connect(self._relook)
        QTimer.singleShot(0, self, self._retime)
        self._fit()

    # -- for the windows around

    @property
    def current(self) -> BeatKey:
        """The node or part of the talk whose row is current."""
        return self._canvas.current

    def choose_part(self, part: Part) -> None:
        """Make the row of a line that belongs to no move the current one."""
        self._canvas.go(part)
        self._bring_into_view()
        self.viewport().update()
        self._tell()
        self.part_chosen.emit(part)

    def fold(self, side_line: int) -> None:
        """Fold the side-line with this first node away; the current row goes to the move that it replaces."""
        study = self._session.study
        if not study.begins_side_line(side_line):
            return
        inside = not isinstance(self.current, Part) and side_line in study.path(self.current)
        self._canvas.fold((side_line,))
        self._fit()
        if inside:
            self._session.show(stepping.out_of_side_line(study, side_line))

    def unfold(self, side_line: int) -> None:
        """Show a side-line that was folded away."""
        self._canvas.unfold((side_line,))
        self._fit()

    @property
    def folded(self) -> frozenset[int]:
        """First nodes of the side-lines that are folded away."""
        return self._canvas.layout.folded

    def row_rect(self, key: BeatKey) -> QRect | None:
        """Where the row of a node or part is in the viewport now, or None where it is folded away."""
        return self._in_view(self._canvas.box_of(key))

    def fold_rect(self, node: int) -> QRect | None:
        """Where the side-lines that leave at this node are folded, in the viewport, or None where none leaves."""
        return self._in_view(self._canvas.knob_of(node))

    def heading_rect(self, side_line: int) -> QRect | None:
        """Where the heading of a side-line is in the viewport, by its first node, or None where it is not shown."""
        return self._in_view(self._canvas.heading_of(side_line))

    # -- what the session says

    def _reopen(self) -> None:
        self._canvas.reopen()
        self._fit()
        self._glide.stop()
        self._scroll_to(QPointF(0, 0))

    def _take_in(self, changed: Changed) -> None:
        if self._canvas.take_in(changed):
            self._fit()
            self._bring_into_view()
        self.viewport().update()

    def _step(self, node: int) -> None:
        lanes = self._canvas.layout.lanes
        rows = self._canvas.layout.rows
        self._canvas.go(node)
        if (self._canvas.layout.lanes, self._canvas.layout.rows) != (lanes, rows):
            self._fit()
        self._bring_into_view()
        self.viewport().update()
        self._tell()

    def _retime(self) -> None:
        self._canvas.retime()
        self.viewport().update()

    def _relook(self) -> None:
        self._canvas.relook()
        self._fit()

    def _tell(self) -> None:
        announce(self, self._canvas.in_words())

    # -- view

    def _offset(self) -> QPoint:
        return QPoint(self.horizontalScrollBar().value(), self.verticalScrollBar().value() - self._canvas.strip_height)

    def _in_view(self, box: Box | None) -> QRect | None:
        if box is None:
            return None
        offset = self._offset()
        return QRect(round(box.left) - offset.x(), round(box.top) - offset.y(), round(box.width), round(box.height))

    def _fit(self) -> None:
        """Let the scroll bars know how large the picture is in this view."""
        view = self.viewport().size()
        self._canvas.resize(view.width())
        geometry = self._canvas.geometry
        below = self._canvas.strip_height
        vertical, horizontal = self.verticalScrollBar(), self.horizontalScrollBar()
        vertical.setRange(0, max(0, geometry.height + below + 24 - view.height()))
        vertical.setPageStep(max(1, view.height() - below))
        vertical.setSingleStep(geometry.tops[1] // 2)
        horizontal.setRange(0, max(0, geometry.width - view.width()))
        horizontal.setPageStep(max(1, view.width()))
        horizontal.setSingleStep(48)
        self.viewport().update()

    def _bring_into_view(self) -> None:
        box = self._canvas.box_of(self._canvas.current)
        if box is None or self.viewport().height() < 8:
            return
        at = self._glide.endValue() if self._glide.state() == QVariantAnimation.State.Running else None
        x, y = (at.x(), at.y()) if at is not None else (
            float(self.horizontalScrollBar().value()),
            float(self.verticalScrollBar().value()),
        )
        room = self.viewport().height() - self._canvas.strip_height
        slack = min(1.5 * box.height, max(0.0, (room - box.height) / 2))
        y = _into(y, room, box.top - slack, box.bottom + slack)
        x = _into(x, self.viewport().width(), box.left - 32, box.right + 28)
        target = QPointF(
            max(0.0, min(x, self.horizontalScrollBar().maximum())), max(0.0, min(y, self.verticalScrollBar().maximum()))
        )
        now = QPointF(self.horizontalScrollBar().value(), self.verticalScrollBar().value())
        self._glide.stop()
        far = abs(target.y() - now.y()) > 2 * room or abs(target.x() - now.x()) > 2 * self.viewport().width()
        if target == now:
            return
        if far or self._look.reduced_motion or not self.isVisible():
            self._scroll_to(target)
            return
        self._glide.setStartValue(now)
        self._glide.setEndValue(target)
        self._glide.start()

    def _scroll_to(self, at: QPointF) -> None:
        self.horizontalScrollBar().setValue(round(at.x()))
        self.verticalScrollBar().setValue(round(at.y()))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint what is in view."""
        p = QPainter(self.viewport())
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        area = event.rect()
        p.fillRect(area, self._look.color("surface"))
        offset = self._offset()
        p.translate(-offset)
        p.setClipRect(area.translated(offset))
        self._canvas.paint(p, area.left() + offset.x(), max(0, area.top() + offset.y()), area.width(), area.height())
        p.resetTransform()
        p.setClipRect(area)
        left, top = self.horizontalScrollBar().value(), self.verticalScrollBar().value()
        self._canvas.paint_strip(p, left, top, self.viewport().width())
        p.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lanes share the new width."""
        super().resizeEvent(event)
        self._fit()
        self._bring_into_view()

    def scrollContentsBy(self, dx: int, dy: int) -> None:
        """Paint anew; nothing is laid out."""
        self.viewport().update()

    # -- keys and pointer

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with the arrows, Home, End and Page keys; fold with minus, unfold with plus; Return edits."""
        study, at, key = self._session.study, self._canvas.current, event.key()
        if event.modifiers() & ~(Qt.KeyboardModifier.KeypadModifier | Qt.KeyboardModifier.ShiftModifier):
            super().keyPressEvent(event)
            return
        page = max(1, (self.viewport().height() - self._canvas.strip_height) // self._canvas.geometry.tops[1] - 1)
        moves: dict[int, Callable[[], BeatKey]] = {
            Qt.Key.Key_Down: lambda: lanes_steps.down(study, at),
            Qt.Key.Key_Up: lambda: lanes_steps.up(study, at),
            Qt.Key.Key_Right: lambda: lanes_steps.right(study, at),
            Qt.Key.Key_Left: lambda: lanes_steps.left(study, at),
            Qt.Key.Key_PageDown: lambda: lanes_steps.down(study, at, page),
            Qt.Key.Key_PageUp: lambda: lanes_steps.up(study, at, page),
            Qt.Key.Key_Home: lambda: lanes_steps.home(study, at),
            Qt.Key.Key_End: lambda: lanes_steps.end(study, at),
        }
        if key in moves:
            self._choose(moves[key]())
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.edit_requested.emit(at)
        elif key == Qt.Key.Key_Minus and not isinstance(at, Part):
            self._fold_around(at)
        elif key == Qt.Key.Key_Plus and not isinstance(at, Part):
            self._unfold_around(at)
        else:
            super().keyPressEvent(event)

    def _choose(self, key: BeatKey) -> None:
        if isinstance(key, Part):
            self.choose_part(key)
        elif key == self._session.node and key != self._canvas.current:
            self._step(key)
        else:
            self._session.show(key)

    def _fold_around(self, node: int) -> None:
        """Fold the side-line that this node is in; on a main move, the side-lines beside it or leaving it."""
        start = self._session.study.line_start(node)
        if start != self._session.study.root:
            self.fold(start)
            return
        self._canvas.fold(self._beside(node))
        self._fit()

    def _unfold_around(self, node: int) -> None:
        self._canvas.unfold(self._beside(node))
        self._fit()

    def _beside(self, node: int) -> tuple[int, ...]:
        """The side-lines that replace this move, else those that leave here."""
        nodes = self._session.study.nodes
        parent = nodes[node].parent
        if parent is not None and len(nodes[parent].children) > 1:
            return tuple(child for child in nodes[parent].children[1:] if child != node)
        return nodes[node].children[1:]

    def _toggle(self, node: int) -> None:
        """Fold all side-lines that leave at this node, or unfold them."""
        branching = self._canvas.layout.branchings[node]
        if not branching.shown:
            self._canvas.unfold(branching.folded)
            self._fit()
            return
        path = set(self._session.study.path(self._session.node))
        inside = next((side_line for side_line in branching.shown if side_line in path), None)
        self._canvas.fold(branching.shown)
        self._fit()
        if inside is not None:
            self._session.show(stepping.out_of_side_line(self._session.study, inside))

    def _target(self, position: QPointF) -> Target | None:
        if position.y() < self._canvas.strip_height:
            return None
        offset = self._offset()
        return self._canvas.target_at(position.x() + offset.x(), position.y() + offset.y())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose a row, fold or unfold side-lines; the middle button takes hold of the picture."""
        self._glide.stop()
        if event.button() == Qt.MouseButton.MiddleButton:
            at = QPoint(self.horizontalScrollBar().value(), self.verticalScrollBar().value())
            self._pan_from = (event.position(), at)
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            return
        target = self._target(event.position())
        if target is None or event.button() not in (Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton):
            return
        if target.spot is not Spot.KNOB:
            self._choose(target.key)
        elif event.button() == Qt.MouseButton.LeftButton and not isinstance(target.key, Part):
            self._toggle(target.key)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show what the pointer is over; drag the picture with the middle button."""
        if self._pan_from is not None:
            begin, at = self._pan_from
            moved = event.position() - begin
            self._scroll_to(QPointF(at) - moved)
            return
        self._hover(self._target(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go of the picture."""
        if event.button() == Qt.MouseButton.MiddleButton:
            self._pan_from = None
            self.viewport().unsetCursor()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Ask for the row to be edited."""
        target = self._target(event.position())
        if target is not None and target.spot is Spot.ROW and event.button() == Qt.MouseButton.LeftButton:
            self.edit_requested.emit(target.key)

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the pointer any more."""
        super().leaveEvent(event)
        self._hover(None)

    def _hover(self, target: Target | None) -> None:
        if target != self._canvas.hovered:
            self._canvas.hovered = target
            pointing = target is not None and target.spot is Spot.KNOB
            self.viewport().setCursor(Qt.CursorShape.PointingHandCursor if pointing else Qt.CursorShape.ArrowCursor)
            self.viewport().update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Scroll; sideways with Shift."""
        self._glide.stop()
        pixels, angle = event.pixelDelta(), event.angleDelta()
        delta = QPointF(pixels) if not pixels.isNull() else QPointF(angle) * self._canvas.geometry.tops[1] * 1.5 / 120
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier and not delta.x():
            delta = QPointF(delta.y(), 0)
        self._scroll_to(QPointF(self.horizontalScrollBar().value(), self.verticalScrollBar().value()) - delta)
        event.accept()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for a menu on the row under the pointer, or on the current one from the keyboard."""
        if event.reason() == QContextMenuEvent.Reason.Keyboard:
            rect = self.row_rect(self._canvas.current)
            where = self.viewport().mapToGlobal(rect.bottomLeft()) if rect is not None else event.globalPos()
            self.menu_requested.emit(self._session.node, where)
            return
        target = self._target(QPointF(self.viewport().mapFromGlobal(event.globalPos())))
        if target is not None and not isinstance(target.key, Part):
            self.menu_requested.emit(target.key, event.globalPos())

    def viewportEvent(self, event: QEvent) -> bool:
        """Show the whole line of the row under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            text = self._canvas.tool_tip(self._target(QPointF(event.pos())))
            QToolTip.showText(event.globalPos(), text, self.viewport())
            return True
        return super().viewportEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The current row shows that it has the keyboard."""
        super().focusInEvent(event)
        self._canvas.focused = True
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The current row shows that it has the keyboard no more."""
        super().focusOutEvent(event)
        self._canvas.focused = False
        self.viewport().update()


def _into(at: float, room: float, first: float, last: float) -> float:
    """The least scroll from *at* that shows *first* to *last* in this room."""
    if last > at + room:
        at = last - room
    return min(at, first)
