"""A frame around a large widget that has the keyboard and would not show it otherwise."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from studyboard.desk.look import Look

#: How thick the frame is (px).
_THICK = 2.0


class FocusFrame(QWidget):
    """Lies over a widget and is seen while that has the keyboard; the pointer goes through it."""

    def __init__(self, around: QWidget, look: Look) -> None:
        super().__init__(around)
        self._around, self._look = around, look
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        around.installEventFilter(self)
        self.setVisible(around.hasFocus())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow the widget's size and whether it has the keyboard."""
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut, QEvent.Type.Resize, QEvent.Type.Show):
            self.setGeometry(self._around.rect())
            self.setVisible(event.type() == QEvent.Type.FocusIn or self._around.hasFocus())
            self.raise_()
        return super().eventFilter(watched, event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the frame."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self._look.color("focus"), _THICK))
        half = _THICK / 2
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(half, half, -half, -half), 5, 5)
        painter.end()
