"""A label of one line that ends in an ellipsis where its room is short."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPaintEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QStyleOption, QStylePainter, QWidget

#: The least that it takes: some letters and the ellipsis (heights of a line of text).
_LEAST = 3


class ElidedLabel(QLabel):
    """Shows as much of its text as fits; the tool tip has all of it then, and so does a screen reader.

    shorter: what is shown instead where not all of the text fits; "" for the beginning of the text
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shorter = ""
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    @property
    def shown_text(self) -> str:
        """What of the text can be seen."""
        metrics, width = QFontMetricsF(self.font()), self.contentsRect().width() + 0.5
        text = self.text()
        if self.shorter and metrics.horizontalAdvance(text) > width:
            text = self.shorter
        return metrics.elidedText(text, Qt.TextElideMode.ElideRight, width)

    def sizeHint(self) -> QSize:
        """Room for all of the text."""
        metrics = QFontMetricsF(self.font())
        return QSize(-int(-metrics.horizontalAdvance(self.text()) // 1), -int(-metrics.height() // 1))

    def minimumSizeHint(self) -> QSize:
        """Room for its beginning."""
        hint = self.sizeHint()
        return QSize(min(hint.width(), _LEAST * hint.height()), hint.height())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint what fits."""
        painter = QStylePainter(self)
        option = QStyleOption()
        option.initFrom(self)
        painter.drawItemText(
            self.contentsRect(),
            int(self.alignment()),
            option.palette,
            self.isEnabled(),
            self.shown_text,
            self.foregroundRole(),
        )

    def event(self, event: QEvent) -> bool:
        """The tool tip is wanted only where something is not seen."""
        if event.type() == QEvent.Type.ToolTip and not self.toolTip():
            if self.shown_text == self.text():
                event.ignore()
                return True
            self.setToolTip(self.text())
            handled = super().event(event)
            self.setToolTip("")
            return handled
        return super().event(event)
