"""How loud a programme is, by ITU-R BS.1770, measured while it streams by."""

from __future__ import annotations

import math
from array import array
from collections import deque
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from studyboard.sound.errors import require
from studyboard.sound.levels import SILENCE
from studyboard.sound.pcm import RATE
from studyboard.sound.true_peak import TruePeakMeter

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

#: Loudness of a mean square of 1 after K-weighting (LUFS): BS.1770 equation 2.
_OFFSET = -0.691
#: Blocks below this are silence (LUFS), and blocks so far below the mean of the others are pauses (LU): BS.1770 gating.
ABSOLUTE_GATE = -70.0
RELATIVE_GATE = -10.0
#: Energy is summed up ten times a second: gating blocks of 0.4 s overlap by three quarters, as BS.1770 wants.
_STEPS_A_SECOND = 10
_MOMENTARY, _SHORT_TERM = 4, 30


@dataclass(frozen=True, slots=True)
class Loudness:
    """What was measured of a whole programme.

    integrated: gated loudness (LUFS); None where nothing in it was above the absolute gate
    true_peak: the highest level between the samples too (dBTP)
    momentary, short_term: the loudest 0.4 s and 3 s (LUFS)
    seconds: length of what was measured
    """

    integrated: float | None
    true_peak: float
    momentary: float
    short_term: float
    seconds: float


class LoudnessMeter:
    """Measures mono sound that comes in chunks of any size.

    State: the weighting filter's memory, the sound of the current tenth of a second, the energy of the latest 3 s, and
    one number for each tenth of a second of the whole programme, 0.3 MB an hour.
    """

    def __init__(self, speakers: int = 2, rate: int = RATE) -> None:
        """A meter that has heard nothing.

        speakers: in how many channels the sound is heard: a narration is mono, and is delivered in both channels of a
            stereo programme, which makes it 3 LU louder than in one (BS.1770 sums the channels' energies)
        rate: samples a second (Hz)
        Raises SoundUnavailableError where pyloudnorm or what it needs is missing.
        """
        require("pyloudnorm")
        self._sections = _k_weighting(rate)
        import numpy as np

        self._memory = np.zeros((len(self._sections), 2))
        self._speakers = speakers
        self._rate = rate
        self._step = rate // _STEPS_A_SECOND
        self._begun: NDArray[np.float64] = np.zeros(0)
        self._recent: deque[float] = deque([0.0] * _SHORT_TERM, _SHORT_TERM)
        self._blocks = array("d")
        self._steps = self._samples = 0
        self._momentary = self._short_term = SILENCE
        self._peak = TruePeakMeter()

    @property
    def momentary(self) -> float:
        """Loudness of the latest 0.4 s (LUFS), by EBU Tech 3341; silence stands before the first sound."""
        return _loudness(sum(list(self._recent)[-_MOMENTARY:]) / _MOMENTARY)

    @property
    def short_term(self) -> float:
        """Loudness of the latest 3 s (LUFS), by EBU Tech 3341."""
        return _loudness(sum(self._recent) / _SHORT_TERM)

    @property
    def integrated(self) -> float | None:
        """Gated loudness of everything so far (LUFS); None where nothing of it was above the absolute gate."""
        import numpy as np

        blocks = np.frombuffer(self._blocks) if self._blocks else np.zeros(0)
        loud = blocks[blocks >= _energy(ABSOLUTE_GATE)]
        if not len(loud):
            return None
        gated = loud[loud > loud.mean() * 10 ** (RELATIVE_GATE / 10)]
        return _loudness(float(gated.mean()))

    @property
    def true_peak(self) -> float:
        """The highest level so far, between the samples too (dBTP)."""
        return self._peak.highest

    def feed(self, samples: NDArray[Any]) -> None:
        """The next samples, full scale being 1.0. O(their number)."""
        import numpy as np
        from scipy.signal import sosfilt

        heard = np.asarray(samples, np.float64)
        self._samples += len(heard)
        self._peak.feed(heard)
        weighted, self._memory = sosfilt(self._sections, heard, zi=self._memory)
        weighted = np.concatenate((self._begun, weighted))
        whole = len(weighted) // self._step * self._step
        self._begun = weighted[whole:]
        for energy in (weighted[:whole].reshape(-1, self._step) ** 2).mean(axis=1):
            self._take_up(self._speakers * float(energy))

    def take_peak(self) -> float:
        """The highest level since this was last asked (dBTP)."""
        return self._peak.take()

    def forget(self) -> None:
        """Begin anew with the programme, but go on with the loudness of the latest seconds."""
        del self._blocks[:]
        self._samples = 0
        self._momentary = self._short_term = self._peak.highest = SILENCE

    def measured(self) -> Loudness:
        """What is known of the programme so far."""
        return Loudness(self.integrated, self.true_peak, self._momentary, self._short_term, self._samples / self._rate)

    def _take_up(self, energy: float) -> None:
        self._recent.append(energy)
        self._steps += 1
        if self._steps >= _MOMENTARY:
            block = sum(list(self._recent)[-_MOMENTARY:]) / _MOMENTARY
            self._blocks.append(block)
            self._momentary = max(self._momentary, _loudness(block))
        if self._steps >= _SHORT_TERM:
            self._short_term = max(self._short_term, self.short_term)


def measure(chunks: Iterable[bytes], speakers: int = 2, rate: int = RATE) -> Loudness:
    """Measure 16-bit mono sound that comes in chunks, in bounded memory. See LoudnessMeter for *speakers*."""
    meter = LoudnessMeter(speakers, rate)
    for chunk in chunks:
        meter.feed(scaled(chunk))
    return meter.measured()


def scaled(pcm: bytes) -> NDArray[np.float64]:
    """16-bit sound as numbers with full scale at 1.0; shape (samples,)."""
    import numpy as np

    return np.frombuffer(pcm, "<i2") / 32_768.0


def _k_weighting(rate: int) -> NDArray[np.float64]:
    """The weighting filter as second-order sections, shape (2, 6).

    The parametrisation by B. De Man that pyloudnorm has gives the very coefficients that BS.1770 prints for 48 kHz, and
    the same curve for other rates; pyloudnorm's default does so only nearly.
    """
    import numpy as np
    from pyloudnorm import Meter

    filters = Meter(rate, filter_class="DeMan")._filters.values()
    return np.array([[*(stage.passband_gain * stage.b), *stage.a] for stage in filters])


def _loudness(energy: float) -> float:
    return max(SILENCE, _OFFSET + 10 * math.log10(energy)) if energy > 0 else SILENCE


def _energy(loudness: float) -> float:
    return float(10 ** ((loudness - _OFFSET) / 10))
