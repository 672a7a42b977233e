"""The room check listens to a real microphone into which a test hums, and speaks when it is asked to."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QSettings, Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.desk.microphone_memory import was_checked
from studyboard.desk.room_window import RoomWindow
from tests.sound import virtual_microphone
from tests.sound.hearing import Mouth
from tests.sound.spoken import speech
from tests.sound.test_room import noise, pcm, tone
from tests.sound.virtual_microphone import SoundServer, write_track

sound_server = virtual_microphone.sound_server
PATIENCE = 40_000


@pytest.fixture
def window(sound_server: SoundServer, still_look: Look, settings: QSettings, qtbot: QtBot) -> Iterator[RoomWindow]:
    """A room check on the system's own microphone."""
    window = RoomWindow(still_look, None, settings)
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()


def sentences(window: RoomWindow) -> list[str]:
    return [window.found.item(row).text() for row in range(window.found.count())]


def test_a_humming_room_and_a_voice_are_judged_and_it_is_remembered(
    window: RoomWindow, sound_server: SoundServer, settings: QSettings, tmp_path: Path, qtbot: QtBot
) -> None:
    room = noise(-58, 20) + tone(50, -50, 20) + tone(100, -47, 20)
    hum = Mouth(sound_server, write_track(tmp_path / "room.wav", pcm(room).tobytes(), 48_000))
    assert not was_checked(settings, None)
    qtbot.mouseClick(window.check_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: "Be silent" in window.told.text(), timeout=PATIENCE)
    qtbot.waitUntil(lambda: "Now speak" in window.told.text(), timeout=PATIENCE)
    voice = Mouth(sound_server, speech(tmp_path).path)
    qtbot.waitUntil(lambda: window.found.count() > 0, timeout=PATIENCE)
    hum.shut()
    voice.shut()
    told = sentences(window)
    assert any("The mains hum at 50 Hz: −45 dBFS, strongest at 100 Hz" in one for one in told), told
    assert any(one.startswith("The voice is") for one in told), told
    assert window.verdict.text() == "Mend this before the first take."
    assert was_checked(settings, None)
    assert window.check_button.text() == "Check again"


def test_a_muted_microphone_is_told_without_waiting_for_a_voice(window: RoomWindow, qtbot: QtBot) -> None:
    qtbot.mouseClick(window.check_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.found.count() > 0, timeout=PATIENCE)
    assert sentences(window)[0].startswith("Nothing at all arrives from the microphone.")
    assert window.verdict.text() == "Mend this before the first take."


def test_a_check_can_be_broken_off(window: RoomWindow, qtbot: QtBot) -> None:
    qtbot.mouseClick(window.check_button, Qt.MouseButton.LeftButton)
    assert window.listening
    qtbot.mouseClick(window.check_button, Qt.MouseButton.LeftButton)
    assert not window.listening
    assert "Broken off" in window.told.text()
    assert window.found.count() == 0


def test_the_booth_offers_the_check_before_the_first_take(sound_server: object, desk: MainWindow, qtbot: QtBot) -> None:
    desk.record_stage()
    qtbot.waitUntil(lambda: "check the room" in desk.booth.status.text(), timeout=15_000)
    assert desk.booth.room_button.isVisible()
    desk.booth.close_down()


def test_a_take_tells_that_nothing_arrives_and_when_it_was_cut_off(
    sound_server: SoundServer, desk: MainWindow, tmp_path: Path, qtbot: QtBot
) -> None:
    loud = np.clip(tone(200, 3, 0.4), -1, 1)
    track = write_track(tmp_path / "loud.wav", pcm(loud).tobytes(), 48_000)
    desk.record_stage()
    qtbot.waitUntil(lambda: "Speak to see the level" in desk.booth.status.text(), timeout=15_000)
    desk.booth.begin()
    qtbot.waitUntil(lambda: "Nothing arrives" in desk.booth.warnings.text(), timeout=15_000)
    assert desk.booth.warnings.isVisible()
    at = desk.booth.recorder.samples / 48_000
    mouth = Mouth(sound_server, track)
    qtbot.waitUntil(lambda: "Cut off at 0:0" in desk.booth.warnings.text(), timeout=15_000)
    mouth.shut()
    clipped = desk.booth.warnings.moments[-1].at
    assert at <= clipped < at + 5
    desk.booth.start_or_stop()
    qtbot.waitUntil(lambda: not desk.recording and not desk.performance.active, timeout=20_000)
    assert "Nothing arrived at 0:0" in desk.booth.warnings.text(), "what went wrong stands there after the take too"
    desk.booth.close_down()
