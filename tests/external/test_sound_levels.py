"""Levels against what the sound trade publishes."""

from __future__ import annotations

import math
from array import array

import pytest

from studyboard.sound.levels import peak_dbfs, rms_dbfs
from studyboard.sound.pcm import RATE, pcm_of


def sine(dbfs: float, hertz: float = 1_000.0, seconds: float = 1.0) -> bytes:
    peak = 10 ** (dbfs / 20) * 32_767
    turn = 2 * math.pi * hertz / RATE
    return pcm_of(array("h", (round(peak * math.sin(turn * place)) for place in range(round(seconds * RATE)))))


@pytest.mark.parametrize("dbfs", [0.0, -23.0, -33.0, -36.0])
def test_a_sine_of_the_ebu_measures_its_peak_and_three_db_less_rms(dbfs: float) -> None:
    """EBU Tech 3341 table 1 gives its 1 kHz sines by their peak level in dBFS.

    The RMS of a sine is its peak over the square root of 2, -3.01 dB: ITU-R BS.1770-4 states -3.01 LKFS for a 0 dBFS
    1 kHz sine in one channel (from memory). AES17 would call the RMS of that sine 0 dB FS (from memory); we do not.
    """
    assert peak_dbfs(sine(dbfs)) == pytest.approx(dbfs, abs=0.02)
    assert rms_dbfs(sine(dbfs)) == pytest.approx(dbfs - 3.01, abs=0.02)


def test_a_full_scale_square_wave_is_at_0_dbfs_rms() -> None:
    """The RMS of a square wave equals its peak: mathematics."""
    assert rms_dbfs(pcm_of(array("h", [32_767, -32_768] * 100))) == pytest.approx(0.0, abs=0.001)
