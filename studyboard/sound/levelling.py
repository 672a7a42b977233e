"""Bringing a whole programme to the loudness that it is published with, in two passes over its chunks."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from studyboard.sound.limiter import TruePeakLimiter
from studyboard.sound.loudness import Loudness, measure, scaled
from studyboard.sound.pcm import FULL_SCALE, LOWEST, RATE

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: No programme is turned up by more (dB): what is quieter than that is noise.
MOST_GAIN = 40.0
#: How near to the target the limited programme should come (LU): the accuracy that EBU Tech 3341 asks of meters.
_NEAR = 0.1
_TRIES = 3


class Target(Enum):
    """What a programme is published for: integrated loudness (LUFS) and highest true peak (dBTP)."""

    #: Speech online: AES TD1008 (2021).
    ONLINE = (-18.0, -1.0)
    #: Broadcasting in Europe: EBU R 128.
    BROADCAST = (-23.0, -1.0)

    @property
    def loudness(self) -> float:
        """Integrated loudness (LUFS)."""
        return float(self.value[0])

    @property
    def ceiling(self) -> float:
        """The highest true peak (dBTP)."""
        return float(self.value[1])


#: What can be chosen of a delivery, by the names of the command line; None leaves the voice as it was spoken.
TARGETS: Mapping[str, Target | None] = MappingProxyType(
    {"-18": Target.ONLINE, "-23": Target.BROADCAST, "as-spoken": None}
)


@dataclass(frozen=True, slots=True)
class Levelling:
    """What is to be done to a programme.

    gain: by how much it is turned up (dB; negative is down)
    ceiling: what its true peaks are limited to (dBTP)
    speakers: in how many channels it will be heard, see LoudnessMeter
    """

    gain: float
    ceiling: float
    speakers: int = 2


def levelling(measured: Loudness, target: Target = Target.ONLINE, speakers: int = 2) -> Levelling:
    """What brings a programme with this loudness to the target, as far as no peak needs to be limited.

    A programme without anything above the gate is left as it is.
    """
    if measured.integrated is None:
        return Levelling(0.0, target.ceiling, speakers)
    return Levelling(min(MOST_GAIN, target.loudness - measured.integrated), target.ceiling, speakers)


def fitted(programme: Callable[[], Iterable[bytes]], target: Target = Target.ONLINE, speakers: int = 2) -> Levelling:
    """What brings a programme of 16-bit mono sound at 48 kHz to the target, its limited peaks included.

    programme: gives its chunks, anew for each pass: one where no peak needs to be limited, up to three more where
        limiting takes loudness away that has to be made up for
    """
    measured = measure(programme(), speakers)
    found = levelling(measured, target, speakers)
    if measured.integrated is None or measured.true_peak + found.gain <= target.ceiling:
        return found
    for _ in range(_TRIES):
        after = measure(levelled(programme(), found), speakers).integrated
        if after is None or abs(target.loudness - after) <= _NEAR / 2:
            break
        found = replace(found, gain=min(MOST_GAIN, found.gain + target.loudness - after))
    return found


def levelled(chunks: Iterable[bytes], how: Levelling) -> Iterator[bytes]:
    """The programme, levelled: 16-bit mono sound at 48 kHz in chunks, each a few milliseconds behind what went in.

    As many samples come out as went in, at the same places. What is recorded is never changed: this is for what is
    delivered. Lossy coding can raise peaks again by some tenths of a decibel, for which the ceiling leaves room.
    Bounded memory: a chunk and 10 ms. Raises SoundUnavailableError where scipy is missing.
    """
    leveller = Leveller(how)
    for chunk in chunks:
        yield leveller.level(chunk)
    yield leveller.flush()


class Leveller:
    """Levels a programme chunk by chunk, for those who have no iterator of it.

    State: the limiter's.
    """

    def __init__(self, how: Levelling, rate: int = RATE) -> None:
        """Raises SoundUnavailableError where scipy is missing."""
        self._gain = 10 ** (how.gain / 20)
        self._limiter = TruePeakLimiter(how.ceiling, rate)

    @property
    def deepest(self) -> float:
        """The strongest reduction of a peak so far (dB, 0 or less)."""
        return self._limiter.deepest

    def level(self, pcm: bytes) -> bytes:
        """The next 16-bit mono sound; returns what is ready."""
        return _rounded(self._limiter.limit(scaled(pcm) * self._gain))

    def flush(self) -> bytes:
        """What was kept back; the programme is over."""
        return _rounded(self._limiter.flush())


def _rounded(samples: NDArray[Any]) -> bytes:
    import numpy as np

    return np.clip(np.rint(samples * 32_768.0), LOWEST, FULL_SCALE).astype("<i2").tobytes()
