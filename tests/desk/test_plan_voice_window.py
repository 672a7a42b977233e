"""The plan is heard from a real loudspeaker before anything is recorded, and the board follows it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.deliver_window import DeliverWindow
from studyboard.desk.main_window import MainWindow
from studyboard.desk.plan_voice_window import PlanVoiceWindow
from studyboard.model.edits import ChangeNode, Several
from studyboard.model.node import Place, Telling
from tests.sound import virtual_microphone
from tests.sound.hearing import Tap
from tests.sound.virtual_microphone import SoundServer

sound_server = virtual_microphone.sound_server
PATIENCE = 60_000


@pytest.fixture
def short_desk(desk: MainWindow) -> MainWindow:
    """The example, told up to its sixth move only."""
    line = list(desk.session.study.main_line())
    desk.session.do(Several((ChangeNode(line[6], "telling", Telling(Place.HIDDEN)),), "Hide"))
    return desk


@pytest.fixture
def window(sound_server: SoundServer, short_desk: MainWindow, qtbot: QtBot) -> Iterator[PlanVoiceWindow]:
    """Being spoken."""
    window = PlanVoiceWindow(short_desk.session, short_desk)
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()


def test_the_plan_is_spoken_and_the_board_follows(
    window: PlanVoiceWindow, short_desk: MainWindow, sound_server: SoundServer, qtbot: QtBot
) -> None:
    qtbot.waitUntil(window.play_button.isEnabled, timeout=PATIENCE)
    assert "scratch voice" in window.told.text()
    tap = Tap(sound_server, "loudspeaker")
    qtbot.waitUntil(lambda: tap.listening, timeout=PATIENCE)
    stretches = short_desk.session.timeline.stretches
    second = next(one for one in stretches if one.events and one.start > 1)
    window.place.setFocus()
    window.place.setValue(round(second.start) - 1)
    window._seek(round(second.start) - 1)
    qtbot.mouseClick(window.play_button, Qt.MouseButton.LeftButton)
    assert window.play_button.text() == "Pause"
    qtbot.waitUntil(lambda: short_desk.session.node == second.events[0].node, timeout=PATIENCE)
    qtbot.waitUntil(lambda: tap.onsets > 0, timeout=PATIENCE)
    assert window.told.text().startswith("Scratch voice: ")
    qtbot.mouseClick(window.play_button, Qt.MouseButton.LeftButton)
    assert window.play_button.text() == "Play"
    tap.stop()


def test_a_window_that_is_closed_speaks_no_more(window: PlanVoiceWindow, qtbot: QtBot) -> None:
    window.close()
    assert window._stop.is_set()


def test_a_scratch_voice_is_offered_with_the_video_but_never_ticked(desk: MainWindow, qtbot: QtBot) -> None:
    window = DeliverWindow(desk.session, desk.settings, desk)
    qtbot.addWidget(window)
    window.show()
    assert window.scratch.isVisible()
    assert not window.scratch.isChecked()
    assert window._narration() is None
    window.scratch.setChecked(True)
    narration = window._narration()
    assert narration is not None
    assert narration.notice == "scratch voice"
