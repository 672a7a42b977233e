"""A run-through: the running order driven by one key, with a clock, for rehearsing and for recording."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from time import monotonic

from studyboard.model.beats import Beat
from studyboard.model.edits import ChangeRehearsed
from studyboard.model.order import Visit, VisitKind
from studyboard.model.rehearsals import BeatTold, Rehearsal
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.timing.planner import Plan, Planner

#: Less than this is no rehearsal, but somebody who tried the key.
_LEAST_BEATS, _LEAST_SECONDS = 2, 5.0


@dataclass(frozen=True, slots=True)
class Stop:
    """One press of the key: what the board then shows, and the beat that is being told.

    visit: what is visited
    beat: index of its beat
    last_of_beat: True where the next press begins another beat
    """

    visit: Visit
    beat: int
    last_of_beat: bool


class RunThrough:
    """One walk along the running order against the clock.

    State: which stop is reached (none before the start), where the presenter has wandered off to, and how many
    seconds each beat has taken so far. The order is that of the moment at which the run-through was made.

    clock: gives seconds that only go up; the system's monotonic clock by default
    plan: the plan of the study, where it is known
    """

    def __init__(self, study: Study, clock: Callable[[], float] = monotonic, plan: Plan | None = None) -> None:
        self._clock = clock
        plan = Planner().plan(study) if plan is None else plan
        self.beats: tuple[Beat, ...] = plan.beats
        self.stops: tuple[Stop, ...] = tuple(_stops(self.beats))
        self.planned: tuple[float, ...] = tuple(stretch.end - stretch.start for stretch in plan.timeline.stretches)
        self.slot = study.slot
        self._place = -1
        self._wandered: int | None = None
        self._seconds = [0.0] * len(self.beats)
        self._restarts = [0] * len(self.beats)
        self._since: float | None = None

    def again(self, study: Study, plan: Plan | None = None) -> RunThrough:
        """The same run-through on a study that was changed meanwhile: at the same stop, with the same seconds.

        plan: the plan of the study, where it is known
        Where that stop is gone, at the last one before it that is still there.
        """
        self._settle()
        fresh = RunThrough(study, self._clock, plan)
        known = {beat.key: seconds for beat, seconds in zip(self.beats, self._seconds, strict=True)}
        fresh._seconds = [known.get(beat.key, 0.0) for beat in fresh.beats]
        restarts = {beat.key: count for beat, count in zip(self.beats, self._restarts, strict=True)}
        fresh._restarts = [restarts.get(beat.key, 0) for beat in fresh.beats]
        places: dict[tuple[BeatKey, int, VisitKind], int] = {}
        for number, stop in enumerate(fresh.stops):
            places.setdefault(_identity(fresh, stop), number)
        for place in range(self._place, -1, -1):
            found = places.get(_identity(self, self.stops[place]))
            if found is not None:
                fresh._place = found
                break
        else:
            fresh._place = min(self._place, len(fresh.stops) - 1)
        fresh._since = None if self._since is None else self._clock()
        if self._wandered in study.nodes:
            fresh._wandered = self._wandered
        return fresh

    @property
    def running(self) -> bool:
        """True while the clock runs."""
        return self._since is not None

    @property
    def begun(self) -> bool:
        """True once the first stop has been reached."""
        return self._place >= 0

    @property
    def finished(self) -> bool:
        """True at the last stop."""
        return self._place == len(self.stops) - 1

    @property
    def stop(self) -> Stop | None:
        """The stop that is reached, None before the start."""
        return self.stops[self._place] if self._place >= 0 else None

    @property
    def next_stop(self) -> Stop | None:
        """What the next press brings, None at the end."""
        return self.stops[self._place + 1] if self._place + 1 < len(self.stops) else None

    @property
    def beat(self) -> int:
        """Index of the beat that is being told; 0 before the start."""
        stop = self.stop
        return 0 if stop is None else stop.beat

    @property
    def beat_key(self) -> BeatKey | None:
        """Key of the beat that is being told; None before the start and while wandering."""
        stop = self.stop
        return None if stop is None or self._wandered is not None else self.beats[stop.beat].key

    @property
    def node(self) -> int | None:
        """What the board should show; None before the start."""
        if self._wandered is not None:
            return self._wandered
        stop = self.stop
        return None if stop is None else stop.visit.node

    @property
    def wandering(self) -> bool:
        """True while the board shows something off the running order."""
        return self._wandered is not None

    def advance(self) -> bool:
        """Go on to the next stop, starting or resuming the clock; False at the end. Ends wandering."""
        if self._place + 1 >= len(self.stops):
            return False
        self._settle()
        self._wandered = None
        self._place += 1
        self._since = self._clock()
        return True

    def retreat(self) -> bool:
        """Go back by one stop; False at the first. Ends wandering."""
        if self._place <= 0:
            return False
        self._settle()
        self._wandered = None
        self._place -= 1
        self._restarts[self.beat] += 1
        return True

    def jump(self, beat: int) -> bool:
        """Go to the first stop of another beat; False where there is none."""
        place = next((number for number, stop in enumerate(self.stops) if stop.beat == beat), None)
        if place is None:
            return False
        self._settle()
        self._wandered = None
        self._place = place
        return True

    def wander(self, node: int) -> None:
        """The board shows another node than the running order wants; on the way back by hand it is no wandering."""
        stop = self.stop
        self._wandered = None if stop is not None and stop.visit.node == node else node

    def come_back(self) -> int | None:
        """Leave off wandering: the node that the running order wants."""
        self._wandered = None
        return self.node

    def pause(self) -> None:
        """Stop the clock until the next advance or resume."""
        self._settle()
        self._since = None

    def resume(self) -> None:
        """Let the clock run on."""
        if self._since is None and self.begun:
            self._since = self._clock()

    @property
    def elapsed(self) -> float:
        """Seconds told so far, pauses of the clock left out."""
        return sum(self._seconds) + self._running_seconds()

    @property
    def planned_so_far(self) -> float:
        """What the plan gives to the beats that were told, to the present one as far as it is told (s)."""
        if not self.beats:
            return 0.0
        told = zip(self.planned, self._seconds, strict=True)
        others = sum(planned for number, (planned, spent) in enumerate(told) if spent > 0 and number != self.beat)
        return others + min(self.planned[self.beat], self.beat_seconds(self.beat))

    @property
    def late(self) -> float:
        """How far behind the plan the talk is (s); negative when ahead."""
        return self.elapsed - self.planned_so_far

    @property
    def left(self) -> float:
        """How long the rest of the talk is planned to take (s)."""
        return max(0.0, sum(self.planned) - self.planned_so_far)

    def beat_seconds(self, beat: int) -> float:
        """How long a beat has taken so far (s)."""
        return self._seconds[beat] + (self._running_seconds() if beat == self.beat else 0.0)

    def keep(self) -> ChangeRehearsed | None:
        """The edit that keeps how long each beat took; None where nothing was told."""
        self._settle()
        kept = tuple((beat.key, round(s, 2)) for beat, s in zip(self.beats, self._seconds, strict=True) if s > 0)
        return ChangeRehearsed(kept) if kept else None

    def rehearsal(self, at: str) -> Rehearsal | None:
        """What is worth remembering of it; None where hardly anything was told.

        at: when it ended, ISO 8601 with its offset
        """
        self._settle()
        rows = zip(self.beats, self._seconds, self.planned, self._restarts, strict=True)
        told = tuple(BeatTold(beat.key, round(s, 2), round(p, 2), again) for beat, s, p, again in rows if s > 0)
        enough = len(told) >= _LEAST_BEATS and sum(one.seconds for one in told) >= _LEAST_SECONDS
        return Rehearsal(at, told) if enough else None

    def _running_seconds(self) -> float:
        return 0.0 if self._since is None else max(0.0, self._clock() - self._since)

    def _settle(self) -> None:
        """Book the running seconds on the beat that is being told."""
        if self._since is not None and self._place >= 0:
            now = self._clock()
            self._seconds[self.beat] += max(0.0, now - self._since)
            self._since = now


def _identity(run: RunThrough, stop: Stop) -> tuple[BeatKey, int, VisitKind]:
    return run.beats[stop.beat].key, stop.visit.node, stop.visit.kind


def _stops(all_beats: Sequence[Beat]) -> list[Stop]:
    """Every visit that deserves a press: of returns that follow each other, only the last."""
    stops: list[Stop] = []
    for number, beat in enumerate(all_beats):
        visits = beat.visits
        if len(visits) > 1:
            visits = tuple(
                visit
                for visit, after in zip(visits, (*visits[1:], None), strict=True)
                if not (visit.kind is VisitKind.BACK and after is not None and after.kind is VisitKind.BACK)
            )
        stops += [Stop(visit, number, visit is visits[-1]) for visit in visits]
    return stops
