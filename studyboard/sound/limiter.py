"""Keeping a programme's true peak below a ceiling without anybody hearing it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from studyboard.sound.errors import require
from studyboard.sound.pcm import RATE
from studyboard.sound.true_peak import REACH, peaks

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

#: How long before a peak the sound is turned down (s), and how fast it comes up again (dB/s): common practice for
#: speech, slow enough not to distort its lowest tones.
_AHEAD = 0.005
_RELEASE = 40.0
#: What the gain may change between the samples while it moves (dB), kept free below the ceiling.
_MARGIN = 0.05


class TruePeakLimiter:
    """Turns mono sound down where it would go over the ceiling, and leaves it alone elsewhere.

    State: the sound that is still looked ahead in, the gain that it needs, and how far the last reduction has been
    let go. As many samples come out as went in, at the same places, once `flush` has been called.

    deepest: the strongest reduction so far (dB, 0 or less)
    """

    def __init__(self, ceiling: float = -1.0, rate: int = RATE) -> None:
        """A limiter for this ceiling (dBTP). Raises SoundUnavailableError where scipy is missing."""
        require("numpy")
        require("scipy")
        import numpy as np

        self.deepest = 0.0
        self._ceiling = ceiling - _MARGIN
        self._rise = _RELEASE / rate
        self._ahead = max(1, round(_AHEAD * rate))
        self._window = np.hanning(self._ahead + 3)[1:-1]
        self._window /= self._window.sum()
        # Silence stands before the first sample, for what looks back.
        self._sound: NDArray[np.float64] = np.zeros(REACH - 1)
        self._waiting: NDArray[np.float64] = np.zeros(0)
        self._needed: NDArray[np.float64] = np.zeros(self._ahead)
        self._before = self._held = 0.0

    def limit(self, samples: NDArray[Any]) -> NDArray[np.float64]:
        """The next samples, full scale being 1.0; returns those that are ready, a few milliseconds behind."""
        import numpy as np
        from scipy.ndimage import minimum_filter1d

        heard = np.asarray(samples, np.float64)
        self._waiting = np.concatenate((self._waiting, heard))
        self._sound = np.concatenate((self._sound, heard))
        high = peaks(self._sound)
        if len(high):
            self._sound = self._sound[len(high) :]
            self._needed = np.concatenate((self._needed, self._released(self._gains(high))))
        ready = len(self._needed) - 2 * self._ahead
        if ready <= 0:
            return np.zeros(0)
        needed = self._needed
        self._needed = needed[ready:]
        if needed.any():
            # The lowest gain of the moments ahead, then the mean of that over the moments behind: a ramp that has
            # arrived when the peak comes.
            size = self._ahead + 1
            lowest = minimum_filter1d(needed, size, mode="nearest")[size // 2 : size // 2 + ready + self._ahead]
            gain = 10 ** (np.convolve(lowest, self._window, "valid") / 20)
        else:
            gain = np.ones(ready)
        out = self._waiting[:ready] * gain
        self._waiting = self._waiting[ready:]
        return out

    def flush(self) -> NDArray[np.float64]:
        """The samples that were kept back; the programme is over."""
        import numpy as np

        left = len(self._waiting)
        return self.limit(np.zeros(self._ahead + REACH))[:left]

    def _gains(self, high: NDArray[np.float64]) -> NDArray[np.float64]:
        """What each sample needs by itself (dB, 0 or less). A peak between two of them is a matter of both."""
        import numpy as np

        alone = np.minimum(0.0, self._ceiling - 20 * np.log10(np.maximum(high, 1e-9)))
        both = np.minimum(alone, np.concatenate(([self._before], alone[:-1])))
        self._before = float(alone[-1])
        self.deepest = min(self.deepest, float(both.min()))
        return both

    def _released(self, gains: NDArray[np.float64]) -> NDArray[np.float64]:
        """The same with each reduction let go slowly."""
        import numpy as np

        if not self._held and not gains.any():
            return gains
        # gain[n] = min(needed[n], gain[n - 1] + rise), for all n at once.
        slope = self._rise * np.arange(1, len(gains) + 1)
        lowest = np.minimum(np.minimum.accumulate(gains - slope), self._held)
        held: NDArray[np.float64] = np.minimum(lowest + slope, 0.0)
        self._held = float(held[-1])
        return held
