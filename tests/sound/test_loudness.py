"""Loudness as one hears it: gated, the same for every size of chunk, and honest about silence."""

from __future__ import annotations

import numpy as np
import pytest

from studyboard.sound.levels import SILENCE
from studyboard.sound.loudness import LoudnessMeter, measure
from studyboard.sound.pcm import RATE


def speech_like(seconds: float, seed: int = 7) -> np.ndarray:
    """Noise in syllables, with pauses."""
    chance = np.random.default_rng(seed)
    count = round(seconds * 5)
    loud = np.repeat(chance.uniform(0.0, 0.3, count) * (chance.random(count) > 0.3), RATE // 5)
    return loud * chance.normal(0, 0.3, len(loud))


def test_the_size_of_the_chunks_changes_nothing() -> None:
    sound = speech_like(12.3)
    whole, parts = LoudnessMeter(), LoudnessMeter()
    whole.feed(sound)
    chance = np.random.default_rng(1)
    start = 0
    while start < len(sound):
        stop = start + int(chance.integers(0, 9_000))
        parts.feed(sound[start:stop])
        start = stop
    assert parts.integrated == pytest.approx(whole.integrated, abs=1e-6)
    assert parts.true_peak == pytest.approx(whole.true_peak, abs=1e-6)
    assert parts.measured().short_term == pytest.approx(whole.measured().short_term, abs=1e-6)


def test_silence_has_no_loudness() -> None:
    measured = measure([bytes(2 * RATE * 5)])
    assert measured.integrated is None
    assert measured.true_peak == measured.momentary == SILENCE
    assert measured.seconds == 5.0
    assert measure([]).integrated is None


def test_pauses_do_not_make_a_talk_quieter() -> None:
    talk = speech_like(20.0)
    with_pauses = np.concatenate([talk[: 10 * RATE], np.zeros(30 * RATE), talk[10 * RATE :]])
    meters = []
    for sound in (talk, with_pauses):
        meter = LoudnessMeter()
        meter.feed(sound)
        meters.append(meter)
    assert meters[1].integrated == pytest.approx(meters[0].integrated, abs=0.2)


def test_sound_from_two_loudspeakers_is_3_lu_louder_than_from_one() -> None:
    one, two = LoudnessMeter(speakers=1), LoudnessMeter(speakers=2)
    for meter in (one, two):
        meter.feed(speech_like(5.0))
    assert two.integrated == pytest.approx(one.integrated + 3.01, abs=0.01)
