"""The wave of a take at any scale shows how far the sound swings there."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.sound.peaks import peaks_of


def wave(samples: int) -> np.ndarray:
    return np.random.default_rng(samples).integers(-30_000, 30_000, samples).astype("<i2")


def in_pieces(sound: np.ndarray, size: int = 4801) -> list[bytes]:
    return [sound[first : first + size].tobytes() for first in range(0, len(sound), size)]


@given(st.integers(1, 60_000), st.integers(1, 40))
def test_the_whole_take_in_any_number_of_columns_reaches_as_far_as_the_sound(samples: int, count: int) -> None:
    sound = wave(samples)
    peaks = peaks_of(in_pieces(sound))
    assert peaks is not None
    low, high = peaks.columns(0, samples, count)
    assert low.min() == pytest.approx(sound.min() / 32_768)
    assert high.max() == pytest.approx(sound.max() / 32_768)


def test_a_click_is_seen_at_every_scale_in_its_column() -> None:
    sound = np.zeros(2_000_000, "<i2")
    sound[1_234_567] = 20_000
    peaks = peaks_of(in_pieces(sound))
    assert peaks is not None
    assert len(peaks.levels) > 1
    for first, last in ((0, 2_000_000), (1_200_000, 1_300_000), (1_234_000, 1_235_000)):
        _, high = peaks.columns(first, last, 100)
        assert int(high.argmax()) == pytest.approx((1_234_567 - first) / (last - first) * 100, abs=13)
        assert high.max() == pytest.approx(20_000 / 32_768)


def test_beyond_the_ends_there_is_nothing() -> None:
    peaks = peaks_of(in_pieces(wave(10_000)))
    assert peaks is not None
    low, high = peaks.columns(20_000, 30_000, 10)
    assert not low.any()
    assert not high.any()
    low, high = peaks.columns(-10_000, 0, 10)
    assert not high.any()


def test_no_sound_and_a_stop_are_no_errors() -> None:
    empty = peaks_of([])
    assert empty is not None
    assert not empty.columns(0, 100, 5)[0].any()
    assert peaks_of(in_pieces(wave(9000)), lambda: True) is None
