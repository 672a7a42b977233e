"""A delay that is known beforehand is found in the sound, through noise, echoes and speech."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from studyboard.sound.latency import UnsteadyDelayError, delay, found_at, signal, train

RATE = 48_000


def heard_late(seconds: float, level: float = -20.0, noise: float = -70.0) -> tuple[NDArray[np.float64], list[int]]:
    """What a microphone hears of the signals this much later (s), and where they were played."""
    pcm, starts = train(level)
    played = np.frombuffer(pcm, "<i2") / 32_768
    before = RATE // 2
    late = np.zeros(before + round(seconds * RATE))
    sound = np.concatenate([late, played, np.zeros(RATE)])
    return sound + np.random.default_rng(3).normal(0, 10 ** (noise / 20), len(sound)), [before + at for at in starts]


def pcm(sound: NDArray[np.float64]) -> NDArray[np.int16]:
    return np.clip(np.rint(sound * 32_768), -32_768, 32_767).astype(np.int16)


@pytest.mark.parametrize("milliseconds", [0, 7, 23.4, 80, 250, 411.3, 600])
def test_a_delay_is_found_within_a_tenth_of_a_millisecond(milliseconds: float) -> None:
    sound, played = heard_late(milliseconds / 1000)
    found = delay(pcm(sound), played)
    assert found is not None
    assert found.seconds * 1000 == pytest.approx(milliseconds, abs=0.1)
    assert found.spread < 0.0001
    assert found.signals == len(played)


def test_noise_as_loud_as_the_signal_hides_nothing() -> None:
    sound, played = heard_late(0.120, level=-30, noise=-36)
    found = delay(pcm(sound), played)
    assert found is not None
    assert found.seconds == pytest.approx(0.120, abs=0.0005)


def test_an_echo_that_is_louder_than_the_direct_sound_is_not_taken_for_it() -> None:
    sound, played = heard_late(0.050)
    echo = np.zeros(len(sound))
    echo[480:] = 1.3 * sound[:-480]
    found = delay(pcm(sound + echo), played)
    assert found is not None
    assert found.seconds == pytest.approx(0.050, abs=0.0005)


def test_a_word_that_is_spoken_over_one_signal_does_not_move_the_delay() -> None:
    sound, played = heard_late(0.100)
    at = played[1] + round(0.1 * RATE)
    sound[at : at + RATE // 2] = np.random.default_rng(1).normal(0, 0.3, RATE // 2)
    found = delay(pcm(sound), played)
    assert found is not None
    assert found.seconds == pytest.approx(0.100, abs=0.0005)


def test_where_nothing_was_heard_nothing_is_claimed() -> None:
    sound, played = heard_late(0.1)
    noise = np.random.default_rng(5).normal(0, 0.05, len(sound))
    assert delay(pcm(noise), played) is None
    assert delay(np.zeros(len(sound), np.int16), played) is None
    assert found_at(np.zeros(10, np.int16), 0) is None


def test_signals_that_come_each_at_another_time_give_no_delay() -> None:
    sound, played = heard_late(0.1)
    torn = sound.copy()
    for number, start in enumerate(played):
        end = start + round(0.9 * RATE)
        torn[start:end] = np.roll(sound[start:end], round(0.02 * number * RATE))
    with pytest.raises(UnsteadyDelayError, match="busy"):
        delay(pcm(torn), played)


def test_the_signal_stays_at_the_level_that_was_asked_for() -> None:
    assert 20 * np.log10(np.abs(signal(-20.0)).max()) == pytest.approx(-20, abs=0.1)
    assert np.abs(signal(-20.0)[[0, -1]]).max() < 1e-6, "it begins and ends without a click"
