"""Enter on a button of a dialog."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QLineEdit, QPushButton, QVBoxLayout
from pytestqt.qtbot import QtBot

from studyboard.desk.acting_button import ActingButton


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space])
def test_the_button_that_has_the_focus_acts_and_not_the_default_one(qtbot: QtBot, key: Qt.Key) -> None:
    dialog = QDialog()
    qtbot.addWidget(dialog)
    field, remove, close = QLineEdit(), ActingButton("Remove"), QPushButton("Close")
    layout = QVBoxLayout(dialog)
    for widget in (field, remove, close):
        layout.addWidget(widget)
    acted: list[str] = []
    remove.clicked.connect(lambda: acted.append("remove"))
    close.clicked.connect(lambda: acted.append("close"))
    close.setDefault(True)
    dialog.show()
    remove.setFocus()
    qtbot.keyClick(remove, key)
    assert acted == ["remove"]
    field.setFocus()
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert acted == ["remove", "close"]
