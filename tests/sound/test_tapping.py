"""The sound of a key that is pressed beside the microphone tells how late that is."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from studyboard.sound.latency import UnsteadyDelayError
from studyboard.sound.tapping import tapped_delay

RATE = 48_000
PRESSES = [RATE, 2 * RATE - 3_000, 3 * RATE + 500, 4 * RATE, 5 * RATE - 900, 6 * RATE, 7 * RATE + 77, 8 * RATE]


def tapped(late: float, noise: float = -60.0, strays: float = 0.0, seed: int = 1) -> NDArray[np.int16]:
    """Taps of a key, each so much later than its press (s), with the thump of the desk and the key's way up."""
    chance = np.random.default_rng(seed)
    sound = chance.normal(0, 10 ** (noise / 20), 10 * RATE)
    for press in PRESSES:
        at = press + round((late + chance.uniform(-strays, strays)) * RATE)
        fall = np.exp(-np.arange(1_200) / 200)
        sound[at : at + 1_200] += 0.2 * chance.uniform(0.5, 1.0) * chance.normal(0, 1, 1_200) * fall
        sound[at + 4_800 : at + 6_000] += 0.06 * chance.normal(0, 1, 1_200) * fall
        sound[at : at + 6_000] += 0.1 * np.sin(2 * np.pi * 60 * np.arange(6_000) / RATE)
    return np.clip(np.rint(sound * 32_768), -32_768, 32_767).astype(np.int16)


@pytest.mark.parametrize("late", [0.0, 0.012, 0.08, 0.3, 0.55])
def test_the_delay_is_found_within_two_milliseconds(late: float) -> None:
    found = tapped_delay(tapped(late), PRESSES)
    assert found is not None
    assert found.seconds == pytest.approx(late, abs=0.002)
    assert found.signals == len(PRESSES)


def test_fingers_that_are_no_clocks_are_evened_out() -> None:
    found = tapped_delay(tapped(0.1, strays=0.005), PRESSES)
    assert found is not None
    assert found.seconds == pytest.approx(0.1, abs=0.004)
    assert found.spread > 0.001


def test_taps_that_do_not_agree_give_no_delay_and_silence_gives_none() -> None:
    with pytest.raises(UnsteadyDelayError, match="taps do not agree"):
        tapped_delay(tapped(0.3, strays=0.25), PRESSES)
    assert tapped_delay(np.zeros(10 * RATE, np.int16), PRESSES) is None
    noise = np.random.default_rng(1).normal(0, 300, 10 * RATE).astype(np.int16)
    assert tapped_delay(noise, PRESSES) is None
