"""Where a presenter falls silent in the middle of a line."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from studyboard.sound.errors import require
from studyboard.sound.pcm import LOWEST, RATE

#: Silence in the middle of a line that is longer than this is a stumble (s): pauses between sentences of fluent
#: speakers stay below a second (common practice).
STUMBLE = 2.0
#: Sound is looked at in blocks of this length (s).
_BLOCK = 0.05
#: A voice is so much above the quietest tenth of the take (dB), and above this anyway (dBFS).
_ABOVE_ROOM, _FAINTEST = 10.0, -60.0


def longest_silences(
    chunks: Iterable[bytes], spans: Sequence[tuple[int, int]], rate: int = RATE
) -> tuple[tuple[float, float], ...]:
    """For each span of samples: when its longest silence begins, and how long that is (s), before its last word.

    What follows the last word of a span is no stumble: it is a think pause, or the key that came late. A span without a
    voice has none, (start, 0.0). Reads the sound once, in bounded memory. Raises SoundUnavailableError without numpy.
    """
    require("numpy")
    import numpy as np

    size = round(_BLOCK * rate)
    powers: list[float] = []
    rest = np.zeros(0)
    for chunk in chunks:
        rest = np.concatenate((rest, np.frombuffer(chunk, "<i2") / -LOWEST))
        whole = len(rest) // size * size
        powers += (rest[:whole].reshape(-1, size) ** 2).mean(axis=1).tolist()
        rest = rest[whole:]
    if not powers:
        return tuple((start / rate, 0.0) for start, _ in spans)
    levels = 10 * np.log10(np.maximum(np.array(powers), 1e-12))
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
