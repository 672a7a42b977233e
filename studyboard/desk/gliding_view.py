"""A view on a large picture that glides to what is wanted."""

from __future__ import annotations

from PySide6.QtCore import QEasingCurve, QPoint, QPointF, QSize, Qt, QVariantAnimation
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QAbstractScrollArea, QFrame, QWidget

from studyboard.desk.lanes_geometry import Box
from studyboard.desk.look import Look

#: How long a glide takes (ms).
_GLIDE = 140


class GlidingView(QAbstractScrollArea):
    """Scrolls by the pixel: by itself, by the wheel, and by dragging with the middle button.

    State: where it is, where it glides to, and from where the picture is being dragged.
    """

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._line = 40
        self._glide = QVariantAnimation(self)
        self._glide.setDuration(_GLIDE)
        self._glide.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._glide.valueChanged.connect(self.scroll_to)
        self._pan_from: tuple[QPointF, QPointF] | None = None
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.verticalScrollBar().sliderPressed.connect(self._glide.stop)
        self.horizontalScrollBar().sliderPressed.connect(self._glide.stop)

    @property
    def place(self) -> QPointF:
        """The point of the picture at the top left corner of the view (px)."""
        return QPointF(self.horizontalScrollBar().value(), self.verticalScrollBar().value())

    def scroll_to(self, place: QPointF) -> None:
        """Be at this point of the picture at once."""
        self.horizontalScrollBar().setValue(round(place.x()))
        self.verticalScrollBar().setValue(round(place.y()))

    def take_size(self, picture: QSize, line: int) -> None:
        """The picture is that large; *line* px are one step of the wheel's third."""
        view = self.viewport().size()
        self._line = line
        for bar, whole, seen in (
            (self.verticalScrollBar(), picture.height(), view.height()),
            (self.horizontalScrollBar(), picture.width(), view.width()),
        ):
            bar.setRange(0, max(0, whole - seen))
            bar.setPageStep(max(1, seen))
            bar.setSingleStep(line)
        self.viewport().update()

    def bring_into_view(self, box: Box, beside: float, around: float) -> None:
        """Glide by no more than it takes to see *box*.

        beside: space that is kept free to its left and right (px); around: above and below
        A way of more than two views is jumped, and so is any where motion is reduced. A glide that is going on
        turns towards the new place.
        """
        view = self.viewport().size()
        gliding = self._glide.state() == QVariantAnimation.State.Running
        at = QPointF(self._glide.endValue()) if gliding else self.place
        slack = max(0.0, min(around, (view.height() - box.height) / 2))
        x = _into(at.x(), view.width(), box.left - beside, box.right + beside)
        y = _into(at.y(), view.height(), box.top - slack, box.bottom + slack)
        target = QPointF(_held(x, self.horizontalScrollBar().maximum()), _held(y, self.verticalScrollBar().maximum()))
        way = target - self.place
        self._glide.stop()
        if way.isNull():
            return
        far = abs(way.y()) > 2 * view.height() or abs(way.x()) > 2 * view.width()
        if far or self._look.reduced_motion or not self.isVisible():
            self.scroll_to(target)
            return
        self._glide.setStartValue(self.place)
        self._glide.setEndValue(target)
        self._glide.start()

    def stop_gliding(self) -> None:
        """Stay here."""
        self._glide.stop()

    @property
    def panning(self) -> bool:
        """True while the picture is being dragged."""
        return self._pan_from is not None

    def scrollContentsBy(self, dx: int, dy: int) -> None:
        """Paint anew; nothing is laid out."""
        self.viewport().update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Scroll; sideways with Shift."""
        self._glide.stop()
        pixels, angle = event.pixelDelta(), event.angleDelta()
        delta = QPointF(pixels) if not pixels.isNull() else QPointF(angle) * (3 * self._line / 120)
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier and not delta.x():
            delta = QPointF(delta.y(), 0)
        self.scroll_to(self.place - delta)
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The middle button takes hold of the picture."""
        self._glide.stop()
        if event.button() == Qt.MouseButton.MiddleButton:
            self._pan_from = (event.position(), self.place)
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag the picture."""
        if self._pan_from is not None:
            begin, place = self._pan_from
            self.scroll_to(place - (event.position() - begin))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go of the picture."""
        if event.button() == Qt.MouseButton.MiddleButton and self._pan_from is not None:
            self._pan_from = None
            self.viewport().setCursor(Qt.CursorShape.ArrowCursor)

    def to_picture(self, position: QPoint | QPointF) -> QPointF:
        """The point of the picture at this point of the view."""
        return QPointF(position) + self.place


def _into(at: float, room: float, first: float, last: float) -> float:
    """The least scroll from *at* that shows *first* to *last* in this room; *first* where both do not fit."""
    if last > at + room:
        at = last - room
    return min(at, first)


def _held(at: float, most: float) -> float:
    return max(0.0, min(at, most))
