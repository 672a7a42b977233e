"""Where a side-line that is dragged goes among those beside it."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.desk.lane_layout import LaneLayout
from studyboard.desk.lanes_geometry import GUTTER, LaneGeometry
from studyboard.model.study import Study


@dataclass(frozen=True, slots=True)
class Drop:
    """A place for a side-line.

    side_line: id of its first node
    parent: id of the node that it leaves
    place: its place among the moves there; 1 is that of the first side-line
    x: where that is, from the left of the picture (px)
    """

    side_line: int
    parent: int
    place: int
    x: float


def drop_at(study: Study, layout: LaneLayout, geometry: LaneGeometry, side_line: int, x: float) -> Drop | None:
    """Where the side-line with this first node goes when it is let go at this distance from the left (px).

    None where no other one leaves at the same node.
    """
    line = layout.lines.get(side_line)
    if line is None or line.branch is None:
        return None
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
    return Drop(side_line, line.branch, place, edge)


def _middle(layout: LaneLayout, geometry: LaneGeometry, side_line: int) -> float:
    lane = layout.lines[side_line].lane
    return geometry.left_of(lane) + geometry.width_of(lane) / 2
