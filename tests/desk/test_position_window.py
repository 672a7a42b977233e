"""Setting a position up, with real drags, clicks and keys, and beginning a study there."""

from __future__ import annotations

from collections.abc import Iterator

import chess
import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.board.set_up import EMPTY, SetUp, fen_of, set_up_of
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.desk.position_window import PositionWindow
from studyboard.model.study import Study
from studyboard.store.study_file import StudyFile
from tests.desk.test_board_view import move_pointer
from tests.desk.text_size import text_scaled

KINGS = "4k3/8/8/8/8/8/8/4K3 w - - 0 1"
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def window(qtbot: QtBot, still_look: Look) -> Iterator[PositionWindow]:
    window = PositionWindow(still_look, set_up_of(KINGS), "New from a position", "Begin here")
    qtbot.addWidget(window)
    window.show()
    with qtbot.waitActive(window):
        window.activateWindow()
    yield window
    window.close()


def at(window: PositionWindow, where: str) -> QPoint:
    """The middle of a square, or of a piece in the tray ("N", "q")."""
    board = window.board
    if where in chess.SQUARE_NAMES:
        return board.place.centre(chess.parse_square(where)).toPoint()
    return board.tray_rect(chess.Piece.from_symbol(where)).center().toPoint()


def drag(window: PositionWindow, origin: QPoint, to: QPoint) -> None:
    QTest.mousePress(window.board, LEFT, pos=origin)
    move_pointer(window.board, (origin + to) / 2)
    move_pointer(window.board, to)
    QTest.mouseRelease(window.board, LEFT, pos=to)


def click(window: PositionWindow, where: str, button: Qt.MouseButton = LEFT) -> None:
    QTest.mouseClick(window.board, button, pos=at(window, where))


def pieces(window: PositionWindow) -> str:
    return window.set_up.pieces


def test_a_piece_is_dragged_from_the_tray_over_the_board_and_off_it(window: PositionWindow) -> None:
    drag(window, at(window, "N"), at(window, "f3"))
    assert pieces(window) == "4k3/8/8/8/8/5N2/8/4K3"
    drag(window, at(window, "f3"), at(window, "d4"))
    assert pieces(window) == "4k3/8/8/8/3N4/8/8/4K3"
    drag(window, at(window, "d4"), QPoint(window.board.width() - 3, window.board.height() - 3))
    assert pieces(window) == "4k3/8/8/8/8/8/8/4K3"


def test_a_chosen_piece_is_put_by_clicks_and_taken_away_by_another(window: PositionWindow) -> None:
    click(window, "p")
    click(window, "a7")
    click(window, "b7")
    assert pieces(window) == "4k3/pp6/8/8/8/8/8/4K3"
    click(window, "a7")
    assert pieces(window) == "4k3/1p6/8/8/8/8/8/4K3"
    click(window, "p")
    assert window.board.chosen is None
    click(window, "c7")
    click(window, "b7", Qt.MouseButton.RightButton)
    assert pieces(window) == "4k3/8/8/8/8/8/8/4K3"


def test_the_keyboard_puts_and_takes_pieces_at_its_cursor(window: PositionWindow) -> None:
    board = window.board
    assert board.hasFocus()
    assert board.cursor_square == chess.E4
    QTest.keyClick(board, Qt.Key.Key_Up)
    QTest.keyClick(board, "Q", Qt.KeyboardModifier.ShiftModifier)
    QTest.keyClick(board, Qt.Key.Key_Right)
    QTest.keyClick(board, "r")
    assert pieces(window) == "4k3/8/8/4Qr2/8/8/8/4K3"
    QTest.keyClick(board, Qt.Key.Key_Delete)
    assert pieces(window) == "4k3/8/8/4Q3/8/8/8/4K3"


def test_validity_is_told_as_one_goes_and_the_button_waits_for_it(window: PositionWindow) -> None:
    assert window.verdict.text() == "✓ This position can be played on. Neither side has enough to give mate."
    assert window.ok.isEnabled()
    click(window, "e8", Qt.MouseButton.RightButton)
    assert window.verdict.text() == "✗ Black has no king."
    assert not window.ok.isEnabled()
    window.undo()
    drag(window, at(window, "R"), at(window, "h8"))
    assert "Black is in check from the rook on h8" in window.verdict.text()
    QTest.mouseClick(window.turns[chess.BLACK], LEFT)
    assert window.ok.isEnabled()


