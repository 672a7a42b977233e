"""Where speech begins and ends in a short recording, for a pickup that is to fit between other words."""

from __future__ import annotations

import numpy as np

from studyboard.model.takes import Span
from studyboard.sound.block_powers import block_powers
from studyboard.sound.pcm import count

#: How finely the level is looked at (s).
_WINDOW = 0.01
#: What is left before and behind the speech (s): a soft consonant begins and dies away below the threshold.
_BEFORE, _BEHIND = 0.04, 0.10
#: So many times as loud as the room is speech; and nothing below this level is (dBFS).
_ABOVE_ROOM = 4.0
_LEAST = -50.0


def speech_bounds(pcm: bytes, rate: int) -> Span | None:
    """The stretch of 16-bit mono sound in which somebody speaks; None where nobody does. Meant for some seconds."""
    size = max(1, round(_WINDOW * rate))
    level = np.sqrt(block_powers([pcm], size))
    if not len(level):
        return None
    room = float(np.percentile(level, 10))
    loudest = float(level.max())
    threshold = max(10 ** (_LEAST / 20), min(_ABOVE_ROOM * room, loudest / 4))
    spoken = np.flatnonzero(level > threshold)
    if not len(spoken):
        return None
    start = max(0, int(spoken[0]) * size - round(_BEFORE * rate))
    end = min(count(pcm), (int(spoken[-1]) + 1) * size + round(_BEHIND * rate))
    return Span(start, end)
