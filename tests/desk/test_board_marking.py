"""Marks on the board: numbered, taken hold of, altered, wiped and copied, by pointer, keyboard and menu."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import chess
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from studyboard.desk.board_mark_palette import MarkPalette
from studyboard.desk.board_view import BoardView
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeNode
from studyboard.model.marks import Mark, MarkKind
from tests.desk.small_study import small_session
from tests.desk.test_board_view import drag, move_pointer, on_screen, point, square_picture

THREAT = Mark(MarkKind.THREAT, (chess.D1, chess.H5))
SHIFT = Qt.KeyboardModifier.ShiftModifier


@pytest.fixture
def board(qtbot: QtBot, tmp_path: Path) -> Iterator[BoardView]:
    session, _ = small_session(tmp_path)
    view = on_screen(qtbot, session, Look())
    view.session = session  # type: ignore[attr-defined]
    view.setFocus()
    yield view
    session.file.close()


def draw(board: BoardView, *marks: Mark) -> None:
    board.session.do(ChangeNode(board.session.node, "marks", marks))  # type: ignore[attr-defined]
    board.set_marking(True)


def marks(board: BoardView) -> tuple[Mark, ...]:
    session = board.session  # type: ignore[attr-defined]
    return session.study.node(session.node).marks


def shift_drag(board: BoardView, origin: str, destination: str) -> None:
    QTest.mousePress(board, Qt.MouseButton.LeftButton, SHIFT, point(board, origin))
    move_pointer(board, point(board, destination))
    QTest.mouseRelease(board, Qt.MouseButton.LeftButton, SHIFT, point(board, destination))


def keys(board: BoardView, *pressed: Qt.Key | tuple[Qt.Key, Qt.KeyboardModifier]) -> None:
    for key in pressed:
        QTest.keyClick(board, *(key if isinstance(key, tuple) else (key,)))


def test_six_numbers_what_is_drawn_from_then_on(board: BoardView) -> None:
    keys(board, Qt.Key.Key_6)
    assert board.marking
    drag(board, "d1", "h5")
    drag(board, "f1", "c4")
    keys(board, Qt.Key.Key_6)
    drag(board, "g1", "f3")
    assert [mark.number for mark in marks(board)] == [1, 2, None]


def test_the_palette_numbers_too_and_shows_what_the_key_does(board: BoardView, qtbot: QtBot) -> None:
    palette = MarkPalette(board, Look())
    qtbot.addWidget(palette)
    palette.show()
    QTest.mouseClick(palette.numbers_button, Qt.MouseButton.LeftButton)
    assert board.pen.numbering
    assert board.marking
    keys(board, Qt.Key.Key_6)
    assert not palette.numbers_button.isChecked()


def test_shift_and_a_drag_put_the_end_of_a_mark_elsewhere(board: BoardView) -> None:
    draw(board, THREAT)
    shift_drag(board, "h5", "f3")
    assert marks(board) == (Mark(MarkKind.THREAT, (chess.D1, chess.F3)),)
    shift_drag(board, "d1", "b3")
    assert marks(board) == (Mark(MarkKind.THREAT, (chess.B3, chess.F3)),)
    board.session.undo()  # type: ignore[attr-defined]
    assert board.session.file.undo_label == "Move a threat"  # type: ignore[attr-defined]


def test_shift_and_a_click_alone_change_nothing(board: BoardView) -> None:
    draw(board, THREAT)
    shift_drag(board, "h5", "h5")
    assert marks(board) == (THREAT,)
    assert not board.pen.drawing


def test_a_held_mark_is_seen_where_it_would_be_put(board: BoardView) -> None:
    draw(board, THREAT)
    bare = square_picture(board, "a4")
    QTest.mousePress(board, Qt.MouseButton.LeftButton, SHIFT, point(board, "h5"))
    move_pointer(board, point(board, "a4"))
    assert square_picture(board, "a4") != bare


def test_a_mark_is_taken_hold_of_and_put_down_with_the_keyboard(board: BoardView) -> None:
    draw(board, Mark(MarkKind.TARGET, (chess.E1,)))
    keys(board, Qt.Key.Key_Return, (Qt.Key.Key_Return, SHIFT), Qt.Key.Key_Up, Qt.Key.Key_Up, Qt.Key.Key_Return)
    assert marks(board) == (Mark(MarkKind.TARGET, (chess.E3,)),)


def test_escape_leaves_a_held_mark_where_it_was(board: BoardView) -> None:
    draw(board, Mark(MarkKind.TARGET, (chess.E1,)))
    keys(board, Qt.Key.Key_Return, (Qt.Key.Key_Return, SHIFT), Qt.Key.Key_Up, Qt.Key.Key_Escape)
    assert marks(board) == (Mark(MarkKind.TARGET, (chess.E1,)),)
    assert board.marking


def test_a_figure_changes_what_a_held_mark_means(board: BoardView) -> None:
    draw(board, Mark(MarkKind.TARGET, (chess.E1,), 1))
    keys(board, Qt.Key.Key_Return, (Qt.Key.Key_Return, SHIFT), Qt.Key.Key_4)
    assert marks(board) == (Mark(MarkKind.KEY_SQUARE, (chess.E1,), 1),)
    assert board.mark_kind is MarkKind.THREAT


def test_a_square_cannot_become_a_line_and_it_is_said_why(board: BoardView, qtbot: QtBot) -> None:
    draw(board, Mark(MarkKind.TARGET, (chess.E1,)))
    with qtbot.waitSignal(board.session.refused) as told:  # type: ignore[attr-defined]
        keys(board, Qt.Key.Key_Return, (Qt.Key.Key_Return, SHIFT), Qt.Key.Key_1)
    assert told.args == ["A threat goes from one square to another: draw it anew."]


def test_delete_wipes_the_mark_at_the_cursor(board: BoardView) -> None:
    draw(board, THREAT, Mark(MarkKind.TARGET, (chess.E1,)))
    keys(board, Qt.Key.Key_Return, Qt.Key.Key_Delete)
    assert marks(board) == (THREAT,)


def choices(board: BoardView, square: str) -> dict[str, object]:
    """What the menu of a square offers, by its words without the letters that choose."""
    where = point(board, square)
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, where, board.mapToGlobal(where))
    QApplication.sendEvent(board, event)
    menu = board.findChildren(QMenu)[-1]
    return {action.text().replace("&", ""): action for action in menu.actions() if not action.isSeparator()}


def test_the_menu_of_a_square_alters_its_marks(board: BoardView) -> None:
    draw(board, THREAT)
    offered = choices(board, "h5")
    assert not offered["Threat from d1 to h5."].isEnabled()  # type: ignore[attr-defined]
    assert {"Make it a guard", "Make it a route", "Number it", "Wipe it", "Ask about h5, empty"} <= set(offered)
    offered["Make it a guard"].trigger()  # type: ignore[attr-defined]
    assert marks(board) == (Mark(MarkKind.GUARD, THREAT.squares),)
    choices(board, "h5")["Number it"].trigger()  # type: ignore[attr-defined]
    assert marks(board)[0].number == 1
    choices(board, "d1")["Wipe it"].trigger()  # type: ignore[attr-defined]
    assert marks(board) == ()


def test_the_menu_of_another_square_has_no_marks(board: BoardView) -> None:
    draw(board, THREAT)
    assert "Wipe it" not in choices(board, "a1")


def test_marks_go_on_with_the_line_and_undo_tells_it_in_words(desk: MainWindow, qtbot: QtBot) -> None:
    session = desk.session
    first, second, third = list(session.study.main_line())[:3]
    session.show(first)
    for node in (first, second, third):
        session.do(ChangeNode(node, "marks", ()))
    assert not desk.actions_by_name["copy_marks_on"].isEnabled()
    session.do(ChangeNode(first, "marks", (THREAT,)))
    assert desk.actions_by_name["copy_marks_on"].isEnabled()
    QTest.keyClick(desk, Qt.Key.Key_M, Qt.KeyboardModifier.ControlModifier | SHIFT)
    assert session.node == second
    assert session.study.node(second).marks == (THREAT,)
    assert desk.actions_by_name["undo"].text().endswith("Copy marks")
    session.show(third)
    QTest.keyClick(desk, Qt.Key.Key_M, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
    assert session.study.node(third).marks == (THREAT,)


def test_marks_are_copied_to_the_end_of_the_line_in_one_step(desk: MainWindow) -> None:
    session = desk.session
    line = list(session.study.main_line())
    before = {node: session.study.node(node).marks for node in line}
    session.show(line[-4])
    session.do(ChangeNode(line[-4], "marks", (THREAT,)))
    desk.actions_by_name["copy_marks_along"].trigger()
    assert all(THREAT in session.study.node(node).marks for node in line[-3:])
    assert session.node == line[-4]
    session.undo()
    assert {node: session.study.node(node).marks for node in line[-3:]} == {node: before[node] for node in line[-3:]}


def test_at_the_end_of_the_line_it_is_said_that_nothing_follows(desk: MainWindow) -> None:
    session = desk.session
    last = list(session.study.main_line())[-1]
    session.show(last)
    session.do(ChangeNode(last, "marks", (THREAT,)))
    desk.actions_by_name["copy_marks_on"].trigger()
    assert "no move here to copy the marks to" in desk.notice.text


def test_marks_of_one_position_are_numbered_at_once(desk: MainWindow) -> None:
    session = desk.session
    session.do(ChangeNode(session.node, "marks", (THREAT, Mark(MarkKind.TARGET, (chess.H5,)))))
    desk.actions_by_name["number_marks"].trigger()
    assert [mark.number for mark in session.study.node(session.node).marks] == [1, 2]
    assert "1: threat from d1 to h5. 2: target on h5." in desk.board_view.accessibleDescription()


def test_the_number_of_a_mark_is_read_where_the_cursor_stands(board: BoardView) -> None:
    draw(board, Mark(MarkKind.THREAT, (chess.E1, chess.E4)))
    without = board.grab().toImage()
    draw(board, Mark(MarkKind.THREAT, (chess.E1, chess.E4), number=1))
    numbered = board.grab().toImage()
    columns, rows = range(numbered.width()), range(numbered.height())
    disc = [(x, y) for x in columns for y in rows if numbered.pixel(x, y) != without.pixel(x, y)]
    keys(board, Qt.Key.Key_Return)
    assert board.hand.cursor == chess.E1
    pointed = board.grab().toImage()
    assert pointed != numbered
    # The rim of the disc lets through a little of what is under it.
    assert sum(pointed.pixel(x, y) == numbered.pixel(x, y) for x, y in disc) > 0.85 * len(disc) > 0
