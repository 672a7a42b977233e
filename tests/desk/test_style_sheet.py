"""The style sheet on real buttons: what cannot be pressed does not look as if it could."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QPushButton,
    QRadioButton,
    QStyle,
    QStyleOptionButton,
    QVBoxLayout,
    QWidget,
)
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.style_sheet import style_sheet
from tests.desk.text_size import text_scaled


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
        assert _nearest(widget, look.color("rail"), range(widget.width())) < 40, widget
    for button in widgets[:2]:
        assert isinstance(button, QCheckBox | QRadioButton)
        assert look.color("accent").name() not in _colours(button)
        button.setChecked(True)
        assert look.color("accent").name() in _colours(button), button
        assert _nearest(button, look.color("on_accent"), range(6, 14)) < 40, button
    assert look.color("ink_quiet").name() in _colours(combo)


def _nearest(widget: QWidget, wanted: QColor, columns: range) -> int:
    """How far the colour that comes nearest is from the one that is wanted (sum of the channels), at mid-height."""
    image = widget.grab().toImage()
    middle = image.height() // 2
    inside = [image.pixelColor(x, y) for x in columns for y in range(middle - 4, middle + 4)]
    return min(
        abs(at.red() - wanted.red()) + abs(at.green() - wanted.green()) + abs(at.blue() - wanted.blue())
        for at in inside
    )


def _colours(widget: QWidget) -> set[str]:
    image = widget.grab().toImage()
    return {image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())}


def _ground(button: QPushButton) -> QColor:
    image = button.grab().toImage()
    return image.pixelColor(8, image.height() // 2)


def test_boxes_to_tick_grow_with_the_text(qtbot: QtBot) -> None:
    sides: list[int] = []
    look = Look()
    for factor in (1.0, 2.0):
        with text_scaled(look, factor):
            dialog = QDialog()
            qtbot.addWidget(dialog)
            dialog.setStyleSheet(style_sheet(look))
            box = QCheckBox("Captions", dialog)
            dialog.show()
            option = QStyleOptionButton()
            box.initStyleOption(option)
            sides.append(box.style().subElementRect(QStyle.SubElement.SE_CheckBoxIndicator, option, box).height())
    assert sides[1] > 1.6 * sides[0]
