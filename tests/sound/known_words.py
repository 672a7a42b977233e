"""Speech of which the start and end of every word are known: synthesised by the library of espeak-ng."""

from __future__ import annotations

import json
import math
import subprocess
import sys
from collections.abc import Sequence
from ctypes.util import find_library
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import soxr
from numpy.typing import NDArray
from scipy.signal import fftconvolve

from studyboard.notation.spoken import speak_text

#: What the aligner and the tests work with (Hz).
RATE = 16_000
_ONCE = Path(__file__).with_name("espeak_once.py")


@dataclass(frozen=True, slots=True)
class KnownSpeech:
    """Synthesised speech.

    sound: 16-bit samples at RATE, one channel
    words: for every word of the text as it is written, when it begins (s); nan where the synthesiser says two words as
        one, such as “out of”, and does not tell when the second one begins
    """

    sound: NDArray[np.int16]
    words: tuple[float, ...]


def available() -> bool:
    """True where the library is installed."""
    return find_library("espeak-ng") is not None


def speak(text: str, voice: str = "en-us", speed: int = 160, pitch: int = 50) -> KnownSpeech:
    """The text spoken, moves and squares as they are said.

    voice: as `espeak-ng --voices` names it; speed: words a minute; pitch: 0 to 99
    """
    written = text.split()
    said = [speak_text(word).strip() for word in written]
    joined, places = "", []
    for word in said:
        places.append(len(joined))
        joined += word + " "
    command = [sys.executable, str(_ONCE), voice, str(speed), str(pitch)]
    answer = subprocess.run(command, input=joined.encode(), capture_output=True, check=True).stdout
    head, samples = answer.split(b"\n", 1)
    spoken = json.loads(head)
    starts = dict(reversed(spoken["words"]))
    ordered = sorted(starts.items())
    words = []
    for start, word in zip(places, said, strict=True):
        inside = [seconds for place, seconds in ordered if start <= place < start + max(1, len(word))]
        words.append(inside[0] if inside else math.nan)
    sound = soxr.resample(np.frombuffer(samples, np.int16), spoken["rate"], RATE)
    return KnownSpeech(sound, tuple(words))


def joined(parts: Sequence[KnownSpeech], gap: float = 0.5) -> KnownSpeech:
    """Several pieces of speech one after the other, with *gap* seconds of silence between them."""
    silence = np.zeros(int(gap * RATE), np.int16)
    sound: list[NDArray[np.int16]] = [silence]
    words: list[float] = []
    at = len(silence)
    for part in parts:
        words += [at / RATE + start for start in part.words]
        sound += [part.sound, silence]
        at += len(part.sound) + len(silence)
    return KnownSpeech(np.concatenate(sound), tuple(words))


def with_noise(sound: NDArray[np.int16], ratio: float = 20.0, seed: int = 1) -> NDArray[np.int16]:
    """The same with noise like that of a room (3 dB less an octave), its power *ratio* dB below that of the speech."""
    generator = np.random.default_rng(seed)
    spectrum = np.fft.rfft(generator.standard_normal(len(sound)))
    spectrum /= np.sqrt(np.maximum(np.arange(len(spectrum)), len(spectrum) / 160))
    noise = np.fft.irfft(spectrum, len(sound))
    loud = sound.astype(float)
    speaking = np.abs(loud) > 200
    power = np.mean(loud[speaking] ** 2) / 10 ** (ratio / 10)
    noise *= np.sqrt(power / np.mean(noise**2))
    return _limited(loud + noise)


def in_a_room(sound: NDArray[np.int16], decay: float = 0.35, direct: float = 3.0, seed: int = 2) -> NDArray[np.int16]:
    """The same with the response of a small room: the direct sound, then a tail that falls by 60 dB in *decay* s.

    direct: how far the direct sound is above all of the tail (dB); in a room of 40 m³ it is 3 at 0.4 m from the speaker
        and -3 at 0.9 m (critical distance 0.057·√(V/T), common practice in room acoustics)
    """
    generator = np.random.default_rng(seed)
    length = int(decay * RATE)
    tail = generator.standard_normal(length) * np.exp(-6.9 * np.arange(length) / length)
    tail[: int(0.004 * RATE)] = 0.0
    tail *= np.sqrt(10 ** (-direct / 10) / np.sum(tail**2))
    tail[0] = 1.0
    wet = fftconvolve(sound.astype(float), tail)[: len(sound)]
    return _limited(wet * (np.abs(sound).max() / max(1.0, np.abs(wet).max())))


def _limited(sound: NDArray[np.floating]) -> NDArray[np.int16]:
    return np.clip(np.rint(sound), -32_768, 32_767).astype(np.int16)
