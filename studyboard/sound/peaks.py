"""How far a take swings, at several scales, so that its wave can be drawn at any of them at once."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

#: Samples in a block of the finest level, and how many blocks of one level make a block of the next.
_FINEST, _STEP = 128, 8
#: Coarser than this many blocks for the whole take is never drawn.
_FEWEST = 256


@dataclass(frozen=True, slots=True)
class PeakLevel:
    """The lowest and the highest sample of each block. size: samples in a block; low, high: one value for each"""

    size: int
    low: NDArray[np.int16]
    high: NDArray[np.int16]


@dataclass(frozen=True, slots=True)
class Peaks:
    """One take at several scales, the finest first. samples: how long the take is"""

    samples: int
    levels: tuple[PeakLevel, ...]

    def columns(self, first: float, last: float, count: int) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
        """The lowest and highest swing (−1.0 to 1.0) in each of *count* equal columns from one sample to another.

        Columns beyond the ends of the take are 0. O(count), whatever the length.
        """
        low, high = np.zeros(count, np.float32), np.zeros(count, np.float32)
        if count < 1 or last <= first or not self.levels:
            return low, high
        wide = (last - first) / count
        level = next((one for one in reversed(self.levels) if one.size <= wide), self.levels[0])
        edges = (first + np.arange(count + 1) * wide) / level.size
        starts = np.floor(edges[:-1]).astype(np.int64)
        ends = np.maximum(np.ceil(edges[1:]).astype(np.int64), starts + 1)
        inside = (ends > 0) & (starts < len(level.low))
        if not inside.any():
            return low, high
        starts, ends = np.clip(starts[inside], 0, None), np.clip(ends[inside], None, len(level.low))
        bounds = np.stack((starts, ends), axis=1).reshape(-1)
        padded_low, padded_high = np.append(level.low, level.low[-1]), np.append(level.high, level.high[-1])
        low[inside] = np.minimum.reduceat(padded_low, bounds)[::2] / 32_768
        high[inside] = np.maximum.reduceat(padded_high, bounds)[::2] / 32_768
        return low, high


def peaks_of(chunks: Iterable[bytes], stopped: Callable[[], bool] = lambda: False) -> Peaks | None:
    """The peaks of 16-bit mono sound that comes in pieces; None where it was stopped. O(length)."""
    lows: list[NDArray[np.int16]] = []
    highs: list[NDArray[np.int16]] = []
    rest = np.zeros(0, np.int16)
    samples = 0
    for pcm in chunks:
        if stopped():
            return None
        block = np.concatenate((rest, np.frombuffer(pcm, "<i2")))
        samples += len(pcm) // 2
        whole = len(block) // _FINEST * _FINEST
        rows = block[:whole].reshape(-1, _FINEST)
        lows.append(rows.min(axis=1) if len(rows) else rest[:0])
        highs.append(rows.max(axis=1) if len(rows) else rest[:0])
        rest = block[whole:]
    if len(rest):
        lows.append(rest.min(keepdims=True))
        highs.append(rest.max(keepdims=True))
    if not samples:
        return Peaks(0, ())
    levels = [PeakLevel(_FINEST, np.concatenate(lows), np.concatenate(highs))]
    while len(levels[-1].low) > _FEWEST * _STEP:
        finer = levels[-1]
        places = np.arange(0, len(finer.low), _STEP)
        levels.append(
            PeakLevel(
                finer.size * _STEP, np.minimum.reduceat(finer.low, places), np.maximum.reduceat(finer.high, places)
            )
        )
    return Peaks(samples, tuple(levels))
