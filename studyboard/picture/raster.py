"""Pictures as pixels: the primitives of a scene painted with cairo, for videos and stills."""

from __future__ import annotations

import math
from collections.abc import Iterable
from io import BytesIO
from typing import Final

import cairocffi
import cairosvg
import chess

from studyboard.picture.lettering import BASELINE, Letterer, Lettering
from studyboard.picture.pieces import DEFAULT_SET, GRID, piece_fragment
from studyboard.picture.primitives import (
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

_CAPS: Final = {"butt": cairocffi.LINE_CAP_BUTT, "round": cairocffi.LINE_CAP_ROUND}
_JOINS: Final = {"miter": cairocffi.LINE_JOIN_MITER, "round": cairocffi.LINE_JOIN_ROUND}


class Canvas:
    """A picture in memory that scenes are painted on.

    State: its pixels, the pieces drawn so far at each size, and the texts set so far.

    width, height: in pixels
    """

    def __init__(
        self, width: int, height: int, *, piece_set: str = DEFAULT_SET, letterer: Letterer | None = None
    ) -> None:
        self.width, self.height = width, height
        self.letterer = letterer or Letterer()
        self._piece_set = piece_set
        self._pieces: dict[tuple[chess.Piece, int, str | None], cairocffi.ImageSurface] = {}
        self.surface = cairocffi.ImageSurface(cairocffi.FORMAT_RGB24, width, height)
        self.context = cairocffi.Context(self.surface)

    def bgra(self) -> memoryview:
        """The pixels, row by row, four bytes each: blue, green, red and one that means nothing."""
        self.surface.flush()
        return memoryview(self.surface.get_data())

    def fill(self, colour: str) -> None:
        """Fill everything."""
        self.context.set_source_rgb(*rgb(colour))
        self.context.paint()

    def box(
        self, x: float, y: float, width: float, height: float, colour: str, *, radius: float = 0.0, opacity: float = 1.0
    ) -> None:
        """Fill a rectangle (px)."""
        self._set_colour(colour, opacity)
        self._box_path(x, y, width, height, radius)
        self.context.fill()

    def outline(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        colour: str,
        line: float,
        *,
        radius: float = 0.0,
        dash: tuple[float, ...] = (),
    ) -> None:
        """Draw a line along a rectangle's sides (px)."""
        self._set_colour(colour, 1.0)
        self.context.set_line_width(line)
        self.context.set_dash(list(dash))
        self._box_path(x, y, width, height, radius)
        self.context.stroke()
        self.context.set_dash([])

    def line(self, points: Iterable[Point], colour: str, width: float) -> None:
        """Draw a line through points (px)."""
        self._set_colour(colour, 1.0)
        self.context.set_line_width(width)
        self.context.set_line_cap(cairocffi.LINE_CAP_BUTT)
        self.context.set_line_join(cairocffi.LINE_JOIN_ROUND)
        self._line_path(points)
        self.context.stroke()

    def disc(self, x: float, y: float, radius: float, colour: str) -> None:
        """Fill a circle (px)."""
        self._set_colour(colour, 1.0)
        self.context.arc(x, y, radius, 0, 2 * math.pi)
        self.context.fill()

    def text(self, lettering: Lettering, x: float, y: float, *, opacity: float = 1.0) -> tuple[int, int]:
        """Put a text with its top left corner at x, y (px); returns its width and height."""
        picture = self.letterer.picture(lettering)
        if picture is None:
            return 0, 0
        self.context.set_source_surface(picture, round(x), round(y))
        self.context.paint_with_alpha(opacity)
        return picture.get_width(), picture.get_height()

    def copy(self, other: Canvas, x: int = 0, y: int = 0, *, opacity: float = 1.0) -> None:
        """Put another picture on this one with its top left corner at x, y (px)."""
        self.context.set_source_surface(other.surface, x, y)
        if opacity < 1.0:
            self.context.paint_with_alpha(opacity)
        else:
            self.context.paint()

    def scene(self, scene: Iterable[Primitive], x: float, y: float, side: float, *, opacity: float = 1.0) -> None:
        """Paint a scene.

        x, y: where its 0, 0 lies (px)
        side: of one square (px)
        """
        if opacity <= 0.0:
            return
        context = self.context
        context.save()
        if opacity < 1.0:
            context.push_group()
        context.translate(x, y)
        for primitive in scene:
            if isinstance(primitive, PieceAt):
                self._piece(primitive, side)
            elif isinstance(primitive, Text):
                self._text(primitive, side)
            else:
                self._shape(primitive, side)
        if opacity < 1.0:
            context.pop_group_to_source()
            context.paint_with_alpha(opacity)
        context.restore()

    def _piece(self, at: PieceAt, side: float) -> None:
        self.context.set_source_surface(self._piece_picture(at.piece, round(side), at.halo), at.x * side, at.y * side)
        self.context.paint()

    def _piece_picture(self, piece: chess.Piece, side: int, halo: str | None) -> cairocffi.ImageSurface:
        key = (piece, side, halo)
        if key not in self._pieces:
            inside = piece_fragment(piece, self._piece_set, halo)
            svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {GRID} {GRID}">{inside}</svg>'
            png = cairosvg.svg2png(bytestring=svg.encode(), output_width=side, output_height=side)
            self._pieces[key] = cairocffi.ImageSurface.create_from_png(BytesIO(png))
        return self._pieces[key]

    def _text(self, text: Text, side: float) -> None:
        size = round(text.size * side, 1)
        lettering = Lettering(text.text, size, text.colour, bold=text.bold)
        width, _ = self.letterer.size(lettering)
        before = {"start": 0.0, "middle": width / 2, "end": float(width)}[text.anchor]
        picture = self.letterer.picture(lettering)
        if picture is not None:
            self.context.set_source_surface(picture, text.x * side - before, text.y * side - BASELINE * size)
            self.context.paint()

    def _shape(self, shape: Rect | Circle | Polygon | Polyline | Segments | Curve, side: float) -> None:
        context = self.context
        fill: Fill | None = None
        sharp = False
        match shape:
            case Rect(x, y, width, height, fill, stroke, radius):
                self._box_path(x * side, y * side, width * side, height * side, radius * side)
                # Squares meet without a seam only where their edges are not smoothed.
                sharp = stroke is None and not radius
            case Circle(x, y, radius, fill, stroke):
                context.new_sub_path()
                context.arc(x * side, y * side, radius * side, 0, 2 * math.pi)
            case Polygon(points, fill, stroke):
                self._line_path((x * side, y * side) for x, y in points)
                context.close_path()
            case Polyline(points, stroke):
                self._line_path((x * side, y * side) for x, y in points)
            case Segments(lines, stroke):
                for line in lines:
                    self._line_path((x * side, y * side) for x, y in line)
            case Curve(start, cubics, stroke):
                context.move_to(start[0] * side, start[1] * side)
                for one, two, end in cubics:
                    context.curve_to(*(value * side for point in (one, two, end) for value in point))
        if fill is not None:
            context.set_antialias(cairocffi.ANTIALIAS_NONE if sharp else cairocffi.ANTIALIAS_DEFAULT)
            self._set_colour(fill.colour, fill.opacity)
            context.fill_preserve()
            context.set_antialias(cairocffi.ANTIALIAS_DEFAULT)
        if stroke is not None:
            self._set_stroke(stroke, side)
            context.stroke_preserve()
        context.new_path()

    def _set_stroke(self, stroke: Stroke, side: float) -> None:
        self._set_colour(stroke.colour, stroke.opacity)
        self.context.set_line_width(stroke.width * side)
        self.context.set_line_cap(_CAPS[stroke.cap])
        self.context.set_line_join(_JOINS[stroke.join])
        self.context.set_dash([length * side for length in stroke.dash])

    def _set_colour(self, colour: str, opacity: float) -> None:
        self.context.set_source_rgba(*rgb(colour), opacity)

    def _line_path(self, points: Iterable[Point]) -> None:
        for number, (x, y) in enumerate(points):
            if number:
                self.context.line_to(x, y)
            else:
                self.context.move_to(x, y)

    def _box_path(self, x: float, y: float, width: float, height: float, radius: float) -> None:
        context = self.context
        if not radius:
            context.rectangle(x, y, width, height)
            return
        radius = min(radius, width / 2, height / 2)
        context.new_sub_path()
        for across, down, start in (
            (x + width - radius, y + radius, -90),
            (x + width - radius, y + height - radius, 0),
            (x + radius, y + height - radius, 90),
            (x + radius, y + radius, 180),
        ):
            context.arc(across, down, radius, math.radians(start), math.radians(start + 90))
        context.close_path()


def rgb(colour: str) -> tuple[float, float, float]:
    """Red, green and blue from 0 to 1 of ``#rrggbb``."""
    return int(colour[1:3], 16) / 255, int(colour[3:5], 16) / 255, int(colour[5:7], 16) / 255
