"""Sound lies in the study compressed, and comes out of it sample by sample as it went in."""

from __future__ import annotations

import io
import random
import sqlite3
import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.store.errors import SoundMissingError
from studyboard.store.sound_coding import FLAC, PCM, decoded, encoded
from studyboard.store.study_file import StudyFile

RATE = 48_000


def tone(seconds: float, level: float = 3_000.0) -> bytes:
    at = np.arange(round(seconds * RATE)) / RATE
    return np.rint(level * np.sin(2 * np.pi * 220 * at)).astype("<i2").tobytes()


@given(st.binary(max_size=4_000).map(lambda data: data[: len(data) // 2 * 2]), st.sampled_from((8_000, 44_100, 48_000)))
def test_any_samples_come_back(pcm, rate):
    coding, data = encoded(pcm, rate)
    assert decoded(coding, data, len(pcm) // 2) == pcm
    assert len(data) <= len(pcm)


def test_a_chunk_of_a_tone_is_a_small_flac_file_that_other_programs_read():
    import soundfile

    pcm = tone(0.75)
    coding, data = encoded(pcm, RATE)
    assert coding == FLAC
    assert len(data) < len(pcm) / 2
    samples, rate = soundfile.read(io.BytesIO(data), dtype="int16")
    assert (rate, samples.astype("<i2").tobytes()) == (RATE, pcm)


def test_noise_that_cannot_be_made_smaller_is_kept_as_it_is():
    pcm = random.Random(3).randbytes(72_000)
    assert encoded(pcm, RATE) == (PCM, pcm)


def test_a_damaged_chunk_says_so():
    _, data = encoded(tone(0.5), RATE)
    with pytest.raises(SoundMissingError, match="damaged"):
        decoded(FLAC, data[: len(data) // 2], RATE // 2)
    with pytest.raises(SoundMissingError, match="damaged"):
        decoded(FLAC, b"nothing", RATE // 2)
    with pytest.raises(SoundMissingError, match="unknown here"):
        decoded("later", data, RATE // 2)


@pytest.fixture
def recorded(path):
    """A study with a take of three seconds, and its sound."""
    pcm = tone(3)
    with StudyFile.create(path) as file:
        take = file.sound.begin_take("one", RATE, "2030-05-17T21:30:00+02:00")
        for first in range(0, len(pcm), 72_000):
            file.sound.append_sound(take, pcm[first : first + 72_000])
        file.sound.finish_take(take)
    return path, pcm


def test_sound_takes_less_than_half_of_its_room_in_a_study(recorded):
    path, pcm = recorded
    connection = sqlite3.connect(path)
    stored, codings = connection.execute(
        "SELECT sum(length(data)), group_concat(DISTINCT coding) FROM sound"
    ).fetchone()
    connection.close()
    assert codings == "flac"
    assert stored < len(pcm) / 2


def test_any_stretch_of_compressed_sound_can_be_read(recorded):
    path, pcm = recorded
    with StudyFile.open(path) as file:
        for start, count in ((0, 5), (35_999, 2), (36_000, 36_000), (10, 100_000), (143_999, 9), (20, 3), (35_000, 7)):
            assert file.sound.read_sound(1, start, count) == pcm[2 * start : 2 * (start + count)]


#: Reads, and records, where the library that compresses cannot be imported.
WITHOUT = """
import sys
sys.modules["soundfile"] = None
from studyboard.store.errors import SoundMissingError
from studyboard.store.study_file import StudyFile
with StudyFile.open(sys.argv[1]) as file:
    print(sorted(file.study.takes))
    try:
        file.sound.read_sound(1)
    except SoundMissingError as reason:
        print(reason)
    take = file.sound.begin_take("two", 48_000, "2030-05-17T21:30:00+02:00")
    file.sound.append_sound(take, bytes(range(100)))
    print(file.sound.read_sound(take) == bytes(range(100)))
"""


def test_without_the_library_the_study_opens_says_what_is_missing_and_records_all_the_same(recorded):
    path, _ = recorded
    done = subprocess.run([sys.executable, "-c", WITHOUT, str(path)], capture_output=True, text=True, check=True)
    takes, sentence, read = done.stdout.splitlines()
    assert takes == "[1]"
    assert "pip install soundfile" in sentence
    assert read == "True"
