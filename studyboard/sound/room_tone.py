"""Where in a take nobody speaks, so that the sound of the room can fill its gaps."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from studyboard.model.takes import Span
from studyboard.sound.block_powers import block_powers

#: How finely the level is looked at (s).
_WINDOW = 0.02
#: How long a stretch of room is wanted (s): a pattern that comes back faster is heard as a flutter.
LENGTH = 0.6
#: Louder than this (dBFS) somebody speaks.
LOUDEST = -40.0


def quietest(chunks: Iterable[bytes], rate: int, length: float = LENGTH) -> Span | None:
    """The quietest stretch of this length (s); None where the sound is shorter, or nowhere quiet for so long.

    chunks: 16-bit mono sound of *rate* samples a second; read once, in the memory of one chunk and 50 levels a second
    """
    size = max(1, round(_WINDOW * rate))
    level = np.sqrt(block_powers(chunks, size))
    many = max(1, round(length / _WINDOW))
    if len(level) < many:
        return None
    loudest = np.lib.stride_tricks.sliding_window_view(level, many).max(axis=1)
    best = int(np.argmin(loudest))
    if loudest[best] > 10 ** (LOUDEST / 20):
        return None
    return Span(best * size, (best + many) * size)


def loop(samples: NDArray[np.float32], overlap: int) -> NDArray[np.float32]:
    """The same sound made so that its end goes on into its beginning, *overlap* samples shorter."""
    overlap = min(overlap, len(samples) // 3)
    if overlap < 1:
        return samples
    rising = np.sin(np.linspace(0.0, np.pi / 2, overlap, dtype=np.float32))
    body = samples[overlap:].copy()
    # Two stretches of noise have nothing to do with each other: their powers add up, not their amplitudes.
    body[-overlap:] = body[-overlap:] * rising[::-1] + samples[:overlap] * rising
    return body
