"""The words of a pickup, without the silence around them."""

from __future__ import annotations

import numpy as np
import pytest

from studyboard.sound.speech_bounds import speech_bounds

RATE = 48_000


def room(seconds: float, level: float = 15.0) -> np.ndarray:
    return np.random.default_rng(2).normal(0, level, round(seconds * RATE))


def word(seconds: float, level: float = 5_000.0) -> np.ndarray:
    at = np.arange(round(seconds * RATE))
    return level * np.sin(at / 30) * np.hanning(len(at))


def pcm(*parts: np.ndarray) -> bytes:
    return np.rint(np.concatenate(parts)).astype("<i2").tobytes()


@pytest.mark.parametrize("level", [3.0, 15.0, 60.0])
def test_a_word_between_silences_is_found(level):
    span = speech_bounds(pcm(room(0.8, level), word(0.5), room(1.2, level)), RATE)
    assert span is not None
    assert 0.70 <= span.start / RATE <= 0.85
    assert 1.25 <= span.end / RATE <= 1.45


def test_a_soft_word_before_a_loud_one_belongs_to_it():
    span = speech_bounds(pcm(room(0.5), word(0.3, 400), room(0.2), word(0.4, 9_000), room(0.5)), RATE)
    assert span is not None
    assert span.start / RATE <= 0.6


def test_silence_and_nothing_have_no_words():
    assert speech_bounds(bytes(2 * RATE), RATE) is None
    assert speech_bounds(b"", RATE) is None
    assert speech_bounds(pcm(room(1.0, 5.0)), RATE) is None
