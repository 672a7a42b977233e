"""A take is played back, and the board follows what is heard."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from studyboard.model.takes import Take
from studyboard.sound.pcm import RATE
from studyboard.sound.player import Player, PlayerState
from studyboard.store.study_file import StudyFile
from tests.sound.hearing import Tap
from tests.sound.virtual_microphone import SoundServer

PATIENCE = 15_000
BURSTS = (0.20, 0.75, 1.15, 1.90)


def store(file: StudyFile, samples: int) -> Take:
    """A take with bursts of a tone in it."""
    sound = np.zeros(samples, "<i2")
    tone = (12_000 * np.sin(2 * np.pi * 1_000 * np.arange(RATE // 20) / RATE)).astype("<i2")
    for burst in BURSTS:
        place = round(burst * RATE)
        sound[place : place + len(tone)] = tone[: max(0, len(sound) - place)]
    take = file.sound.begin_take("Take 1", RATE, "2025-03-02T19:30:00+00:00")
    for first in range(0, len(sound), RATE):
        file.sound.append_sound(take, sound[first : first + RATE].tobytes())
    return file.sound.finish_take(take)


@pytest.fixture
def take(study_file: StudyFile) -> Take:
    return store(study_file, 110_399)


@pytest.fixture
def player(sound_server: SoundServer, study_file: StudyFile, take: Take, qapp: object) -> Iterator[Player]:
    player = Player(study_file.sound)
    player.load(take)
    yield player
    player.eject()


def test_the_position_is_where_the_sound_is(player: Player, sound_server: SoundServer, qtbot: QtBot) -> None:
    tap = Tap(sound_server, "loudspeaker")
    qtbot.waitUntil(lambda: tap.listening, timeout=PATIENCE)
    heard: list[float] = []
    tap.onset.connect(lambda: heard.append(player.sample / RATE))
    with qtbot.waitSignal(player.finished, timeout=PATIENCE):
        player.play()
    qtbot.waitUntil(lambda: len(heard) == len(BURSTS), timeout=PATIENCE)
    tap.stop()
    assert np.abs(np.array(heard) - BURSTS).max() < 0.050, heard


def test_the_take_is_heard_to_its_end_and_can_be_heard_again(player: Player, take: Take, qtbot: QtBot) -> None:
    told: list[int] = []
    player.position.connect(told.append)
    for _ in range(2):
        told.clear()
        began = time.monotonic()
        with qtbot.waitSignal(player.finished, timeout=PATIENCE):
            player.play()
        assert time.monotonic() - began > take.length.seconds - 0.1
        assert told == sorted(told)
        assert told[-1] == take.samples
        assert np.diff(told).max() < 0.1 * RATE, "the board follows at least ten times a second"
        assert player.state is PlayerState.PAUSED


def test_a_paused_player_stands_still_and_goes_on_from_there(player: Player, qtbot: QtBot) -> None:
    player.play()
    qtbot.waitUntil(lambda: player.sample > 0.5 * RATE, timeout=PATIENCE)
    player.pause()
    stood = player.sample
    with qtbot.assertNotEmitted(player.position, wait=100):
        pass
    with qtbot.waitSignal(player.position, timeout=PATIENCE) as told:
        player.play()
    assert 0 < told.args[0] - stood < 0.2 * RATE


def test_seeking_moves_the_sound_too(player: Player, sound_server: SoundServer, qtbot: QtBot) -> None:
    tap = Tap(sound_server, "loudspeaker")
    qtbot.waitUntil(lambda: tap.listening, timeout=PATIENCE)
    heard: list[float] = []
    tap.onset.connect(lambda: heard.append(player.sample / RATE))
    player.seek(round(1.0 * RATE))
    assert player.sample == RATE
    player.play()
    qtbot.waitUntil(lambda: len(heard) == 1, timeout=PATIENCE)
    player.seek(round(1.5 * RATE))
    qtbot.waitUntil(lambda: len(heard) == 2, timeout=PATIENCE)
    tap.stop()
    assert heard == pytest.approx([BURSTS[2], BURSTS[3]], abs=0.05)


def test_seeking_stays_inside_the_take(player: Player, take: Take) -> None:
    player.seek(-5)
    assert player.sample == 0
    player.seek(10 * take.samples)
    assert player.sample == take.samples


def test_a_take_whose_sound_is_gone_is_told(player: Player, study_file: StudyFile, qtbot: QtBot) -> None:
    study_file.sound.purge_discarded()
    study_file.sound.close()
    with qtbot.waitSignal(player.failed, timeout=PATIENCE) as told:
        player.play()
    assert told.args[0].endswith("has been closed.")
    assert player.state is PlayerState.PAUSED


def test_an_empty_player_plays_nothing(sound_server: SoundServer, study_file: StudyFile, qapp: object) -> None:
    player = Player(study_file.sound)
    player.play()
    player.seek(10)
    assert (player.state, player.sample, player.take) == (PlayerState.EMPTY, 0, None)


def test_without_a_loudspeaker_the_board_follows_a_silent_take(study_path: Path, study_file: StudyFile) -> None:
    take = store(study_file, 28_801)
    study_file.close()
    program = """
import sys, time
from PySide6.QtCore import QCoreApplication, QTimer
from studyboard.model.takes import Take
from studyboard.sound.player import Player
from studyboard.store.study_file import StudyFile
application = QCoreApplication([])
file = StudyFile.open(sys.argv[1])
(take,) = file.study.takes.values()
player = Player(file.sound)
positions = []
player.silent.connect(print)
player.position.connect(positions.append)
player.finished.connect(application.quit)
QTimer.singleShot(8000, application.quit)
player.load(take)
began = time.monotonic()
player.play()
application.exec()
print(len(positions) > 5, positions == sorted(positions), positions[-1], time.monotonic() - began)
"""
    done = subprocess.run(
        [sys.executable, "-c", program, str(study_path)],
        env=os.environ | {"PULSE_SERVER": "unix:/nowhere/at/all"},
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr
    sentence, figures = done.stdout.splitlines()
    assert sentence.startswith("No loudspeaker was found")
    many, ordered, last, seconds = figures.split()
    assert (many, ordered, int(last)) == ("True", "True", take.samples)
    assert 0.6 <= float(seconds) < 1.5
