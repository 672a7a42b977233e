"""The sound of a take as it is handed to a delivery."""

from __future__ import annotations

import math

import numpy as np
import pytest

from studyboard.model.assembly import Assembly, HeardBeat
from studyboard.model.beats import Beat
from studyboard.model.heard_take import Piece
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study
from studyboard.model.takes import Span
from studyboard.sound.levelling import TARGETS
from studyboard.sound.loudness import measure
from studyboard.sound.narration import TalkNarration
from studyboard.store.study_file import StudyFile

RATE = 48_000


@pytest.fixture
def quiet_take(tmp_path):
    """A study with a take of a tone of -40 dBFS, twelve seconds long."""
    wave = np.sin(np.arange(12 * RATE) * 2 * math.pi * 997 / RATE)
    sound = np.rint(wave * 32_768 * 10 ** (-40 / 20)).astype("<i2").tobytes()
    with StudyFile.create(tmp_path / "talk.studyboard", Study()) as file:
        shelf = file.sound
        take = shelf.begin_take("Take 1", RATE, "2026-02-17T20:00:00+00:00")
        for first in range(0, len(sound), 2 * RATE):
            shelf.append_sound(take, sound[first : first + 2 * RATE])
        yield shelf, shelf.finish_take(take), sound


def narrated(shelf, take, *target):
    """A talk of one beat that is all of the take."""
    beat = Beat(1, (), SpokenLine("Hum."), None, 0.0, 0)
    heard = HeardBeat(beat, take.id, (Piece(take.id, Span(0, take.samples)),))
    return TalkNarration(shelf, {take.id: take}, Assembly(take.rate, (heard,)), *target)


def test_a_quiet_take_is_published_at_the_loudness_of_speech_online(quiet_take):
    shelf, take, sound = quiet_take
    narration = narrated(shelf, take)
    narration.level(pytest.fail)
    heard = b"".join(narration.chunks())
    assert narration.rate == RATE
    assert len(heard) == len(sound)
    # AES TD1008 (2021): -18 LUFS; the accuracy of meters in EBU Tech 3341 is 0.1 LU.
    assert measure([heard]).integrated == pytest.approx(-18.0, abs=0.2)


def test_the_take_itself_stays_as_it_was_spoken(quiet_take):
    shelf, take, sound = quiet_take
    narration = narrated(shelf, take)
    narration.level(pytest.fail)
    list(narration.chunks())
    assert shelf.read_sound(take.id) == sound
    as_spoken = b"".join(narrated(shelf, take, None).chunks())
    assert as_spoken[1_000:-1_000] == sound[1_000:-1_000], "but for the fades at both ends"


def test_a_talk_for_broadcasting_comes_out_at_the_loudness_of_r_128(quiet_take):
    shelf, take, _ = quiet_take
    narration = narrated(shelf, take, TARGETS["-23"])
    narration.level(pytest.fail)
    # EBU R 128: -23 LUFS.
    assert measure(narration.chunks()).integrated == pytest.approx(-23.0, abs=0.2)


def test_the_levelling_tells_how_far_it_is_and_can_be_stopped(quiet_take):
    shelf, take, _ = quiet_take
    shares: list[float] = []
    narrated(shelf, take).level(pytest.fail, shares.append)
    assert shares == sorted(shares)
    assert len(shares) >= 12
    assert 0 < shares[0] < 0.1 < shares[-1] <= 1

    class EnoughError(Exception):
        """The user has had enough."""

    def stop(share):
        if share > 0.2:
            raise EnoughError

    narration = narrated(shelf, take)
    with pytest.raises(EnoughError):
        narration.level(pytest.fail, stop)
    narration.level(pytest.fail)
    assert measure(narration.chunks()).integrated == pytest.approx(-18.0, abs=0.2), "and can be done after all"
