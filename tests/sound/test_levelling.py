"""A delivered programme has the loudness that was asked for, and the take has what it had."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np
import pytest

from studyboard.sound.levelling import Leveller, Levelling, Target, fitted, levelled, levelling
from studyboard.sound.loudness import measure
from studyboard.sound.pcm import RATE
from tests.sound.test_loudness import speech_like


def programme(sound: np.ndarray) -> Callable[[], Iterator[bytes]]:
    pcm = np.clip(np.rint(sound * 32_768), -32_768, 32_767).astype("<i2").tobytes()
    return lambda: (pcm[start : start + 9_602] for start in range(0, len(pcm), 9_602))


@pytest.mark.parametrize("target", Target)
@pytest.mark.parametrize("loudness", [0.02, 0.4, 2.0])
def test_a_talk_comes_out_with_the_loudness_and_the_true_peak_of_its_target(target: Target, loudness: float) -> None:
    take = programme(speech_like(20.0) * loudness)
    out = b"".join(levelled(take(), fitted(take, target)))
    after = measure([out])
    assert after.integrated == pytest.approx(target.loudness, abs=0.1)
    assert after.true_peak <= target.ceiling
    assert len(out) == len(b"".join(take()))


def test_the_published_targets() -> None:
    """AES TD1008 (2021): speech online at −18 LUFS, at most −1 dBTP; EBU R 128: −23 LUFS."""
    assert (Target.ONLINE.loudness, Target.ONLINE.ceiling) == (-18.0, -1.0)
    assert (Target.BROADCAST.loudness, Target.BROADCAST.ceiling) == (-23.0, -1.0)


def test_two_passes_are_enough_where_no_peak_is_in_the_way() -> None:
    take = programme(0.05 * np.sin(np.arange(10 * RATE) / 8))
    found = levelling(measure(take()))
    assert fitted(take) == found
    assert measure(levelled(take(), found)).integrated == pytest.approx(-18.0, abs=0.05)


def test_silence_stays_silence() -> None:
    take = programme(np.zeros(3 * RATE))
    assert fitted(take) == Levelling(0.0, -1.0)
    assert not any(b"".join(levelled(take(), fitted(take))))


def test_noise_is_not_blown_up_without_end() -> None:
    assert fitted(programme(np.random.default_rng(1).normal(0, 0.0005, 5 * RATE))).gain <= 40.0


def test_a_leveller_tells_how_much_it_had_to_limit() -> None:
    leveller = Leveller(Levelling(6.0, -1.0))
    sound = programme(0.9 * np.sin(np.arange(RATE) / 20))
    out = b"".join(map(leveller.level, sound())) + leveller.flush()
    assert leveller.deepest == pytest.approx(-1 - 20 * np.log10(0.9 * 10 ** (6 / 20)), abs=0.1)
    assert np.abs(np.frombuffer(out, "<i2").astype(int)).max() <= 32_768 * 10 ** (-1 / 20)
