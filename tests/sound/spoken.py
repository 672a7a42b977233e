"""Speech for a virtual microphone, and where its words begin in what was recorded."""

from __future__ import annotations

import subprocess
import wave
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from tests.sound.virtual_microphone import write_track

Samples = NDArray[np.int16]

#: Each begins with a burst or a loud vowel, so that its onset is one moment and not a slow rise.
WORDS = ("knight", "takes", "pawn", "check", "queen", "attacks", "castles", "bishop", "pin", "mate")
#: Silence before each word (s), uneven so that no two words can be taken for each other.
PAUSES = (0.80, 0.55, 0.70, 0.47, 0.62, 0.85, 0.50, 0.74, 0.58, 0.66)

#: Louder than this is speech, after at least so much silence (s) it is a new word.
LOUD = 1500
SILENCE = 0.25


@dataclass(frozen=True, slots=True)
class Speech:
    """Words with silence between them, as a file that can be played.

    onsets: where each word begins (s from the start of the file)
    """

    path: Path
    onsets: tuple[float, ...]
    seconds: float


def speech(folder: Path) -> Speech:
    """The words, spoken by espeak-ng."""
    parts: list[Samples] = []
    rate = 0
    for word, pause in zip(WORDS, PAUSES, strict=True):
        rate, said = _said(word)
        parts += [np.zeros(round(pause * rate), np.int16), _from_onset(said)]
    track = np.concatenate([*parts, np.zeros(rate // 2, np.int16)])
    path = write_track(folder / "speech.wav", track.tobytes(), rate)
    return Speech(path, tuple(sample / rate for sample in onsets(track, rate)), len(track) / rate)


def onsets(samples: Samples, rate: int) -> list[int]:
    """The samples at which words begin: loud after silence."""
    return [int(sample) for sample in OnsetFinder(rate).find(samples)]


class OnsetFinder:
    """Finds where words begin in sound that comes in pieces.

    State: how many samples have been seen, and which was the last loud one.
    """

    def __init__(self, rate: int) -> None:
        self._silence = round(SILENCE * rate)
        self._seen = 0
        self._last_loud = -self._silence

    def find(self, samples: Samples) -> list[int]:
        """Onsets within these samples, counted from the first sample that was ever given."""
        found = []
        for place in np.flatnonzero(np.abs(samples.astype(np.int32)) > LOUD) + self._seen:
            if place - self._last_loud >= self._silence:
                found.append(int(place))
            self._last_loud = int(place)
        self._seen += len(samples)
        return found


def _said(word: str) -> tuple[int, Samples]:
    told = subprocess.run(["espeak-ng", "-v", "en", "-a", "190", "--stdout", word], capture_output=True, check=True)
    # The sizes in a header that went through a pipe are not true, so the frames are read to their end.
    with wave.open(BytesIO(told.stdout)) as sound:
        return sound.getframerate(), np.frombuffer(sound.readframes(sound.getnframes()), "<i2")


def _from_onset(said: Samples) -> Samples:
    loud = np.flatnonzero(np.abs(said.astype(np.int32)) > LOUD)
    return said[loud[0] : loud[-1] + 1]
