"""The dialog that asks for the length of the talk."""

from __future__ import annotations

import re

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLabel, QLineEdit, QVBoxLayout, QWidget

from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.timing.clock import clock
from studyboard.translation import tr

_FORMS = re.compile(r"\s*(?:(\d+)\s*:\s*)?(\d+)\s*:\s*([0-5]?\d)\s*|\s*(\d+(?:[.,]\d+)?)\s*(min|m|s)?\s*")


def seconds_of(text: str) -> float | None:
    """Seconds that a person wrote as “8:30”, “1:05:00”, “9 min”, “9” (minutes) or “500 s”; None where it is none."""
    match = _FORMS.fullmatch(text)
    if match is None:
        return None
    hours, minutes, seconds, number, unit = match.groups()
    if number is not None:
        value = float(number.replace(",", "."))
        return value if unit == "s" else value * 60
    return int(hours or 0) * 3600 + int(minutes) * 60 + int(seconds)


class SlotDialog(QDialog):
    """One field for minutes and seconds; empty means no slot."""

    def __init__(self, slot: float | None, planned: float, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Slot"))
        self._field = QLineEdit("" if slot is None else clock(slot))
        self._field.setPlaceholderText(tr("for example 8:30; empty for none"))
        self._field.setAccessibleName(tr("Length of the slot in minutes and seconds"))
        self._field.selectAll()
        self._problem = QLabel("")
        self._problem.setObjectName("over")
        self._problem.setWordWrap(True)
        buttons = DialogButtons(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        asked = QLabel(tr("The length that the talk should have. It is planned at {length}.", length=clock(planned)))
        asked.setWordWrap(True)
        layout.addWidget(asked)
        layout.addWidget(self._field)
        layout.addWidget(self._problem)
        layout.addWidget(buttons)
        self.slot: float | None = slot
        self.setMinimumWidth(26 * self.fontMetrics().height())

    def accept(self) -> None:
        """Take the length over, or say what is wrong with it."""
        text = self._field.text().strip()
        if not text:
            self.slot = None
        else:
            seconds = seconds_of(text)
            if seconds is None or not 0 < seconds < 86_400:
                self._problem.setText(tr("Write minutes and seconds, as in 8:30."))
                return
            self.slot = float(seconds)
        super().accept()
