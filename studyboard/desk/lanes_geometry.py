"""Rows and lanes in pixels: how high, how wide, and what lies under a point."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import accumulate
from math import ceil

from studyboard.desk.lane_layout import LaneLayout
from studyboard.model.script import Part
from studyboard.model.study import Study

#: Space to the left of the first lane (px).
LEFT = 8
#: From the left edge of a lane to its rail, and to the text of its cells (px).
RAIL = 12
TEXT = 32
#: Space at the right of a lane, in which its rails leave and the fold knobs sit (px).
GUTTER = 24
#: Free space above the text of a row, and as much below it (px).
_MARGIN = 8
#: Of that, what is left free between the grounds of two rows, for the rails that run across there (px).
_BETWEEN = 3
#: The least from one rail that runs across to the next, where several do between two rows; where the first and the
#: last of them run, from the top of the lower row, while the row is no taller for them (px).
_TRACK = 6
_FIRST_TRACK, _LAST_TRACK = -2.5, 4.5
#: How much of the next lane is seen in a narrow view (px).
_PEEK = 28
#: Widths of the main lane and of a side-lane, narrowest and widest, in heights of a line of text.
_MAIN = (18.5, 46.0)
_SIDE = (14.0, 30.0)


@dataclass(frozen=True, slots=True)
class TextHeights:
    """Heights of one line of text (px): a move, a spoken line, a heading."""

    move: int
    spoken: int
    small: int


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle (px)."""

    left: float
    top: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right edge."""
        return self.left + self.width

    @property
    def bottom(self) -> float:
        """Its bottom edge."""
        return self.top + self.height

    def holds(self, x: float, y: float) -> bool:
        """True where the point lies inside."""
        return self.left <= x < self.right and self.top <= y < self.bottom


@dataclass(frozen=True, slots=True)
class LaneGeometry:
    """A layout in pixels, from the top left corner of its first cell.

    tops: the top of every row, and the bottom of the last one
    main, side: width of the main lane and of every other
    heading_height: of the heading of a side-line
    first_line: from the top of a row to the middle of its first line of text, the move
    below: what rows are taller at their bottom, for the rails that run across there; without those that are not
    """

    tops: tuple[int, ...]
    lanes: int
    main: int
    side: int
    heading_height: int
    first_line: int
    below: Mapping[int, int] = field(default_factory=dict)

    @property
    def width(self) -> int:
        """All lanes with the space beside them."""
        return LEFT + self.main + self.side * (self.lanes - 1)

    @property
    def height(self) -> int:
        """All rows."""
        return self.tops[-1]

    def left_of(self, lane: int) -> int:
        """The left edge of a lane."""
        return LEFT + (self.main + self.side * (lane - 1) if lane else 0)

    def width_of(self, lane: int) -> int:
        """The width of a lane."""
        return self.side if lane else self.main

    def rail_of(self, lane: int) -> int:
        """Where the rail of a lane runs."""
        return self.left_of(lane) + RAIL

    def middle_of(self, row: int) -> int:
        """Where the first line of text of a row has its middle."""
        return self.tops[row] + self.first_line

    def cell(self, lane: int, row: int, headed: bool = False) -> Box:
        """The ground of one cell, beside its rail; *headed* where the heading of the line below stands in it too."""
        left = self.left_of(lane) + TEXT - 8
        top = self.tops[row] + _BETWEEN
        right = self.left_of(lane) + self.width_of(lane) - GUTTER
        bottom = self._end(row) - (self.heading_height if headed else 0)
        return Box(left, top, right - left, bottom - top)

    def heading(self, lane: int, row: int) -> Box:
        """The heading of a side-line whose first node stands in this row: at the bottom of the row above."""
        left = self.left_of(lane) + TEXT - 8
        right = self.left_of(lane) + self.width_of(lane) - GUTTER
        return Box(left, self._end(row - 1) - self.heading_height, right - left, self.heading_height)

    def _end(self, row: int) -> int:
        """Where what is written in a row ends."""
        return self.tops[row + 1] - _BETWEEN - self.below.get(row, 0)

    def knob(self, lane: int, row: int) -> Box:
        """Where the side-lines that leave at this cell are folded and unfolded."""
        middle = self.left_of(lane) + self.width_of(lane) - GUTTER // 2
        return Box(middle - 12, self.middle_of(row) - 12, 24, 24)

    def track(self, row: int, track: int, tracks: int) -> float:
        """Where a rail runs across between this row and the next, when so many do."""
        below = self.below.get(row, 0)
        if tracks < 2:
            return float(self.tops[row + 1] - below)
        room = _LAST_TRACK - _FIRST_TRACK + below
        return self.tops[row + 1] - below + _FIRST_TRACK + track * room / (tracks - 1)

    def row_at(self, y: float) -> int:
        """The row at this height, the first or last one beyond them."""
        return max(0, min(len(self.tops) - 2, bisect_right(self.tops, y) - 1))

    def lane_at(self, x: float) -> int:
        """The lane at this distance from the left, the first or last one beyond them."""
        if x < LEFT + self.main:
            return 0
        return max(0, min(self.lanes - 1, 1 + int((x - LEFT - self.main) // self.side)))


def lane_geometry(study: Study, layout: LaneLayout, heights: TextHeights, view_width: int, share: int) -> LaneGeometry:
    """The pixels of a layout in a view whose width that many lanes share. O(number of nodes shown).

    A row in which something is said or a side-line's name is written has two lines of text, any other one; three
    where that name stands below what is said in the same lane. It is taller where many rails run across below it.
    """
    heading = heights.small + 6
    one_line = 2 * _MARGIN + heights.move
    two_lines = one_line + heights.spoken + 2
    row_heights = tuple(_on_grid(height) for height in (one_line - 2, two_lines, two_lines + heading - _BETWEEN))
    heights_of_rows = [row_heights[lines - 1] for lines in _lines_of_text(study, layout)]
    below = _below(layout)
    for row, more in below.items():
        heights_of_rows[row] += more
    tops = tuple(accumulate(heights_of_rows, initial=0))
    main, side = lane_widths(view_width, share, heights.move)
    return LaneGeometry(tops, layout.lanes, main, side, heading, _MARGIN + (heights.move + 1) // 2, below)


def lane_widths(view_width: int, lanes: int, line_height: int) -> tuple[int, int]:
    """Width of the main lane and of each other (px).

    Lanes share a view that is wide enough for all, up to a width that reads well. Where they do not fit, the main
    lane, as many whole ones as possible and half of the next do: enough to read its moves and to see that it goes on.
    """
    room = view_width - LEFT - 4
    sides: float = lanes - 1
    main_least, main_most = (round(lines * line_height) for lines in _MAIN)
    side_least, side_most = (round(lines * line_height) for lines in _SIDE)
    narrowest = main_least * 2 // 3
    if not sides:
        return min(max(room, narrowest), main_most), side_least
    if room < main_least + side_least + _PEEK:
        return min(max(room - _PEEK, narrowest), main_least), side_least
    if main_least + sides * side_least > room:
        sides = (room - main_least - side_least // 2) // side_least + 0.5
        if sides < 1:
            sides = 1
            room -= _PEEK
    share = room / (_MAIN[0] + _SIDE[0] * sides)
    return min(round(share * _MAIN[0]), main_most), min(round(share * _SIDE[0]), side_most)


def _lines_of_text(study: Study, layout: LaneLayout) -> bytearray:
    """How many lines of text each row has."""
    nodes = study.nodes
    lines_of_text = bytearray(b"\1") * layout.rows
    for node, (_, row) in layout.cells.items():
        if nodes[node].spoken:
            lines_of_text[row] = 2
    for row in layout.parts.values():
        lines_of_text[row] = 2
    for line in layout.lines.values():
        if line.branch is not None:
            above = layout.node_at(line.lane, line.row - 1)
            crowded = above is not None and bool(nodes[above].spoken)
            lines_of_text[line.row - 1] = max(lines_of_text[line.row - 1], 3 if crowded else 2)
    return lines_of_text


def _below(layout: LaneLayout) -> dict[int, int]:
    """How much taller rows are for the rails that run across below them, without those that are not (px)."""
    tracks: dict[int, int] = {}
    for branching in layout.branchings.values():
        if branching.shown:
            tracks[branching.row] = max(tracks.get(branching.row, 0), branching.track + 1)
    room = _LAST_TRACK - _FIRST_TRACK
    return {row: _on_grid(ceil((count - 1) * _TRACK - room)) for row, count in tracks.items() if count > 2}


def _on_grid(pixels: int) -> int:
    return -(-pixels // 4) * 4


def part_in_row(layout: LaneLayout, lane: int, row: int) -> Part | None:
    """The part of the talk that stands in this cell, or None."""
    return next((part for part, at in layout.parts.items() if at == row), None) if lane == 0 else None
