"""Loudness and true peak in figures."""

from __future__ import annotations

from studyboard.desk.loudness_readout import LoudnessReadout
from studyboard.sound.levels import SILENCE
from studyboard.sound.live_loudness import Reading


def test_the_highest_peak_stays_until_it_is_reset(qtbot):
    readout = LoudnessReadout()
    qtbot.addWidget(readout)
    readout.show_reading(Reading(-20.0, -19.4, -3.2))
    readout.show_reading(Reading(-20.0, -20.6, -9.0))
    assert readout.text() == "−21 LUFS, peaks −3 dBTP"
    readout.reset()
    readout.show_reading(Reading(-20.0, -20.6, -9.0))
    assert readout.text() == "−21 LUFS, peaks −9 dBTP"


def test_silence_says_nothing(qtbot):
    readout = LoudnessReadout()
    qtbot.addWidget(readout)
    readout.show_reading(Reading(SILENCE, SILENCE, SILENCE))
    assert readout.text() == ""
