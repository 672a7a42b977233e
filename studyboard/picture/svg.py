"""Pictures of the board as SVG text."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final
from xml.sax.saxutils import escape, quoteattr

import chess

from studyboard.model.marks import Mark
from studyboard.picture.describe import describe_board, describe_marks
from studyboard.picture.palette import BoardPalette, board_palette
from studyboard.picture.pieces import DEFAULT_SET, GRID, piece_code, piece_fragment
from studyboard.picture.primitives import (
    Bounds,
    Circle,
    Curve,
    Fill,
    PieceAt,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Rect,
    Segments,
    Stroke,
    Text,
)
from studyboard.picture.scene import board_bounds, board_scene

FONT_FAMILY: Final = "Noto Sans, DejaVu Sans, Liberation Sans, Libertinus Serif, sans-serif"
"""Fonts asked for in turn for the coordinates; any font will do."""


def board_svg(
    board: chess.Board,
    *,
    flipped: bool = False,
    marks: Iterable[Mark] = (),
    last_move: chess.Move | None = None,
    check: bool = True,
    coordinates: bool = True,
    palette: BoardPalette | None = None,
    piece_set: str = DEFAULT_SET,
    width: float = 480.0,
    title: str = "",
    font_family: str = FONT_FAMILY,
    coordinate_size: float | None = None,
) -> str:
    """One SVG document that shows *board*; see :func:`studyboard.picture.scene.board_scene` for what is drawn.

    width: of the picture, in px
    title: its short name, such as ``"After 12... Nxe5"``; "Chess position" when empty

    The document describes the position and the marks in words, for those who do not see it.
    """
    palette = palette or board_palette()
    drawn = tuple(marks)
    scene = board_scene(
        board,
        flipped=flipped,
        marks=drawn,
        last_move=last_move,
        check=check,
        coordinates=coordinates,
        palette=palette,
        coordinate_size=coordinate_size,
    )
    words = " ".join(part for part in (describe_board(board, last_move=last_move), describe_marks(drawn)) if part)
    return scene_svg(
        scene,
        board_bounds(coordinates=coordinates, palette=palette),
        width=width,
        title=title or "Chess position",
        description=words,
        piece_set=piece_set,
        font_family=font_family,
    )


def scene_svg(
    scene: Iterable[Primitive],
    bounds: Bounds,
    *,
    width: float,
    title: str,
    description: str,
    piece_set: str = DEFAULT_SET,
    font_family: str = FONT_FAMILY,
) -> str:
    """The primitives as one SVG document, *width* px wide; every piece is drawn once and used where it stands."""
    primitives = tuple(scene)
    height = width * bounds.height / bounds.width
    box = " ".join(_units(side) for side in (bounds.x, bounds.y, bounds.width, bounds.height))
    used = dict.fromkeys((p.piece, p.halo) for p in primitives if isinstance(p, PieceAt))
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="{box}"'
        f' width="{_figure(width)}" height="{_figure(height)}" role="img">',
        f"<title>{escape(title)}</title>",
        f"<desc>{escape(description)}</desc>",
        "<defs>",
        *(f'<g id="{_piece_id(piece, halo)}">\n{piece_fragment(piece, piece_set, halo)}\n</g>' for piece, halo in used),
        "</defs>",
        *(primitive_svg(primitive, font_family=font_family) for primitive in primitives),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def primitive_svg(primitive: Primitive, *, font_family: str = FONT_FAMILY) -> str:
    """One primitive as an SVG element; a piece refers to its drawing in the document's definitions."""
    match primitive:
        case Rect(x, y, width, height, fill, stroke, radius):
            rounded = f' rx="{_units(radius)}"' if radius else ""
            size = f'width="{_units(width)}" height="{_units(height)}"'
            return f'<rect x="{_units(x)}" y="{_units(y)}" {size}{rounded}{_paint(fill, stroke)}/>'
        case Circle(x, y, radius, fill, stroke):
            return f'<circle cx="{_units(x)}" cy="{_units(y)}" r="{_units(radius)}"{_paint(fill, stroke)}/>'
        case Polygon(points, fill, stroke):
            return f'<polygon points="{_points(points)}"{_paint(fill, stroke)}/>'
        case Polyline(points, stroke):
            return f'<polyline points="{_points(points)}"{_paint(None, stroke)}/>'
        case Segments(paths, stroke):
            d = "".join("M" + "L".join(_point(point) for point in path) for path in paths)
            return f'<path d="{d}"{_paint(None, stroke)}/>'
        case Curve(start, cubics, stroke):
            d = f"M{_point(start)}" + "".join("C" + " ".join(_point(point) for point in cubic) for cubic in cubics)
            return f'<path d="{d}"{_paint(None, stroke)}/>'
        case Text(x, y, text, size, colour, anchor, bold):
            weight = ' font-weight="bold"' if bold else ""
            return (
                f'<text x="{_units(x)}" y="{_units(y)}" font-family={quoteattr(font_family)}'
                f' font-size="{_units(size)}"{weight} fill="{colour}" text-anchor="{anchor}">{escape(text)}</text>'
            )
        case PieceAt(x, y, piece, halo):
            place = f"translate({_units(x)} {_units(y)})"
            return f'<use xlink:href="#{_piece_id(piece, halo)}" transform="{place}"/>'


def _piece_id(piece: chess.Piece, halo: str | None) -> str:
    return f"piece-{piece_code(piece)}" + ("-rim" if halo else "")


def _figure(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")


def _units(squares: float) -> str:
    """A length in the document's units, GRID to a square: renderers drop text whose size is under one unit."""
    return _figure(squares * GRID)


def _point(point: Point) -> str:
    return f"{_units(point[0])} {_units(point[1])}"


def _points(points: Iterable[Point]) -> str:
    return " ".join(f"{_units(x)},{_units(y)}" for x, y in points)


def _paint(fill: Fill | None, stroke: Stroke | None) -> str:
    words = [f' fill="{fill.colour if fill else "none"}"']
    if fill and fill.opacity < 1:
        words.append(f' fill-opacity="{_figure(fill.opacity)}"')
    if stroke:
        words.append(f' stroke="{stroke.colour}" stroke-width="{_units(stroke.width)}"')
        words.append(f' stroke-linecap="{stroke.cap}" stroke-linejoin="{stroke.join}"')
        if stroke.dash:
            words.append(f' stroke-dasharray="{" ".join(_units(length) for length in stroke.dash)}"')
        if stroke.opacity < 1:
            words.append(f' stroke-opacity="{_figure(stroke.opacity)}"')
    return "".join(words)
