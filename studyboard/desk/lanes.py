"""The lanes: the main line and every side-line beside the move that it replaces, row by row."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QToolTip, QWidget

from studyboard.desk import lanes_steps
from studyboard.desk.announcing import announce
from studyboard.desk.board_accessible import show_as_list
from studyboard.desk.gliding_view import GlidingView
from studyboard.desk.lanes_canvas import LaneCanvas, Spot, Target
from studyboard.desk.lanes_choosing import Choosing
from studyboard.desk.lanes_geometry import Box
from studyboard.desk.lanes_hand import LaneHand
from studyboard.desk.lanes_strip import LaneStrip
from studyboard.desk.look import Look
from studyboard.desk.painted_parts import RowParts
from studyboard.desk.session import Session
from studyboard.model import stepping
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Changed
from studyboard.translation import tr

#: What is kept in view beside the current row (px).
_BESIDE = 28


class Lanes(GlidingView):
    """The tree of the study that a session shows, with what is said at each move and how long it takes.

    State: the row that is current, what is folded, and the branch that is being dragged to another place.

    choosing: the rows that are chosen together with it

    part_chosen: a line that belongs to no move has become current; carries its Part
    node_chosen: after such a line, the row of the node that the session shows already; carries its id
    edit_requested: a row was double-clicked or Return pressed; carries the id of the node or the Part
    menu_requested: a menu is wanted; carries the id of the node or the Part, and where on the screen
    """

    part_chosen = Signal(object)
    node_chosen = Signal(int)
    edit_requested = Signal(object)
    menu_requested = Signal(object, QPoint)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, parent)
        self._session = session
        self._canvas = LaneCanvas(session, look, 640)
        self._hand = LaneHand(self, self._canvas, session)
        self.choosing = Choosing(self, session)

        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(tr("Lanes"))
        show_as_list(self, RowParts(self._canvas, self._part_rect, self._from_whole))
        self.setViewportMargins(0, self._canvas.strip_height, 0, 0)
        self._strip = LaneStrip(self, self._canvas)
        self.viewport().setMouseTracking(True)
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)

        session.opened.connect(self._reopen)
        session.changed.connect(self._take_in)
        session.stepped.connect(self._step)
        session.chose.connect(self._show_chosen)
        session.planned.connect(self._retime)
        look.changed.connect(self._relook)
        # The talk is timed once the desk is on the screen.
        QTimer.singleShot(0, self, lambda: self._retime() if session.is_planned else session.plan_now())
        self._fit()

    # -- for the windows around

    @property
    def current(self) -> BeatKey:
        """The node or part of the talk whose row is current."""
        return self._canvas.current

    def go_to(self, key: BeatKey) -> None:
        """Make this row the current one, and the only one that is chosen."""
        self._session.choose(())
        if isinstance(key, Part):
            self.choose_part(key)
        elif key == self._session.node and key != self._canvas.current:
            self._step(key)
            self.node_chosen.emit(key)
        else:
            self._session.show(key)
        self.choosing.begin_at(key)

    def mark_found(self, rows: Iterable[BeatKey]) -> None:
        """Mark the rows in which what is sought was found, and no others."""
        self._canvas.found = frozenset(rows)
        self.viewport().update()

    def choose_part(self, part: Part) -> None:
        """Make the row of a line that belongs to no move the current one, with the board that it is said over."""
        self._session.choose(())
        self._session.show(lanes_steps.board_of(self._session.study, part))
        self._canvas.go(part)
        self.choosing.begin_at(part)
        self._show_current()
        self.part_chosen.emit(part)

    def fold(self, *side_lines: int) -> None:
        """Fold side-lines away, by their first nodes; from inside one, the session goes to the move it replaces."""
        study = self._session.study
        path = set() if isinstance(self.current, Part) else set(study.path(self.current))
        inside = next((side_line for side_line in side_lines if side_line in path), None)
        with self._keeping_current():
            self._canvas.fold(node for node in side_lines if study.begins_side_line(node))
        if inside is not None:
            self._session.show(stepping.out_of_side_line(study, inside))

    def unfold(self, *side_lines: int) -> None:
        """Show side-lines that were folded away, by their first nodes."""
        with self._keeping_current():
            self._canvas.unfold(side_lines)

    def fold_all(self) -> None:
        """Fold every side-line away but those on the way to the current row."""
        study = self._session.study
        way = set() if isinstance(self.current, Part) else set(study.path(self.current))
        self.fold(*(child for node in study.nodes.values() for child in node.children[1:] if child not in way))
        self._bring_current()

    def unfold_all(self) -> None:
        """Show every side-line."""
        self.unfold(*self.folded)
        self._bring_current()

    @property
    def folded(self) -> frozenset[int]:
        """First nodes of the side-lines that are folded away."""
        return self._canvas.layout.folded

    def row_rect(self, key: BeatKey) -> QRect | None:
        """Where the row of a node or part is in the viewport now, or None where it is folded away."""
        return self._in_view(self._canvas.box_of(key))

    def _part_rect(self, key: BeatKey) -> QRect:
        """Where a row is in the whole widget, with what stands above the viewport; empty where it is out of view."""
        rect, seen = self.row_rect(key), self.viewport().rect()
        return QRect() if rect is None else (rect & seen).translated(self.viewport().pos())

    def _from_whole(self, place: QPointF) -> QPointF:
        return self.to_picture(place - QPointF(self.viewport().pos()))

    def fold_rect(self, node: int) -> QRect | None:
        """Where the side-lines that leave at this node are folded, in the viewport, or None where none leaves."""
        return self._in_view(self._canvas.knob_of(node))

    def heading_rect(self, side_line: int) -> QRect | None:
        """Where the heading of a side-line is in the viewport, by its first node, or None where it is not shown."""
        return self._in_view(self._canvas.heading_of(side_line))

    def tool_tip_at(self, position: QPoint) -> str:
        """What is said of the thing at this point of the viewport, as rich text; empty where there is none."""
        return self._canvas.tool_tip(self._target(QPointF(position)))

    # -- what the session says

    def _reopen(self) -> None:
        self._hand.cancel()
        self.choosing.begin_at(self._session.node)
        self._canvas.reopen()
        self._fit()
        self.stop_gliding()
        self.scroll_to(QPointF(0, 0))

    def _take_in(self, changed: Changed) -> None:
        self.choosing.forget_gone()
        if self._canvas.take_in(changed):
            self._fit()
            self._bring_current()
        self.viewport().update()
        self._strip.update()

    def _step(self, node: int) -> None:
        self.choosing.begin_at(node)
        if self._canvas.go(node):
            self._fit()
        self._show_current()

    def _show_chosen(self) -> None:
        self.viewport().update()
        self._strip.update()
        announce(self, self._canvas.in_words())

    def _retime(self) -> None:
        self._canvas.retime()
        self.viewport().update()

    def _relook(self) -> None:
        self._canvas.relook()
        self.setViewportMargins(0, self._canvas.strip_height, 0, 0)
        self._fit()

    def _show_current(self) -> None:
        self._bring_current()
        self.viewport().update()
        announce(self, self._canvas.in_words())

    # -- view

    def _in_view(self, box: Box | None) -> QRect | None:
        if box is None:
            return None
        at = QPointF(box.left, box.top) - self.place
        return QRect(round(at.x()), round(at.y()), round(box.width), round(box.height))

    def _fit(self) -> None:
        """Let the scroll bars know how large the picture is in this view."""
        self._canvas.resize(self.viewport().width())
        geometry = self._canvas.geometry
        self.take_size(QSize(geometry.width, geometry.height + 24), geometry.tops[1] // 2)
        self._strip.setGeometry(0, 0, self.width(), self._canvas.strip_height)
        self._strip.update()

    def _bring_current(self) -> None:
        box = self._canvas.box_of(self._canvas.current)
        if box is not None:
            self.bring_into_view(self._with_main_line(box), beside=_BESIDE, around=1.5 * box.height)

    def _with_main_line(self, box: Box) -> Box:
        """What to bring into view: the cell with all that is left of it where both fit, else the cell alone."""
        if box.right + _BESIDE > self.viewport().width():
            return box
        return Box(_BESIDE, box.top, box.right - _BESIDE, box.height)

    @contextmanager
    def _keeping_current(self) -> Iterator[None]:
        """While rows move: the current one stays in view where it was."""
        rect = self.row_rect(self._canvas.current)
        seen = rect is not None and self.viewport().rect().intersects(rect)
        yield
        self._fit()
        if seen:
            self._bring_current()

    def scrollContentsBy(self, dx: int, dy: int) -> None:
        """Paint anew; nothing is laid out."""
        super().scrollContentsBy(dx, dy)
        self._strip.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint what is in view."""
        p = QPainter(self.viewport())
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        area = event.rect()
        p.fillRect(area, self._look.color("surface"))
        p.translate(-self.place)
        seen = area.translated(self.place.toPoint())
        p.setClipRect(seen)
        self._canvas.paint(p, seen.left(), seen.top(), seen.width(), seen.height())
        p.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lanes share the new width."""
        super().resizeEvent(event)
        self._fit()
        self._bring_current()

    # -- keys and pointer

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with the arrows, Home, End and Page keys, with Shift choose; fold with minus, unfold with plus."""
        study, at, key = self._session.study, self._canvas.current, event.key()
        if event.modifiers() & ~(Qt.KeyboardModifier.KeypadModifier | Qt.KeyboardModifier.ShiftModifier):
            super().keyPressEvent(event)
            return
        page = max(1, self.viewport().height() // self._canvas.geometry.tops[1] - 1)
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
            chooses = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            (self.choosing.up_to if chooses else self.go_to)(moves[key]())
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.edit_requested.emit(at)
        elif key == Qt.Key.Key_Minus and not isinstance(at, Part):
            self._fold_around(at)
        elif key == Qt.Key.Key_Plus and not isinstance(at, Part):
            self.unfold(*self._beside(at))
        elif key == Qt.Key.Key_Escape and self._hand.taken:
            self._hand.cancel()
        elif key == Qt.Key.Key_Escape and self._session.chosen:
            self._session.choose(())
        else:
            super().keyPressEvent(event)

    def _fold_around(self, node: int) -> None:
        """Fold the side-line that this node is in; on the main line, the side-lines beside it or leaving it."""
        start = self._session.study.line_start(node)
        self.fold(*(self._beside(node) if start == self._session.study.root else (start,)))

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
        if branching.shown:
            self.fold(*branching.shown)
        else:
            self.unfold(*branching.folded)

    def _target(self, position: QPointF) -> Target | None:
        at = self.to_picture(position)
        return self._canvas.target_at(at.x(), at.y())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose a row or several, fold or unfold side-lines, take hold of a branch."""
        super().mousePressEvent(event)
        target = self._target(event.position())
        if target is None or event.button() not in (Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton):
            return
        if target.spot is Spot.KNOB:
            if event.button() == Qt.MouseButton.LeftButton and not isinstance(target.key, Part):
                self._toggle(target.key)
            return
        if event.button() == Qt.MouseButton.RightButton:
            if target.key not in self._session.chosen:
                self.go_to(target.key)
        elif event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self.choosing.up_to(target.key)
        elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.choosing.also(target.key)
        else:
            self.go_to(target.key)
            if not isinstance(target.key, Part):
                self._hand.take(target.key, event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show what the pointer is over; drag the picture, or a branch to another place."""
        super().mouseMoveEvent(event)
        if self.panning:
            return
        if self._hand.taken:
            self._hand.carry(event.position())
        else:
            self._hover(self._target(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go of what was dragged."""
        super().mouseReleaseEvent(event)
        if event.button() == Qt.MouseButton.LeftButton and self._hand.taken:
            self._hand.let_go()

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

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for a menu on the row under the pointer, or on the current one from the keyboard."""
        if event.reason() == QContextMenuEvent.Reason.Keyboard:
            rect = self.row_rect(self._canvas.current)
            where = self.viewport().mapToGlobal(rect.bottomLeft()) if rect is not None else event.globalPos()
            self.menu_requested.emit(self._canvas.current, where)
            return
        target = self._target(QPointF(self.viewport().mapFromGlobal(event.globalPos())))
        if target is not None:
            self.menu_requested.emit(target.key, event.globalPos())

    def viewportEvent(self, event: QEvent) -> bool:
        """Show the whole line of the row under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            QToolTip.showText(event.globalPos(), self.tool_tip_at(event.pos()), self.viewport())
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
