"""The limiter keeps true peaks below the ceiling and leaves everything else alone."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.signal import butter, resample, sosfilt

from studyboard.sound.limiter import TruePeakLimiter
from studyboard.sound.pcm import RATE
from studyboard.sound.true_peak import TruePeakMeter


def limited(sound: np.ndarray, ceiling: float = -1.0, seed: int | None = None) -> np.ndarray:
    limiter = TruePeakLimiter(ceiling)
    chance = np.random.default_rng(seed)
    out, start = [], 0
    while start < len(sound):
        stop = len(sound) if seed is None else start + int(chance.integers(0, 9_000))
        out.append(limiter.limit(sound[start:stop]))
        start = stop
    return np.concatenate([*out, limiter.flush()])


def loud(seconds: float = 6.0) -> np.ndarray:
    """Tones that leap about, far over full scale."""
    chance = np.random.default_rng(3)
    count = round(seconds * 10)
    loudness = np.repeat(chance.uniform(0.02, 1.8, count), RATE // 10)
    pitch = np.cumsum(np.repeat(chance.uniform(100, 6_000, count), RATE // 10)) / RATE
    return sosfilt(butter(6, 12_000, fs=RATE, output="sos"), loudness * np.sin(2 * np.pi * pitch))


def test_no_peak_is_over_the_ceiling_even_between_the_samples() -> None:
    out = limited(loud())
    meter = TruePeakMeter()
    meter.feed(out)
    assert meter.highest <= -1.0
    # Sixteen times oversampled by Fourier's way, independently of the meter; the edges of the pieces ring.
    pieces = (resample(out[start : start + RATE], 16 * RATE) for start in range(0, len(out) - RATE, RATE // 2))
    assert 20 * np.log10(max(np.abs(piece[RATE:-RATE]).max() for piece in pieces)) <= -0.95


def test_what_is_below_the_ceiling_comes_out_as_it_went_in() -> None:
    sound = 0.8 * np.sin(np.arange(RATE) / 9)
    assert np.array_equal(limited(sound, seed=2), sound)


def test_as_many_samples_come_out_as_went_in_at_the_same_places_however_they_are_cut() -> None:
    sound = loud()
    whole = limited(sound)
    assert len(whole) == len(sound)
    assert limited(sound, seed=5) == pytest.approx(whole, abs=1e-12)
    quiet = np.abs(sound) < 0.2
    assert np.all(np.abs(whole[quiet]) <= np.abs(sound[quiet]) + 1e-12)
    assert np.corrcoef(whole, sound)[0, 1] > 0.9


def test_a_peak_at_the_very_first_and_the_very_last_sample_is_caught() -> None:
    sound = np.zeros(1_000)
    sound[0] = sound[-1] = 2.0
    out = limited(sound)
    assert np.abs(out).max() <= 10 ** (-1 / 20)
    assert min(out[0], out[-1]) > 0.85


def test_a_reduction_is_let_go_within_half_a_second() -> None:
    sound = np.full(RATE, 0.25)
    sound[1_000] = 4.0
    out = limited(sound)
    assert out[1_000 + RATE // 100] < 0.1
    assert out[1_000 + RATE // 2] == 0.25


def test_nothing_in_nothing_out() -> None:
    assert len(limited(np.zeros(0))) == 0
    assert len(limited(np.zeros(3))) == 3
