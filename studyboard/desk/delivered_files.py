"""The files that were delivered, to be opened, copied or dragged to wherever they are needed."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QMimeData, Qt, QUrl
from PySide6.QtGui import QDesktopServices, QGuiApplication, QKeySequence, QShortcut
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem, QWidget

from studyboard.delivery.deliver import Delivered
from studyboard.translation import tr


class DeliveredFiles(QListWidget):
    """A list of files: Enter or a double click opens one, the copy key or dragging takes those that are chosen along.

    State: the files.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("What was delivered"))
        self.setToolTip(tr("Enter opens a file; drag files out of here, or copy them."))
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setDragEnabled(True)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragOnly)
        self.itemActivated.connect(lambda item: open_path(_path(item)))
        key = QKeySequence(QKeySequence.StandardKey.Copy)
        QShortcut(key, self, self.copy, context=Qt.ShortcutContext.WidgetShortcut)

    def show_files(self, delivered: Sequence[Delivered]) -> None:
        """List these."""
        self.clear()
        for one in delivered:
            name = one.path.name
            item = QListWidgetItem(tr("{name} (kept)", name=name) if one.kept else name)
            item.setData(Qt.ItemDataRole.UserRole, str(one.path))
            self.addItem(item)

    def copy(self) -> None:
        """Put the chosen files on the clipboard, as a file manager does."""
        items = self.selectedItems()
        if items:
            QGuiApplication.clipboard().setMimeData(self.mimeData(items))

    def mimeData(self, items: Sequence[QListWidgetItem]) -> QMimeData:
        """What is dragged: the files themselves, not their names."""
        data = QMimeData()
        data.setUrls([QUrl.fromLocalFile(str(_path(item))) for item in items])
        return data

    def supportedDropActions(self) -> Qt.DropAction:
        """Whoever gets a file gets a copy."""
        return Qt.DropAction.CopyAction


def open_path(path: Path) -> None:
    """Open a file or a folder with whatever the system has for it."""
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))


def _path(item: QListWidgetItem) -> Path:
    return Path(str(item.data(Qt.ItemDataRole.UserRole)))
