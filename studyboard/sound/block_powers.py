"""How loud sound is, block by block."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from studyboard.sound.pcm import LOWEST


def block_powers(chunks: Iterable[bytes], size: int) -> NDArray[np.float64]:
    """The mean square of each block of *size* samples of 16-bit mono sound that comes in pieces; full scale is 1.0.

    What is left at the end and fills no block is not counted. Reads the sound once, in the memory of one piece.
    """
    powers: list[NDArray[np.float64]] = []
    rest = np.zeros(0, np.float64)
    for chunk in chunks:
        rest = np.concatenate((rest, np.frombuffer(chunk, "<i2") / -LOWEST))
        whole = len(rest) // size * size
        powers.append(np.mean(rest[:whole].reshape(-1, size) ** 2, axis=1))
        rest = rest[whole:]
    return np.concatenate(powers) if powers else np.zeros(0)
