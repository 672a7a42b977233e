"""A button of a dialog that acts when it has the focus and Enter is pressed, and never otherwise."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QPushButton, QWidget


class ActingButton(QPushButton):
    """A button that Enter in a field beside it does not press.

    In a dialog Qt offers such a button's Enter to the dialog's default button instead: whoever stood on “Remove” and
    pressed Enter would get “Close”.
    """

    def __init__(self, label: str, parent: QWidget | None = None) -> None:
        super().__init__(label, parent)
        self.setAutoDefault(False)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter presses it, as the space bar does."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)
