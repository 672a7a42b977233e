"""Facts on demand: what a piece does and what the last move changed, seen on the board, read beside it."""

from __future__ import annotations

import chess
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel

from studyboard.board.on_demand import Aspect
from studyboard.desk.main_window import MainWindow
from tests.desk.test_board_view import click, square_picture


def start(desk: MainWindow) -> None:
    """Show the position after the first two half-moves."""
    desk.session.show(list(desk.session.study.main_line())[2])


def words(desk: MainWindow) -> str:
    return desk.facts.findChild(QLabel).text()


def test_f2_asks_about_the_piece_that_moved_last_and_escape_ends_it(desk: MainWindow) -> None:
    start(desk)
    bare, facts = desk.board_view.grab().toImage(), words(desk)
    square = desk.board_view.asked_square
    assert square == desk.session.study.node(desk.session.node).move.to_square
    QTest.keyClick(desk, Qt.Key.Key_F2)
    assert desk.board_view.answers.square == square
    assert desk.board_view.grab().toImage() != bare
    assert "Escape ends this." in words(desk)
    assert desk.facts.accessibleDescription() == desk.board_view.answers.words
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Escape)
    assert desk.board_view.answers.shown == ()
    assert words(desk) == facts


def test_the_cursor_asks_on_from_square_to_square(desk: MainWindow) -> None:
    start(desk)
    board = desk.board_view
    QTest.keyClick(desk, Qt.Key.Key_F2)
    assert board.hasFocus()
    first = board.answers.square
    QTest.keyClick(board, Qt.Key.Key_Up)
    assert board.answers.square == first + 8
    QTest.keyClick(board, Qt.Key.Key_Escape)
    assert board.answers.shown == ()
    assert board.hand.cursor == first + 8
    QTest.keyClick(board, Qt.Key.Key_Up)
    assert board.answers.shown == ()


def test_shift_f2_shows_what_the_last_move_changed_and_again_ends_it(desk: MainWindow) -> None:
    start(desk)
    QTest.keyClick(desk, Qt.Key.Key_F2, Qt.KeyboardModifier.ShiftModifier)
    aspects = {answer.aspect for answer in desk.board_view.answers.shown}
    assert {Aspect.SUBJECT, Aspect.COVERED} <= aspects
    QTest.keyClick(desk, Qt.Key.Key_F2, Qt.KeyboardModifier.ShiftModifier)
    assert desk.board_view.answers.shown == ()


def test_at_the_start_no_move_can_be_asked_about(desk: MainWindow) -> None:
    desk.session.show(desk.session.study.root)
    desk.actions_by_name["ask_move"].trigger()
    assert desk.board_view.answers.shown == ()
    assert "No move has led" in desk.notice.text


def test_a_step_and_a_click_on_the_board_end_it(desk: MainWindow) -> None:
    start(desk)
    desk.actions_by_name["ask_piece"].trigger()
    desk.actions_by_name["forward"].trigger()
    assert desk.board_view.answers.shown == ()
    desk.actions_by_name["ask_move"].trigger()
    assert desk.board_view.answers.shown
    click(desk.board_view, "a6")
    assert desk.board_view.answers.shown == ()


def test_the_marks_leave_their_room_to_the_answer_and_get_it_back(desk: MainWindow) -> None:
    start(desk)
    QApplication.processEvents()
    height = desk.mark_palette.height()
    desk.actions_by_name["ask_piece"].trigger()
    assert desk.facts.height() > height
    assert desk.mark_palette.height() < height
    desk.actions_by_name["ask_piece"].trigger()
    assert desk.mark_palette.height() == height


def test_while_rehearsing_the_keyboard_stays_with_the_talk(desk: MainWindow) -> None:
    desk.rehearse_stage()
    desk.performance.start()
    desk.session.show(list(desk.session.study.main_line())[2])
    QTest.keyClick(desk, Qt.Key.Key_F2)
    assert desk.board_view.answers.shown
    assert not desk.board_view.hasFocus()
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    assert desk.board_view.answers.shown == ()
    assert desk.stage == "rehearse"
    desk.performance.stop()


def test_where_a_piece_may_go_is_shown_or_not_as_one_likes(desk: MainWindow) -> None:
    desk.session.show(desk.session.study.root)
    board = desk.board_view
    assert desk.actions_by_name["legal_targets"].isChecked()
    bare = square_picture(board, "e4")
    click(board, "e2")
    assert square_picture(board, "e4") != bare
    desk.actions_by_name["legal_targets"].trigger()
    assert not desk.actions_by_name["legal_targets"].isChecked()
    assert square_picture(board, "e4") == bare
    assert board.hand.targets == {chess.E3, chess.E4}
    assert desk.settings.value("board/legal_targets") == "false"


def test_further_facts_are_told_as_one_likes_and_that_is_remembered(desk: MainWindow) -> None:
    desk.session.show(list(desk.session.study.main_line())[2])
    desk.facts.refresh()
    few = len(desk.facts.facts)
    QTest.keyClick(desk, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert len(desk.facts.facts) > few
    assert "now covers" in desk.facts.accessibleDescription()
    assert desk.settings.value("board/further_facts") == "true"
    assert desk.actions_by_name["further_facts"].isChecked()
    desk.actions_by_name["further_facts"].trigger()
    assert len(desk.facts.facts) == few
