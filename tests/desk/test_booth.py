"""Recording at the desk, by the buttons and keys that a presenter uses, through a real virtual microphone."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

import chess
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QScrollArea
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.model.node import Place
from tests.sound import virtual_microphone

sound_server = virtual_microphone.sound_server


@pytest.fixture
def booth_desk(sound_server: object, desk: MainWindow, qtbot: QtBot) -> Iterator[MainWindow]:
    """The desk in the Record stage, with its microphone open."""
    desk.record_stage()
    qtbot.waitUntil(lambda: "Speak to see the level" in desk.booth.status.text(), timeout=15_000)
    yield desk
    desk.booth.close_down()


def press_space(qtbot: QtBot) -> None:
    """The key goes to whatever has the keyboard."""
    widget = QApplication.focusWidget()
    assert widget is not None
    qtbot.keyClick(widget, Qt.Key.Key_Space)


def until_recorded(qtbot: QtBot, desk: MainWindow, seconds: float) -> None:
    """Wait until so much of the take has been heard."""
    qtbot.waitUntil(lambda: desk.booth.recorder.samples >= seconds * 48_000, timeout=20_000)


def take_beat(desk: MainWindow, node: int) -> object:
    """The beat that was told when the only take showed this node."""
    (take,) = desk.session.study.takes.values()
    return next(event.beat for event in take.events if event.node == node)


def finished(qtbot: QtBot, desk: MainWindow, stop: Callable[[], object]) -> None:
    """Stop, and wait until the take is kept."""
    stop()
    qtbot.waitUntil(lambda: not desk.recording and not desk.performance.active, timeout=20_000)


def test_space_after_a_click_on_record_goes_on_and_the_take_has_its_moves(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    qtbot.mouseClick(desk.booth.record_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: desk.performance.active, timeout=15_000)
    for _ in range(3):
        press_space(qtbot)
    until_recorded(qtbot, desk, 1.0)
    assert desk.recording
    finished(qtbot, desk, desk.actions_by_name["start_or_stop"].trigger)
    (take,) = desk.session.study.takes.values()
    assert [event.node for event in take.events] == [stop.visit.node for stop in desk.performance.run.stops[:4]]
    assert len({event.beat for event in take.events}) >= 2


def test_space_in_the_record_stage_begins_a_take(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    assert "begins the take" in desk.prompter._press.text()
    press_space(qtbot)
    qtbot.waitUntil(lambda: desk.performance.active, timeout=15_000)
    assert desk.recording
    until_recorded(qtbot, desk, 0.5)
    finished(qtbot, desk, desk.booth.start_or_stop)
    assert len(desk.session.study.takes) == 1
    assert next(iter(desk.session.study.takes.values())).events


def test_undo_takes_no_take_away_and_a_take_costs_no_redo(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    desk.session.play(chess.Move.from_uci("d2d4"))
    desk.session.undo()
    press_space(qtbot)
    qtbot.waitUntil(lambda: desk.performance.active, timeout=15_000)
    until_recorded(qtbot, desk, 0.5)
    finished(qtbot, desk, desk.booth.start_or_stop)
    assert desk.session.file.can_redo
    desk.actions_by_name["undo"].trigger()
    assert len(desk.session.study.takes) == 1


def test_a_move_tried_in_a_take_stays_out_of_the_talk(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    press_space(qtbot)
    qtbot.waitUntil(lambda: desk.performance.active, timeout=15_000)
    press_space(qtbot)
    tried = next(move for move in desk.session.board.legal_moves if move.uci() == "c7c6")
    desk.session.play(tried)
    assert desk.session.study.node(desk.session.node).telling.place is Place.HIDDEN
    assert desk.performance.run.wandering
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backspace)
    assert not desk.performance.run.wandering
    until_recorded(qtbot, desk, 0.5)
    finished(qtbot, desk, desk.booth.start_or_stop)


def test_a_take_is_played_with_the_board_following_and_can_be_discarded(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    press_space(qtbot)
    qtbot.waitUntil(lambda: desk.performance.active, timeout=15_000)
    until_recorded(qtbot, desk, 0.3)
    press_space(qtbot)
    press_space(qtbot)
    shown = desk.session.node
    until_recorded(qtbot, desk, 0.8)
    finished(qtbot, desk, desk.booth.start_or_stop)
    desk.session.show(desk.session.study.root)
    qtbot.mouseClick(desk.booth.play_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: desk.session.node == shown, timeout=15_000)
    assert desk.performance.run.beats[desk.performance.beat].key == take_beat(desk, shown)
    qtbot.mouseClick(desk.booth.discard_button, Qt.MouseButton.LeftButton)
    take = next(iter(desk.session.study.takes.values()))
    assert not take.kept
    qtbot.mouseClick(desk.booth.discard_button, Qt.MouseButton.LeftButton)
    assert next(iter(desk.session.study.takes.values())).kept


def test_the_level_moves_when_somebody_speaks(
    qtbot: QtBot, booth_desk: MainWindow, sound_server: virtual_microphone.SoundServer, tmp_path: Path
) -> None:
    voice = tmp_path / "voice.wav"
    subprocess.run(["espeak-ng", "-w", str(voice), "Good evening, and welcome."], check=True)
    with subprocess.Popen(["paplay", "-d", "mouth", str(voice)], env=os.environ | sound_server.environment) as speaking:
        qtbot.waitUntil(lambda: booth_desk.booth.verdict.text() in ("good", "very loud"), timeout=15_000)
        # What measures loudness takes some seconds to load.
        qtbot.waitUntil(lambda: "LUFS" in booth_desk.booth.loudness.text(), timeout=30_000)
        speaking.terminate()


def test_what_the_level_means_pushes_nothing_out_of_the_booth(booth_desk: MainWindow) -> None:
    desk = booth_desk
    desk.resize(1366, 768)
    desk.booth.loudness.setText("−15 LUFS, peaks −10 dBTP")
    desk.booth.meter.show_clipped()
    assert desk.booth.meter.verdict == "cut off"
    desk.booth.verdict.setText(desk.booth.meter.verdict)
    QApplication.processEvents()
    before = desk.booth.minimumSizeHint().width()
    desk.booth.verdict.setText(40 * "far too loud ")
    QApplication.processEvents()
    assert desk.booth.minimumSizeHint().width() <= before + 3 * desk.booth.verdict.sizeHint().height()
    (around,) = [a for a in desk.findChildren(QScrollArea) if a.isAncestorOf(desk.booth)]
    assert around.horizontalScrollBar().maximum() == 0
