"""What goes wrong with the level while somebody records: clipping, a faint voice, a microphone that is dead."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

#: Readings of the level a second.
READINGS = 15
#: What never comes from a microphone that is on (dBFS, peak): the last bits of 16.
_DEAD = -84.0
#: How long that must last (s): nobody is so silent.
_DEAD_FOR = 3.0
#: A voice is what is so much above the quietest tenth of the latest readings (dB)…
_ABOVE_ROOM = 12.0
#: …and above this anyway (dBFS, RMS).
_FAINTEST = -66.0
#: Of how many seconds of the room its quietest tenth is taken (s).
_ROOM = 20.0
#: A voice whose readings stay below this (dBFS, RMS) is lost in the noise when it is turned up: common practice.
TOO_QUIET = -42.0
#: How many seconds of voice, without one louder reading, are faint enough to be told.
_FAINT_FOR = 5.0
#: How long a voice may pause before its seconds are counted anew (s).
_PAUSE = 4.0
#: Clipping is told again after so much sound without any (s).
_CLIPPED_ANEW = 2.0


class Trouble(StrEnum):
    """What is wrong."""

    CLIPPED = "clipped"
    TOO_QUIET = "too quiet"
    NO_SIGNAL = "no signal"


@dataclass(frozen=True, slots=True)
class Warned:
    """Something that went wrong.

    trouble: what it was
    at: when it began (s of the take)
    """

    trouble: Trouble
    at: float


class LevelWatch:
    """Listens to the readings of a running take and tells each trouble once, when it begins.

    State: the latest readings, how long each trouble has lasted, and what was told.
    """

    def __init__(self) -> None:
        self._now = 0.0
        self._room: deque[float] = deque(maxlen=round(_ROOM * READINGS))
        self._faint = 0.0
        self._faint_from = 0.0
        self._silent_for = 0.0
        self._dead = 0.0
        self._clipped: float | None = None
        self._told: set[Trouble] = set()
        self.warned: list[Warned] = []

    def clip(self, at: float) -> Warned | None:
        """Some sound was at full scale at this moment of the take (s)."""
        anew = self._clipped is None or at - self._clipped > _CLIPPED_ANEW
        self._clipped = at
        return self._note(Trouble.CLIPPED, at) if anew else None

    def read(self, peak: float, rms: float, at: float) -> tuple[Warned, ...]:
        """The next reading (dBFS) at this moment of the take (s); what has gone wrong just now."""
        step = max(0.0, min(at - self._now, 1.0))
        self._now = at
        return tuple(found for found in (*self._look_for_signal(peak, step), *self._look_for_voice(rms, step)) if found)

    @property
    def standing(self) -> frozenset[Trouble]:
        """What is wrong still: not the clipping, which is over when it is told."""
        return frozenset(self._told)

    def _look_for_signal(self, peak: float, step: float) -> Iterator[Warned | None]:
        if peak > _DEAD:
            self._dead = 0.0
            self._told.discard(Trouble.NO_SIGNAL)
            return
        self._dead += step
        if self._dead >= _DEAD_FOR:
            yield self._once(Trouble.NO_SIGNAL, self._now - self._dead)

    def _look_for_voice(self, rms: float, step: float) -> Iterator[Warned | None]:
        self._room.append(rms)
        if rms < max(self._floor() + _ABOVE_ROOM, _FAINTEST):
            self._silent_for += step
            if self._silent_for > _PAUSE:
                self._faint = 0.0
            return
        self._silent_for = 0.0
        if rms >= TOO_QUIET:
            self._faint = 0.0
            self._told.discard(Trouble.TOO_QUIET)
            return
        if not self._faint:
            self._faint_from = self._now
        self._faint += step
        if self._faint >= _FAINT_FOR:
            yield self._once(Trouble.TOO_QUIET, self._faint_from)

    def _floor(self) -> float:
        ordered = sorted(self._room)
        return ordered[len(ordered) // 10]

    def _once(self, trouble: Trouble, at: float) -> Warned | None:
        if trouble in self._told:
            return None
        self._told.add(trouble)
        return self._note(trouble, max(0.0, at))

    def _note(self, trouble: Trouble, at: float) -> Warned:
        warned = Warned(trouble, at)
        self.warned.append(warned)
        return warned
