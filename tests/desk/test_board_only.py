"""The board alone on the whole screen, with the keys of the talk at work."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from studyboard.desk.main_window import MainWindow


def alone(desk: MainWindow) -> bool:
    others = (desk.lanes, desk.line_editor, desk.ruler, desk.top_bar, desk.facts, desk.mark_palette, desk.menuBar())
    return desk.board_view.isVisible() and not any(widget.isVisible() for widget in others)


def key(key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    QTest.keyClick(QApplication.focusWidget(), key, modifier)


def test_nothing_but_the_board_is_left_and_escape_brings_the_desk_back(desk: MainWindow) -> None:
    desk.lanes.setFocus()
    focused = QApplication.focusWidget()
    side = desk.board_view.place.side
    key(Qt.Key.Key_F11, Qt.KeyboardModifier.ShiftModifier)
    assert alone(desk)
    assert desk.isFullScreen()
    assert desk.actions_by_name["board_only"].isChecked()
    QApplication.processEvents()
    assert desk.board_view.place.side > side
    key(Qt.Key.Key_Escape)
    assert not alone(desk)
    assert not desk.isFullScreen()
    assert not desk.actions_by_name["board_only"].isChecked()
    assert desk.lanes.isVisible()
    assert desk.line_editor.isVisible()
    assert QApplication.focusWidget() is focused


def test_arrows_step_and_so_do_the_keys_of_the_desk(desk: MainWindow) -> None:
    line = list(desk.session.study.main_line())
    desk.session.show(line[0])
    desk.actions_by_name["board_only"].trigger()
    key(Qt.Key.Key_Right)
    key(Qt.Key.Key_Down)
    assert desk.session.node == line[2]
    key(Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier)
    assert desk.session.node == line[1]
    key(Qt.Key.Key_Home)
    assert desk.session.node == line[0]
    key(Qt.Key.Key_End)
    assert desk.session.node == line[-1]
    key(Qt.Key.Key_Escape)


def test_the_keys_of_the_talk_work(desk: MainWindow) -> None:
    desk.rehearse_stage()
    desk.actions_by_name["board_only"].trigger()
    assert alone(desk)
    desk.performance.start()
    before = desk.performance.run.beat
    for _ in range(3):
        key(Qt.Key.Key_Space)
    key(Qt.Key.Key_PageDown)
    assert desk.performance.run.beat > before
    key(Qt.Key.Key_Escape)
    assert desk.stage == "rehearse"
    assert desk.prompter.isVisible()
    assert not desk.line_editor.isVisible()
    desk.performance.stop()


def test_another_stage_of_the_day_does_not_bring_the_panes_back(desk: MainWindow) -> None:
    desk.actions_by_name["board_only"].trigger()
    desk.rehearse_stage()
    desk.write_stage()
    assert alone(desk)
    desk.actions_by_name["board_only"].trigger()
    assert desk.line_editor.isVisible()
    assert desk.facts.isVisible()


def test_escape_ends_an_answer_before_it_brings_the_desk_back(desk: MainWindow) -> None:
    desk.session.show(list(desk.session.study.main_line())[2])
    desk.actions_by_name["board_only"].trigger()
    key(Qt.Key.Key_F2, Qt.KeyboardModifier.ShiftModifier)
    assert desk.board_view.answers.shown
    key(Qt.Key.Key_Escape)
    assert desk.board_view.answers.shown == ()
    assert alone(desk)
    key(Qt.Key.Key_Escape)
    assert not alone(desk)


def test_no_ring_of_the_keyboard_is_drawn_around_a_lone_board(desk: MainWindow) -> None:
    desk.lanes.setFocus()
    desk.actions_by_name["board_only"].trigger()
    QApplication.processEvents()
    ring = desk.board_view.place.rect.adjusted(-3, -3, 3, 3).topLeft().toPoint()
    shown = desk.board_view.grab().toImage()
    assert shown.pixelColor(ring) != desk.look.color("focus")
    assert desk.board_view.hasFocus()
    desk.actions_by_name["board_only"].trigger()
