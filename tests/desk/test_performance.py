"""Rehearsing at the desk: one key drives the talk, the board may wander, and one key comes back."""

from __future__ import annotations

from pathlib import Path

import chess
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.desk.opening import Opened
from studyboard.model.edits import RemoveBranch
from studyboard.model.script import Part
from studyboard.store.study_file import StudyFile


def test_one_key_walks_the_whole_running_order(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    seen = []
    for stop in desk.performance.run.stops:
        qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
        assert desk.session.node == stop.visit.node
        seen.append(desk.session.node)
    assert len(seen) > 60
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    assert not desk.performance.active


def test_wandering_off_and_back_with_one_key(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    for _ in range(5):
        qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    left = desk.session.node
    move = next(iter(desk.session.board.legal_moves))
    desk.session.play(move)
    assert desk.performance.run.wandering
    assert "Backspace" in desk.prompter._press.text()
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Backspace)
    assert desk.session.node == left
    assert not desk.performance.run.wandering


def test_going_on_while_wandering_takes_the_talk_up_again(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    for _ in range(4):
        qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    expected = desk.performance.run.next_stop
    desk.session.show(desk.session.study.root)
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    assert expected is not None
    assert desk.session.node == expected.visit.node


def test_the_seconds_of_each_beat_are_kept(qtbot: QtBot, desk: MainWindow) -> None:
    now = [100.0]
    desk.rehearse_stage()
    desk.performance.start(clock=lambda: now[0])
    now[0] += 31.5
    desk.performance.advance()
    now[0] += 4.25
    desk.performance.stop()
    rehearsed = desk.session.study.rehearsed
    assert rehearsed[Part.GREETING] == 31.5
    assert 4.25 in rehearsed.values()


def test_the_prompter_shows_the_line_and_what_comes_next(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    assert "welcome to the Sail Loft" in desk.prompter._now.text()
    assert "1. e4" in desk.prompter._press.text()
    assert "Imani opens" in desk.prompter._next.text()


def test_the_clock_tells_how_far_behind_the_talk_is(qtbot: QtBot, desk: MainWindow) -> None:
    now = [0.0]
    desk.rehearse_stage()
    desk.performance.start(clock=lambda: now[0])
    now[0] = desk.performance.run.planned[0] + 20.0
    desk.performance.ticked.emit()
    assert desk.prompter._late.shorter == "20 s behind"


def test_leaving_the_rehearsal_ends_it(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Escape)
    assert desk.stage == "write"
    assert not desk.performance.active


def test_an_empty_study_has_nothing_to_rehearse(qtbot: QtBot, desk: MainWindow, tmp_path: Path) -> None:
    desk.show_opened(Opened(StudyFile.create(tmp_path / "nothing.studyboard")))
    desk.rehearse_stage()
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    assert "Nothing to tell yet" in desk.prompter._where.text()
    assert desk.session.board == chess.Board()


def test_a_rehearsal_begins_with_the_beat_that_was_chosen_on_the_ruler(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    desk.ruler.beat_chosen.emit(7)
    chosen = desk.performance.run.beats[7]
    assert desk.session.node == chosen.visits[0].node
    assert chosen.spoken.text in desk.prompter._now.text()
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    assert desk.performance.run.beat == 7


def test_the_stage_begins_with_the_talk_and_the_board_shows_it(qtbot: QtBot, desk: MainWindow) -> None:
    desk.session.show(list(desk.session.study.main_line())[20])
    desk.rehearse_stage()
    assert desk.session.node == desk.session.study.root
    assert "welcome to the Sail Loft" in desk.prompter._now.text()


def test_an_edit_in_the_middle_of_a_rehearsal_keeps_the_place(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    for _ in range(12):
        qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    key = desk.performance.run.beat_key
    later = list(desk.session.study.main_line())[30]
    desk.session.do(RemoveBranch(later))
    assert desk.performance.run.beat_key == key
    assert all(
        isinstance(beat.key, Part) or beat.key in desk.session.study.nodes for beat in desk.performance.run.beats
    )


def test_moves_tried_in_a_rehearsal_are_not_told(qtbot: QtBot, desk: MainWindow) -> None:
    planned = desk.session.timeline.seconds
    desk.rehearse_stage()
    for _ in range(5):
        qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    for _ in range(2):
        tried = next(
            move
            for move in desk.session.board.legal_moves
            if desk.session.positions.child_by_move(desk.session.node, move) is None
        )
        desk.session.play(tried)
    assert desk.session.timeline.seconds == planned
    qtbot.keyClick(desk.prompter, Qt.Key.Key_Escape)
    desk.session.play(next(iter(desk.session.board.legal_moves)))
    assert not desk.session.trying


def test_a_piece_moved_with_the_pointer_leaves_space_with_the_talk(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    for _ in range(3):
        qtbot.keyClick(desk.prompter, Qt.Key.Key_Space)
    wanted = desk.performance.run.next_stop
    board = desk.board_view
    move = next(iter(desk.session.board.legal_moves))
    for square in (move.from_square, move.to_square):
        centre = board.place.centre(square).toPoint()
        qtbot.mouseClick(board, Qt.MouseButton.LeftButton, pos=centre)
    assert desk.performance.run.wandering
    widget = QApplication.focusWidget()
    assert widget is not None
    qtbot.keyClick(widget, Qt.Key.Key_Space)
    assert wanted is not None
    assert desk.session.node == wanted.visit.node
