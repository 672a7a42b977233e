"""Beats: the stops of the talk, each with the visits that it covers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from studyboard.model.order import Visit, VisitKind
from studyboard.model.script import BeatKey, SpokenLine
from studyboard.model.study import Study


@dataclass(frozen=True, slots=True)
class Beat:
    """One stop of the talk.

    key: id of the node whose spoken line is said, or the part of the talk; unique within a running order
    visits: what the board does, in order; returns come first, the node of the key last, unless the talk ends
        with a return
    spoken: what is said
    intended: how long it should take (s), None where the estimate decides
    think: silence at the end in which the viewer is asked to find the next move (s)
    depth: 0 on the main line, 1 in a side-line of it, and so on
    locked: fitting the talk to its slot leaves the intended length as it is
    """

    key: BeatKey
    visits: tuple[Visit, ...]
    spoken: SpokenLine
    intended: float | None
    think: float
    depth: int
    locked: bool = False

    @property
    def node(self) -> int:
        """The node that is on the board when the beat ends."""
        return self.visits[-1].node


def beats(study: Study, order: Sequence[Visit]) -> tuple[Beat, ...]:
    """The running order cut into beats. O(length of the order).

    A run of nodes without a line of their own belongs to the next line whose cues play their moves. A return
    belongs to the beat that follows it; at the very end, to the last one.
    """
    found: list[Beat] = []
    waiting: list[Visit] = []
    for visit, played_later in zip(order, _played_later(study, order), strict=True):
        waiting.append(visit)
        if visit.kind is VisitKind.BACK or played_later:
            continue
        found.append(_beat(study, tuple(waiting), visit))
        waiting = []
    if waiting and found:
        last = found[-1]
        found[-1] = replace(last, visits=(*last.visits, *waiting))
    return tuple(found)


def _beat(study: Study, visits: tuple[Visit, ...], visit: Visit) -> Beat:
    if visit.part is not None:
        line = study.line(visit.part)
        return Beat(visit.part, visits, line.spoken, line.intended, 0.0, 0, line.locked)
    node = study.nodes[visit.node]
    return Beat(node.id, visits, node.spoken, node.intended, node.think, visit.depth, node.locked)


def _played_later(study: Study, order: Sequence[Visit]) -> list[bool]:
    """For each visit: is its node silent, and has the next line of the same run a cue that plays its move?"""
    answers: list[bool] = []
    cued: frozenset[int | None] = frozenset()
    for visit in reversed(order):
        if visit.kind is not VisitKind.TELL:
            answers.append(False)
            cued = frozenset()
            continue
        node = study.nodes[visit.node]
        holds = bool(node.spoken) or node.think > 0 or node.intended is not None
        answers.append(not holds and node.id in cued)
        if holds:
            cued = frozenset(cue.node for cue in node.spoken.cues)
    answers.reverse()
    return answers
