"""The delay of a microphone is measured through a real sound server, and stamps are right by it afterwards."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QScrollArea
from pytestqt.qtbot import QtBot

from studyboard.desk.delay_window import DelayWindow
from studyboard.desk.look import Look
from studyboard.desk.microphone_memory import keep_delay, kept_delay
from studyboard.sound.devices import inputs
from studyboard.sound.recorder import Recorder
from studyboard.store.study_file import StudyFile
from tests.sound import virtual_microphone
from tests.sound.hearing import Mouth, Tap
from tests.sound.spoken import onsets, speech
from tests.sound.virtual_microphone import SoundServer, write_track

sound_server = virtual_microphone.sound_server
LATE = 150
PATIENCE = 30_000


@pytest.fixture
def late_microphone(sound_server: SoundServer, qtbot: QtBot) -> Iterator[str]:
    """A microphone that hears the loudspeaker 150 ms late."""
    modules = sound_server.plug_in_late("late", LATE)
    qtbot.waitUntil(lambda: "late" in {device.id for device in inputs()}, timeout=PATIENCE)
    yield "late"
    for module in modules:
        sound_server.unplug(module)


def test_moves_stand_within_20_ms_of_their_words_once_the_delay_was_measured(
    late_microphone: str,
    sound_server: SoundServer,
    still_look: Look,
    settings: QSettings,
    tmp_path: Path,
    qtbot: QtBot,
) -> None:
    window = DelayWindow(still_look, settings, late_microphone, "late")
    qtbot.addWidget(window)
    window.show()
    assert "Nothing was measured" in window.told.text()
    qtbot.mouseClick(window.measure_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: not window.measuring and "late;" in window.told.text(), timeout=PATIENCE)
    assert window.milliseconds.value() == pytest.approx(LATE, abs=15)
    window.accept()
    measured = kept_delay(settings, late_microphone)
    assert measured is not None

    with StudyFile.create(tmp_path / "talk.studyboard") as file:
        recorder = Recorder(file.sound_writer, lambda device: kept_delay(settings, device.id) or 0.0)
        words = speech(tmp_path)
        tap = Tap(sound_server, "loudspeaker")
        tap.onset.connect(lambda: recorder.stamp(tap.onsets, None))
        qtbot.waitUntil(lambda: tap.listening, timeout=PATIENCE)
        with qtbot.waitSignal(recorder.running, timeout=PATIENCE):
            recorder.start("Take 1", late_microphone)
        mouth = Mouth(sound_server, words.path, sink="loudspeaker")
        qtbot.waitUntil(lambda: tap.onsets == len(words.onsets) and not mouth.speaking, timeout=PATIENCE)
        with qtbot.waitSignal(recorder.stopped, timeout=PATIENCE) as stopped:
            recorder.stop()
        tap.stop()
        recorder.close()
        take = stopped.args[0]
        heard = onsets(np.frombuffer(file.sound.read_sound(take.id), "<i2"), take.rate)
    errors = [1000 * (e.at.samples - w) / take.rate for e, w in zip(take.events, heard, strict=True)]
    # A busy machine can run the tap, which is a program of its own, late once or twice.
    assert sorted(map(abs, errors))[-3] < 20, errors


def test_a_measurement_that_is_broken_off_keeps_what_was_known(
    sound_server: SoundServer, still_look: Look, settings: QSettings, qtbot: QtBot
) -> None:
    keep_delay(settings, None, 0.025)
    window = DelayWindow(still_look, settings, None, "Microphone")
    qtbot.addWidget(window)
    window.show()
    qtbot.mouseClick(window.measure_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.bar.value() > 50, timeout=PATIENCE)
    qtbot.mouseClick(window.measure_button, Qt.MouseButton.LeftButton)
    assert not window.measuring
    assert "Broken off" in window.told.text()
    window.reject()
    assert kept_delay(settings, None) == pytest.approx(0.025)


def test_where_the_tones_are_not_heard_that_is_said_and_nothing_is_changed(
    sound_server: SoundServer, still_look: Look, settings: QSettings, qtbot: QtBot
) -> None:
    window = DelayWindow(still_look, settings, None, "Microphone")
    qtbot.addWidget(window)
    window.show()
    # The microphone of the tests hears the mouth, and never the loudspeaker.
    qtbot.mouseClick(window.measure_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: "not heard well enough" in window.told.text(), timeout=PATIENCE)
    assert window.milliseconds.value() == 0
    assert kept_delay(settings, None) is None


def test_a_delay_is_remembered_for_each_microphone_and_can_be_forgotten(settings: QSettings) -> None:
    keep_delay(settings, "usb/left", 0.04)
    keep_delay(settings, "built in", 0.012)
    assert kept_delay(settings, "usb/left") == pytest.approx(0.04)
    assert kept_delay(settings, "built in") == pytest.approx(0.012)
    keep_delay(settings, "usb/left", None)
    assert kept_delay(settings, "usb/left") is None
    settings.setValue("sound_delays/odd", "many")
    assert kept_delay(settings, "odd") is None


def test_tapping_the_space_bar_measures_too_and_presses_no_button(
    sound_server: SoundServer, still_look: Look, settings: QSettings, tmp_path: Path, qtbot: QtBot
) -> None:
    window = DelayWindow(still_look, settings, None, "Microphone")
    qtbot.addWidget(window)
    window.show()
    window.activateWindow()
    window.tap.setChecked(True)
    fall = np.exp(-np.arange(2_400) / 300)
    click = np.zeros(9_600, "<i2")
    click[:2_400] = 9_000 * np.random.default_rng(1).uniform(-1, 1, 2_400) * fall
    track = write_track(tmp_path / "click.wav", click.tobytes(), 48_000)
    qtbot.mouseClick(window.measure_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window._loopback is not None and window._loopback._recorder.samples > 0, timeout=PATIENCE)
    for number in range(8):
        qtbot.keyClick(window.measure_button, Qt.Key.Key_Space)
        assert window.measuring, "the key breaks nothing off"
        mouth = Mouth(sound_server, track)
        before = window._loopback._recorder.samples
        wait = before + 48_000
        qtbot.waitUntil(lambda wait=wait: window._loopback._recorder.samples > wait or not window.measuring)
        mouth.shut()
        assert window.bar.value() in (0, round(1000 * (number + 1) / 8))
    qtbot.waitUntil(lambda: not window.measuring and "Press the space" not in window.told.text(), timeout=PATIENCE)
    # Each click is played by a program that has to start first, which takes it as long as the machine is busy.
    assert "late;" in window.told.text() or "do not agree" in window.told.text() or "not heard" in window.told.text()


def test_no_way_to_measure_is_cut_off_at_the_side(still_look: Look, settings: QSettings, qtbot: QtBot) -> None:
    window = DelayWindow(still_look, settings, None, "Microphone")
    qtbot.addWidget(window)
    window.show()
    qtbot.waitUntil(window.isVisible)
    (scrolled,) = window.findChildren(QScrollArea)
    assert scrolled.horizontalScrollBar().maximum() == 0
    for way in (window.air, window.cable, window.tap):
        assert way.width() >= way.sizeHint().width()
