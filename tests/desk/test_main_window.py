"""The whole desk, driven by keys and mouse as a presenter would."""

from __future__ import annotations

import shutil
from pathlib import Path

import chess
import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.actions import ACTIONS, MENUS
from studyboard.desk.main_window import MainWindow
from studyboard.desk.opening import Opened
from studyboard.example import example_folder
from studyboard.model.edits import ChangeHeaders, ChangeSlot
from studyboard.model.node import Place
from studyboard.model.order import running_order
from studyboard.store.study_file import StudyFile


def press(qtbot: QtBot, desk: MainWindow, name: str) -> None:
    """Choose an action of the desk as its menu would."""
    action = desk.actions_by_name[name]
    assert action.isEnabled(), f"{name} cannot be chosen here"
    action.trigger()


def test_every_action_has_a_place_a_help_and_a_command(desk: MainWindow) -> None:
    for spec in ACTIONS:
        assert spec.menu in MENUS
        assert spec.help
        assert callable(desk.commands.of(spec.name))


def test_no_two_actions_share_a_key() -> None:
    keys = [key for spec in ACTIONS for key in spec.keys]
    assert len(keys) == len(set(keys))


def test_keys_step_forward_and_back_on_the_board(qtbot: QtBot, desk: MainWindow) -> None:
    desk.lanes.setFocus()
    qtbot.keyClick(desk, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert desk.session.board.piece_at(chess.E4) == chess.Piece.from_symbol("P")
    qtbot.keyClick(desk, Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier)
    assert desk.session.board == chess.Board()


def test_a_move_that_is_not_on_the_tree_becomes_a_side_line_and_undo_takes_it_back(
    qtbot: QtBot, desk: MainWindow
) -> None:
    nodes = len(desk.session.study.nodes)
    desk.session.play(chess.Move.from_uci("g1f3"))
    assert len(desk.session.study.nodes) == nodes + 1
    assert not desk.session.study.on_main_line(desk.session.node)
    press(qtbot, desk, "undo")
    assert len(desk.session.study.nodes) == nodes
    assert desk.session.node in desk.session.study.nodes


def test_a_side_line_can_be_promoted_hidden_and_deleted(qtbot: QtBot, desk: MainWindow) -> None:
    study = desk.session.study
    desk.session.play(chess.Move.from_uci("d2d4"))
    side_line = desk.session.node
    press(qtbot, desk, "hide_side_line")
    assert study.node(side_line).telling.place is Place.HIDDEN
    assert side_line not in {visit.node for visit in running_order(study)}
    press(qtbot, desk, "tell_after")
    assert side_line in {visit.node for visit in running_order(study)}
    press(qtbot, desk, "promote")
    assert study.on_main_line(side_line)
    press(qtbot, desk, "delete_branch")
    assert side_line not in study.nodes


def test_the_talk_is_fitted_to_its_slot_and_the_desk_says_how_it_came_out(qtbot: QtBot, desk: MainWindow) -> None:
    before = dict(desk.session.study.nodes)
    press(qtbot, desk, "fit_to_slot")
    assert desk.session.timeline.seconds == pytest.approx(desk.session.study.slot, abs=0.01)
    assert "The talk fits its slot" in desk.notice.text
    desk.session.do(ChangeSlot(120.0))
    press(qtbot, desk, "fit_to_slot")
    assert "is still" in desk.notice.text
    assert "Nobody is believed to speak faster" in desk.notice.text
    for label in ("Fit the talk to its slot", "Set the slot", "Fit the talk to its slot"):
        assert desk.session.file.undo_label == label
        press(qtbot, desk, "undo")
    assert desk.session.study.nodes == before


def test_a_locked_beat_keeps_its_length_when_the_talk_is_fitted(qtbot: QtBot, desk: MainWindow) -> None:
    session = desk.session
    node = next(number for number in session.study.main_line() if session.study.nodes[number].spoken)
    session.show(node)
    press(qtbot, desk, "lock_length")
    locked = session.study.nodes[node].intended
    assert locked is not None
    session.do(ChangeSlot(session.timeline.seconds * 1.2))
    press(qtbot, desk, "fit_to_slot")
    assert session.study.nodes[node].intended == locked
    press(qtbot, desk, "unlock_lengths")
    assert not session.study.nodes[node].locked


def test_the_game_on_the_clipboard_is_told_with_what_pgn_has_no_room_for(qtbot: QtBot, desk: MainWindow) -> None:
    press(qtbot, desk, "copy_pgn")
    qtbot.waitUntil(lambda: desk.notice.text == "The game is on the clipboard.")
    assert QApplication.clipboard().text().startswith('[Event "Sail Loft Evening League"]')
    desk.session.do(ChangeHeaders((("Annotator", "a" * 256),)))
    press(qtbot, desk, "copy_pgn")
    qtbot.waitUntil(lambda: "The Annotator tag has 256 characters and PGN allows 255" in desk.notice.text)


def test_a_cut_branch_is_pasted_elsewhere(qtbot: QtBot, desk: MainWindow) -> None:
    session = desk.session
    session.play(chess.Move.from_uci("g1f3"))
    session.play(chess.Move.from_uci("g8f6"))
    moved = session.node
    press(qtbot, desk, "cut_branch")
    session.show(session.study.root)
    session.play(chess.Move.from_uci("d2d4"))
    press(qtbot, desk, "paste_branch")
    assert session.study.node(moved).parent == session.node


def test_what_cannot_be_pasted_is_told_and_nothing_changes(qtbot: QtBot, desk: MainWindow) -> None:
    session = desk.session
    session.show(session.study.node(session.study.root).children[0])
    press(qtbot, desk, "copy_branch")
    before = len(session.study.nodes)
    press(qtbot, desk, "paste_branch")
    assert len(session.study.nodes) == before
    assert "not a legal move" in desk.notice.text


def test_the_bar_says_how_much_the_talk_is_over(qtbot: QtBot, desk: MainWindow) -> None:
    desk.session.do(ChangeSlot(60.0))
    with qtbot.waitSignal(desk.session.planned):
        pass
    assert "over" in desk.top_bar._slot.text()
    assert desk.top_bar._slot.text().startswith("Slot 1:00")


def test_typing_is_stored_without_saving(qtbot: QtBot, desk: MainWindow, tmp_path: Path) -> None:
    press(qtbot, desk, "forward")
    node = desk.session.node
    press(qtbot, desk, "edit_line")
    qtbot.keyClicks(QApplication.focusWidget(), "Hello there.")
    desk.close()
    with StudyFile.open(tmp_path / "example.studyboard") as again:
        assert "Hello there." in again.study.node(node).spoken.text


def test_a_dropped_game_becomes_a_study(qtbot: QtBot, desk: MainWindow, tmp_path: Path) -> None:
    game = tmp_path / "dropped.pgn"
    shutil.copy(example_folder() / "sail_loft_evening.pgn", game)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(game))])
    event = QDropEvent(
        QPointF(10, 10),
        Qt.DropAction.CopyAction,
        data,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    with qtbot.waitSignal(desk.session.opened):
        desk.dropEvent(event)
    assert desk.session.file.path.parent == tmp_path / "studies"
    assert len(list(desk.session.study.main_line())) == 54


def test_a_file_that_is_no_game_is_refused_with_a_sentence(desk: MainWindow, tmp_path: Path) -> None:
    junk = tmp_path / "notes.txt"
    junk.write_text("shopping: bread, milk", encoding="utf-8")
    path = desk.session.file.path
    desk.open_path(junk)
    assert desk.session.file.path == path
    assert "notes.txt" in desk.notice.text


def test_places_that_could_not_be_read_are_told_with_line_and_column(desk: MainWindow, tmp_path: Path) -> None:
    broken = tmp_path / "broken.pgn"
    broken.write_text('[White "A"]\n[Black "B"]\n\n1. e4 e5 2. Ke3 *\n', encoding="utf-8")
    desk.open_path(broken)
    assert "line 4" in desk.notice.text


def test_save_as_goes_on_in_the_copy(desk: MainWindow, tmp_path: Path) -> None:
    desk.commands.of("forward")()
    node = desk.session.node
    desk.save_as(str(tmp_path / "copy.studyboard"))
    assert desk.session.file.path.name == "copy.studyboard"
    assert desk.session.node == node
    assert desk.session.file.can_undo is False


def test_the_second_window_on_a_file_is_refused(desk: MainWindow, tmp_path: Path) -> None:
    other = StudyFile.create(tmp_path / "other.studyboard")
    desk.open_path(tmp_path / "other.studyboard")
    assert "other.studyboard" in desk.notice.text
    assert desk.session.file.path.name == "example.studyboard"
    other.close()


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_both_themes_dress_the_desk(desk: MainWindow, theme: str) -> None:
    desk.look.choose_theme(theme)
    assert desk.look.color("paper").name().upper() in desk.styleSheet().upper()


def test_opening_another_study_shows_its_start(desk: MainWindow, tmp_path: Path) -> None:
    desk.commands.of("forward")()
    desk.show_opened(Opened(StudyFile.create(tmp_path / "empty.studyboard")))
    assert desk.session.node == desk.session.study.root
    assert desk.windowTitle().startswith("empty")


def test_stepping_by_beats_follows_the_running_order(qtbot: QtBot, desk: MainWindow) -> None:
    stretches = desk.session.timeline.stretches
    desk._show_beat(0)
    for index in range(1, 12):
        press(qtbot, desk, "next_beat")
        assert desk.session.node == stretches[index].node
