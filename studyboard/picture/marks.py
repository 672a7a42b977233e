"""How marks look: each meaning has a colour, a line and a shape of its own."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise
from types import MappingProxyType
from typing import Final, TypeAlias

import chess

from studyboard.model.marks import Mark, MarkKind
from studyboard.picture.geometry import centre, corner
from studyboard.picture.hatch import hatch_lines
from studyboard.picture.lanes import lane_shifts
from studyboard.picture.primitives import (
    Circle,
    Curve,
    Fill,
    Layer,
    Point,
    Polygon,
    Polyline,
    Rect,
    Segments,
    Stroke,
    Text,
)

PAPER: Final = "#FFFDF6"
INK: Final = "#1E2027"

START_GAP: Final = 0.24
"""Free space between the centre of a square and the line that starts there (squares)."""

END_GAP: Final = 0.14
"""Free space between the tip of an arrow and the centre of its square (squares)."""

RAMPART: Final = 0.45
"""Radius of the arc that stands before a guarded square (squares)."""

RING: Final = 0.34
"""Radius of the ring around a target, small enough to lie inside a rampart and a key square's octagon (squares)."""

RIM: Final = 0.052
"""What the casing adds to the width of a line, half of it on each side (squares)."""

NUMBER_SIZE: Final = 0.27
"""The em of a sequence's numbers (squares): 11 px high on a board of 320 px."""

NUMBER_DISC: Final = 0.165
"""Radius of the disc that a number stands on (squares)."""

NUMBER_FROM_START: Final = 0.43
"""From the centre of the square where a line starts to its number, beside the piece that stands there (squares)."""


@dataclass(frozen=True, slots=True)
class MarkStyle:
    """How marks of one kind are drawn.

    colour: from the palette of M. Okabe and K. Ito (Color Universal Design, 2008), ``#rrggbb``
    casing: colour of the rim on both sides of every line, so that the mark stands out on any square
    width: of the line, in squares
    dash: dashes and gaps in squares; empty for a solid line
    shape: what ends or makes up the mark, in words
    """

    colour: str
    casing: str
    width: float
    dash: tuple[float, ...]
    shape: str

    @property
    def line(self) -> Stroke:
        """The mark's own line."""
        return Stroke(self.colour, self.width, self.dash, cap="round" if self.dash[:1] == (0.001,) else "butt")

    @property
    def rim(self) -> Stroke:
        """The solid line under it that shows as a rim."""
        return Stroke(self.casing, self.width + RIM)


MARK_STYLES: Final[Mapping[MarkKind, MarkStyle]] = MappingProxyType(
    {
        MarkKind.THREAT: MarkStyle("#D55E00", PAPER, 0.075, (0.2, 0.075), "filled arrowhead"),
        MarkKind.TARGET: MarkStyle("#CC79A7", INK, 0.055, (0.2, 0.055, 0.055, 0.055), "ring with four sights"),
        MarkKind.ROUTE: MarkStyle("#0072B2", PAPER, 0.085, (0.001, 0.14), "stations and an open chevron"),
        MarkKind.KEY_SQUARE: MarkStyle("#E69F00", INK, 0.045, (0.07, 0.045), "hatched octagon"),
        MarkKind.GUARD: MarkStyle("#009E73", PAPER, 0.12, (), "double line and a rampart"),
    }
)
"""Look of each meaning. Colours whose contrast with paper is under 3:1 are cased in ink, the others in paper."""


def ground_marks_scene(marks: Iterable[Mark], *, flipped: bool = False) -> Layer:
    """The marks that lie under the pieces: key squares."""
    return tuple(
        primitive
        for mark in dict.fromkeys(marks)
        if mark.kind is MarkKind.KEY_SQUARE
        for primitive in _key_square(mark.squares[0], flipped)
    )


def marks_scene(marks: Iterable[Mark], *, flipped: bool = False) -> Layer:
    """The marks that lie over the pieces, all but key squares, and the numbers of all marks over those.

    Lines that would run over each other are drawn side by side. A mark given twice is drawn once.
    """
    drawings = mark_drawings(marks, flipped=flipped)
    return (*(line for one in drawings for line in one.lines), *(part for one in drawings for part in one.number))


@dataclass(frozen=True, slots=True)
class MarkDrawing:
    """One mark, where it lies beside the others of its position.

    ground: what lies under the pieces
    lines: what lies over them
    number: its place in a sequence, over everything
    """

    mark: Mark
    ground: Layer
    lines: Layer
    number: Layer


