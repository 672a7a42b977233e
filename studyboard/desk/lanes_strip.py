"""The strip above the lanes, with the names of the lines that fill them."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from studyboard.desk.gliding_view import GlidingView
from studyboard.desk.lanes_canvas import LaneCanvas


class LaneStrip(QWidget):
    """The names of the lines that fill the lanes, above them."""

    def __init__(self, lanes: GlidingView, canvas: LaneCanvas) -> None:
        super().__init__(lanes)
        self._lanes = lanes
        self._canvas = canvas
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the names."""
        p = QPainter(self)
        place = self._lanes.place.toPoint()
        self._canvas.paint_strip(p, place.x(), place.y(), self.width())
        p.end()
