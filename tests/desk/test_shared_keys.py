"""Keys of the desk in the windows beside it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow


def test_the_prompter_is_opened_and_the_board_stepped_from_the_stage(qtbot: QtBot, desk: MainWindow) -> None:
    desk.session.show(desk.session.study.root)
    desk.show_stage()
    stage = desk._stage_window
    assert stage is not None
    stage.activateWindow()
    qtbot.waitUntil(stage.isActiveWindow)
    first = desk.session.study.node(desk.session.study.root).children[0]
    qtbot.keyClick(stage, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert desk.session.node == first
    qtbot.keyClick(stage, Qt.Key.Key_F8)
    prompter = desk._prompter_window
    assert prompter is not None
    qtbot.waitUntil(prompter.isVisible)
    prompter.activateWindow()
    qtbot.waitUntil(prompter.isActiveWindow)
    assert desk.lanes.isVisible()
    qtbot.keyClick(prompter, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert not desk.lanes.isVisible()
    qtbot.keyClick(prompter.prompter, Qt.Key.Key_Space)
    assert desk.performance.active
