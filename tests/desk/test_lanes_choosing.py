"""Choosing several rows of the lanes, and what is done to them together."""

from __future__ import annotations

import io

import chess
import chess.pgn
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.notation.labels import move_label

SHIFT, CTRL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


def press(desk: MainWindow, name: str) -> None:
    action = desk.actions_by_name[name]
    assert action.isEnabled(), f"{name} cannot be chosen here"
    action.trigger()


def click(qtbot: QtBot, desk: MainWindow, key: int | Part, modifier: Qt.KeyboardModifier) -> None:
    rect = desk.lanes.row_rect(key)
    assert rect is not None
    qtbot.mouseClick(
        desk.lanes.viewport(), Qt.MouseButton.LeftButton, modifier, QPoint(rect.left() + 20, rect.top() + 8)
    )


def main(study: Study) -> list[int]:
    return list(study.main_line())


@pytest.fixture
def line(desk: MainWindow) -> list[int]:
    """The main line, with its third move on the board and the keyboard in the lanes."""
    desk.lanes.setFocus()
    nodes = main(desk.session.study)
    desk.lanes.go_to(nodes[3])
    return nodes


def test_shift_and_arrows_choose_rows_and_any_other_step_lets_them_go(
    qtbot: QtBot, desk: MainWindow, line: list[int]
) -> None:
    qtbot.keyClick(desk.lanes, Qt.Key.Key_Down, SHIFT)
    qtbot.keyClick(desk.lanes, Qt.Key.Key_Down, SHIFT)
    assert desk.lanes.choosing.rows == tuple(line[3:6])
    assert desk.session.node == line[5]
    assert "3 rows are chosen." in desk.lanes.accessibleDescription()
    qtbot.keyClick(desk.lanes, Qt.Key.Key_Up, SHIFT)
    assert desk.lanes.choosing.rows == tuple(line[3:5])
    qtbot.keyClick(desk.lanes, Qt.Key.Key_Down)
    assert desk.lanes.choosing.rows == (line[5],)


def test_shift_goes_on_up_to_the_greeting(qtbot: QtBot, desk: MainWindow, line: list[int]) -> None:
    for _ in range(4):
        qtbot.keyClick(desk.lanes, Qt.Key.Key_Up, SHIFT)
    assert desk.lanes.choosing.rows == (Part.GREETING, *line[:4])


def test_the_pointer_chooses_with_shift_and_with_ctrl(qtbot: QtBot, desk: MainWindow, line: list[int]) -> None:
    click(qtbot, desk, line[5], SHIFT)
    assert desk.lanes.choosing.rows == tuple(line[3:6])
    click(qtbot, desk, line[1], CTRL)
    assert desk.lanes.choosing.rows == (line[1], *line[3:6])
    click(qtbot, desk, line[4], CTRL)
    assert desk.lanes.choosing.rows == (line[1], line[3], line[5])
    click(qtbot, desk, line[1], Qt.KeyboardModifier.NoModifier)
    assert desk.lanes.choosing.rows == (line[1],)


def test_escape_lets_the_rows_go_and_another_study_too(qtbot: QtBot, desk: MainWindow, line: list[int]) -> None:
    press(desk, "choose_line")
    assert len(desk.lanes.choosing.rows) == len(line) + 3, "with greeting, closing and thanks"
    press(desk, "choose_line")
    assert len(desk.lanes.choosing.rows) == len(desk.session.study.nodes) + 3
    qtbot.keyClick(desk.lanes, Qt.Key.Key_Escape)
    assert desk.lanes.choosing.rows == (line[3],)


def test_chosen_rows_are_told_from_others_by_a_tick(desk: MainWindow, line: list[int]) -> None:
    def rail(node: int) -> bytes:
        rect = desk.lanes.row_rect(node)
        assert rect is not None
        picture = desk.lanes.viewport().grab().toImage().convertToFormat(QImage.Format.Format_Grayscale8)
        part = picture.copy(rect.left() - 24, rect.top(), 24, rect.height())
        return bytes(part.constBits())

    before = rail(line[2])
    desk.session.choose((line[2], line[3]))
    assert rail(line[2]) != before


