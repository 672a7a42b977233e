"""The fields for lengths, and undo in them."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow

CONTROL = Qt.KeyboardModifier.ControlModifier


def test_a_length_is_taken_back_with_the_keyboard_still_in_the_field(qtbot: QtBot, desk: MainWindow) -> None:
    desk.session.show(desk.session.study.node(desk.session.study.root).children[0])
    node = desk.session.node
    field = desk.line_editor.intended
    field.setFocus()
    qtbot.waitUntil(field.hasFocus)
    QTest.keyClicks(field, "9")
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert desk.session.study.node(node).intended == 9.0
    QTest.keyClick(field, Qt.Key.Key_Z, CONTROL)
    assert desk.session.study.node(node).intended is None
    assert field.text() == ""
    QTest.keyClick(field, Qt.Key.Key_Y, CONTROL)
    assert desk.session.study.node(node).intended == 9.0


def test_what_is_being_typed_there_is_taken_back_first(qtbot: QtBot, desk: MainWindow) -> None:
    desk.session.show(desk.session.study.node(desk.session.study.root).children[0])
    before = desk.session.study.node(desk.session.node)
    field = desk.line_editor.think
    field.setFocus()
    qtbot.waitUntil(field.hasFocus)
    QTest.keyClicks(field, "4")
    QTest.keyClick(field, Qt.Key.Key_Z, CONTROL)
    assert field.text() == ""
    assert desk.session.study.node(desk.session.node) == before
