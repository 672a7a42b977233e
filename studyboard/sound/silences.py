"""Where a presenter falls silent."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
from numpy.typing import NDArray

from studyboard.sound.block_powers import block_powers
from studyboard.sound.pcm import RATE

#: Silence in the middle of a line that is longer than this is a stumble (s): pauses between sentences of fluent
#: speakers stay below a second (common practice).
STUMBLE = 2.0
#: Sound is looked at in blocks of this length (s).
_BLOCK = 0.05
#: A voice is so much above the quietest tenth of the take (dB), and above this anyway (dBFS).
_ABOVE_ROOM, _FAINTEST = 10.0, -60.0

#: What lies between two phrases: blocks of this length (s), so many of them one after the other, each this far below
#: the loudest one (as an amplitude) or below this one (of 32,768). Our own figures.
_SHORT_BLOCK, _RESTING, _QUIETER, _FAINT = 0.02, 10, 20, 30.0


def phrase_at(samples: NDArray[np.int16], at: int, rate: int = RATE) -> tuple[int, int] | None:
    """First sample of what is said around *at*, between two silences, and the one behind it; None in a silence."""
    size = max(1, round(rate * _SHORT_BLOCK))
    whole = len(samples) // size * size
    if not whole:
        return None
    level = np.sqrt(np.mean(samples[:whole].reshape(-1, size).astype(np.float64) ** 2, axis=1))
    loud = level > max(_FAINT, float(level.max()) / _QUIETER)
    rests = np.convolve(~loud, np.ones(_RESTING), "valid") >= _RESTING
    block = min(len(level) - 1, max(0, at // size))
    before = np.flatnonzero(rests[: max(0, block - _RESTING + 1)])
    behind = np.flatnonzero(rests[block:])
    start = int(before[-1]) + _RESTING if len(before) else 0
    end = int(behind[0]) + block if len(behind) else len(level)
    return (start * size, end * size) if start < end else None


def longest_silences(
    chunks: Iterable[bytes], spans: Sequence[tuple[int, int]], rate: int = RATE
) -> tuple[tuple[float, float], ...]:
    """For each span of samples: when its longest silence begins, and how long that is (s), before its last word.

    What follows the last word of a span is no stumble: it is a think pause, or the key that came late. A span without a
    voice has none, (start, 0.0). Reads the sound once.
    """
    size = round(_BLOCK * rate)
    powers = block_powers(chunks, size)
    if not len(powers):
        return tuple((start / rate, 0.0) for start, _ in spans)
    levels = 10 * np.log10(np.maximum(powers, 1e-12))
    speaks = levels > max(float(np.percentile(levels, 10)) + _ABOVE_ROOM, _FAINTEST)
    found = []
    for start, end in spans:
        voiced = np.flatnonzero(speaks[start // size : end // size])
        gaps = np.diff(voiced)
        if not len(gaps):
            found.append((start / rate, 0.0))
            continue
        longest = int(np.argmax(gaps))
        begins = start / rate + (int(voiced[longest]) + 1) * _BLOCK
        found.append((begins, (int(gaps[longest]) - 1) * _BLOCK))
    return tuple(found)
