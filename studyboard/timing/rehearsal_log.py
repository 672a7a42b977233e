"""What rehearsals teach: beats that run over again and again, where the presenter stumbles, a pace that drifts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from studyboard.model.beats import Beat, beats
from studyboard.model.heard_take import tellings
from studyboard.model.order import running_order
from studyboard.model.rehearsals import BeatTold, Rehearsal
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.timing.plan import time_beat
from studyboard.timing.spread_beats import only_spread
from studyboard.timing.timed_lines import TimedLine, told_line

#: The latest rehearsals that say how a beat is told now.
LATEST = 3
#: A beat runs over or under where it is off its plan by more than this share and by more than these seconds: whoever
#: speaks freely strays by some per cent from one time to the next.
_OFF, _OFF_SECONDS = 0.15, 1.5
#: The talk is cut into so many parts to see its pace drift; fewer beats than that say nothing.
_PARTS = 3
#: A drift below this share is none.
_DRIFTS = 0.05


@dataclass(frozen=True, slots=True)
class Told(Rehearsal):
    """A rehearsal, or a take, as an entry of the log. take: its id, None for a rehearsal"""

    take: int | None = None


@dataclass(frozen=True, slots=True)
class BeatHistory:
    """One beat across the log.

    planned: what the plan gives it now (s)
    seconds: how long it took each time, the oldest first; None where it was not told (s)
    restarts: how often the presenter began anew in it, over all times
    """

    beat: Beat
    planned: float
    seconds: tuple[float | None, ...]
    restarts: int

    @property
    def usual(self) -> float | None:
        """The middle one of its latest times (s); None where it was never told."""
        latest = [one for one in self.seconds if one is not None][-LATEST:]
        return median(latest) if latest else None

    @property
    def over(self) -> float | None:
        """How far that is over the plan (s), negative for under; None where it was never told."""
        return None if self.usual is None else self.usual - self.planned

    @property
    def off(self) -> bool:
        """True where that is more than anybody strays."""
        return self.over is not None and abs(self.over) > max(_OFF_SECONDS, _OFF * self.planned)

    @property
    def trend(self) -> float | None:
        """By how much it gets longer from one time to the next (s), by least squares; None before three times."""
        points = [(number, one) for number, one in enumerate(self.seconds) if one is not None]
        if len(points) < LATEST:
            return None
        x = sum(number for number, _ in points) / len(points)
        y = sum(one for _, one in points) / len(points)
        spread = sum((number - x) ** 2 for number, _ in points)
        return sum((number - x) * (one - y) for number, one in points) / spread


@dataclass(frozen=True, slots=True)
class Drift:
    """How the pace changed in the course of one telling.

    parts: seconds taken as a share of those planned, for the first, the middle and the last part of the talk
    """

    parts: tuple[float, ...]

    @property
    def share(self) -> float:
        """How much slower the last part was told than the first one, as a share; negative for faster."""
        return self.parts[-1] / self.parts[0] - 1

    @property
    def matters(self) -> bool:
        """True where it is more than chance."""
        return abs(self.share) > _DRIFTS


def rehearsal_log(study: Study) -> tuple[Told, ...]:
    """All rehearsals and all takes that were kept, the oldest first; no beats that were only spread over a sound."""
    planned = {beat.key: time_beat(study, beat, 0.0).seconds for beat in beats(study, running_order(study))}
    found = [Told(one.at, one.told) for one in study.rehearsals]
    for take in study.takes.values():
        if not take.kept:
            continue
        spent: dict[BeatKey, float] = {}
        again: dict[BeatKey, int] = {}
        for telling in tellings(take):
            if telling.beat in planned and not only_spread(take, telling.beat):
                again[telling.beat] = again.get(telling.beat, -1) + 1
                seconds = telling.span.samples / take.rate
                spent[telling.beat] = spent.get(telling.beat, 0.0) + seconds
        told = tuple(BeatTold(key, seconds, planned[key], again[key]) for key, seconds in spent.items())
        if told:
            found.append(Told(take.started, told, take.id))
    return tuple(sorted(found, key=lambda one: one.at))


def beat_histories(study: Study, log: Sequence[Told]) -> tuple[BeatHistory, ...]:
    """Every beat of the running order with its times in the log. O(beats × log)."""
    rows = [{one.beat: one for one in told.told} for told in log]
    histories = []
    for beat in beats(study, running_order(study)):
        times = [row.get(beat.key) for row in rows]
        seconds = tuple(None if one is None else one.seconds for one in times)
        restarts = sum(one.restarts for one in times if one is not None)
        histories.append(BeatHistory(beat, time_beat(study, beat, 0.0).seconds, seconds, restarts))
    return tuple(histories)


def drift(told: Rehearsal) -> Drift | None:
    """How the pace changed over a telling; None where too few beats were told.

    The plan is that of its day for a rehearsal, the one of now for a take.
    """
    rows = [one for one in told.told if one.planned > 0 and one.seconds > 0]
    if len(rows) < 2 * _PARTS:
        return None
    third = sum(one.planned for one in rows) / _PARTS
    sums = [[0.0, 0.0] for _ in range(_PARTS)]
    at = 0.0
    for one in rows:
        part = min(_PARTS - 1, int((at + one.planned / 2) / third))
        sums[part][0] += one.seconds
        sums[part][1] += one.planned
        at += one.planned
    if not all(planned for _, planned in sums):
        return None
    return Drift(tuple(seconds / planned for seconds, planned in sums))


def rehearsed_lines(study: Study, log: Sequence[Told]) -> tuple[TimedLine, ...]:
    """The beats as they are usually told, for a pace to be learnt from; think pauses are taken off.

    Beats in which the presenter began anew each time are left out: those seconds say nothing about the pace.
    """
    clean = [Told(told.at, tuple(one for one in told.told if not one.restarts)) for told in log]
    told = ((one.beat, one.usual) for one in beat_histories(study, clean))
    lines = (told_line(beat, usual) for beat, usual in told if usual is not None)
    return tuple(line for line in lines if line is not None)
