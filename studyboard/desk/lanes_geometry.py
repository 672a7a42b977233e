"""Rows and lanes in pixels: how high, how wide, and what lies under a point."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from itertools import accumulate

from studyboard.desk.lane_layout import LaneLayout
from studyboard.model.script import Part
from studyboard.model.study import Study

#: Space to the left of the first lane (px).
LEFT = 8
#: From the left edge of a lane to its rail, and to the text of its cells (px).
RAIL = 12
TEXT = 32
#: Space at the right of a lane, in which its rails leave and the fold knobs sit (px).
GUTTER = 28
#: How much of the next lane is seen where not all of them fit (px).
_PEEK = 28
#: Widths of the main lane and of a side-lane, narrowest and widest, in heights of a line of text.
_MAIN = (21.0, 46.0)
_SIDE = (15.75, 30.0)


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
    first_line: from the top of a row to the middle of its first line of text, where its rails leave
    """

    tops: tuple[int, ...]
    lanes: int
    main: int
    side: int
    first_line: int

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

    def cell(self, lane: int, row: int) -> Box:
        """The ground of one cell, beside its rail."""
        left = self.left_of(lane) + TEXT - 8
        top = self.tops[row]
        right = self.left_of(lane) + self.width_of(lane) - GUTTER
        return Box(left, top + 1, right - left, self.tops[row + 1] - top - 2)

    def heading(self, lane: int, row: int) -> Box:
        """The heading of a side-line whose first node stands in this row: the lower half of the row above."""
        top = self.middle_of(row - 1) + 7
        left = self.left_of(lane) + TEXT - 8
        return Box(left, top, self.left_of(lane) + self.width_of(lane) - GUTTER - left, self.tops[row] - top)

    def knob(self, lane: int, row: int) -> Box:
        """Where the side-lines that leave at this cell are folded and unfolded."""
        middle = self.left_of(lane) + self.width_of(lane) - GUTTER // 2
        return Box(middle - 12, self.middle_of(row) - 12, 24, 24)

    def row_at(self, y: float) -> int:
        """The row at this height, the first or last one beyond them."""
        return max(0, min(len(self.tops) - 2, bisect_right(self.tops, y) - 1))

    def lane_at(self, x: float) -> int:
        """The lane at this distance from the left, the first or last one beyond them."""
        if x < LEFT + self.main:
            return 0
        return max(0, min(self.lanes - 1, 1 + int((x - LEFT - self.main) // self.side)))


def lane_geometry(
    study: Study, layout: LaneLayout, heights: TextHeights, view_width: int, share: int
) -> LaneGeometry:
    """The pixels of a layout in a view whose width that many lanes share. O(number of nodes shown).

    A row in which something is said or a side-line's name is written has two lines of text, any other one.
    """
    two_lines = _on_grid(heights.move + heights.spoken + 2 + 16)
    one_line = _on_grid(heights.move + 14)
    tall = _tall_rows(study, layout)
    tops = tuple(accumulate((two_lines if high else one_line for high in tall), initial=0))
    main, side = lane_widths(view_width, share, heights.move)
    return LaneGeometry(tops, layout.lanes, main, side, 8 + (heights.move + 1) // 2)


def lane_widths(view_width: int, lanes: int, line_height: int) -> tuple[int, int]:
    """Width of the main lane and of each other (px).

    Lanes share a view that is wide enough for all, up to a width that reads well. Where they do not fit, as many
    whole ones as possible do, and the edge of the next is seen.
    """
    room = view_width - LEFT - 4
    sides = lanes - 1
    main_least, main_most = (round(lines * line_height) for lines in _MAIN)
    side_least, side_most = (round(lines * line_height) for lines in _SIDE)
    narrowest = main_least * 2 // 3
    if not sides:
        return min(max(room, narrowest), main_most), side_least
    if room < main_least + side_least + _PEEK:
        return min(max(room - _PEEK, narrowest), main_least), side_least
    if main_least + sides * side_least > room:
        room -= _PEEK
        sides = (room - main_least) // side_least
    share = room / (_MAIN[0] + _SIDE[0] * sides)
    return min(round(share * _MAIN[0]), main_most), min(round(share * _SIDE[0]), side_most)


def _tall_rows(study: Study, layout: LaneLayout) -> bytearray:
    nodes = study.nodes
    tall = bytearray(layout.rows)
    for node, (_, row) in layout.cells.items():
        if not tall[row] and nodes[node].spoken:
            tall[row] = 1
    for branching in layout.branchings.values():
        if branching.shown:
            tall[branching.row] = 1
    for row in layout.parts.values():
        tall[row] = 1
    return tall


def _on_grid(pixels: int) -> int:
    return -(-pixels // 4) * 4


def part_in_row(layout: LaneLayout, lane: int, row: int) -> Part | None:
    """The part of the talk that stands in this cell, or None."""
    return next((part for part, at in layout.parts.items() if at == row), None) if lane == 0 else None
