"""Silences in the middle of a line are found, and those at its end are none."""

from __future__ import annotations

import numpy as np
import pytest

from studyboard.sound.silences import longest_silences, phrase_at

RATE = 48_000


def sound(*parts: tuple[float, float]) -> bytes:
    """Noise of these lengths (s) and levels (dBFS)."""
    chance = np.random.default_rng(1)
    pieces = [chance.normal(0, 10 ** (level / 20), round(seconds * RATE)) for seconds, level in parts]
    return np.clip(np.rint(np.concatenate(pieces) * 32_768), -32_768, 32_767).astype("<i2").tobytes()


VOICE, ROOM = -25.0, -62.0
TALK = sound((2, VOICE), (0.4, ROOM), (2, VOICE), (3, ROOM), (1, VOICE), (4, ROOM), (2, VOICE), (0.3, ROOM))


@pytest.mark.parametrize("size", [1_000, 96_000, len(TALK)])
def test_the_longest_silence_of_each_line_is_found_with_its_beginning(size: int) -> None:
    chunks = [TALK[at : at + size] for at in range(0, len(TALK), size)]
    ends = [0, round(12.4 * RATE), len(TALK) // 2]
    (first, second) = longest_silences(chunks, [(ends[0], ends[1]), (ends[1], ends[2])])
    assert first == (pytest.approx(4.4, abs=0.06), pytest.approx(3.0, abs=0.11)), "the four seconds at its end are none"
    assert second[1] == 0.0


def test_a_take_in_which_nobody_speaks_has_no_silence() -> None:
    assert longest_silences([], [(0, RATE)]) == ((0.0, 0.0),)
    (only,) = longest_silences([sound((3, ROOM))], [(0, 3 * RATE)])
    assert only[1] == 0.0


def test_a_phrase_reaches_from_one_silence_to_the_next() -> None:
    samples = np.frombuffer(TALK, "<i2")
    start, end = phrase_at(samples, 3 * RATE, RATE)
    assert (start / RATE, end / RATE) == (pytest.approx(2.4, abs=0.03), pytest.approx(4.4, abs=0.03))
    first, last = phrase_at(samples, RATE, RATE), phrase_at(samples, round(13.5 * RATE), RATE)
    assert first == (0, pytest.approx(2 * RATE, abs=0.03 * RATE))
    assert last == (pytest.approx(12.4 * RATE, abs=0.03 * RATE), pytest.approx(14.4 * RATE, abs=0.03 * RATE))
    assert phrase_at(samples, 6 * RATE, RATE) is None
    assert phrase_at(samples[:100], 50, RATE) is None
