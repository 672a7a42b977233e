"""The running order: in which order the nodes of a study are told."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from studyboard.model.node import Node, Place
from studyboard.model.script import Part
from studyboard.model.study import Study


class VisitKind(StrEnum):
    """Why the board shows a node: its move is told, the talk comes back to it, or a line without a move is said."""

    TELL = "tell"
    BACK = "back"
    LINE = "line"


@dataclass(frozen=True, slots=True)
class Visit:
    """One step of the walk over the tree.

    node: id of the node that is on the board
    kind: why
    depth: 0 on the main line, 1 in a side-line of it, and so on
    part: for a LINE, which part of the talk is said
    """

    node: int
    kind: VisitKind
    depth: int = 0
    part: Part | None = None


@dataclass(frozen=True, slots=True)
class _Tell:
    """Visit a node, then whatever is anchored there; go on with its children if it is not the main move."""

    node: int
    depth: int
    goes_on: bool


@dataclass(frozen=True, slots=True)
class _GoOn:
    """Tell the children of a node."""

    node: int
    depth: int


def running_order(study: Study) -> tuple[Visit, ...]:
    """Every visit of the talk, in order: greeting, moves with their side-lines, closing and thanks.

    The main move is told first, then the side-lines that replace it, the deepest inside its parent, then back
    to the main move. A side-line that is moved to a node which is never told is told in its usual place. Where the
    main move itself is hidden, its line ends there for the talk.
    O(size of the tree).
    """
    parts = [part for part in Part if study.line(part).spoken]
    greeting = [Visit(study.root, VisitKind.LINE, 0, part) for part in parts if part.opens]
    moves = _moves(study)
    end = moves[-1].node if moves else study.root
    closing = [Visit(end, VisitKind.LINE, 0, part) for part in parts if not part.opens]
    return (*greeting, *moves, *closing)


def _moves(study: Study) -> list[Visit]:
    usual: set[int] = set()
    while True:
        visits, moved = _walk(study, usual)
        if not moved - usual:
            return visits
        told = {study.root, *(visit.node for visit in visits if visit.kind is VisitKind.TELL)}
        lost = {side_line for side_line in moved - usual - told if study.nodes[side_line].parent in told}
        if not lost:
            return visits
        usual |= lost


def _walk(study: Study, usual: set[int]) -> tuple[list[Visit], set[int]]:
    """One walk, in which the side-lines of *usual* stay where they branch off; also all that want to be moved."""
    nodes = study.nodes
    moved: set[int] = set()
    anchored: dict[int, list[int]] = {}
    for node in nodes.values():
        for side_line in node.children[1:] if len(node.children) > 1 else ():
            telling = nodes[side_line].telling
            if telling.place is Place.MOVED and telling.anchor is not None:
                moved.add(side_line)
                if side_line not in usual:
                    anchored.setdefault(telling.anchor, []).append(side_line)

    visits: list[Visit] = []
    root = nodes[study.root]
    if root.spoken or root.think or root.marks:
        visits.append(Visit(root.id, VisitKind.TELL))
    todo: list[_Tell | _GoOn | Visit] = [_GoOn(root.id, 0)]
    while todo:
        step = todo.pop()
        if isinstance(step, Visit):
            visits.append(step)
            continue
        following: list[_Tell | _GoOn | Visit] = []
        node = nodes[step.node]
        if isinstance(step, _Tell):
            visits.append(Visit(node.id, VisitKind.TELL, step.depth))
            following += _excursions(nodes, anchored.get(node.id, []), node.id, step.depth)
            if step.goes_on:
                following.append(_GoOn(node.id, step.depth))
        else:
            # Most moves have no side-line: they follow each other at once.
            while len(node.children) == 1 and not following:
                main = nodes[node.children[0]]
                if main.telling.place is Place.HIDDEN:
                    break
                node = main
                visits.append(Visit(node.id, VisitKind.TELL, step.depth))
                following += _excursions(nodes, anchored.get(node.id, []), node.id, step.depth)
            if following:
                following.append(_GoOn(node.id, step.depth))
            elif len(node.children) > 1:
                following = _branch(nodes, node, step.depth, usual)
        todo.extend(reversed(following))
    return visits, moved


def _branch(nodes: dict[int, Node], node: Node, depth: int, usual: set[int]) -> list[_Tell | _GoOn | Visit]:
    """Tell the children of a node at which side-lines leave."""
    following: list[_Tell | _GoOn | Visit] = []
    main, *side_lines = node.children
    places = {line: _place(nodes[line], usual) for line in side_lines}
    for line in (line for line in side_lines if places[line] is Place.BEFORE):
        following += [_Tell(line, depth + 1, True), Visit(node.id, VisitKind.BACK, depth)]
    after = [line for line in side_lines if places[line] is Place.AFTER]
    if nodes[main].telling.place is Place.HIDDEN:
        return following + _excursions(nodes, after, node.id, depth)
    following.append(_Tell(main, depth, False))
    following += _excursions(nodes, after, main, depth)
    following.append(_GoOn(main, depth))
    return following


def _place(side_line: Node, usual: set[int]) -> Place:
    place = side_line.telling.place
    return Place.AFTER if place is Place.MOVED and side_line.id in usual else place


def _excursions(nodes: dict[int, Node], side_lines: list[int], home: int, depth: int) -> list[_Tell | _GoOn | Visit]:
    """Leave *home* for each of the side-lines, then come back to it."""
    steps: list[_Tell | _GoOn | Visit] = []
    for line in side_lines:
        branching = nodes[line].parent
        assert branching is not None
        if branching != home:
            steps.append(Visit(branching, VisitKind.BACK, depth))
        elif steps:
            steps.append(Visit(home, VisitKind.BACK, depth))
        steps.append(_Tell(line, depth + 1, True))
    if steps:
        steps.append(Visit(home, VisitKind.BACK, depth))
    return steps
