"""The ramp that the tests of losing nothing rest on does see what is lost."""

from __future__ import annotations

import numpy as np
import pytest

from tests.sound.ramp import PERIOD, heard


def ramp(start: int, count: int) -> np.ndarray:
    return ((np.arange(start, start + count) % PERIOD) - 16_374).astype("<i2")


def chunks(sound: np.ndarray, size: int = 10_007) -> list[np.ndarray]:
    return [sound[start : start + size] for start in range(0, len(sound), size)]


def test_an_unbroken_ramp_is_whole() -> None:
    found = heard(chunks(ramp(5, 200_000)))
    assert (found.samples, found.ramp, found.lost, found.gaps, found.torn) == (200_000, 200_000, 0, 0, 0)


@pytest.mark.parametrize("lost", [1, 2, 960, 1_024, 48_000])
def test_every_number_of_lost_samples_is_seen(lost: int) -> None:
    found = heard(chunks(np.concatenate([ramp(0, 60_000), ramp(60_000 + lost, 60_000)])))
    assert found.torn == 1
    assert found.lost == lost % PERIOD


def test_samples_that_come_twice_are_seen() -> None:
    assert heard(chunks(np.concatenate([ramp(0, 60_000), ramp(59_000, 60_000)]))).torn == 1


def test_silence_before_the_ramp_and_where_the_player_came_late_is_no_loss() -> None:
    sound = np.concatenate(
        [np.zeros(5_000, "<i2"), ramp(0, 60_000), np.zeros(700, "<i2"), ramp(60_000, 60_000), np.zeros(90, "<i2")]
    )
    found = heard(chunks(sound))
    assert (found.ramp, found.lost, found.gaps, found.silence, found.torn) == (120_000, 0, 1, 700, 0)


def test_silence_in_place_of_samples_is_a_loss() -> None:
    sound = ramp(0, 120_000)
    sound[50_000:50_480] = 0
    found = heard(chunks(sound))
    assert (found.torn, found.lost) == (1, 480)
