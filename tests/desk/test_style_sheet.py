"""The style sheet on real buttons: what cannot be pressed does not look as if it could."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QCheckBox, QComboBox, QDialog, QPushButton, QRadioButton, QVBoxLayout, QWidget
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


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_boxes_to_tick_and_lists_to_choose_from_have_an_outline_that_is_seen(qtbot: QtBot, theme: str) -> None:
    look = Look()
    look.choose_theme(theme)
    dialog = QDialog()
    qtbot.addWidget(dialog)
    dialog.setStyleSheet(style_sheet(look))
    layout = QVBoxLayout(dialog)
    combo = QComboBox()
    combo.addItem("A4 paper")
    widgets: tuple[QWidget, ...] = (QCheckBox("Captions"), QRadioButton("White"), combo)
    for widget in widgets:
        layout.addWidget(widget)
    dialog.show()
    qtbot.waitExposed(dialog)
    for widget in widgets:
        assert look.color("rail").name() in _colours(widget), widget
    for button in widgets[:2]:
        assert isinstance(button, QCheckBox | QRadioButton)
        assert look.color("accent").name() not in _colours(button)
        button.setChecked(True)
        assert {look.color("accent").name(), look.color("on_accent").name()} <= _colours(button), button
    assert look.color("ink_quiet").name() in _colours(combo)


def _colours(widget: QWidget) -> set[str]:
    image = widget.grab().toImage()
    return {image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())}


def _ground(button: QPushButton) -> QColor:
    image = button.grab().toImage()
    return image.pixelColor(8, image.height() // 2)
