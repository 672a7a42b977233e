"""Sound in which every sample has its place, so that not a single one can be lost without being missed."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tests.sound.virtual_microphone import SoundServer

#: The samples rise by one and begin anew after so many: a prime, so that no loss of whole buffers hides behind it.
PERIOD = 32_749
_LOWEST = -16_374
#: Shorter runs than this are not taken for the ramp (samples).
_RUN = 100

_FEED = """
import sys
import numpy as np
one = np.arange({period}, dtype="<i2") + np.int16({lowest})
block = np.tile(one, 10).tobytes()
try:
    while True:
        sys.stdout.buffer.write(block)
except BrokenPipeError:
    sys.stderr.close()
"""


class Ramp:
    """Plays the ramp into a sink until it is ended.

    State: the two programs that do it.
    """

    def __init__(self, server: SoundServer, sink: str = "mouth") -> None:
        program = _FEED.format(period=PERIOD, lowest=_LOWEST)
        self._source = subprocess.Popen([sys.executable, "-c", program], stdout=subprocess.PIPE)
        form = ["--raw", "--rate=48000", "--channels=1", "--format=s16le", "--latency-msec=2000"]
        self._player = subprocess.Popen(
            ["pacat", "--playback", f"--device={sink}", *form],
            stdin=self._source.stdout,
            env=os.environ | server.environment,
        )

    def end(self) -> None:
        """Stop playing."""
        for process in (self._player, self._source):
            process.kill()
            process.wait()


@dataclass(frozen=True, slots=True)
class Heard:
    """What became of the ramp.

    samples: all that there were
    ramp: those that belong to the ramp
    lost: samples of the ramp that are missing between its first and its last one that was heard
    gaps: where the player came too late and silence was played instead, without a sample of the ramp being lost
    silence: samples of such silence
    torn: places where samples are missing, or come twice, or are not what was played
    """

    samples: int
    ramp: int
    lost: int
    gaps: int
    silence: int
    torn: int


class Follower:
    """Follows the ramp through a recording that comes in chunks.

    State: the unbroken run that it is in, what came between that and the run before, and the sums.
    """

    def __init__(self) -> None:
        self._first = self._last = -1
        self._length = self._between = 0
        self._expected: int | None = None
        self._ramp = self._lost = self._gaps = self._silence = self._torn = 0
        self._samples = 0

    def feed(self, chunk: NDArray[np.int16]) -> None:
        """The next samples."""
        self._samples += len(chunk)
        places = chunk.astype(np.int64) - _LOWEST
        if not len(places):
            return
        steps = np.diff(places, prepend=self._last if self._length else places[0] - 1)
        breaks = np.flatnonzero((steps - 1) % PERIOD)
        edges = [0, *(int(place) for place in breaks if place), len(places)]
        for number, (start, stop) in enumerate(pairwise(edges)):
            if number or not self._length or (len(breaks) and breaks[0] == 0):
                self._close()
                self._first, self._length = int(places[start]), 0
            self._length += stop - start
            self._last = int(places[stop - 1])

    def end(self) -> Heard:
        """The recording is over."""
        self._close()
        return Heard(self._samples, self._ramp, self._lost, self._gaps, self._silence, self._torn)

    def _close(self) -> None:
        if self._length < _RUN:
            self._between += self._length
            return
        if self._expected is not None:
            missing = (self._first - self._expected) % PERIOD
            self._torn += missing != 0
            self._lost += missing
            self._gaps += self._between > 0 and missing == 0
            self._silence += self._between
        self._between = 0
        self._ramp += self._length
        self._expected = (self._last + 1) % PERIOD


def heard(chunks: Iterable[NDArray[np.int16]]) -> Heard:
    """What became of the ramp in a recording that comes in chunks."""
    follower = Follower()
    for chunk in chunks:
        follower.feed(chunk)
    return follower.end()
