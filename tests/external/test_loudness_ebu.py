"""The loudness meter and the true-peak meter against the test signals of the European Broadcasting Union."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from numpy.typing import NDArray

from studyboard.sound.loudness import LoudnessMeter, _k_weighting, measure
from studyboard.sound.pcm import RATE
from studyboard.sound.true_peak import TruePeakMeter

pyloudnorm = pytest.importorskip("pyloudnorm")

Sound = NDArray[np.float64]


def sine(dbfs: float, seconds: float, hertz: float = 1_000.0) -> Sound:
    """A sine whose peak is *dbfs*, as EBU Tech 3341 states the level of its sines."""
    return 10 ** (dbfs / 20) * np.sin(2 * np.pi * hertz * np.arange(round(seconds * RATE)) / RATE)


def signal(*parts: tuple[float, float]) -> Sound:
    return np.concatenate([sine(*part) for part in parts])


def fed(sound: Sound, step: int = 4_801) -> LoudnessMeter:
    """A meter of sound that is heard in both channels, after chunks that fit no block."""
    meter = LoudnessMeter(speakers=2)
    for start in range(0, len(sound), step):
        meter.feed(sound[start : start + step])
    return meter


#: EBU Tech 3341 table 1, cases 1 to 5: stereo sines of 1 kHz, the same in both channels; ±0.1 LU.
INTEGRATED = {
    1: ([(-23, 20)], -23.0),
    2: ([(-33, 20)], -33.0),
    3: ([(-36, 10), (-23, 60), (-36, 10)], -23.0),
    4: ([(-72, 10), (-36, 10), (-23, 60), (-36, 10), (-72, 10)], -23.0),
    5: ([(-26, 20), (-20, 20.1), (-26, 20)], -23.0),
}


@pytest.mark.parametrize("case", INTEGRATED)
def test_integrated_loudness_of_the_ebu_signals(case: int) -> None:
    parts, expected = INTEGRATED[case]
    sound = signal(*parts)
    assert fed(sound).integrated == pytest.approx(expected, abs=0.1)
    stereo = np.column_stack([sound, sound])
    whole = pyloudnorm.Meter(RATE, filter_class="DeMan").integrated_loudness(stereo)
    assert fed(sound).integrated == pytest.approx(whole, abs=0.02), "the same in chunks as all at once in pyloudnorm"


@pytest.mark.parametrize("case", INTEGRATED)
def test_integrated_loudness_of_the_ebu_signals_as_16_bits(case: int) -> None:
    parts, expected = INTEGRATED[case]
    pcm = np.rint(signal(*parts) * 32_768).astype("<i2").tobytes()
    assert measure(pcm[start : start + 9_600] for start in range(0, len(pcm), 9_600)).integrated == pytest.approx(
        expected, abs=0.1
    )


def test_case_9_short_term_loudness_stands_still() -> None:
    """EBU Tech 3341 case 9, from memory: −20 dBFS 1.34 s and −30 dBFS 1.66 s, five times; S is −23.0 ±0.1 after 3 s."""
    sound = signal(*[(-20, 1.34), (-30, 1.66)] * 5)
    meter = LoudnessMeter()
    for start, stop in pairwise(range(0, len(sound) + 1, RATE // 10)):
        meter.feed(sound[start:stop])
        if stop > 3 * RATE:
            assert meter.short_term == pytest.approx(-23.0, abs=0.1), stop / RATE


def test_case_12_momentary_loudness_stands_still() -> None:
    """EBU Tech 3341 case 12, from memory: −20 dBFS 0.18 s and −30 dBFS 0.22 s, 25 times; M is −23.0 ±0.1 after 1 s."""
    sound = signal(*[(-20, 0.18), (-30, 0.22)] * 25)
    meter = LoudnessMeter()
    for start, stop in pairwise(range(0, len(sound) + 1, RATE // 10)):
        meter.feed(sound[start:stop])
        if stop > RATE:
            assert meter.momentary == pytest.approx(-23.0, abs=0.1), stop / RATE


@pytest.mark.parametrize("silence", [0.0, 0.15, 1.35, 2.85])
def test_case_10_a_tone_of_3_seconds_reaches_its_loudness_wherever_it_begins(silence: float) -> None:
    """EBU Tech 3341 case 10, from memory: silence, −23 dBFS for 3 s, 1 s of silence; the highest S is −23.0."""
    sound = np.concatenate([np.zeros(round(silence * RATE)), sine(-23, 3), np.zeros(RATE)])
    assert fed(sound).measured().short_term == pytest.approx(-23.0, abs=0.15)


@pytest.mark.parametrize(
    ("divisor", "phase", "amplitude", "expected"),
    [(4, 0.0, 0.5, -6.0), (4, 45.0, 0.5, -6.0), (6, 60.0, 0.5, -6.0), (8, 67.5, 0.5, -6.0), (4, 45.0, 1.41, 3.0)],
)
def test_true_peak_of_sines_whose_tops_lie_between_the_samples(
    divisor: int, phase: float, amplitude: float, expected: float
) -> None:
    """EBU Tech 3341 cases 15 to 19, from memory: sines of a part of the sampling rate; +0.2/−0.4 dB are allowed."""
    places = np.arange(RATE)
    fade = np.minimum(1.0, np.minimum(places, places[::-1]) / 2_000)
    meter = TruePeakMeter()
    meter.feed(fade * amplitude * np.sin(2 * np.pi * places / divisor + np.radians(phase)))
    assert -0.4 <= meter.highest - expected <= 0.2


def test_one_channel_of_a_full_scale_sine_is_3_lu_below_it() -> None:
    """ITU-R BS.1770-4 states −3.01 LKFS for a 0 dBFS sine of 997 Hz in one front channel (from memory)."""
    meter = LoudnessMeter(speakers=1)
    meter.feed(sine(0, 5, 997.0))
    assert meter.integrated == pytest.approx(-3.01, abs=0.02)


def test_the_weighting_has_the_coefficients_that_are_printed() -> None:
    """ITU-R BS.1770-4 tables 1 and 2, for 48 kHz (from memory)."""
    shelf = [1.53512485958697, -2.69169618940638, 1.19839281085285, 1.0, -1.69065929318241, 0.73248077421585]
    high_pass = [1.0, -2.0, 1.0, 1.0, -1.99004745483398, 0.99007225036621]
    assert _k_weighting(RATE) == pytest.approx(np.array([shelf, high_pass]), abs=1e-7)
