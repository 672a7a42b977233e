"""A study to record into, a microphone into which a test speaks, and a recorder that hears it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from studyboard.sound.recorder import Recorder
from studyboard.store.study_file import StudyFile
from tests.sound import virtual_microphone
from tests.sound.virtual_microphone import SoundServer

sound_server = virtual_microphone.sound_server


@pytest.fixture
def study_path(tmp_path: Path) -> Path:
    """Where the study is."""
    return tmp_path / "talk.studyboard"


@pytest.fixture
def study_file(study_path: Path) -> Iterator[StudyFile]:
    """An open study without a take."""
    with StudyFile.create(study_path) as file:
        yield file


@pytest.fixture
def recorder(sound_server: SoundServer, study_file: StudyFile, qapp: object) -> Iterator[Recorder]:
    """A recorder that writes into the study; its microphone is closed."""
    recorder = Recorder(study_file.sound_writer)
    yield recorder
    recorder.close()
