"""Peaks between the samples are seen, once and at the right moment."""

from __future__ import annotations

import numpy as np
import pytest

from studyboard.sound.levels import SILENCE
from studyboard.sound.true_peak import REACH, TruePeakMeter, peaks


def test_a_peak_between_two_samples_is_higher_than_both() -> None:
    sound = np.sin(2 * np.pi * np.arange(4_000) / 4 + np.pi / 4)
    meter = TruePeakMeter()
    meter.feed(sound * np.hanning(4_000))
    assert np.abs(sound).max() == pytest.approx(0.707, abs=0.001)
    assert meter.highest == pytest.approx(0.0, abs=0.1)


def test_a_peak_at_the_seam_of_two_chunks_is_seen() -> None:
    sound = np.zeros(400)
    sound[199:201] = 0.5
    whole, seam = TruePeakMeter(), TruePeakMeter()
    whole.feed(sound)
    seam.feed(sound[:200])
    seam.feed(sound[200:])
    assert seam.highest == whole.highest > 20 * np.log10(0.5)


def test_each_reading_forgets_the_one_before() -> None:
    meter = TruePeakMeter()
    meter.feed(np.full(100, 0.5))
    assert meter.take() >= -6.03
    meter.feed(np.zeros(100))
    meter.take()
    meter.feed(np.zeros(100))
    assert meter.take() == SILENCE
    assert meter.highest >= -6.03


def test_too_little_sound_has_no_place_between_its_samples() -> None:
    assert len(peaks(np.ones(2 * REACH - 1))) == 0
    assert len(peaks(np.ones(2 * REACH))) == 1
