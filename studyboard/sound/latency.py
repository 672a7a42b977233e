"""How late sound arrives, found by looking for a known signal in what was heard."""

from __future__ import annotations

import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from studyboard.model.errors import StudyboardError
from studyboard.sound.errors import require
from studyboard.sound.pcm import FULL_SCALE, RATE
from studyboard.translation import tr

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

#: The signal: a tone that rises evenly in octaves, which survives bad loudspeakers and echoes (Hz, s).
_LOWEST, _HIGHEST, _LENGTH = 250.0, 7_000.0, 0.3
_FADE = 0.02
#: Silence before each signal of a train (s), uneven so that none can be taken for another.
PAUSES = (0.45, 0.95, 0.70, 1.10, 0.60)
#: How much later than it is played a signal is looked for at most (s): wireless headsets come near half a second.
LONGEST = 0.65
#: …and how much earlier, because what tells what is being played is not exact either (s).
_EARLIEST = 0.15
#: How far a signal must stand out of the rest of the correlation to be one.
_STANDS_OUT = 6.0
#: The direct sound is the first peak that is so high as a share of the highest, and so near before it (s).
_DIRECT, _BEFORE = 0.5, 0.03
#: So many signals must be found, and so near must they agree (s).
_ENOUGH = 3
_AGREE = 0.008


class UnsteadyDelayError(StudyboardError):
    """The signals were heard, but each so much later that no delay can be told."""


@dataclass(frozen=True, slots=True)
class Delay:
    """A measured delay.

    seconds: how much later sound arrives than it is heard (s); 0 or more
    spread: how far the single measurements lie apart (s)
    signals: how many of them there were
    """

    seconds: float
    spread: float
    signals: int


def signal(level: float, rate: int = RATE) -> NDArray[Any]:
    """The signal, with its peak at this level (dBFS); full scale is 1.0."""
    import numpy as np

    t = np.arange(round(_LENGTH * rate)) / rate
    octaves = np.log(_HIGHEST / _LOWEST)
    tone = np.sin(2 * np.pi * _LOWEST * _LENGTH / octaves * (np.exp(t / _LENGTH * octaves) - 1))
    fade = np.clip(np.minimum(t, t[::-1]) / _FADE, 0, 1)
    swept: NDArray[Any] = tone * np.sin(fade * np.pi / 2) ** 2 * 10 ** (level / 20)
    return swept


def train(level: float, rate: int = RATE) -> tuple[bytes, tuple[int, ...]]:
    """Several signals with silence between them, as 16-bit mono sound, and the samples at which they begin."""
    import numpy as np

    one = np.rint(signal(level, rate) * FULL_SCALE).astype("<i2")
    parts: list[NDArray[np.int16]] = []
    starts, length = [], 0
    for pause in PAUSES:
        length += round(pause * rate)
        starts.append(length)
        length += len(one)
        parts += [np.zeros(round(pause * rate), "<i2"), one]
    parts.append(np.zeros(round((LONGEST + 0.1) * rate), "<i2"))
    return np.concatenate(parts).tobytes(), tuple(starts)


def found_at(sound: NDArray[np.int16], expected: int, rate: int = RATE) -> float | None:
    """The sample at which the signal begins that was expected at this one; None where it was not heard.

    Parts of a sample are told. Raises SoundUnavailableError where scipy is missing.
    """
    require("scipy")
    import numpy as np
    from scipy.signal import correlate

    wanted = signal(0.0, rate)
    first = max(0, expected - round(_EARLIEST * rate))
    heard = np.asarray(sound[first : expected + round(LONGEST * rate) + len(wanted)], np.float64)
    if len(heard) <= len(wanted):
        return None
    match = np.abs(correlate(heard, wanted, "valid", "fft"))
    highest = int(np.argmax(match))
    usual = float(np.sqrt(np.mean(match**2)))
    if usual <= 0 or match[highest] < _STANDS_OUT * usual:
        return None
    start = max(0, highest - round(_BEFORE * rate))
    direct = start + int(np.flatnonzero(match[start : highest + 1] >= _DIRECT * match[highest])[0])
    direct += int(np.argmax(match[direct : direct + rate // 2_000]))
    return first + direct + _between(match, direct)


def delay(sound: NDArray[np.int16], expected: Sequence[int], rate: int = RATE) -> Delay | None:
    """How late the signals were heard that were played at these samples of *sound*; None where they were not.

    A signal that disagrees with the others, because somebody spoke meanwhile, is left out. Raises UnsteadyDelayError
    where none agree, SoundUnavailableError where scipy is missing.
    """
    places = [(at, found_at(sound, at, rate)) for at in expected]
    late = [(found - at) / rate for at, found in places if found is not None]
    apart = tr("The tones do not agree about the delay: the machine is busy. Close other programs and measure again.")
    return agreed(late, _ENOUGH, _AGREE, apart)


def agreed(late: Sequence[float], enough: int, within: float, apart: str) -> Delay | None:
    """The delay around which single ones (s) lie, those farther from the middle one than *within* left out.

    None for fewer than *enough*. Raises UnsteadyDelayError, which says *apart*, where fewer than that agree.
    """
    if len(late) < enough:
        return None
    middle = statistics.median(late)
    near = [one for one in late if abs(one - middle) <= within]
    if len(near) < enough:
        raise UnsteadyDelayError(apart)
    return Delay(max(0.0, statistics.mean(near)), max(near) - min(near), len(near))


def _between(match: NDArray[Any], peak: int) -> float:
    """Where between the samples the peak lies, by the parabola through it and its neighbours."""
    if not 0 < peak < len(match) - 1:
        return 0.0
    left, top, right = (float(match[peak + step]) for step in (-1, 0, 1))
    bend = left - 2 * top + right
    return 0.0 if bend >= 0 else max(-0.5, min(0.5, (left - right) / (2 * bend)))
