"""The rails of the lanes: down each line, and across between two rows to the side-lines that leave."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from studyboard.desk.lane_layout import Branching, LaneLayout, LaneLine
from studyboard.desk.lanes_geometry import LaneGeometry
from studyboard.desk.look import Look

#: Thickness of a rail, and of the way to the current move (px).
_THIN = 1.75
_THICK = 2.5
#: Radius of the curves in which a rail leaves its node and comes down in its lane (px).
_CURVE = 9.0
#: Half of the gap in a rail that another one crosses (px).
_BRIDGE = 3.75


@dataclass(frozen=True, slots=True)
class Rails:
    """What is known of the rails of one layout.

    way: for each line on the way to the current node, by its first node: the last row that lies on it
    hidden: first nodes of the lines that are not told
    """

    layout: LaneLayout
    geometry: LaneGeometry
    way: Mapping[int, int]
    hidden: Collection[int]


def paint_rails(p: QPainter, look: Look, rails: Rails, lanes: range, first: int, last: int) -> None:
    """Paint what is seen of the rails in these lanes from the row *first* to *last*.

    A rail that runs across goes over those of the lanes that it passes, which are interrupted there.
    """
    layout = rails.layout
    for lane in lanes:
        for line in layout.lines_between(lane, first, last):
            _down(p, look, rails, line, first, last)
    for row in range(max(0, first - 1), last + 1):
        tracks = layout.tracks_below(row)
        for branching in reversed(layout.branchings_in(row) if tracks else []):
            if branching.shown and branching.lane < lanes.stop and branching.reach >= lanes.start:
                _across(p, look, rails, branching, tracks, lanes)


def _down(p: QPainter, look: Look, rails: Rails, line: LaneLine, first: int, last: int) -> None:
    geometry = rails.geometry
    x = geometry.rail_of(line.lane)
    dashed = line.start in rails.hidden
    top = QPointF(x, geometry.middle_of(max(line.row, first - 1)))
    way = rails.way.get(line.start, line.row)
    pieces = (line.last_row, "side_line" if line.lane else "rail", _THIN), (way, "accent", _THICK)
    for end, token, width in pieces:
        bottom = QPointF(x, geometry.middle_of(min(end, last + 1)))
        if end > line.row and bottom.y() > top.y():
            p.setPen(_pen(look, token, width, dashed))
            p.drawLine(top, bottom)


def _across(p: QPainter, look: Look, rails: Rails, branching: Branching, tracks: int, lanes: range) -> None:
    """The rail from a node to the side-lines that leave it, the way to the current move over the others."""
    geometry = rails.geometry
    y = geometry.track(branching.row, branching.track, tracks)
    for lane in rails.layout.crossed_by(branching, lanes):
        x = geometry.rail_of(lane)
        p.setPen(_pen(look, "surface", 2 * _THICK))
        p.drawLine(QPointF(x, y - _BRIDGE), QPointF(x, y + _BRIDGE))
    lines = [rails.layout.lines[start] for start in branching.shown if rails.layout.lines[start].lane >= lanes.start]
    for line in sorted(lines, key=lambda line: (line.start in rails.way, line.start not in rails.hidden, -line.lane)):
        on_way = line.start in rails.way
        token, width = ("accent", _THICK) if on_way else ("side_line", _THIN)
        p.setPen(_pen(look, token, width, dashed=line.start in rails.hidden))
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.drawPath(_turnout(geometry, branching, line, y))


def _turnout(geometry: LaneGeometry, branching: Branching, line: LaneLine, y: float) -> QPainterPath:
    """From the knob down between the rows, across, and down again to the first move of the side-line."""
    knob = geometry.knob(branching.lane, branching.row)
    start, end = QPointF(knob.left + knob.width / 2, knob.top + knob.height / 2), geometry.rail_of(line.lane)
    bottom = geometry.middle_of(line.row)
    curve = min(_CURVE, (end - start.x()) / 2, bottom - y)
    path = QPainterPath(start)
    path.lineTo(start.x(), y - curve)
    path.quadTo(start.x(), y, start.x() + curve, y)
    path.lineTo(end - curve, y)
    path.quadTo(end, y, end, y + curve)
    path.lineTo(end, bottom)
    return path


def _pen(look: Look, token: str, width: float, dashed: bool = False) -> QPen:
    pen = QPen(look.color(token), width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    if dashed:
        pen.setDashPattern([3.0, 2.5])
    return pen
