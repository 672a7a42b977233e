"""Moves that are played while the cursor is in the line stand at its words, by pointer and by keyboard."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import chess
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeNode
from studyboard.model.script import Cue, SpokenLine
from studyboard.store.study_file import StudyFile


@pytest.fixture
def desk(qtbot: QtBot, tmp_path: Path, still_look, settings) -> Iterator[MainWindow]:
    """The whole window on an empty study after 1. e4, with a line there and the keyboard in it."""
    file = StudyFile.create(tmp_path / "new.studyboard")
    window = MainWindow(file, still_look, settings)
    qtbot.addWidget(window)
    window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.session.play(chess.Move.from_uci("e2e4"))
    window.line_editor.focus_line()
    yield window
    window.close()


def write(desk: MainWindow, text: str) -> None:
    QTest.keyClicks(desk.line_editor.text, text)


def drag(desk: MainWindow, origin: str, destination: str) -> None:
    """Move a piece with the pointer."""
    board = desk.board_view
    start, end = (board.place.corner(chess.parse_square(name)) for name in (origin, destination))
    middle = board.place.side / 2
    QTest.mousePress(board, Qt.MouseButton.LeftButton, pos=start.toPoint() + _step(middle))
    QTest.mouseMove(board, end.toPoint() + _step(middle))
    QTest.mouseRelease(board, Qt.MouseButton.LeftButton, pos=end.toPoint() + _step(middle))


def _step(middle: float) -> QPoint:
    return QPoint(round(middle), round(middle))


def line_of(desk: MainWindow) -> SpokenLine:
    return desk.session.study.node(desk.session.node).spoken


def test_a_move_played_with_the_pointer_stands_at_the_cursor_and_writing_goes_on(
    qtbot: QtBot, desk: MainWindow
) -> None:
    e4 = desk.session.node
    write(desk, "White takes the centre and ")
    drag(desk, "e7", "e5")
    e5 = desk.session.node
    assert desk.session.board.piece_at(chess.E5) == chess.Piece.from_symbol("p")
    assert desk.line_editor.text.hasFocus()
    write(desk, "Black answers.")
    desk.line_editor.flush()
    assert line_of(desk) == SpokenLine("White takes the centre and Black answers.", (Cue(0, node=e4), Cue(5, node=e5)))
    assert not desk.session.study.node(e4).spoken


def test_two_moves_in_a_row_and_undo_takes_them_back_one_by_one(qtbot: QtBot, desk: MainWindow) -> None:
    e4 = desk.session.node
    write(desk, "One two three ")
    drag(desk, "e7", "e5")
    write(desk, "four ")
    drag(desk, "g1", "f3")
    assert [cue.word for cue in line_of(desk).cues] == [0, 3, 4]
    desk.actions_by_name["undo"].trigger()
    desk.actions_by_name["undo"].trigger()
    desk.actions_by_name["undo"].trigger()
    assert desk.session.study.node(e4).spoken.text == "One two three "
    assert desk.session.study.node(e4).children == ()
    assert desk.session.node == e4


def test_a_typed_move_stands_at_the_cursor(qtbot: QtBot, desk: MainWindow) -> None:
    write(desk, "White waits and Black answers.")
    for _ in range(len("Black answers.")):
        QTest.keyClick(desk.line_editor.text, Qt.Key.Key_Left)
    qtbot.keyClick(desk.line_editor.text, Qt.Key.Key_J, Qt.KeyboardModifier.ControlModifier)
    field = QApplication.focusWidget()
    QTest.keyClicks(field, "e5")
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert line_of(desk).cues[-1] == Cue(3, node=desk.session.node)
    assert desk.notice.text.startswith("1... e5 is played at “Black”")
    assert desk.line_editor.text.hasFocus()


def test_the_cursor_is_still_seen_while_a_piece_is_held(qtbot: QtBot, desk: MainWindow) -> None:
    write(desk, "Words ")
    text = desk.line_editor.text
    box = text.cursorRect()
    assert text.hasFocus()
    desk.board_view.setFocus()
    accent = desk.look.color("accent").rgb()
    shot = text.viewport().grab().toImage()
    assert shot.pixel(box.left(), box.center().y()) == accent
    desk.lanes.setFocus()
    assert text.viewport().grab().toImage().pixel(box.left(), box.center().y()) != accent


def test_without_the_cursor_in_the_line_a_move_is_a_stop_of_its_own(qtbot: QtBot, desk: MainWindow) -> None:
    e4 = desk.session.node
    write(desk, "White takes the centre.")
    desk.lanes.setFocus()
    drag(desk, "e7", "e5")
    assert not line_of(desk)
    assert desk.session.study.node(e4).spoken.text == "White takes the centre."


def test_in_an_empty_line_a_move_only_steps(qtbot: QtBot, desk: MainWindow) -> None:
    drag(desk, "e7", "e5")
    assert line_of(desk) == SpokenLine()
    assert desk.session.board.fullmove_number == 2


def test_it_can_be_turned_off_and_that_is_remembered(qtbot: QtBot, desk: MainWindow) -> None:
    e4 = desk.session.node
    action = desk.actions_by_name["played_cues"]
    assert action.isChecked()
    action.trigger()
    write(desk, "White takes the centre.")
    drag(desk, "e7", "e5")
    assert desk.session.study.node(e4).spoken.text == "White takes the centre."
    assert str(desk.settings.value("script/played_cues")) == "false"


def test_a_move_with_a_line_of_its_own_is_stepped_to_and_that_is_told(qtbot: QtBot, desk: MainWindow) -> None:
    session, e4 = desk.session, desk.session.node
    session.play(chess.Move.from_uci("e7e5"))
    e5 = session.node
    session.do(ChangeNode(e5, "spoken", SpokenLine("Black answers.")))
    session.show(e4)
    desk.line_editor.focus_line()
    write(desk, "White.")
    drag(desk, "e7", "e5")
    assert session.node == e5
    assert session.study.node(e5).spoken == SpokenLine("Black answers.")
    assert session.study.node(e4).spoken.text == "White."
    assert "line of its own" in desk.notice.text
