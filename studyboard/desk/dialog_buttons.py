"""The row of buttons at the foot of a dialog, in words only."""

from __future__ import annotations

from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QDialogButtonBox, QWidget


class DialogButtons(QDialogButtonBox):
    """Standard buttons without the desktop's pictures, which fit neither theme."""

    def __init__(
        self,
        buttons: QDialogButtonBox.StandardButton = QDialogButtonBox.StandardButton.NoButton,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(buttons, parent)
        for button in self.buttons():
            button.setIcon(QIcon())
