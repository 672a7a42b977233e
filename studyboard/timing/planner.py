"""Plans a talk again and again while it is being written, from what an edit has left as it was."""

from __future__ import annotations

from collections.abc import Generator, Sequence
from dataclasses import dataclass

from studyboard.model.beats import Beat, beats
from studyboard.model.node import Node
from studyboard.model.order import Visit, running_order
from studyboard.model.script import BeatKey, Pace, Part
from studyboard.model.study import Study
from studyboard.timing.plan import time_beat
from studyboard.timing.timeline import Source, Stretch, Timeline

#: As many beats are looked at between two rests, and as many are timed.
_LOOKED_AT = 1000
_TIMED = 40


@dataclass(frozen=True, slots=True)
class Plan:
    """A talk as it is planned.

    beats: its stops, in the running order
    timeline: their times, one stretch to each
    """

    beats: tuple[Beat, ...]
    timeline: Timeline


@dataclass(frozen=True, slots=True)
class _Known:
    """What was planned last, and of what."""

    nodes: dict[int, Node]
    root: int
    parts: frozenset[Part]
    pace: Pace
    order: Sequence[Visit]
    stretches: dict[BeatKey, tuple[Beat, Stretch, Stretch]]


class Planner:
    """Makes the same plan as `timing.plan.plan`, and only times those beats anew that have changed.

    State: the plan before, with the nodes and the pace that it was made of.
    """

    __slots__ = ("_known",)

    def __init__(self) -> None:
        self._known: _Known | None = None

    def plan(self, study: Study) -> Plan:
        """The plan of the study as it is now. O(length of the script), where an edit changed little a fast one."""
        steps = self.steps(study)
        while True:
            try:
                next(steps)
            except StopIteration as done:
                plan: Plan = done.value
                return plan

    def steps(self, study: Study) -> Generator[None, None, Plan]:
        """As `plan`, with rests on the way at which other work can be done; the study must not change meanwhile.

        What was planned before is kept where the steps are not gone to their end.
        """
        known = self._known
        changed = _changed(known, study)
        parts = frozenset(part for part in Part if study.line(part).spoken)
        same_order = known is not None and known.parts == parts and _same_walk(known, study, changed)
        order = known.order if known is not None and same_order else running_order(study)
        yield
        told = beats(study, order)
        yield
        before = known.stretches if known is not None and known.pace == study.pace and known.root == study.root else {}
        remarked = {node for node in changed if known is None or known.nodes[node].marks != study.nodes[node].marks}
        at = 0.0
        timed = 0
        stretches: dict[BeatKey, tuple[Beat, Stretch, Stretch]] = {}
        for number, beat in enumerate(told):
            old = before.get(beat.key)
            if (
                old is not None
                and old[0] == beat
                and not (remarked and any(visit.node in remarked for visit in beat.visits))
            ):
                _, shape, stretch = old
            else:
                shape = stretch = time_beat(study, beat, 0.0)
                timed += 1
            if stretch.start != at:
                stretch = shape.moved(at)
            stretches[beat.key] = (beat, shape, stretch)
            at = stretch.end
            if timed == _TIMED or number % _LOOKED_AT == _LOOKED_AT - 1:
                timed = 0
                yield
        self._known = _Known(dict(study.nodes), study.root, parts, study.pace, order, stretches)
        line = tuple(stretch for _, _, stretch in stretches.values())
        return Plan(told, Timeline(Source.PLANNED, study.root, line))


def _changed(known: _Known | None, study: Study) -> list[int]:
    """The nodes that are not what they were. Nodes are values: one that is the same object is the same."""
    if known is None:
        return []
    before = known.nodes
    return [id for id, node in study.nodes.items() if id in before and before[id] is not node]


def _same_walk(known: _Known, study: Study, changed: list[int]) -> bool:
    """True where the running order is what it was: nothing that it is made of has changed."""
    before, nodes = known.nodes, study.nodes
    if known.root != study.root or before.keys() != nodes.keys():
        return False
    for id in changed:
        old, new = before[id], nodes[id]
        if (old.parent, old.children, old.telling) != (new.parent, new.children, new.telling):
            return False
    old, new = before[study.root], nodes[study.root]
    return bool(old.spoken or old.think or old.marks) == bool(new.spoken or new.think or new.marks)
