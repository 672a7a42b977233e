"""Where somebody speaks in a recording, and at which frame a word begins to be heard."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from studyboard.sound.alignment.pieces import FRAME, RATE, activity, pieces, with_floor


def sound(*parts: tuple[float, float]) -> np.ndarray:
    """Noise, part after part: seconds, and how loud."""
    generator = np.random.default_rng(5)
    blocks = [generator.standard_normal(round(seconds * RATE)) * size for seconds, size in parts]
    return np.concatenate(blocks).astype(np.int16)


def test_speech_and_silence_are_told_apart_also_in_noise() -> None:
    for floor in (0.0, 60.0):
        found = activity(sound((0.5, floor), (1.0, 3000), (0.5, floor), (1.0, 3000), (0.5, floor)))
        assert found.spoken_frames(0, 350) == pytest.approx(200, abs=4)
        assert found.spoken_frames(0, 50) <= 2
        assert found.spoken_frames(150, 200) <= 4


def test_a_stop_inside_a_word_is_speech() -> None:
    found = activity(sound((0.5, 0), (0.3, 3000), (0.08, 0), (0.3, 3000), (0.5, 0)))
    assert found.spoken_frames(50, 118) == pytest.approx(68, abs=2)


def test_a_word_begins_after_the_pause_that_it_was_given() -> None:
    found = activity(sound((0.5, 0), (0.5, 3000), (0.12, 0), (0.5, 3000), (0.4, 0), (0.5, 3000), (0.5, 0)))
    assert found.onset(100, 150) == pytest.approx(112, abs=4)
    assert found.onset(155, 250) == pytest.approx(202, abs=4)
    assert found.onset(60, 100) == 60
    assert found.onset(97, 150) == pytest.approx(110, abs=4)


def test_pieces_cover_all_of_a_long_recording_and_are_cut_in_silence() -> None:
    long = sound(*[(4.0, 3000), (0.6, 0)] * 20)
    found = activity(long)
    cut = pieces(found)
    assert cut[0][0] == 0
    assert cut[-1][1] == len(long) // FRAME
    assert all(one[1] == two[0] for one, two in pairwise(cut))
    assert all(last - first <= 2500 for first, last in cut)
    assert not any(found.speaking[first] for first, _ in cut[1:])


def test_the_floor_is_soft_and_always_the_same() -> None:
    speech = sound((0.5, 0), (1.0, 3000), (0.5, 0))
    found = activity(speech)
    one, other = with_floor(speech, found), with_floor(speech, found)
    assert (one == other).all()
    assert 0 < np.abs(one[: RATE // 4]).max() < 500
