"""The script is read against the board while it is written: queries are underlined, mended, left; moves are offered."""

from __future__ import annotations

from pathlib import Path

import chess
from PySide6.QtCore import Qt
from PySide6.QtGui import QTextCharFormat
from PySide6.QtWidgets import QTextEdit
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeNode
from studyboard.model.script import SpokenLine
from studyboard.notation.labels import move_label
from studyboard.store.study_file import StudyFile


def show(desk: MainWindow, label: str) -> int:
    """Show the main-line move with this label."""
    session = desk.session
    node = next(n for n in session.study.main_line() if move_label(session.positions, n) == label)
    session.show(node)
    return node


def say(qtbot: QtBot, desk: MainWindow, text: str) -> None:
    """Write this as the shown line, by the keyboard, and wait until it has been read."""
    editor = desk.line_editor
    editor.focus_line()
    editor.text.selectAll()
    with qtbot.waitSignal(desk.proofreading.proofreader.line_read, check_params_cb=lambda f: f.text == text):
        qtbot.keyClicks(editor.text, text)


def underlined(desk: MainWindow) -> list[str]:
    """The words under which there is a wavy line."""
    selections: list[QTextEdit.ExtraSelection] = desk.line_editor.text.extraSelections()
    wave = QTextCharFormat.UnderlineStyle.WaveUnderline
    return [s.cursor.selectedText() for s in selections if s.format.underlineStyle() == wave]


def test_a_statement_that_the_board_contradicts_is_underlined_and_explained(qtbot: QtBot, desk: MainWindow) -> None:
    show(desk, "9. O-O")
    say(qtbot, desk, "White is a piece up here.")
    assert underlined(desk) == ["White is a piece up"]
    assert "Material is level" in desk.proofreading.bar.text


def test_a_true_statement_is_left_in_peace(qtbot: QtBot, desk: MainWindow) -> None:
    show(desk, "9. O-O")
    say(qtbot, desk, "Material is level.")
    assert underlined(desk) == []
    assert desk.proofreading.bar.isHidden()


def test_a_query_that_is_left_stays_left_also_in_the_file(qtbot: QtBot, desk: MainWindow, tmp_path: Path) -> None:
    show(desk, "9. O-O")
    say(qtbot, desk, "White is a piece up here.")
    reader = desk.proofreading.proofreader
    with qtbot.waitSignal(reader.line_read):
        desk.actions_by_name["leave_query"].trigger()
    assert underlined(desk) == []
    desk.close()
    with StudyFile.open(tmp_path / "example.studyboard") as again:
        assert {query.quote for query in again.study.left} == {"White is a piece up"}


def test_undo_puts_a_left_query_again(qtbot: QtBot, desk: MainWindow) -> None:
    show(desk, "9. O-O")
    say(qtbot, desk, "White is a piece up here.")
    reader = desk.proofreading.proofreader
    with qtbot.waitSignal(reader.line_read):
        desk.actions_by_name["leave_query"].trigger()
    qtbot.waitUntil(lambda: underlined(desk) == [])
    desk.actions_by_name["undo"].trigger()
    qtbot.waitUntil(lambda: underlined(desk) == ["White is a piece up"])


def test_one_key_mends_the_line_where_it_is_certain_how(qtbot: QtBot, desk: MainWindow) -> None:
    node = show(desk, "7. Bc4")
    say(qtbot, desk, "White plays bishop c5 here.")
    query = desk.proofreading.bar.query
    assert query is not None
    assert query.fix is not None
    desk.actions_by_name["fix_query"].trigger()
    assert desk.session.study.node(node).spoken.text == "White plays bishop c4 here."


def test_a_move_that_is_said_and_not_on_the_tree_is_added_with_one_key(qtbot: QtBot, desk: MainWindow) -> None:
    node = show(desk, "9. O-O")
    parent = desk.session.study.node(node).parent
    assert parent is not None
    before = len(desk.session.study.node(parent).children)
    say(qtbot, desk, "White castles. Instead, knight c3 was possible.")
    assert "9. Nc3 is not on the tree yet" in desk.proofreading.bar.text
    qtbot.keyClick(desk, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    children = desk.session.study.node(parent).children
    assert len(children) == before + 1
    assert desk.session.study.node(children[-1]).move == chess.Move.from_uci("b1c3")
    desk.actions_by_name["undo"].trigger()
    assert len(desk.session.study.node(parent).children) == before


def test_the_list_shows_every_query_and_leads_to_it(qtbot: QtBot, desk: MainWindow) -> None:
    session = desk.session
    wrong = show(desk, "9. O-O")
    session.do(ChangeNode(wrong, "spoken", SpokenLine("White is a piece up here.")))
    session.show(session.study.root)
    with qtbot.waitSignal(desk.proofreading.proofreader.script_read, timeout=30_000):
        desk.actions_by_name["read_through"].trigger()
    window = desk.proofreading._list
    assert window is not None
    assert window.list.count() == 1
    assert window.summary.text().startswith("One query")
    window.list.itemActivated.emit(window.list.item(0))
    assert session.node == wrong


def test_the_example_has_no_query(qtbot: QtBot, desk: MainWindow) -> None:
    with qtbot.waitSignal(desk.proofreading.proofreader.script_read, timeout=30_000):
        desk.proofreading.proofreader.read_now()
    assert desk.proofreading.proofreader.queries == ()
    assert len(desk.proofreading.proofreader.found.confirmed) > 50
