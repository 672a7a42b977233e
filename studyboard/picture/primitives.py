"""What a picture of a board is made of, in board units: one square is 1.0, y grows downwards."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, TypeAlias

import chess

Point: TypeAlias = tuple[float, float]

Layer: TypeAlias = "tuple[Primitive, ...]"


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line.

    colour: ``#rrggbb``
    width: in squares
    dash: lengths of dashes and gaps in turn, in squares (not in line widths); empty for a solid line
    cap, join: ends and corners, by their SVG names
    opacity: 0 to 1
    """

    colour: str
    width: float
    dash: tuple[float, ...] = ()
    cap: Literal["butt", "round"] = "round"
    join: Literal["miter", "round"] = "round"
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Fill:
    """A filled area: colour ``#rrggbb``, opacity 0 to 1."""

    colour: str
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle with its top left corner at x, y; *radius* rounds its corners."""

    x: float
    y: float
    width: float
    height: float
    fill: Fill | None = None
    stroke: Stroke | None = None
    radius: float = 0.0


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle about the centre x, y."""

    x: float
    y: float
    radius: float
    fill: Fill | None = None
    stroke: Stroke | None = None


@dataclass(frozen=True, slots=True)
class Polygon:
    """A closed figure with straight sides."""

    points: tuple[Point, ...]
    fill: Fill | None = None
    stroke: Stroke | None = None


@dataclass(frozen=True, slots=True)
class Polyline:
    """An open line through its points."""

    points: tuple[Point, ...]
    stroke: Stroke


@dataclass(frozen=True, slots=True)
class Segments:
    """Many separate straight lines in one stroke: hatching, ticks, brackets."""

    lines: tuple[tuple[Point, ...], ...]
    stroke: Stroke


@dataclass(frozen=True, slots=True)
class Curve:
    """An open line of cubic curves: a start, then (handle, handle, end) for each."""

    start: Point
    cubics: tuple[tuple[Point, Point, Point], ...]
    stroke: Stroke


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text whose baseline starts, is centred or ends at x, y; *size* is the font's em in squares."""

    x: float
    y: float
    text: str
    size: float
    colour: str
    anchor: Literal["start", "middle", "end"] = "middle"
    bold: bool = False


@dataclass(frozen=True, slots=True)
class PieceAt:
    """A piece drawn in the square whose top left corner is x, y; *halo* is the colour of a rim around it."""

    x: float
    y: float
    piece: chess.Piece
    halo: str | None = None


Primitive: TypeAlias = Rect | Circle | Polygon | Polyline | Segments | Curve | Text | PieceAt


@dataclass(frozen=True, slots=True)
class Bounds:
    """The part of the plane that a picture shows: top left corner, width and height in squares."""

    x: float
    y: float
    width: float
    height: float
