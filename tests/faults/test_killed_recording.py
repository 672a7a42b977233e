"""A recording that is killed loses its last second at most, and the study opens as if nothing had been."""

from __future__ import annotations

import json
import subprocess
import sys
import time
from pathlib import Path

import chess
import pytest

from studyboard.model.edits import add_move
from studyboard.sound.pcm import RATE
from studyboard.store.study_file import StudyFile
from tests.sound import virtual_microphone
from tests.sound.virtual_microphone import SoundServer

sound_server = virtual_microphone.sound_server

#: Records, edits and stamps, and prints what it has heard with the moment at which it had, until it is killed.
PRESENTER = """
import json, sys, time
import chess
from PySide6.QtCore import QCoreApplication
from studyboard.model.edits import add_move
from studyboard.sound.recorder import Recorder
from studyboard.store.study_file import StudyFile
application = QCoreApplication([])
file = StudyFile.open(sys.argv[1])
recorder = Recorder(file.sound_writer)
def tell(samples):
    print(json.dumps([time.monotonic(), recorder.samples, recorder.stamp(file.study.root, None)]), flush=True)
def begin():
    file.do(add_move(file.study, file.study.root, chess.Move.from_uci("d2d4")))
recorder.progress.connect(tell)
recorder.running.connect(begin)
recorder.failed.connect(lambda sentence: sys.exit(sentence))
recorder.start("Take 1")
application.exec()
"""


@pytest.mark.parametrize("seconds", [1.6, 2.2, 2.9])
def test_a_killed_recording_leaves_all_but_its_last_second(
    sound_server: SoundServer, tmp_path: Path, seconds: float
) -> None:
    path = tmp_path / "talk.studyboard"
    with StudyFile.create(path) as file:
        file.do(add_move(file.study, file.study.root, chess.Move.from_uci("e2e4")))

    presenter = subprocess.Popen(
        [sys.executable, "-c", PRESENTER, str(path)],
        stdout=subprocess.PIPE,
        text=True,
        env=sound_server.whole_environment,
    )
    assert presenter.stdout is not None
    stamps: list[int] = []
    moment, heard = 0.0, 0
    while heard < seconds * RATE:
        moment, heard, stamp = json.loads(presenter.stdout.readline())
        stamps.append(stamp)
    presenter.kill()
    killed = time.monotonic()
    for line in presenter.stdout.read().splitlines():
        stamps.append(json.loads(line)[2])
    presenter.wait()

    with StudyFile.open(path) as again:
        assert len(again.study.nodes) == 3, "both moves are there, the one before and the one during the take"
        (take,) = again.study.takes.values()
        assert again.recovered == (take,)
        assert not take.complete
        said = heard + (killed - moment) * RATE
        assert said - RATE <= take.samples <= said
        assert len(again.sound.read_sound(take.id)) == 2 * take.samples
        assert [event.at.samples for event in take.events] == [stamp for stamp in stamps if stamp < take.samples]


def test_a_study_whose_recording_was_killed_can_be_recorded_into_again(
    sound_server: SoundServer, tmp_path: Path
) -> None:
    path = tmp_path / "talk.studyboard"
    StudyFile.create(path).close()
    for number in (1, 2):
        presenter = subprocess.Popen(
            [sys.executable, "-c", PRESENTER, str(path)],
            stdout=subprocess.PIPE,
            text=True,
            env=sound_server.whole_environment,
        )
        assert presenter.stdout is not None
        while json.loads(presenter.stdout.readline())[1] < RATE:
            pass
        presenter.kill()
        presenter.wait()
        with StudyFile.open(path) as again:
            assert len(again.study.takes) == number
