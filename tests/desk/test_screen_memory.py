"""Where windows stand on the screen."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from studyboard.desk.screen_memory import first_place


@pytest.mark.parametrize(
    ("screen", "whole"),
    [
        (QRect(0, 0, 1366, 768), True),
        (QRect(0, 27, 1440, 873), True),
        (QRect(0, 40, 1920, 1040), False),
        (QRect(1920, 0, 2560, 1440), False),
        (QRect(0, 0, 3840, 2160), False),
    ],
)
def test_the_first_window_takes_a_small_screen_as_a_whole_and_leaves_something_of_a_large_one(
    qtbot: QtBot, screen: QRect, whole: bool
) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.resize(1366, 768)
    first_place(window, screen)
    assert window.isMaximized() == whole
    assert screen.contains(window.geometry())
    assert window.width() >= 0.8 * screen.width()
