"""Where a branch that is dragged goes: among the side-lines beside it, or after another move."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.desk.lane_layout import LaneLayout
from studyboard.desk.lanes_geometry import GUTTER, LaneGeometry
from studyboard.model.pasting import why_not_there
from studyboard.model.study import Study


@dataclass(frozen=True, slots=True)
class Beside:
    """A place for a side-line among those that leave the same node.

    side_line: id of its first node
    parent: id of the node that it leaves
    place: its place among the moves there; 1 is that of the first side-line
    x: where that is, from the left of the picture (px)
    """

    side_line: int
    parent: int
    place: int
    x: float


@dataclass(frozen=True, slots=True)
class Onto:
    """Another move after which a branch could go.

    branch: id of its first node
    node: id of the move
    why_not: why it does not fit there, in a sentence; empty where it does
    """

    branch: int
    node: int
    why_not: str


def drop_at(
    study: Study,
    layout: LaneLayout,
    geometry: LaneGeometry,
    branch: int,
    x: float,
    y: float,
    known: Beside | Onto | None = None,
) -> Beside | Onto | None:
    """Where the branch with this first node goes when it is let go at this point of the picture (px).

    Level with its own beginning, a side-line goes among its neighbours; over any other move, after that one. None
    where it stays where it is. *known* is what was said last: while it is the same move, the branch is not tried again.
    """
    if not 0 <= y < geometry.height or branch not in layout.cells:
        return None
    lane, row = geometry.lane_at(x), geometry.row_at(y)
    line = layout.lines.get(branch)
    if line is not None and line.branch is not None and (row == line.row or _in_headings(geometry, line.row, y)):
        return _beside(study, layout, geometry, branch, x)
    if not geometry.left_of(lane) <= x < geometry.left_of(lane) + geometry.width_of(lane):
        return None
    node = layout.node_at(lane, row)
    if node is None or node == study.nodes[branch].parent or branch in study.path(node):
        return None
    if isinstance(known, Onto) and (known.branch, known.node) == (branch, node):
        return known
    return Onto(branch, node, why_not_there(study, branch, node))


def _in_headings(geometry: LaneGeometry, row: int, y: float) -> bool:
    """True at the height of the headings of the side-lines that begin in this row."""
    heading = geometry.heading(0, row)
    return heading.top <= y < heading.bottom


def _beside(study: Study, layout: LaneLayout, geometry: LaneGeometry, side_line: int, x: float) -> Beside | None:
    line = layout.lines[side_line]
    assert line.branch is not None
    branching = layout.branchings[line.branch]
    others = [other for other in branching.shown if other != side_line]
    if not others:
        return None
    middles = [_middle(layout, geometry, other) for other in others]
    before = [other for other, middle in zip(others, middles, strict=True) if middle < x]
    after = others[len(before) :]
    children = [child for child in study.nodes[line.branch].children if child != side_line]
    place = children.index(before[-1]) + 1 if before else 1
    if after:
        edge = float(geometry.left_of(layout.lines[after[0]].lane))
    else:
        lane = layout.lines[before[-1]].lane
        edge = float(geometry.left_of(lane) + geometry.width_of(lane) - GUTTER / 2)
    return Beside(side_line, line.branch, place, edge)


def _middle(layout: LaneLayout, geometry: LaneGeometry, side_line: int) -> float:
    lane = layout.lines[side_line].lane
    return geometry.left_of(lane) + geometry.width_of(lane) / 2
