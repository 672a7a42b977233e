"""Where a recording is silent, and the pieces between."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

#: What speech is listened to with (samples a second): the acoustic model was made from it.
RATE = 16_000
#: One frame of the acoustic model is a hundredth of a second.
FRAME = RATE // 100
#: A silence shorter than this belongs to a word: the stop before a t or a k lasts up to about 0.12 s.
_SILENCE = 15
#: A quiet beginning of a word from this length on is a pause, all but its last frames, which may be a soft consonant.
_PAUSE, _SOFT = 7, 3
#: The word before may end so far inside the one after it (frames), where a pause of this length follows: longer than
#: the stop of a consonant after the first vowel of a word.
_TAIL, _SURE_PAUSE = 5, 10
#: Pieces of these lengths are wanted (frames): the mean of a piece is taken off before it is recognised, which needs a
#: few seconds; a longer one takes more memory than it is worth.
_LEAST, _MOST = 500, 2500
#: Speech is a third of the way from the quietest tenth of the sound to its loudest (in decibels).
_SHARE = 0.33
#: Nothing that is said is softer than the loudest by more than this (dB); what fades away after a word is.
_REACH = 32.0


@dataclass(frozen=True, slots=True)
class Activity:
    """How loud a recording is, frame by frame.

    levels: of each frame (dB); speaking: True where somebody seems to speak
    loud: the same without the stops inside words, which are as quiet as a pause
    """

    levels: NDArray[np.float32]
    speaking: NDArray[np.bool_]
    loud: NDArray[np.bool_]

    def onset(self, start: int, end: int) -> int:
        """The frame at which a word begins to be heard that was found from one frame to another.

        The aligner gives a pause to the word after it, and sometimes the end of the word before as well. What is soft
        before a word gets loud, such as an f, belongs to the word: of a pause only what is longer than that is taken
        off. No word has a silence inside: it is where more of it sounds.
        """
        start, end = max(0, start), max(0, end)
        silent = np.flatnonzero(~self.speaking[start:end])
        if len(silent):
            before, after = int(silent[0]), end - start - 1 - int(silent[-1])
            if after > before:
                return start + int(silent[-1]) + 1 - min(_SOFT, int(silent[-1]))
        quiet = ~self.loud[start:end]
        first = int(np.argmax(quiet[: _TAIL + 1])) if quiet[: _TAIL + 1].any() else len(quiet)
        length = int(np.argmin(quiet[first:])) if first < len(quiet) and not quiet[first:].all() else 0
        return start + first + length - _SOFT if length >= (_PAUSE if first == 0 else _SURE_PAUSE) else start

    def spoken_frames(self, start: int, end: int) -> int:
        """In how many frames somebody speaks, from one frame to another."""
        return int(np.count_nonzero(self.speaking[max(0, start) : max(0, end)]))


def activity(sound: NDArray[np.int16]) -> Activity:
    """The levels of a recording. O(its length)."""
    frames = sound[: len(sound) // FRAME * FRAME].reshape(-1, FRAME)
    levels = np.empty(len(frames), np.float32)
    for first in range(0, len(frames), 6000):
        block = frames[first : first + 6000].astype(np.float32)
        levels[first : first + 6000] = 10 * np.log10(np.mean(block**2, axis=1) + 1.0)
    if not len(levels):
        return Activity(levels, np.zeros(0, np.bool_), np.zeros(0, np.bool_))
    quiet, loud = float(np.percentile(levels, 5)), float(np.percentile(levels, 90))
    speaking = levels > max(quiet + max(6.0, _SHARE * (loud - quiet)), loud - _REACH)
    return Activity(levels, _closed(speaking), speaking)


def with_floor(sound: NDArray[np.int16], found: Activity) -> NDArray[np.int16]:
    """The sound over a soft noise, 36 dB below the speech: digital silence has no spectrum to take a mean of.

    The noise is the same each time, so that a recording is always found the same.
    """
    if not found.speaking.any():
        return sound
    speech = float(np.percentile(found.levels[found.speaking], 70))
    size = max(2.0, 10 ** ((speech - 36) / 20))
    noise = np.random.default_rng(7).standard_normal(RATE).astype(np.float32) * size
    mixed = np.empty_like(sound)
    for first in range(0, len(sound), RATE):
        block = sound[first : first + RATE]
        mixed[first : first + RATE] = np.clip(block + noise[: len(block)], -32_768, 32_767)
    return mixed


def pieces(found: Activity) -> list[tuple[int, int]]:
    """The recording in pieces of some seconds (frames), cut in the longest silences; all of it is covered."""
    cuts = [0]
    total = len(found.levels)
    silent_for = _silence_lengths(found.speaking)
    while total - cuts[-1] > _MOST:
        first, last = cuts[-1] + _LEAST, cuts[-1] + _MOST
        window = silent_for[first:last]
        best = int(np.argmax(window))
        if window[best] >= _SILENCE:
            cuts.append(_middle(silent_for, first + best))
        else:
            # Nobody breathes in for so long: the quietest moment is less harmful than any other.
            cuts.append(first + int(np.argmin(found.levels[first:last])))
    return list(zip(cuts, [*cuts[1:], total], strict=True)) if total else []


def _closed(speaking: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Speech with the gaps filled that are shorter than a silence."""
    filled = speaking.copy()
    for first, last in _silences(speaking):
        if last - first < _SILENCE:
            filled[first:last] = True
    return filled


def _silence_lengths(speaking: NDArray[np.bool_]) -> NDArray[np.int32]:
    """For each frame the length of the silence that it lies in (frames), 0 within speech."""
    lengths = np.zeros(len(speaking), np.int32)
    for first, last in _silences(speaking):
        lengths[first:last] = last - first
    return lengths


def _silences(speaking: NDArray[np.bool_]) -> Iterator[tuple[int, int]]:
    """Each stretch in which nobody speaks, with the frame behind its last."""
    edges = np.flatnonzero(np.diff(np.concatenate(([1], speaking.astype(np.int8), [1]))))
    return zip(edges[::2], edges[1::2], strict=True)


def _middle(silent_for: NDArray[np.int32], inside: int) -> int:
    first = inside
    while first > 0 and silent_for[first - 1]:
        first -= 1
    return first + int(silent_for[inside]) // 2
