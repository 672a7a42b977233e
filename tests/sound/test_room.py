"""A room is judged by what was made to be heard in it: noise, hum and clicks of known levels."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from studyboard.sound.room import RoomSound, listen_to_room

RATE = 48_000


def noise(level: float, seconds: float = 5.0, seed: int = 1) -> NDArray[np.float64]:
    """White noise of this level (dBFS, RMS)."""
    return np.random.default_rng(seed).normal(0, 10 ** (level / 20), round(seconds * RATE))


def rumble(level: float, seconds: float = 5.0, seed: int = 1) -> NDArray[np.float64]:
    """Noise that gets stronger towards the lowest frequencies, as that of streets and fans does."""
    white = np.fft.rfft(noise(0, seconds, seed))
    shape = 1 / np.maximum(np.fft.rfftfreq(round(seconds * RATE), 1 / RATE), 10)
    shaped = np.fft.irfft(white * shape, round(seconds * RATE))
    return shaped / shaped.std() * 10 ** (level / 20)


def tone(hertz: float, level: float, seconds: float = 5.0) -> NDArray[np.float64]:
    """A sine of this level (dBFS, RMS)."""
    return np.sqrt(2) * 10 ** (level / 20) * np.sin(2 * np.pi * hertz * np.arange(round(seconds * RATE)) / RATE)


def pcm(sound: NDArray[np.float64]) -> NDArray[np.int16]:
    return np.clip(np.rint(sound * 32_768), -32_768, 32_767).astype(np.int16)


def heard(sound: NDArray[np.float64]) -> RoomSound:
    return listen_to_room(pcm(sound))


@pytest.mark.parametrize("level", [-40.0, -55.0, -70.0])
def test_the_level_of_steady_noise_is_told_within_half_a_decibel(level: float) -> None:
    room = heard(noise(level))
    assert room.noise == pytest.approx(level, abs=0.5)
    assert room.without_hum == pytest.approx(level, abs=0.5)
    assert room.hum is None
    assert room.clicks == 0
    assert room.events == 0
    assert not room.clipped
    assert room.seconds == 5.0


@pytest.mark.parametrize("seed", range(12))
def test_noise_alone_is_never_taken_for_hum(seed: int) -> None:
    assert heard(noise(-50, seed=seed)).hum is None
    assert heard(rumble(-50, seed=seed)).hum is None


@pytest.mark.parametrize(("mains", "other"), [(50.0, 60.0), (60.0, 50.0)])
def test_hum_of_the_mains_is_told_from_noise_with_its_frequency_and_its_level(mains: float, other: float) -> None:
    room = heard(noise(-62) + tone(mains, -58) + tone(2 * mains, -55) + tone(3 * mains, -60))
    assert room.hum is not None
    assert room.hum.mains == mains != other
    assert room.hum.strongest == 2 * mains
    together = 10 * np.log10(10**-5.8 + 10**-5.5 + 10**-6.0)
    assert room.hum.level == pytest.approx(together, abs=0.7)
    assert room.without_hum == pytest.approx(-62, abs=1.0)


def test_hum_under_a_rumble_that_is_louder_is_found_all_the_same() -> None:
    room = heard(rumble(-45) + tone(50, -62) + tone(100, -60) + tone(150, -64))
    assert room.hum is not None
    assert room.hum.mains == 50.0


def test_mains_that_are_astray_by_half_a_hertz_are_still_the_mains() -> None:
    room = heard(noise(-65) + tone(50.4, -60) + tone(100.8, -58))
    assert room.hum is not None
    assert room.hum.mains == 50.0
    assert room.hum.level == pytest.approx(10 * np.log10(10**-6.0 + 10**-5.8), abs=1.0)


def test_a_tone_that_is_not_of_the_mains_is_no_hum() -> None:
    assert heard(noise(-62) + tone(440, -50)).hum is None
    assert heard(noise(-62) + tone(73, -50)).hum is None
    assert heard(noise(-62) + tone(300, -50)).hum is None, "300 Hz belongs to both mains, and alone to neither"


def test_a_cough_makes_no_room_loud_but_is_told() -> None:
    sound = noise(-60)
    sound[2 * RATE : 2 * RATE + RATE // 2] += noise(-20, 0.5, seed=2)
    room = heard(sound)
    assert room.noise == pytest.approx(-60, abs=0.5)
    assert room.events == pytest.approx(0.5, abs=0.11)


def test_clicks_are_counted() -> None:
    sound = noise(-65)
    for second in (0.7, 1.9, 3.3):
        at = round(second * RATE)
        sound[at : at + 3] += (0.2, -0.15, 0.05)
    assert heard(sound).clicks == 3


def test_sound_at_full_scale_is_told_as_cut_off() -> None:
    sound = noise(-65)
    sound[1000:1005] = 1.5
    assert heard(sound).clipped


def test_a_muted_microphone_is_dead_and_the_noise_of_a_good_one_is_not() -> None:
    assert listen_to_room(np.zeros(2 * RATE, np.int16)).dead
    assert not heard(noise(-82)).dead


def test_sound_that_stands_off_the_middle_is_told_and_is_no_noise() -> None:
    room = heard(noise(-65) + 0.05)
    assert room.offset == pytest.approx(0.05, abs=0.001)
    assert room.noise == pytest.approx(-65, abs=0.5)


def test_less_than_a_second_is_no_room() -> None:
    with pytest.raises(ValueError, match="a second"):
        listen_to_room(np.zeros(RATE // 2, np.int16))
