"""The style sheet on real buttons: what cannot be pressed does not look as if it could."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QDialog, QPushButton, QVBoxLayout
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.style_sheet import style_sheet


@pytest.mark.parametrize("theme", ["light", "dark"])
@pytest.mark.parametrize("kind", ["default", "primary"])
def test_a_disabled_primary_button_loses_the_accent(qtbot: QtBot, theme: str, kind: str) -> None:
    look = Look()
    look.choose_theme(theme)
    dialog = QDialog()
    qtbot.addWidget(dialog)
    dialog.setStyleSheet(style_sheet(look))
    button = QPushButton("Deliver")
    if kind == "default":
        button.setDefault(True)
    else:
        button.setProperty("primary", True)
    other = QPushButton("Stop")
    layout = QVBoxLayout(dialog)
    layout.addWidget(button)
    layout.addWidget(other)
    dialog.show()
    qtbot.waitExposed(dialog)
    assert _ground(button) == look.color("accent")
    button.setEnabled(False)
    assert _ground(button) == look.color("track")


def _ground(button: QPushButton) -> QColor:
    image = button.grab().toImage()
    return image.pixelColor(8, image.height() // 2)
