"""Punching in and out, line by line, with a pre-roll, and a word said again, through a real virtual microphone."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.model.takes import Span
from studyboard.timing.recorded import put_together
from tests.sound import virtual_microphone

sound_server = virtual_microphone.sound_server
PATIENCE = 20_000


@pytest.fixture
def booth_desk(sound_server: object, desk: MainWindow, qtbot: QtBot) -> Iterator[MainWindow]:
    """The desk in the Record stage, with its microphone open."""
    desk.record_stage()
    qtbot.waitUntil(lambda: "Speak to see the level" in desk.booth.status.text(), timeout=PATIENCE)
    yield desk
    desk.booth.close_down()


def space(qtbot: QtBot) -> None:
    """The key goes to whatever has the keyboard."""
    widget = QApplication.focusWidget()
    assert widget is not None
    qtbot.keyClick(widget, Qt.Key.Key_Space)


def begin(qtbot: QtBot, desk: MainWindow, seconds: float = 0.4) -> None:
    """Begin a take and speak for so long."""
    space(qtbot)
    qtbot.waitUntil(lambda: desk.performance.active, timeout=PATIENCE)
    qtbot.waitUntil(lambda: desk.booth.recorder.samples >= seconds * 48_000, timeout=PATIENCE)


def tell_to_the_end(qtbot: QtBot, desk: MainWindow) -> None:
    """Press Space until the take is over by itself."""
    for _ in range(40):
        if not desk.performance.active:
            break
        space(qtbot)
    qtbot.waitUntil(lambda: not desk.recording, timeout=PATIENCE)


def told(desk: MainWindow) -> list[int | None]:
    """The take in which each of the first beats is heard."""
    return [one.take for one in put_together(desk.session.study).beats[:6]]


def test_a_take_is_punched_in_at_one_beat_and_out_behind_another(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    desk.booth.range.last.setValue(5)
    begin(qtbot, desk)
    tell_to_the_end(qtbot, desk)
    assert told(desk) == [1, 1, 1, 1, 1, None]
    desk.booth.range.first.setValue(3)
    desk.booth.range.last.setValue(4)
    assert desk.performance.beat == 2
    desk.prompter.setFocus()
    begin(qtbot, desk)
    tell_to_the_end(qtbot, desk)
    assert told(desk) == [1, 1, 2, 2, 1, None]
    assert desk.session.study.takes[2].events[-1].beat is None, "gone on from its last beat"


def test_line_by_line_each_line_is_a_take_and_the_next_one_stands_ready(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    desk.booth.range.manner.setCurrentIndex(1)
    for number in (1, 2, 3):
        desk.prompter.setFocus()
        assert desk.booth.range.first.value() == number
        begin(qtbot, desk)
        tell_to_the_end(qtbot, desk)
        qtbot.waitUntil(lambda take=number: take in desk.session.study.takes, timeout=PATIENCE)
    assert told(desk)[:4] == [1, 2, 3, None]
    assert desk.performance.beat == 3


def test_the_seconds_before_are_heard_before_a_take_that_is_punched_in(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    desk.booth.range.last.setValue(2)
    begin(qtbot, desk)
    tell_to_the_end(qtbot, desk)
    desk.booth.range.first.setValue(3)
    desk.booth.range.pre_roll.setChecked(True)
    desk.prompter.setFocus()
    space(qtbot)
    assert "Listen" in desk.booth.status.text()
    assert not desk.recording
    qtbot.waitUntil(lambda: desk.performance.active, timeout=PATIENCE)
    assert desk.performance.beat == 2, "where the take begins, whatever was heard before"
    qtbot.waitUntil(lambda: desk.booth.recorder.samples >= 10_000, timeout=PATIENCE)
    desk.booth.start_or_stop()
    qtbot.waitUntil(lambda: not desk.recording and 2 in desk.session.study.takes, timeout=PATIENCE)
    assert told(desk)[:3] == [1, 1, 2]


def test_the_pre_roll_can_be_left(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    desk.booth.range.last.setValue(2)
    begin(qtbot, desk, 1.5)
    tell_to_the_end(qtbot, desk)
    desk.booth.range.first.setValue(3)
    desk.booth.range.pre_roll.setChecked(True)
    desk.prompter.setFocus()
    space(qtbot)
    desk.booth.start_or_stop()
    assert desk.booth.status.text() == "Nothing was recorded."
    assert len(desk.session.study.takes) == 1
    assert not desk.recording


def test_words_are_said_again_and_heard_in_their_place(qtbot: QtBot, booth_desk: MainWindow) -> None:
    desk = booth_desk
    begin(qtbot, desk, 1.5)
    desk.booth.start_or_stop()
    qtbot.waitUntil(lambda: 1 in desk.session.study.takes and not desk.recording, timeout=PATIENCE)
    desk.booth.open_takes()
    window = desk.booth._window
    assert window is not None
    window.show_beat(0)
    window.wave.choose(Span(20_000, 40_000))
    qtbot.mouseClick(window.again_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: desk.recording, timeout=PATIENCE)
    assert window.again_button.text() == "Stop"
    qtbot.waitUntil(lambda: desk.booth.recorder.samples >= 24_000, timeout=PATIENCE)
    qtbot.mouseClick(window.again_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: 2 in desk.session.study.takes and not desk.recording, timeout=PATIENCE)
    pickup = desk.session.study.takes[2]
    assert pickup.replaces is not None
    assert (pickup.replaces.take, pickup.replaces.span) == (1, Span(20_000, 40_000))
    assert pickup.events == ()
    first = put_together(desk.session.study).beats[0]
    assert [source.take for source in first.sources] == [1, 2, 1]
    window.close()
