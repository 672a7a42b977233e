"""The level between the samples, which a loudspeaker reaches though no sample does."""

from __future__ import annotations

import math
from functools import cache
from typing import TYPE_CHECKING, Any

from studyboard.sound.levels import SILENCE

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

#: How many times the sound is oversampled: ITU-R BS.1770 annex 2, for 48 kHz.
OVERSAMPLED = 4
#: Samples on each side of a moment from which the level there is made up. The annex prints a filter with six; twelve
#: come nearer to the truth above 15 kHz.
REACH = 12


class TruePeakMeter:
    """Measures the true peak of mono sound that comes in chunks, by ITU-R BS.1770 annex 2.

    State: the highest level so far and since it was last taken, and the latest samples, which the next ones bear upon.

    highest: the highest level so far (dBTP)
    """

    def __init__(self) -> None:
        import numpy as np

        self.highest = SILENCE
        self._since = 0.0
        self._last: NDArray[np.float64] = np.zeros(2 * REACH - 1)

    def feed(self, samples: NDArray[Any]) -> None:
        """The next samples, full scale being 1.0; the last twelve count once the next ones are known."""
        import numpy as np

        heard = np.concatenate((self._last, samples))
        self._last = heard[-(2 * REACH - 1) :]
        if len(samples):
            # The samples themselves are known at once, what lies between them when those behind it are.
            peak = max(float(np.abs(samples).max()), float(peaks(heard).max(initial=0.0)))
            self._since = max(self._since, peak)
            self.highest = max(self.highest, decibels(peak))

    def take(self) -> float:
        """The highest level since this was last asked (dBTP)."""
        since, self._since = self._since, 0.0
        return decibels(since)


def peaks(samples: NDArray[Any]) -> NDArray[np.float64]:
    """The highest magnitude at and just behind each sample that has REACH - 1 samples before and REACH behind it.

    Shape (len(samples) - 2 * REACH + 1,), empty where there are fewer samples.
    """
    import numpy as np

    count = len(samples) - 2 * REACH + 1
    if count <= 0:
        return np.zeros(0)
    highest: NDArray[np.float64] = np.abs(samples[REACH - 1 : REACH - 1 + count]).astype(np.float64)
    for phase in _phases():
        np.maximum(highest, np.abs(np.convolve(samples, phase, "valid")), out=highest)
    return highest


def decibels(magnitude: float) -> float:
    """A magnitude as a level below full scale (dB); SILENCE for nothing."""
    return max(SILENCE, 20 * math.log10(magnitude)) if magnitude > 0 else SILENCE


@cache
def _phases() -> tuple[NDArray[np.float64], ...]:
    """For each quarter between two samples the weights of those around it, in the order that convolution wants."""
    import numpy as np

    places = np.arange(-(REACH - 1), REACH + 1)
    found = []
    for quarter in range(1, OVERSAMPLED):
        distance = places - quarter / OVERSAMPLED
        window = np.i0(8.0 * np.sqrt(np.clip(1 - (distance / REACH) ** 2, 0, None))) / np.i0(8.0)
        weights = np.sinc(distance) * window
        found.append((weights / weights.sum())[::-1])
    return tuple(found)
