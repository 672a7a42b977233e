"""No sample is lost while other programs keep every processor busy and the window stands still again and again."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Iterator

import numpy as np
import pytest
from PySide6.QtCore import QTimer
from pytestqt.qtbot import QtBot

from studyboard.sound.pcm import RATE
from studyboard.sound.recorder import Recorder
from studyboard.store.study_file import StudyFile
from tests.sound.ramp import Ramp, heard
from tests.sound.virtual_microphone import SoundServer

SECONDS = 20
_BUSY = "while True:\n    sum(range(100_000))\n"


@pytest.fixture
def busy_machine() -> Iterator[None]:
    """A process that gives way to nobody for each processor."""
    processes = [subprocess.Popen([sys.executable, "-c", _BUSY]) for _ in range(os.cpu_count() or 1)]
    yield
    for process in processes:
        process.kill()
        process.wait()


def test_twenty_seconds_on_a_busy_machine_have_every_sample_that_the_server_played(
    recorder: Recorder, sound_server: SoundServer, study_file: StudyFile, busy_machine: None, qtbot: QtBot
) -> None:
    ramp = Ramp(sound_server)
    stands_still = QTimer()
    stands_still.setInterval(1000)
    stands_still.timeout.connect(lambda: time.sleep(0.3))
    stands_still.start()
    with qtbot.waitSignal(recorder.running, timeout=30_000):
        recorder.start("Take 1")
    began, first = time.monotonic(), recorder.sample_at()
    qtbot.waitUntil(lambda: recorder.samples >= SECONDS * RATE, timeout=60_000)
    counted, elapsed = recorder.sample_at() - first, time.monotonic() - began
    with qtbot.waitSignal(recorder.stopped, timeout=30_000) as stopped:
        recorder.stop()
    ramp.end()
    take = stopped.args[0]
    found = heard([np.frombuffer(study_file.sound.read_sound(take.id), "<i2")])
    # The player of the test may come late on such a machine, which the server fills with silence; what it played is
    # all there.
    assert found.lost == 0
    assert found.torn == 0
    assert found.samples == take.samples >= SECONDS * RATE
    assert found.ramp > SECONDS * RATE / 4
    assert counted / RATE == pytest.approx(elapsed, abs=0.15), "the clock of stamps goes with the computer's"
