"""A field for a length of time that may be left empty."""

from __future__ import annotations

import re

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit, QWidget

from studyboard.translation import tr, written_number

_SECONDS = re.compile(r"(?:(\d{1,3}):)?(\d{1,4}(?:[.,]\d*)?)\s*s?", re.IGNORECASE)
_STEP = 0.5
_MOST = 3600.0


class SecondsField(QLineEdit):
    """Takes seconds as ``10``, ``7.5 s`` or ``1:20``; up and down change them by half a second.

    State: the length (s), or None while the field is empty. What cannot be read is put back.

    changed: another length was given; carries it, or None
    """

    changed = Signal(object)

    def __init__(self, name: str, empty: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._seconds: float | None = None
        self.setPlaceholderText(empty)
        self.setAccessibleName(tr("{name}, in seconds", name=name))
        self.setFixedWidth(self.fontMetrics().horizontalAdvance(empty + "mm") + 14)
        self.editingFinished.connect(self.commit)

    @property
    def seconds(self) -> float | None:
        """The length (s)."""
        return self._seconds

    def show_seconds(self, seconds: float | None) -> None:
        """Show a length; nothing is told of it."""
        self._seconds = seconds
        self.setText(_shown(seconds))

    def commit(self) -> None:
        """Take what is written in the field; what it shows may be rounded, and is no new length by itself."""
        if self.text() == _shown(self._seconds):
            return
        read = self._read()
        changed = read != self._seconds
        self.show_seconds(read)
        if changed:
            self.changed.emit(read)

    def event(self, event: QEvent) -> bool:
        """See QWidget: where nothing has been typed, undo and redo belong to the study."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            undo, redo = event.matches(QKeySequence.StandardKey.Undo), event.matches(QKeySequence.StandardKey.Redo)
            if (undo and not self.isUndoAvailable()) or (redo and not self.isRedoAvailable()):
                event.ignore()
                return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget."""
        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down) and not event.modifiers():
            step = _STEP if event.key() == Qt.Key.Key_Up else -_STEP
            seconds = max(0.0, min(_MOST, (self._read() or 0.0) + step))
            self.setText(written_number(seconds, "g"))
            self.commit()
            return
        super().keyPressEvent(event)

    def _read(self) -> float | None:
        text = self.text().strip()
        if not text:
            return None
        found = _SECONDS.fullmatch(text)
        if found is None:
            return self._seconds
        seconds = float(found[2].replace(",", ".")) + 60 * int(found[1] or 0)
        return round(min(seconds, _MOST), 1) or None


def _shown(seconds: float | None) -> str:
    return "" if seconds is None else tr("{seconds:g} s", seconds=round(seconds, 1))
