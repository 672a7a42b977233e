"""Rehearsing at the desk: one key drives the talk, the board may wander, and one key comes back."""

from __future__ import annotations

from pathlib import Path

import chess
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.desk.opening import Opened
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
    assert desk.prompter._late.text() == "20 s behind"


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