def test_the_lines_of_the_chosen_rows_are_cleared_in_one_step(qtbot: QtBot, desk: MainWindow, line: list[int]) -> None:
    study = desk.session.study
    said = [node for node in line if study.nodes[node].spoken]
    desk.lanes.go_to(said[0])
    desk.lanes.choosing.up_to(said[2])
    before = dict(study.nodes)
    press(desk, "clear_line")
    assert not any(study.nodes[node].spoken for node in said[:3])
    assert study.nodes[said[3]].spoken
    press(desk, "undo")
    assert study.nodes == before


def test_lengths_of_the_chosen_rows_are_locked_in_one_step(desk: MainWindow, line: list[int]) -> None:
    study = desk.session.study
    told = [node for node in line if study.nodes[node].spoken][:2]
    desk.session.choose(told)
    press(desk, "lock_length")
    assert all(study.nodes[node].locked for node in told)
    press(desk, "lock_length")
    assert not any(study.nodes[node].locked for node in told)
    press(desk, "undo")
    press(desk, "undo")
    assert study.nodes[told[0]].intended is None


def test_side_lines_of_the_chosen_rows_are_hidden_and_deleted_together(desk: MainWindow, line: list[int]) -> None:
    study = desk.session.study
    starts = [child for node in line for child in study.nodes[node].children[1:]][:2]
    size = len(study.nodes)
    desk.session.choose((*starts, line[2]))
    press(desk, "hide_side_line")
    assert all(study.nodes[start].telling.place == "hidden" for start in starts)
    press(desk, "tell_after")
    assert all(study.nodes[start].telling.place == "after" for start in starts)
    desk.session.choose(starts)
    press(desk, "delete_branch")
    assert not any(start in study.nodes for start in starts)
    assert desk.lanes.choosing.rows == (desk.session.node,)
    press(desk, "undo")
    assert len(study.nodes) == size


def test_a_line_without_a_move_is_not_mistaken_for_the_move_on_the_board(desk: MainWindow) -> None:
    desk.lanes.choose_part(Part.CLOSING)
    size = len(desk.session.study.nodes)
    press(desk, "delete_branch")
    assert len(desk.session.study.nodes) == size
    assert "No move is chosen" in desk.notice.text


def test_chosen_rows_are_copied_as_words_game_positions_and_picture(desk: MainWindow, line: list[int]) -> None:
    session, clipboard = desk.session, QApplication.clipboard()
    said = next(node for node in line[1:] if session.study.nodes[node].spoken)
    desk.lanes.go_to(line[1])
    desk.lanes.choosing.up_to(said)
    count = len(desk.lanes.choosing.rows)
    press(desk, "copy_words")
    assert move_label(session.positions, line[1]) in clipboard.text()
    assert session.study.nodes[said].spoken.text in clipboard.text()
    press(desk, "copy_rows_pgn")
    game = chess.pgn.read_game(io.StringIO(clipboard.text()))
    assert game is not None
    assert [move.uci() for move in game.mainline_moves()] == [
        move.uci() for node in line[1:] if (move := session.study.nodes[node].move) and line.index(node) <= count
    ]
    press(desk, "copy_fen")
    fens = clipboard.text().splitlines()
    assert fens[-1] == session.positions.board(said).fen()
    assert len(fens) == count
    press(desk, "copy_picture")
    several = clipboard.image()
    desk.lanes.go_to(said)
    press(desk, "copy_picture")
    one = clipboard.image()
    assert one.height() > one.width() > 400
    assert several.width() == one.width()
    assert several.height() > (count - 0.2) * (one.height() - 60)


def test_too_many_boards_for_a_picture_are_refused_with_their_number(desk: MainWindow, line: list[int]) -> None:
    QApplication.clipboard().setText("as it was")
    desk.session.choose(line[:40])
    press(desk, "copy_picture")
    assert "40 boards are too many" in desk.notice.text
    assert QApplication.clipboard().text() == "as it was"
