"""Rehearsals that have happened: how long each beat took, and where the presenter began anew."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.model.edits import Edit
from studyboard.model.script import BeatKey
from studyboard.model.study import Changed, Study
from studyboard.translation import tr_later


@dataclass(frozen=True, slots=True)
class BeatTold:
    """One beat of a rehearsal.

    seconds: how long it took; planned: what the plan gave it then (s)
    restarts: how often the presenter went back in it, or to it
    """

    beat: BeatKey
    seconds: float
    planned: float
    restarts: int = 0


@dataclass(frozen=True, slots=True)
class Rehearsal:
    """One run-through without a recording.

    at: when it ended, ISO 8601 with its offset; no two have the same
    told: the beats that were told, in the order of the talk
    """

    at: str
    told: tuple[BeatTold, ...]

    @property
    def seconds(self) -> float:
        """How long all of it took (s)."""
        return sum(one.seconds for one in self.told)

    @property
    def planned(self) -> float:
        """What the plan gave to the same beats (s)."""
        return sum(one.planned for one in self.told)


@dataclass(frozen=True, slots=True)
class AddRehearsal:
    """Put a rehearsal into the log, in the order of time."""

    rehearsal: Rehearsal
    label: str = tr_later("Keep a rehearsal")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        was = next((one for one in study.rehearsals if one.at == self.rehearsal.at), None)
        others = (one for one in study.rehearsals if one is not was)
        study.rehearsals = tuple(sorted((*others, self.rehearsal), key=lambda one: one.at))
        changed.rehearsed = True
        return DropRehearsal(self.rehearsal.at, self.label) if was is None else AddRehearsal(was, self.label)


@dataclass(frozen=True, slots=True)
class DropRehearsal:
    """Take the rehearsal that ended at this moment out of the log; nothing happens where there is none."""

    at: str
    label: str = tr_later("Take a rehearsal out of the log")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        dropped = next((one for one in study.rehearsals if one.at == self.at), None)
        if dropped is None:
            return DropRehearsal(self.at, self.label)
        study.rehearsals = tuple(one for one in study.rehearsals if one is not dropped)
        changed.rehearsed = True
        return AddRehearsal(dropped, self.label)