def test_undo_and_redo_go_through_every_change(window: PositionWindow) -> None:
    begun = window.set_up
    drag(window, at(window, "N"), at(window, "f3"))
    QTest.mouseClick(window.acts["Clear"], LEFT)
    assert window.set_up == EMPTY
    window.board.setFocus()
    QTest.keyClick(window.board, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(window.board, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.set_up == begun
    assert not window.acts["Undo"].isEnabled()
    QTest.keyClick(window.board, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert pieces(window) == "4k3/8/8/8/8/5N2/8/4K3"
    QTest.mouseClick(window.acts["Redo"], LEFT)
    assert window.set_up == EMPTY


def test_castling_can_be_ticked_only_where_king_and_rook_stand_for_it(window: PositionWindow) -> None:
    assert not any(box.isEnabled() for box in window.castling.values())
    QTest.mouseClick(window.acts["Start"], LEFT)
    assert all(box.isChecked() for box in window.castling.values())
    QTest.mouseClick(window.castling["Q"], LEFT, pos=QPoint(8, window.castling["Q"].height() // 2))
    assert window.set_up.castling == "Kkq"
    click(window, "h8", Qt.MouseButton.RightButton)
    assert window.set_up.castling == "Kq"
    assert not window.castling["k"].isEnabled()


def test_en_passant_offers_the_squares_that_a_pawn_can_have_passed(window: PositionWindow) -> None:
    assert not window.en_passant.isEnabled()
    window.change(set_up_of("4k3/8/8/3pP3/8/8/8/4K3 w - - 0 1"))
    assert window.en_passant.itemText(1) == "d6"
    window.en_passant.setFocus()
    QTest.keyClick(window.en_passant, Qt.Key.Key_Down)
    assert window.set_up.en_passant == chess.D6


def test_counters_and_fen_are_the_same_position(window: PositionWindow) -> None:
    window.number.setValue(41)
    window.quiet.setValue(7)
    assert window.fen.text() == "4k3/8/8/8/8/8/8/4K3 w - - 7 41"
    window.fen.setFocus()
    window.fen.setText("8/8/4k3/8/4P3/4K3/8/8 b - - 0 50")
    QTest.keyClick(window.fen, Qt.Key.Key_Return)
    assert window.isVisible()
    assert window.set_up == set_up_of("8/8/4k3/8/4P3/4K3/8/8 b - - 0 50")
    assert window.turns[chess.BLACK].isChecked()


def test_what_is_pasted_is_taken_or_it_is_said_why_not(window: PositionWindow) -> None:
    QGuiApplication.clipboard().setText("8/8/4k3/8/4P3/4K3/8/8 b - - 0 50")
    QTest.mouseClick(window.acts["Paste FEN"], LEFT)
    assert window.set_up.number == 50
    QGuiApplication.clipboard().setText("a shopping list")
    QTest.mouseClick(window.acts["Paste FEN"], LEFT)
    assert window.verdict.text().startswith("✗ That is no position")
    assert window.set_up.number == 50
    QTest.mouseClick(window.acts["Copy FEN"], LEFT)
    assert QGuiApplication.clipboard().text() == fen_of(window.set_up)


def test_mirror_exchange_and_flip(window: PositionWindow) -> None:
    drag(window, at(window, "N"), at(window, "b1"))
    QTest.mouseClick(window.acts["Mirror"], LEFT)
    assert pieces(window) == "3k4/8/8/8/8/8/8/3K2N1"
    QTest.mouseClick(window.acts["Exchange"], LEFT)
    assert pieces(window) == "3k2n1/8/8/8/8/8/8/3K4"
    assert window.set_up.turn == chess.BLACK
    before, shown = at(window, "a1"), window.set_up
    QTest.mouseClick(window.acts["Flip"], LEFT)
    assert at(window, "h8") == before
    assert window.set_up == shown


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_no_field_is_cut_off_at_its_side(window: PositionWindow, still_look: Look, factor: float) -> None:
    with text_scaled(still_look, factor):
        window.hide()
        window.show()
        QApplication.processEvents()
        for field in (*window.acts.values(), *window.castling.values(), window.number, window.en_passant):
            right = field.mapTo(window, field.rect().topRight()).x()
            assert right <= window.rect().right()
            assert field.width() >= field.minimumSizeHint().width()


def accept_with(fen: str) -> None:
    """Set this up in the window that opens next, and take it over."""

    def act() -> None:
        shown = QApplication.activeModalWidget()
        assert isinstance(shown, PositionWindow)
        shown.change(set_up_of(fen))
        QTest.mouseClick(shown.ok, LEFT)

    QTimer.singleShot(0, act)


def test_a_new_study_begins_with_the_position(desk: MainWindow) -> None:
    QGuiApplication.clipboard().clear()
    before = desk.session.file.path
    accept_with("8/8/4k3/8/4P3/4K3/8/8 b - - 0 50")
    desk.actions_by_name["new_from_position"].trigger()
    assert desk.session.file.path != before
    assert desk.session.board.fen() == "8/8/4k3/8/4P3/4K3/8/8 b - - 0 50"


def test_the_window_begins_with_a_position_from_the_clipboard(desk: MainWindow) -> None:
    QGuiApplication.clipboard().setText("8/8/4k3/8/4P3/4K3/8/8 b - - 0 50")
    seen = []

    def look() -> None:
        shown = QApplication.activeModalWidget()
        assert isinstance(shown, PositionWindow)
        seen.append(shown.set_up)
        shown.reject()

    QTimer.singleShot(0, look)
    desk.actions_by_name["new_from_position"].trigger()
    assert seen == [set_up_of("8/8/4k3/8/4P3/4K3/8/8 b - - 0 50")]


def test_the_start_position_changes_only_while_no_move_is_played_and_undo_brings_it_back(
    desk: MainWindow, tmp_path_factory: pytest.TempPathFactory
) -> None:
    assert not desk.actions_by_name["change_start"].isEnabled()
    desk.session.open(StudyFile.create(tmp_path_factory.mktemp("empty") / "empty.studyboard", Study()))
    assert desk.actions_by_name["change_start"].isEnabled()
    accept_with(KINGS)
    desk.actions_by_name["change_start"].trigger()
    assert desk.session.board.fen() == KINGS
    assert desk.board_view.board.fen() == KINGS
    assert desk.session.study.headers["SetUp"] == "1"
    assert desk.session.file.undo_label == "Change the start position"
    accept_with(fen_of(SetUp()))
    desk.actions_by_name["change_start"].trigger()
    assert "FEN" not in desk.session.study.headers
    desk.session.undo()
    assert desk.board_view.board.fen() == KINGS
    desk.session.play(chess.Move.from_uci("e1e2"))
    assert not desk.actions_by_name["change_start"].isEnabled()
