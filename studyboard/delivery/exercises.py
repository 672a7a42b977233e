"""Think pauses as exercises: what is asked, and which moves answer it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise, takewhile
from typing import Final

from studyboard.model.order import Visit, VisitKind
from studyboard.model.study import Study

SHORT_FINISH: Final = 6
"""A line with no more half-moves than this after a think pause is its solution to the end: a mate in three has five."""


@dataclass(frozen=True, slots=True)
class Exercise:
    """A think pause.

    number: from 1, in the order in which the talk comes to them
    node: the position
    solution: ids of all nodes that answer it, side-lines included; empty where no move follows
    """

    number: int
    node: int
    solution: frozenset[int]


def exercises(study: Study, visits: Iterable[Visit]) -> tuple[Exercise, ...]:
    """The think pauses in the order of these visits. O(size of the tree).

    The solution is what is told next: on the main line the moves up to the first one that has words, in a side-line
    all of it, and a line that is soon over to its end; never beyond the next think pause of that line. What replaces
    one of these moves belongs to it too, and so do side-lines that are told between question and answer. A think
    pause inside a solution is no exercise of its own.
    """
    found: list[Exercise] = []
    answered: set[int] = set()
    told: set[int] = set()
    for visit in visits:
        if visit.kind is not VisitKind.TELL:
            continue
        told.add(visit.node)
        node = study.nodes[visit.node]
        if not node.think or node.id in answered:
            continue
        solution = _solution(study, node.id, side_line=visit.depth > 0)
        for side_line in _replacing(study, node.id):
            if side_line not in told:
                solution.update(one.id for one in study.branch(side_line))
        solution -= answered
        answered |= solution
        found.append(Exercise(len(found) + 1, node.id, frozenset(solution)))
    return tuple(found)


def _solution(study: Study, asked: int, *, side_line: bool) -> set[int]:
    _, *rest = study.main_line(asked)
    line = list(takewhile(lambda node: not study.nodes[node].think, rest))
    if not side_line and len(rest) > SHORT_FINISH:
        told = next((place for place, node in enumerate(line) if _has_words(study, node)), 0)
        line = line[: told + 1]
    found = set(line)
    for parent, main in pairwise([asked, *line]):
        for child in study.nodes[parent].children:
            if child != main:
                found.update(node.id for node in study.branch(child))
    return found


def _replacing(study: Study, node_id: int) -> tuple[int, ...]:
    """The side-lines that replace a move of the line above them; none where it begins a side-line itself."""
    parent = study.nodes[node_id].parent
    return () if parent is None or study.begins_side_line(node_id) else study.nodes[parent].children[1:]


def _has_words(study: Study, node_id: int) -> bool:
    node = study.nodes[node_id]
    return bool(node.spoken) or bool(node.note.strip())
