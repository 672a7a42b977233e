"""A layout that puts widgets beside each other and begins a new row where the width is short."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


@dataclass(slots=True)
class _Row:
    """Items that stand beside each other, their widths and the height of the row (px)."""

    items: list[int]
    widths: list[int]
    height: int = 0


class RowsLayout(QLayout):
    """Rows of widgets, each as wide as it likes to be; the ones with a stretch share what is left of their row.

    State: the items, and which of them stretch. It never asks for more width than its widest item needs at least.
    """

    def __init__(self, parent: QWidget | None = None, *, spacing: int = 8) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._stretches: list[bool] = []
        self.setSpacing(spacing)
        self.setContentsMargins(0, 0, 0, 0)

    def add(self, widget: QWidget, *, stretch: bool = False) -> None:
        """Put one more widget at the end."""
        self._stretches.append(stretch)
        self.addWidget(widget)

    def addItem(self, item: QLayoutItem) -> None:
        """See QLayout."""
        self._items.append(item)
        if len(self._stretches) < len(self._items):
            self._stretches.append(False)

    def count(self) -> int:
        """See QLayout."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """See QLayout."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """See QLayout."""
        if not 0 <= index < len(self._items):
            return None
        del self._stretches[index]
        return self._items.pop(index)

    def expandingDirections(self) -> Qt.Orientation:
        """See QLayout: none."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """See QLayout: fewer px of width take more rows."""
        return True

    def heightForWidth(self, width: int) -> int:
        """See QLayout."""
        rows = self._rows(width)
        return sum(row.height for row in rows) + self.spacing() * max(0, len(rows) - 1)

    def minimumHeightForWidth(self, width: int) -> int:
        """See QLayout."""
        return self.heightForWidth(width)

    def sizeHint(self) -> QSize:
        """All in one row."""
        shown = [item for item in self._items if not item.isEmpty()]
        width = sum(item.sizeHint().width() for item in shown) + self.spacing() * max(0, len(shown) - 1)
        return QSize(width, max((item.sizeHint().height() for item in shown), default=0))

    def minimumSize(self) -> QSize:
        """The widest item alone."""
        shown = [item for item in self._items if not item.isEmpty()]
        width = max((item.minimumSize().width() for item in shown), default=0)
        return QSize(width, max((item.minimumSize().height() for item in shown), default=0))

    def setGeometry(self, rect: QRect) -> None:
        """See QLayout."""
        super().setGeometry(rect)
        top = rect.top()
        pane = self.parentWidget()
        mirrored = pane is not None and pane.isRightToLeft()
        for row in self._rows(rect.width()):
            left = rect.left()
            for number, width in zip(row.items, row.widths, strict=True):
                place = QRect(QPoint(left, top), QSize(width, row.height))
                if mirrored:
                    place.moveRight(rect.right() - (left - rect.left()))
                self._items[number].setGeometry(place)
                left += width + self.spacing()
            top += row.height + self.spacing()

    def _rows(self, width: int) -> list[_Row]:
        rows: list[_Row] = []
        used = 0
        for number, item in enumerate(self._items):
            if item.isEmpty():
                continue
            hint = item.sizeHint().width()
            wanted = max(min(hint, width), item.minimumSize().width())
            if rows and used + self.spacing() + wanted <= width:
                rows[-1].items.append(number)
                rows[-1].widths.append(wanted)
                used += self.spacing() + wanted
            else:
                rows.append(_Row([number], [wanted]))
                used = wanted
        for row in rows:
            self._spread(row, width)
            row.height = max(
                self._height(self._items[number], given) for number, given in zip(row.items, row.widths, strict=True)
            )
        return rows

    def _spread(self, row: _Row, width: int) -> None:
        stretching = [place for place, number in enumerate(row.items) if self._stretches[number]]
        free = width - sum(row.widths) - self.spacing() * (len(row.items) - 1)
        for count, place in enumerate(stretching):
            more = free // (len(stretching) - count)
            row.widths[place] += max(0, more)
            free -= more

    @staticmethod
    def _height(item: QLayoutItem, width: int) -> int:
        return item.heightForWidth(width) if item.hasHeightForWidth() else item.sizeHint().height()
