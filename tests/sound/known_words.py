"""Speech of which the start and end of every word are known: synthesised by the library of espeak-ng."""

from __future__ import annotations

import ctypes
import math
from collections.abc import Sequence
from ctypes.util import find_library
from dataclasses import dataclass
from functools import cache

import numpy as np
import soxr
from numpy.typing import NDArray
from scipy.signal import fftconvolve

from studyboard.notation.spoken import speak_text

#: What the aligner and the tests work with (Hz).
RATE = 16_000
#: From speak_lib.h of espeak-ng 1.51.
_RETRIEVAL, _WORD = 1, 1
_UTF_8, _END_PAUSE, _SPEED, _PITCH = 1, 0x1000, 1, 3


class _Event(ctypes.Structure):
    _fields_ = (
        ("type", ctypes.c_int),
        ("unique_identifier", ctypes.c_uint),
        ("text_position", ctypes.c_int),
        ("length", ctypes.c_int),
        ("audio_position", ctypes.c_int),
        ("sample", ctypes.c_int),
        ("user_data", ctypes.c_void_p),
        ("id", ctypes.c_char * 8),
    )


_CALLBACK = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.POINTER(ctypes.c_short), ctypes.c_int, ctypes.POINTER(_Event))


@dataclass(frozen=True, slots=True)
class KnownSpeech:
    """Synthesised speech.

    sound: 16-bit samples at RATE, one channel
    words: for every word of the text as it is written, when it begins (s); nan where the synthesiser says two words as
        one, such as “out of”, and does not tell when the second one begins
    """

    sound: NDArray[np.int16]
    words: tuple[float, ...]


@cache
def _library() -> tuple[ctypes.CDLL, int]:
    found = find_library("espeak-ng")
    if found is None:
        raise OSError("libespeak-ng is not installed")
    library = ctypes.CDLL(found)
    return library, library.espeak_Initialize(_RETRIEVAL, 0, None, 0)


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
    library, rate = _library()
    blocks: list[NDArray[np.int16]] = []
    events: list[tuple[int, int]] = []

    @_CALLBACK
    def hear(wav, count, happened):  # type: ignore[no-untyped-def]
        if count > 0:
            blocks.append(np.ctypeslib.as_array(wav, shape=(count,)).copy())
        place = 0
        while happened[place].type:
            if happened[place].type == _WORD:
                events.append((happened[place].text_position - 1, happened[place].sample))
            place += 1
        return 0

    library.espeak_SetSynthCallback(hear)
    library.espeak_SetVoiceByName(voice.encode())
    library.espeak_SetParameter(_SPEED, speed, 0)
    library.espeak_SetParameter(_PITCH, pitch, 0)
    data = joined.encode()
    library.espeak_Synth(data, len(data) + 1, 0, 1, 0, _UTF_8 | _END_PAUSE, None, None)
    library.espeak_Synchronize()
    starts = {place: sample / rate for place, sample in reversed(events)}
    ordered = sorted(starts.items())
    words = []
    for start, word in zip(places, said, strict=True):
        inside = [seconds for place, seconds in ordered if start <= place < start + max(1, len(word))]
        words.append(inside[0] if inside else math.nan)
    sound = soxr.resample(np.concatenate(blocks), rate, RATE)
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