def mark_drawings(marks: Iterable[Mark], *, flipped: bool = False) -> tuple[MarkDrawing, ...]:
    """Each mark by itself, for pictures in which they appear one after the other. A mark given twice is there once."""
    drawn = tuple(dict.fromkeys(marks))
    above = [mark for mark in drawn if mark.kind is not MarkKind.KEY_SQUARE]
    paths = [mark_path(mark, flipped=flipped) for mark in above]
    shifted: dict[Mark, tuple[Point, ...]] = {}
    lines: dict[Mark, Layer] = {}
    for mark, path, (right, down) in zip(above, paths, lane_shifts(paths), strict=True):
        stops = tuple((x + right, y + down) for x, y in (centre(square, flipped=flipped) for square in mark.squares))
        shifted[mark] = tuple((x + right, y + down) for x, y in path)
        lines[mark] = _DRAWERS[mark.kind](MARK_STYLES[mark.kind], shifted[mark], stops)
    return tuple(
        MarkDrawing(
            mark,
            ground_marks_scene((mark,), flipped=flipped),
            lines.get(mark, ()),
            ()
            if mark.number is None
            else _number(mark.number, MARK_STYLES[mark.kind], _number_place(mark, shifted, flipped)),
        )
        for mark in drawn
    )


def _number_place(mark: Mark, lines: Mapping[Mark, tuple[Point, ...]], flipped: bool) -> Point:
    """Where a mark's number stands: at the beginning of its line, or in the corner of its square."""
    if len(mark.squares) == 1:
        x, y = corner(mark.squares[0], flipped=flipped)
        return x + 1 - NUMBER_DISC - 0.03, y + NUMBER_DISC + 0.03
    line = lines[mark]
    return _towards(line[0], line[1], NUMBER_FROM_START)


def _number(number: int, style: MarkStyle, place: Point) -> Layer:
    x, y = place
    text = str(number)
    size = NUMBER_SIZE if len(text) == 1 else 0.78 * NUMBER_SIZE
    return (
        Circle(x, y, NUMBER_DISC, Fill(PAPER), Stroke(style.casing, 0.04 + RIM)),
        Circle(x, y, NUMBER_DISC, Fill(PAPER), Stroke(style.colour, 0.04)),
        Text(x, y + 0.36 * size, text, size, INK, bold=True),
    )


def mark_path(mark: Mark, *, flipped: bool = False) -> tuple[Point, ...]:
    """The centres that a mark's line runs through; a knight's step bends after its long leg."""
    stops = [centre(square, flipped=flipped) for square in mark.squares]
    path = stops[:1]
    for here, there in pairwise(stops):
        across, down = there[0] - here[0], there[1] - here[1]
        if {abs(across), abs(down)} == {1.0, 2.0}:
            path.append((there[0], here[1]) if abs(across) > abs(down) else (here[0], there[1]))
        path.append(there)
    return tuple(path)


def _threat(style: MarkStyle, path: tuple[Point, ...], stops: tuple[Point, ...]) -> Layer:
    tip = _towards(path[-1], path[-2], END_GAP)
    neck = _towards(tip, path[-2], 0.22)
    line = (_towards(path[0], path[1], START_GAP), *path[1:-1], neck)
    head = _arrowhead(tip, path[-2], length=0.27, width=0.28)
    return (
        Polyline(line, style.rim),
        Polygon(head, Fill(style.casing), Stroke(style.casing, RIM)),
        Polyline(line, style.line),
        Polygon(head, Fill(style.colour)),
    )


def _route(style: MarkStyle, path: tuple[Point, ...], stops: tuple[Point, ...]) -> Layer:
    tip = _towards(path[-1], path[-2], END_GAP)
    line = (_towards(path[0], path[1], START_GAP), *path[1:-1], tip)
    barbs = _arrowhead(tip, path[-2], length=0.18, width=0.3)
    chevron = (barbs[1], barbs[0], barbs[2])
    stations = stops[1:-1]
    return (
        Polyline(line, style.rim),
        Polyline(chevron, Stroke(style.casing, 0.07 + RIM)),
        Polyline(line, style.line),
        Polyline(chevron, Stroke(style.colour, 0.07)),
        *(Circle(x, y, 0.09, Fill(style.casing), Stroke(style.casing, 0.05 + RIM)) for x, y in stations),
        *(Circle(x, y, 0.09, Fill(style.casing), Stroke(style.colour, 0.05)) for x, y in stations),
    )


