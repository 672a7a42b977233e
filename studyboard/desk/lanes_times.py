"""How long each beat and each side-line takes, as the lanes show it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from studyboard.model.beats import Beat
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.timing.plan import estimate_beat
from studyboard.timing.planner import Plan

#: An estimate is that much longer than intended before it is called over (s).
_TOLERANCE = 0.5
#: The length of a full time bar (s), at least and at most.
_SCALE = (10.0, 40.0)


@dataclass(frozen=True, slots=True)
class RowTime:
    """Seconds of one beat; intended is None where the estimate decides."""

    estimated: float
    intended: float | None

    @property
    def planned(self) -> float:
        """What the plan counts with (s)."""
        return self.estimated if self.intended is None else self.intended

    @property
    def over(self) -> float:
        """How much longer the words are than intended (s); 0.0 where they fit."""
        if self.intended is None or self.estimated - self.intended <= _TOLERANCE:
            return 0.0
        return self.estimated - self.intended


class LaneTimes:
    """Seconds of the beats of one study at one moment.

    State: the beats as they were when this was made, and the estimates that were asked for.

    scale: the length of a full time bar (s)
    side_lines: how long each side-line takes with all that branches off it (s), by the id of its first node
    """

    __slots__ = ("_beats", "_pace", "_times", "scale", "side_lines")

    def __init__(self, study: Study, plan: Plan) -> None:
        self._pace = study.pace
        self._beats: dict[BeatKey, Beat] = {beat.key: beat for beat in plan.beats}
        self._times: dict[BeatKey, RowTime] = {}
        seconds = {stretch.key: stretch.end - stretch.start for stretch in plan.timeline.stretches}
        self.scale = min(max(max(seconds.values(), default=0.0), _SCALE[0]), _SCALE[1])
        self.side_lines = side_line_seconds(study, seconds)

    def time_of(self, key: BeatKey) -> RowTime | None:
        """The seconds of a beat; None where there is none: not told, or said with a later move."""
        known = self._times.get(key)
        if known is None:
            beat = self._beats.get(key)
            if beat is None:
                return None
            known = self._times[key] = RowTime(estimate_beat(self._pace, beat), beat.intended)
        return known


def side_line_seconds(study: Study, seconds: Mapping[BeatKey, float]) -> dict[int, float]:
    """How long each side-line takes with all that branches off it (s), by the id of its first node. O(tree)."""
    nodes = study.nodes
    parents: dict[int, int | None] = {study.root: None}
    totals: dict[int, float] = {}
    todo = [study.root]
    order: list[int] = []
    while todo:
        start = todo.pop()
        order.append(start)
        total = 0.0
        node = nodes[start]
        while True:
            total += seconds.get(node.id, 0.0)
            if not node.children:
                break
            for child in node.children[1:]:
                parents[child] = start
                todo.append(child)
            node = nodes[node.children[0]]
        totals[start] = total
    for start in reversed(order):
        parent = parents[start]
        if parent is not None:
            totals[parent] += totals[start]
    del totals[study.root]
    return totals
