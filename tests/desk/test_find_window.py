"""Words are found in the whole script and replaced, by keys and buttons."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studyboard.desk.find_window import FindWindow
from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeNode
from studyboard.model.script import Cue, Part, SpokenLine


@pytest.fixture
def nodes(desk: MainWindow) -> list[int]:
    """The first moves of the main line, two of them with a word that stands nowhere else."""
    main = list(desk.session.study.main_line())
    desk.session.do(ChangeNode(main[4], "spoken", SpokenLine("A glimmer, one Glimmer.", (Cue(3, node=main[4]),))))
    desk.session.do(ChangeNode(main[8], "spoken", SpokenLine("The glimmering end.")))
    desk.session.do(ChangeNode(main[8], "note", "No glimmer in print."))
    desk.session.show(main[2])
    return main


def opened(qtbot: QtBot, desk: MainWindow, words: str) -> FindWindow:
    desk.line_editor.focus_line()
    qtbot.keyClick(desk, Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier)
    window = desk.script_tools._find
    assert window is not None
    qtbot.waitUntil(window.wanted.hasFocus)
    window.wanted.selectAll()
    QTest.keyClicks(window.wanted, words)
    return window


def selected(desk: MainWindow) -> str:
    return desk.line_editor.text.textCursor().selectedText()


def test_the_count_is_told_and_the_keys_go_from_place_to_place(
    qtbot: QtBot, desk: MainWindow, nodes: list[int]
) -> None:
    window = opened(qtbot, desk, "glimmer")
    qtbot.waitUntil(lambda: window.count.text() == "Found 3 times")
    seen = []
    for _ in range(4):
        QTest.keyClick(window.wanted, Qt.Key.Key_Return)
        seen.append((desk.session.node, selected(desk), window.count.text()))
    assert seen == [
        (nodes[4], "glimmer", "1 of 3"),
        (nodes[4], "Glimmer", "2 of 3"),
        (nodes[8], "glimmer", "3 of 3"),
        (nodes[4], "glimmer", "1 of 3"),
    ]
    QTest.keyClick(window.wanted, Qt.Key.Key_Return, Qt.KeyboardModifier.ShiftModifier)
    assert window.count.text() == "3 of 3"
    qtbot.waitUntil(window.wanted.hasFocus)
    assert window.wanted.accessibleDescription() == "3 of 3"


def test_what_is_not_there_is_told(qtbot: QtBot, desk: MainWindow) -> None:
    window = opened(qtbot, desk, "qwzx")
    qtbot.waitUntil(lambda: window.count.text() == "Not found")
    assert not window.all_button.isEnabled()


def test_one_after_the_other_is_replaced_and_a_cue_stays_at_its_word(
    qtbot: QtBot, desk: MainWindow, nodes: list[int]
) -> None:
    window = opened(qtbot, desk, "glimmer")
    QTest.keyClicks(window.by, "faint glimmer")
    window.by.setFocus()
    QTest.keyClick(window.by, Qt.Key.Key_Return)
    assert selected(desk) == "glimmer"
    QTest.keyClick(window.by, Qt.Key.Key_Return)
    assert desk.session.study.node(nodes[4]).spoken.text == "A faint glimmer, one Glimmer."
    assert selected(desk) == "Glimmer"
    QTest.keyClick(window.by, Qt.Key.Key_Return)
    line = desk.session.study.node(nodes[4]).spoken
    assert line == SpokenLine("A faint glimmer, one Faint glimmer.", (Cue(4, node=nodes[4]),))
    assert desk.session.node == nodes[8]


def test_all_are_replaced_as_one_step(qtbot: QtBot, desk: MainWindow, nodes: list[int]) -> None:
    study = desk.session.study
    before = (study.node(nodes[4]), study.node(nodes[8]))
    window = opened(qtbot, desk, "glimmer")
    window.notes.click()
    QTest.keyClicks(window.by, "spark")
    qtbot.mouseClick(window.all_button, Qt.MouseButton.LeftButton)
    assert study.node(nodes[4]).spoken == SpokenLine("A spark, one Spark.", (Cue(3, node=nodes[4]),))
    assert study.node(nodes[8]).note == "No spark in print."
    assert window.count.text() == "Replaced 4 times. Ctrl+Z takes it back in one step."
    desk.actions_by_name["undo"].trigger()
    assert (study.node(nodes[4]), study.node(nodes[8])) == before


def test_a_match_in_a_note_is_shown_there(qtbot: QtBot, desk: MainWindow, nodes: list[int]) -> None:
    window = opened(qtbot, desk, "glimmer in print")
    window.notes.click()
    QTest.keyClick(window.wanted, Qt.Key.Key_Return)
    assert desk.session.node == nodes[8]
    assert desk.line_editor.note.after_field.textCursor().selectedText() == "glimmer in print"
    assert desk.line_editor.note.isVisible()


def test_a_match_in_the_greeting_is_shown_there(qtbot: QtBot, desk: MainWindow) -> None:
    window = opened(qtbot, desk, "welcome to the Sail")
    QTest.keyClick(window.wanted, Qt.Key.Key_Return)
    assert desk.line_editor.key is Part.GREETING
    assert selected(desk) == "welcome to the Sail"


def test_what_is_being_typed_is_searched_too_and_matches_of_the_line_have_a_ground(
    qtbot: QtBot, desk: MainWindow, nodes: list[int]
) -> None:
    window = opened(qtbot, desk, "glimmer")
    desk.session.show(nodes[6])
    desk.line_editor.focus_line()
    QTest.keyClicks(desk.line_editor.text, "Another glimmer! ")
    window.step(1)
    assert len(window.places) == 4
    desk.session.show(nodes[4])
    ground = desk.look.color("think_soft")
    grounded = [s.cursor.selectedText() for s in desk.line_editor.text.extraSelections()]
    assert grounded[-2:] == ["glimmer", "Glimmer"]
    assert desk.line_editor.text.extraSelections()[-1].format.background().color() == ground
    window.close()
    assert desk.line_editor.text.extraSelections() == []


def test_what_is_selected_is_searched_for(qtbot: QtBot, desk: MainWindow, nodes: list[int]) -> None:
    desk.session.show(nodes[4])
    desk.line_editor.focus_line()
    desk.line_editor.text.select_characters(2, 9)
    qtbot.keyClick(desk, Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier)
    window = desk.script_tools._find
    assert window is not None
    assert window.wanted.text() == "glimmer"
    assert len(window.places) == 3
