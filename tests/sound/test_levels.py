"""The level meter tells a presenter how loud the microphone is."""

from __future__ import annotations

import math
from array import array

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.sound.levels import SILENCE, clips, peak_dbfs, rms_dbfs
from studyboard.sound.pcm import pcm_of


def sound(*samples: int) -> bytes:
    return pcm_of(array("h", samples))


def test_half_of_full_scale_is_6_db_below_it() -> None:
    assert peak_dbfs(sound(0, 16_384, -100)) == pytest.approx(-6.02, abs=0.01)
    assert rms_dbfs(sound(16_384, -16_384)) == pytest.approx(-6.02, abs=0.01)


def test_the_lowest_sample_is_full_scale() -> None:
    assert peak_dbfs(sound(-32_768)) == 0.0


@pytest.mark.parametrize("nothing", [b"", sound(0, 0, 0)])
def test_silence_has_a_level_that_can_be_drawn(nothing: bytes) -> None:
    assert peak_dbfs(nothing) == SILENCE
    assert rms_dbfs(nothing) == SILENCE


def test_the_quietest_sound_is_above_silence() -> None:
    assert peak_dbfs(sound(1)) == pytest.approx(-90.31, abs=0.01)


def test_three_samples_in_a_row_at_full_scale_are_clipping() -> None:
    assert clips(sound(0, 32_767, 32_767, 32_767, 0))
    assert clips(sound(-32_768, -32_768, -32_768))
    assert not clips(sound(32_767, 32_767, 0, 32_767, 32_767))
    assert not clips(sound(32_766, 32_766, 32_766, 32_766))


@given(st.lists(st.integers(-32_768, 32_767), min_size=1, max_size=200))
def test_the_mean_is_never_above_the_peak(samples: list[int]) -> None:
    pcm = sound(*samples)
    assert SILENCE <= rms_dbfs(pcm) <= peak_dbfs(pcm) + 1e-9 <= 1e-9
    assert math.isfinite(rms_dbfs(pcm))
