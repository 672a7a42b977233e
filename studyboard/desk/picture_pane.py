"""Pictures to be looked at: a row of small ones, and the chosen one as large as there is room."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QIcon, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QLabel, QListView, QListWidget, QListWidgetItem, QSizePolicy, QVBoxLayout, QWidget

_THUMB = 84
_LEAST = QSize(220, 150)
_LIKED = QSize(440, 470)


class PicturePane(QWidget):
    """State: the pictures, and which one is shown large.

    chosen: the user has chosen another picture; carries its number from 0
    """

    chosen = Signal(int)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._large = _Large()
        self._large.setAccessibleName(name)
        self.thumbs = QListWidget()
        self.thumbs.setViewMode(QListView.ViewMode.IconMode)
        self.thumbs.setMovement(QListView.Movement.Static)
        self.thumbs.setFlow(QListView.Flow.LeftToRight)
        self.thumbs.setWrapping(False)
        self.thumbs.setIconSize(QSize(_THUMB, _THUMB))
        self.thumbs.setAccessibleName(name)
        self.thumbs.setFixedHeight(_THUMB + 2 * self.fontMetrics().height() + 12)
        self.thumbs.setHorizontalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.thumbs.currentRowChanged.connect(self._show)
        self.status = QLabel("")
        self.status.setObjectName("quiet")
        self.status.setWordWrap(True)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._large, 1)
        layout.addWidget(self.thumbs)
        layout.addWidget(self.status)
        self._pictures: list[QPixmap] = []

    def show_pictures(self, pictures: Sequence[bytes], names: Sequence[str], current: int | None = None) -> None:
        """Show these PNGs; *current* is the one shown large, the one of the same number as before when None."""
        before = self.thumbs.currentRow()
        self._pictures = [_pixmap(png) for png in pictures]
        self.thumbs.blockSignals(True)
        self.thumbs.clear()
        for picture, name in zip(self._pictures, names, strict=True):
            icon = QIcon()
            # Chosen or not, it keeps its colours.
            for mode in (QIcon.Mode.Normal, QIcon.Mode.Selected):
                icon.addPixmap(picture, mode)
            self.thumbs.addItem(QListWidgetItem(icon, name))
        row = max(0, min(before if current is None else current, len(pictures) - 1))
        self.thumbs.setCurrentRow(row)
        self.thumbs.blockSignals(False)
        self._large.show_picture(self._pictures[row] if self._pictures else None)
        self.status.setText("")

    def _show(self, row: int) -> None:
        if 0 <= row < len(self._pictures):
            self._large.show_picture(self._pictures[row])
            self.chosen.emit(row)


class _Large(QWidget):
    """One picture, in the middle, as large as it fits."""

    def __init__(self) -> None:
        super().__init__()
        self._picture: QPixmap | None = None
        self.setMinimumSize(_LEAST)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def sizeHint(self) -> QSize:
        """See QWidget."""
        return _LIKED

    def show_picture(self, picture: QPixmap | None) -> None:
        """Show this one, or nothing."""
        self._picture = picture
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """See QWidget."""
        if self._picture is None:
            return
        painter = QPainter(self)
        dense = self.devicePixelRatioF()
        fitted = self._picture.scaled(
            self.size() * dense, Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode.SmoothTransformation
        )
        fitted.setDevicePixelRatio(dense)
        size = fitted.deviceIndependentSize()
        x, y = round((self.width() - size.width()) / 2), round((self.height() - size.height()) / 2)
        painter.drawPixmap(x, y, fitted)
        painter.setPen(self.palette().mid().color())
        painter.drawRect(x, y, round(size.width()) - 1, round(size.height()) - 1)


def _pixmap(png: bytes) -> QPixmap:
    picture = QPixmap()
    picture.loadFromData(png)
    return picture
