"""A label that stands in one row where there is room, and wraps where there is none."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QLabel, QWidget


class OneRowLabel(QLabel):
    """Plain words that wrap only for want of width; Qt's own wrapping label likes to be about as high as it is wide."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWordWrap(True)

    def sizeHint(self) -> QSize:
        """All words side by side."""
        metrics = self.fontMetrics()
        return QSize(metrics.size(0, self.text()).width() + 2 * self.margin() + 2, metrics.height())
