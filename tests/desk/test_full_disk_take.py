"""The disk fills up in the middle of a take: what was stored is kept, and the booth says so."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from PySide6.QtCore import QSettings
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.example import example_study
from studyboard.store.study_file import StudyFile
from tests.desk import test_troubles
from tests.desk.test_troubles import fill_up
from tests.sound import virtual_microphone
from tests.sound.hearing import Mouth
from tests.sound.virtual_microphone import SoundServer, write_track

sound_server = virtual_microphone.sound_server
small_disk = test_troubles.small_disk
PATIENCE = 30_000


def test_a_take_ends_with_what_is_stored_and_recording_goes_on_once_there_is_room(
    sound_server: SoundServer, small_disk: Path, tmp_path: Path, still_look: Look, settings: QSettings, qtbot: QtBot
) -> None:
    noise = np.random.default_rng(3).integers(-9_000, 9_000, 40 * 48_000).astype("<i2")
    mouth = Mouth(sound_server, write_track(tmp_path / "noise.wav", noise.tobytes(), 48_000))
    path = small_disk / "full.studyboard"
    desk = MainWindow(StudyFile.create(path, example_study()), still_look, settings)
    qtbot.addWidget(desk)
    desk.show()
    desk.record_stage()
    booth = desk.booth
    qtbot.waitUntil(lambda: "Speak to see the level" in booth.status.text(), timeout=PATIENCE)
    booth.begin()
    qtbot.waitUntil(lambda: booth.recorder.samples > 2 * 48_000, timeout=PATIENCE)
    filler = small_disk / "filler"
    fill_up(filler)
    qtbot.waitUntil(lambda: not desk.recording, timeout=PATIENCE)
    assert "full" in booth.status.text() or "could not be put into the list" in booth.status.text()
    filler.unlink()
    booth.begin()
    qtbot.waitUntil(lambda: desk.performance.active, timeout=PATIENCE)
    qtbot.waitUntil(lambda: booth.recorder.samples > 48_000, timeout=PATIENCE)
    booth.start_or_stop()
    qtbot.waitUntil(lambda: not desk.recording and not desk.performance.active, timeout=PATIENCE)
    mouth.shut()
    desk.close()
    with StudyFile.open(path) as again:
        takes = sorted(again.study.takes.values(), key=lambda take: take.id)
        assert len(takes) == 2, "the one that was cut short is there as well"
        assert takes[0].samples >= 1.2 * 48_000
        for take in takes:
            assert len(again.sound.read_sound(take.id)) == 2 * take.samples
