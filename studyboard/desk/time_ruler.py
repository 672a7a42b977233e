"""The time ruler: the running order of the talk to scale, against its slot."""

from __future__ import annotations

from bisect import bisect_right

from PySide6.QtCore import QEvent, QPointF, QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from studyboard.desk.announcing import announce
from studyboard.desk.board_accessible import show_as_list
from studyboard.desk.look import Look
from studyboard.desk.painted_parts import BeatParts
from studyboard.desk.ruler_edges import REACH, SHORTEST, HeldEdge, edge_at
from studyboard.desk.ruler_paint import RulerPainter
from studyboard.desk.ruler_rows import ruler_rows
from studyboard.desk.ruler_scale import RulerScale, fitting
from studyboard.desk.ruler_takes import TakesPainter
from studyboard.desk.ruler_talk import Talk, beat_label, slot_text
from studyboard.desk.ruler_words import told_words, tool_tip
from studyboard.desk.session import Session
from studyboard.model.script import Part
from studyboard.timing.clock import over_or_under
from studyboard.timing.fit import intend
from studyboard.timing.timeline import Stretch
from studyboard.translation import tr

#: Space at both ends (px).
_MARGIN = 20
#: How much longer one press of a key makes a beat (s).
STRETCH = 0.5
#: How much one notch of the wheel, or one key, zooms.
_ZOOM = 1.25