def _guard(style: MarkStyle, path: tuple[Point, ...], stops: tuple[Point, ...]) -> Layer:
    line = (_towards(path[0], path[1], START_GAP), *path[1:-1], _towards(path[-1], path[-2], RAMPART))
    start, rampart = _arc(path[-1], path[-2], RAMPART, half_angle=math.radians(44))
    return (
        Polyline(line, style.rim),
        Curve(start, rampart, Stroke(style.casing, 0.075 + RIM)),
        Polyline(line, style.line),
        Polyline(line, Stroke(style.casing, style.width * 0.36, cap="butt")),
        Curve(start, rampart, Stroke(style.colour, 0.075)),
    )


def _target(style: MarkStyle, path: tuple[Point, ...], stops: tuple[Point, ...]) -> Layer:
    x, y = path[0]
    sights = tuple(
        ((x + dx * 0.23, y + dy * 0.23), (x + dx * 0.39, y + dy * 0.39))
        for dx, dy in ((0, -1), (1, 0), (0, 1), (-1, 0))
    )
    return (
        Circle(x, y, RING, stroke=style.rim),
        Segments(sights, Stroke(style.casing, style.width + RIM)),
        Circle(x, y, RING, stroke=style.line),
        Segments(sights, Stroke(style.colour, style.width)),
    )


def _key_square(square: chess.Square, flipped: bool) -> Layer:
    style = MARK_STYLES[MarkKind.KEY_SQUARE]
    x, y = corner(square, flipped=flipped)
    near, far, cut = 0.05, 0.95, 0.2
    octagon = tuple(
        (x + dx, y + dy)
        for dx, dy in (
            (near + cut, near),
            (far - cut, near),
            (far, near + cut),
            (far, far - cut),
            (far - cut, far),
            (near + cut, far),
            (near, far - cut),
            (near, near + cut),
        )
    )
    hatching = hatch_lines(x, y, count=6, slope="falling")
    return (
        Rect(x, y, 1.0, 1.0, Fill(style.colour, 0.3)),
        Segments(hatching, Stroke(style.colour, 0.03, cap="butt", opacity=0.75)),
        Polygon(octagon, stroke=style.rim),
        Polygon(octagon, stroke=style.line),
    )


_Drawer: TypeAlias = Callable[[MarkStyle, tuple[Point, ...], tuple[Point, ...]], Layer]

_DRAWERS: Final[Mapping[MarkKind, _Drawer]] = MappingProxyType(
    {
        MarkKind.THREAT: _threat,
        MarkKind.ROUTE: _route,
        MarkKind.GUARD: _guard,
        MarkKind.TARGET: _target,
    }
)
"""How each kind that lies over the pieces is drawn, from its style, the points of its line, and its stops."""


def _direction(here: Point, there: Point) -> Point:
    length = math.dist(here, there)
    return ((there[0] - here[0]) / length, (there[1] - here[1]) / length) if length else (0.0, 0.0)


def _towards(here: Point, there: Point, distance: float) -> Point:
    across, down = _direction(here, there)
    return here[0] + across * distance, here[1] + down * distance


def _arrowhead(tip: Point, tail: Point, *, length: float, width: float) -> tuple[Point, Point, Point]:
    across, down = _direction(tail, tip)
    back = (tip[0] - across * length, tip[1] - down * length)
    side = (-down * width / 2, across * width / 2)
    return tip, (back[0] + side[0], back[1] + side[1]), (back[0] - side[0], back[1] - side[1])


def _arc(
    about: Point, facing: Point, radius: float, *, half_angle: float
) -> tuple[Point, tuple[tuple[Point, Point, Point], ...]]:
    """An arc around a point on the side that faces another, as two cubic curves."""
    middle = math.atan2(facing[1] - about[1], facing[0] - about[0])
    handle = radius * 4 / 3 * math.tan(half_angle / 4)

    def on(angle: float, along: float = 0.0) -> Point:
        return (
            about[0] + radius * math.cos(angle) - along * math.sin(angle),
            about[1] + radius * math.sin(angle) + along * math.cos(angle),
        )

    turns = (middle - half_angle, middle, middle + half_angle)
    cubics = tuple((on(a, handle), on(b, -handle), on(b)) for a, b in pairwise(turns))
    return on(turns[0]), cubics
