"""The nodes of a study in the order in which print has them, and the ways between them."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace

from studyboard.model.script import BeatKey, Part
from studyboard.model.stepping import end_of_line
from studyboard.model.study import Study


def reading_order(study: Study, start: int | None = None) -> Iterator[int]:
    """Ids from *start* (the root by default) and all after it: a main move, what replaces it, then on. O(size)."""
    waiting: list[tuple[int, bool]] = [(study.root if start is None else start, True)]
    while waiting:
        node_id, itself = waiting.pop()
        if itself:
            yield node_id
        main, *side_lines = study.nodes[node_id].children or (None,)
        if main is None:
            continue
        if not side_lines:
            waiting.append((main, True))
            continue
        # The main move is read, then each side-line to its end, and only then what follows the main move.
        yield main
        waiting.append((main, False))
        waiting.extend((side_line, True) for side_line in reversed(side_lines) if side_line is not None)


def rows_in_order(study: Study) -> Iterator[BeatKey]:
    """Every row of the script: what is said before the first move, the nodes in reading order, what is said after."""
    yield from (part for part in Part if part.opens)
    yield from reading_order(study)
    yield from (part for part in Part if not part.opens)


def way_between(study: Study, one: BeatKey, other: BeatKey) -> tuple[BeatKey, ...]:
    """The rows that are passed on the tree from one to the other, both of them included. O(length).

    The move at which the two ways part is passed only where it is one of the two.
    """
    first, second = _from_the_top(study, one), _from_the_top(study, other)
    shared = 0
    while shared < min(len(first), len(second)) and first[shared] == second[shared]:
        shared += 1
    if shared in (len(first), len(second)):
        shared -= 1
        return (*reversed(first[shared + 1 :]), *second[shared:])
    return (*reversed(first[shared:]), *second[shared:])


def tops(study: Study, nodes: Collection[int]) -> tuple[int, ...]:
    """Those of the nodes that come after none of the others, in reading order. O(nodes times length)."""
    wanted = set(nodes)
    order = {node: place for place, node in enumerate(reading_order(study))}
    found = []
    for node in wanted:
        at = study.nodes[node].parent
        while at is not None and at not in wanted:
            at = study.nodes[at].parent
        if at is None:
            found.append(node)
    return tuple(sorted(found, key=order.__getitem__))


def pruned(study: Study, kept: Collection[int]) -> Study:
    """A copy of the study with only these nodes and the way to them; what is said without a move is left out.

    Lines keep their order, so that the first one that is left becomes the main line. O(size).
    """
    wanted = {study.root}
    for node in kept:
        at: int | None = node
        while at is not None and at not in wanted:
            wanted.add(at)
            at = study.nodes[at].parent
    copy = study.snapshot()
    copy.nodes = {
        node: replace(study.nodes[node], children=tuple(c for c in study.nodes[node].children if c in wanted))
        for node in wanted
    }
    copy.lines = {}
    return copy


def _from_the_top(study: Study, key: BeatKey) -> list[BeatKey]:
    """The rows from the top of the main lane down to this one: what is said before the first move, then the moves."""
    opening = [part for part in Part if part.opens]
    ending = [part for part in Part if not part.opens]
    if not isinstance(key, Part):
        return [*opening, *study.path(key)]
    if key in opening:
        return list(opening[: opening.index(key) + 1])
    return [*opening, *study.path(end_of_line(study, study.root)), *ending[: ending.index(key) + 1]]