class TimeRuler(QWidget):
    """The planned talk of a session, second by second.

    State: the talk as it was last planned, which part of it is in view, the beat that is current, and where
    playback is.

    beat_chosen: a beat was chosen here; carries its index in the timeline
    """

    beat_chosen = Signal(int)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._painter = RulerPainter(look)
        self._takes = TakesPainter(look)
        self._talk: Talk | None = None
        self._rows = ruler_rows(self._painter.text_height, 1, 0)
        self._scale = fitting(1.0, 100.0, _MARGIN)
        self._fits = True
        self._current: int | None = None
        self._hovered: int | None = None
        self._still: QPixmap | None = None
        self._playhead: float | None = None
        self._press: tuple[float, float] | None = None
        self._panning = False
        self._edge: HeldEdge | None = None
        #: False while the talk is run through: the ends of beats are not to be dragged then.
        self.can_stretch = True

        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Time ruler"))
        show_as_list(self, BeatParts(self))
        session.opened.connect(self._reopen)
        session.planned.connect(self._replan)
        session.stepped.connect(self._step)
        look.changed.connect(self._relook)
        QTimer.singleShot(0, self, lambda: self._replan() if session.is_planned else session.plan_now())

    # -- for the windows around

    @property
    def current_beat(self) -> int | None:
        """Index of the beat that is told where the session stands, or None where none is."""
        return self._current

    @property
    def beats(self) -> int:
        """How many beats are drawn."""
        return 0 if self._talk is None else len(self._talk.stretches)

    def beat_in_words(self, index: int) -> str:
        """One of them for someone who does not see it; where its move was just deleted, that it is not told."""
        talk = self._talk
        there = talk is not None and self._is_there(talk.stretches[index])
        return told_words(self._session, talk, index if there else None, "")

    @property
    def slot_label(self) -> str:
        """The words at the slot's end, “slot 4:10 · 12 s over”; empty without a slot."""
        talk = self._talk
        if talk is None or talk.slot is None:
            return ""
        return f"{slot_text(talk.slot)} · {over_or_under(talk.seconds - talk.slot)}"

    @property
    def scale(self) -> RulerScale:
        """Which seconds are in view."""
        return self._scale

    def block_rect(self, index: int) -> QRect | None:
        """Where the block of a beat is in the widget, or None where there is no such beat."""
        if self._talk is None or not 0 <= index < len(self._talk.stretches):
            return None
        stretch = self._talk.stretches[index]
        top, height = self._rows.blocks[self._talk.rows[index]]
        left, right = self._scale.x(stretch.start), self._scale.x(stretch.end)
        return QRect(round(left), top, max(1, round(right - left)), height)

    def choose_beat(self, index: int) -> None:
        """Make a beat the current one: its node comes on the board."""
        if self._talk is None or not 0 <= index < len(self._talk.stretches):
            return
        self._current = index
        self._session.show(self._talk.stretches[index].node)
        self._show_current()
        self.beat_chosen.emit(index)

    def show_part(self, part: Part) -> None:
        """Make the beat of a line that belongs to no move the current one, where it is told."""
        index = self._talk.beat_with(part) if self._talk is not None else None
        if index is not None and index != self._current:
            self._current = index
            self._show_current()

    def set_playhead(self, seconds: float | None) -> None:
        """Show where playback is (s from the start of the talk), or nothing for None."""
        if seconds == self._playhead:
            return
        for at in (self._playhead, seconds):
            if at is not None:
                x = round(self._scale.x(at))
                self.update(QRect(x - 7, 0, 14, self.height()))
        self._playhead = seconds

    def fit(self) -> None:
        """Show the whole talk."""
        self._fits = True
        self._rescale()

    def zoom(self, factor: float, x: float | None = None) -> None:
        """Make seconds that many times wider around *x* (px), or around the current beat."""
        if x is None:
            rect = self.block_rect(self._current) if self._current is not None else None
            x = float(rect.center().x()) if rect is not None else self.width() / 2
        self._fits = False
        self._scale = self._scale.zoomed(factor, x)
        self._rescale()

    # -- what the session says

    def _reopen(self) -> None:
        self._fits = True
        self._talk = None
        self._current = self._playhead = self._hovered = None
        self._repaint_all()

    def _replan(self) -> None:
        self._talk = Talk(self._session.study, self._session.timeline)
        self._hovered = None
        self._current = self._talk.beat_of(self._session.node, self._current)
        self._lay_out_rows()
        self._rescale()
        self._tell()

    def _step(self, node: int) -> None:
        if self._talk is not None:
            self._current = self._talk.beat_of(node, self._current)
            self._show_current()

    def _show_current(self) -> None:
        rect = self.block_rect(self._current) if self._current is not None else None
        if rect is not None and not self._fits:
            left, right = _MARGIN, self.width() - _MARGIN
            if rect.left() < left or rect.right() > right:
                to = left + 32 if rect.left() < left or rect.width() > right - left else right - 32 - rect.width()
                self._pan(rect.left() - to)
        self._tell()
        self.update()

    def _relook(self) -> None:
        self._painter.refresh()
        self._takes.refresh()
        self._lay_out_rows()
        self._repaint_all()

    def _lay_out_rows(self) -> None:
        talk = self._talk
        depth, takes = (talk.depth, len(talk.takes)) if talk is not None else (1, 0)
        rows = ruler_rows(self._painter.text_height, depth, takes)
        if rows != self._rows:
            self._rows = rows
            self.updateGeometry()

    def _rescale(self) -> None:
        width = max(1.0, self.width() - 2.0 * _MARGIN)
        reach = self._talk.reach if self._talk is not None else 1.0
        if self._fits:
            self._scale = fitting(reach, width, _MARGIN)
        else:
            self._scale = RulerScale(self._scale.start, self._scale.per_second, width, _MARGIN).within(reach)
        self._repaint_all()

    def _pan(self, pixels: float) -> None:
        scale = self._scale
        start = scale.start + pixels / scale.per_second
        self._scale = RulerScale(start, scale.per_second, scale.width, scale.left)
        self._rescale()

    def _tell(self) -> None:
        talk, index = self._talk, self._current
        there = talk is not None and index is not None and self._is_there(talk.stretches[index])
        announce(self, told_words(self._session, talk, index if there else None, self.slot_label))

    def _is_there(self, stretch: Stretch) -> bool:
        """False where its node was deleted and the talk has not been timed anew."""
        return isinstance(stretch.key, Part) or stretch.key in self._session.study.nodes

    def _label(self, stretch: Stretch) -> str:
        return beat_label(self._session.positions, stretch.key)

    # -- painting

    def sizeHint(self) -> QSize:
        """As high as its rows."""
        return QSize(800, self._rows.height + 6)

    def minimumSizeHint(self) -> QSize:
        """As high as its rows."""
        return QSize(240, self._rows.height + 6)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The talk fills the new width."""
        super().resizeEvent(event)
        self._rescale()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint what is in view."""
        p = QPainter(self)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        area = event.rect()
        p.fillRect(area, self._painter.surface())
        p.setClipRect(area)
        talk, rows, scale, paint = self._talk, self._rows, self._scale, self._painter
        if talk is None:
            pass
        elif not talk.stretches:
            paint.nothing(p, self.width(), self.height(), tr("Nothing is told yet: play a move or write a line."))
        else:
            p.drawPixmap(0, 0, self._still_picture(talk))
            if self._hovered is not None and self._hovered != self._current:
                paint.hovered(p, rows, scale, talk, self._hovered)
            if self._current is not None:
                paint.current(p, rows, scale, talk, self._current, self._label)
                self._takes.current(p, rows, scale, talk, talk.stretches[self._current].key)
            if self._edge is not None:
                start = talk.stretches[self._edge.index].start
                paint.edge(p, rows, scale.x(start + self._edge.seconds), self._edge.words)
            if self._playhead is not None:
                paint.playhead(p, rows, scale.x(self._playhead))
        if self.hasFocus():
            paint.focus(p, self.width(), self.height())
        p.end()

    def _still_picture(self, talk: Talk) -> QPixmap:
        """All that stays as it is while one steps through the talk, painted once."""
        if self._still is None:
            ratio = self.devicePixelRatioF()
            self._still = QPixmap(self.size() * ratio)
            self._still.setDevicePixelRatio(ratio)
            self._still.fill(self._painter.surface())
            p = QPainter(self._still)
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            rows, scale, paint = self._rows, self._scale, self._painter
            slot = paint.slot_box(scale, talk)[1:] if talk.slot is not None else (-1.0, -1.0)
            paint.slot(p, rows, scale, talk)
            paint.ticks(p, rows, scale, lambda left, right: right < slot[0] or left > slot[1])
            self._takes.takes(p, rows, scale, talk)
            paint.beats(p, rows, scale, talk, self._label)
            p.end()
        return self._still

    def _repaint_all(self) -> None:
        self._still = None
        self.update()

    # -- keys and pointer

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The beat before or after with the arrows, first and last with Home and End; plus, minus and 0 zoom.

        With Shift the arrows make the beat longer or shorter; Escape lets go of an end that is dragged.
        """
        last = len(self._talk.stretches) - 1 if self._talk is not None else -1
        key = event.key()
        here = self._current
        if event.modifiers() == Qt.KeyboardModifier.ShiftModifier and key in (Qt.Key.Key_Right, Qt.Key.Key_Left):
            self._stretch(STRETCH if key == Qt.Key.Key_Right else -STRETCH)
        elif key == Qt.Key.Key_Escape and self._edge is not None:
            self._edge = self._press = None
            self.update()
        elif key == Qt.Key.Key_Right:
            self.choose_beat(0 if here is None else min(here + 1, last))
        elif key == Qt.Key.Key_Left:
            self.choose_beat(0 if here is None else max(here - 1, 0))
        elif key == Qt.Key.Key_Home:
            self.choose_beat(0)
        elif key == Qt.Key.Key_End:
            self.choose_beat(last)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom(_ZOOM)
        elif key == Qt.Key.Key_Minus:
            self.zoom(1 / _ZOOM)
        elif key == Qt.Key.Key_0:
            self.fit()
        else:
            super().keyPressEvent(event)

    def beat_at(self, position: QPointF) -> int | None:
        """Index of the beat whose block lies here, or None."""
        talk = self._talk
        if talk is None or not talk.stretches:
            return None
        seconds = self._scale.seconds(position.x())
        if not 0 <= seconds <= talk.seconds:
            return None
        index = max(0, bisect_right(talk.starts, seconds) - 1)
        top, height = self._rows.blocks[talk.rows[index]]
        return index if top - 4 <= position.y() < top + height + 4 else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the end of a beat; elsewhere a click chooses a beat when it is let go, and a drag pans."""
        edge = self._edge_under(event.position()) if event.button() == Qt.MouseButton.LeftButton else None
        if edge is not None and self._talk is not None:
            seconds = self._talk.stretches[edge].seconds
            self._edge = HeldEdge(edge, seconds, seconds)
        elif event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            self._press = (event.position().x(), event.position().x())
            self._panning = False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Pan while a button is held, else show what is under the pointer."""
        x = event.position().x()
        if self._edge is not None and self._talk is not None:
            self._edge = self._edge.at(self._talk.stretches, self._scale, x)
            self.update()
            return
        if self._press is None:
            self._hover(self.beat_at(event.position()))
            at_edge = self._edge_under(event.position()) is not None
            self.setCursor(Qt.CursorShape.SplitHCursor if at_edge else Qt.CursorShape.ArrowCursor)
            return
        begin, before = self._press
        if not self._panning and abs(x - begin) < 5:
            return
        self._panning = True
        self._press = (begin, x)
        self.setCursor(Qt.CursorShape.ClosedHandCursor)
        self._pan(before - x)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Set the length whose end was dragged, else choose the beat under the pointer, unless the ruler moved."""
        if self._edge is not None and self._talk is not None:
            edge, self._edge = self._edge, None
            self.update()
            if edge.seconds != edge.before:
                self._set_length(edge.index, edge.seconds)
            return
        panned, self._press, self._panning = self._panning, None, False
        self.unsetCursor()
        if event.button() != Qt.MouseButton.LeftButton or panned:
            return
        index = self.beat_at(event.position())
        if index is not None:
            self.choose_beat(index)

    def _edge_under(self, position: QPointF) -> int | None:
        if self._talk is None or not self.can_stretch:
            return None
        beside = QPointF(REACH, 0)
        under = next(filter(lambda beat: beat is not None, map(self.beat_at, (position, position - beside))), None)
        return edge_at(self._talk.stretches, self._scale, under, position.x())

    def _stretch(self, seconds: float) -> None:
        """Make the current beat that much longer or shorter (s)."""
        # The drawn talk may be a moment old; what was pressed before counts.
        talk = self._session.timeline.stretches
        if self._current is not None and self._current < len(talk) and self.can_stretch:
            length = max(SHORTEST, round(talk[self._current].seconds + seconds, 1))
            self._set_length(self._current, length)

    def _set_length(self, index: int, seconds: float) -> None:
        talk = self._session.timeline.stretches
        if index < len(talk) and self._is_there(talk[index]):
            self._current = index
            self._session.do(intend(self._session.study, talk[index].key, round(seconds, 1)))

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the pointer any more."""
        super().leaveEvent(event)
        self._hover(None)

    def _hover(self, index: int | None) -> None:
        if index != self._hovered:
            self._hovered = index
            self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom with Ctrl, else pan."""
        delta = event.angleDelta()
        turned = delta.y() or delta.x()
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(_ZOOM ** (turned / 120), event.position().x())
        elif not self._fits:
            self._pan(-turned * 0.6)
        else:
            event.ignore()
            return
        event.accept()

    def event(self, event: QEvent) -> bool:
        """Show move, line and seconds of the beat under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            index = self.beat_at(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), self._tool_tip(index), self)
            return True
        return super().event(event)

    def _tool_tip(self, index: int | None) -> str:
        return "" if self._talk is None or index is None else tool_tip(self._session, self._talk, index)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The ruler shows that it has the keyboard."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The ruler shows that it has the keyboard no more."""
        super().focusOutEvent(event)
        self.update()
