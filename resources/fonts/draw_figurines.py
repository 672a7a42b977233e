"""Draws the figurine font from the shapes of our own pieces: run it again when they change.

    pip install fonttools skia-pathops
    python resources/fonts/draw_figurines.py

A figurine stands in a line of text, some 3 mm high. So it keeps the silhouette of its piece and the lines that tell
it apart, leaves out the mouldings, and is drawn with a line as thick as the stem of a letter. The white ones are
open, the black ones solid. They have the height of capitals, or a little more.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import pathops
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.t2CharStringPen import T2CharStringPen

from studyboard.picture.lathe import Shape, Step, shape_of

HERE: Final = Path(__file__).resolve().parent
SHAPES: Final = HERE.parent / "pieces" / "study" / "shapes.toml"
FAMILY: Final = "Studyboard Figurine"

EM: Final = 1000
BASELINE: Final = -15
SIDE: Final = 42
"""Room to the left and right of a figurine (1/1000 em)."""

STEM: Final = 44
"""Width of the outline (1/1000 em)."""

HEIGHTS: Final = {"king": 800, "queen": 770, "rook": 660, "bishop": 730, "knight": 710, "pawn": 620}
FOOT: Final = 100
"""Height of the line that stands for the mouldings of a solid piece (1/1000 em)."""

MADE: Final = 3_800_000_000
"""The date in the file (s from the beginning of 1904): fixed, so that the same shapes give the same file."""

WIDER: Final = {"king": 1.3, "queen": 1.25, "bishop": 1.22, "rook": 1.12, "knight": 1.0, "pawn": 1.1}
"""Tall pieces stand on wide squares but in narrow lines: at this size they need a little more body."""

COLLARS: Final = {"king": (50, 0.48), "queen": (50, 0.44), "bishop": (38, 0.44), "rook": (35, 0.52), "pawn": (28, 0.42)}
"""Height of the collar (hundredths of a square), and the share of the whole height at which it stands here.

It is by their heads that pieces are told apart, so the heads get more of the room than on the board.
"""

HEADS_WIDER: Final = {"queen": 1.22, "rook": 1.1, "bishop": 1.1, "pawn": 1.1}

WHITE: Final = {"king": 0x2654, "queen": 0x2655, "rook": 0x2656, "bishop": 0x2657, "knight": 0x2658, "pawn": 0x2659}


@dataclass(frozen=True, slots=True)
class Proportion:
    """From the piece's own lengths to font units.

    across, along: scale of radii and of heights
    collar: height of the collar in the piece's own lengths, and in font units; above it another scale holds
    top: the piece's height in its own lengths, and in font units
    head: additional scale of the radii above the collar
    """

    across: float
    along: float
    collar: tuple[float, float]
    top: tuple[float, float]
    head: float

    def place(self, point: tuple[float, float]) -> tuple[float, float]:
        """Where a point of the piece lies in the glyph."""
        x, y = point
        (collar, at), (top, height) = self.collar, self.top
        if y <= collar:
            return x * self.across, y * at / collar
        return x * self.across * self.head, at + (y - collar) * (height - at) / (top - collar)


def proportion(shape: Shape, name: str) -> Proportion:
    """How the piece of this name becomes a glyph."""
    top = max(y for part in shape.parts for step in part.outline for _, y in step.points)
    height = HEIGHTS[name] - STEM
    collar, share = COLLARS.get(name, (top, 1.0))
    along = height / top
    return Proportion(along * WIDER[name], along, (collar, share * height), (top, height), HEADS_WIDER.get(name, 1.0))


def outline_of(steps: tuple[Step, ...], by: Proportion, closed: bool = True) -> pathops.Path:
    """The steps as a path in font units, standing on the baseline."""
    path = pathops.Path()
    for step in steps:
        points = [by.place(point) for point in step.points]
        match step.op:
            case "M":
                path.moveTo(*points[0])
            case "L":
                path.lineTo(*points[0])
            case "C":
                path.cubicTo(*points[0], *points[1], *points[2])
    if closed:
        path.close()
    return path


def stroked(path: pathops.Path, width: float, cap: pathops.LineCap = pathops.LineCap.ROUND_CAP) -> pathops.Path:
    """The line of this width along the path, as an area."""
    line = pathops.Path(path)
    line.stroke(width, cap, pathops.LineJoin.ROUND_JOIN, 4.0)
    line.convertConicsToQuads()
    line.simplify(fix_winding=True, keep_starting_points=False)
    return line


def joined(paths: list[pathops.Path]) -> pathops.Path:
    """All the areas as one."""
    whole = pathops.Path()
    for path in paths:
        whole = pathops.op(whole, path, pathops.PathOp.UNION, fix_winding=True)
    return whole


def without(area: pathops.Path, hole: pathops.Path) -> pathops.Path:
    """The first area less the second."""
    return pathops.op(area, hole, pathops.PathOp.DIFFERENCE, fix_winding=True)


def open_part(area: pathops.Path) -> pathops.Path:
    """What stays white when the outline of this area is drawn."""
    return without(area, stroked(area, STEM))


def engraved(shape: Shape, by: Proportion) -> Iterator[pathops.Path]:
    """The lines and spots cut into a piece that can still be seen at this size."""
    for engraving in shape.engravings:
        steps = outline_of(engraving.steps, by, closed=not engraving.width)
        if engraving.width >= 1.4:
            yield stroked(steps, STEM * 0.8)
        elif not engraving.width:
            yield joined([steps, stroked(steps, STEM * 0.3)])


def figurine(shape: Shape, name: str, *, solid: bool) -> pathops.Path:
    """One glyph, its foot on the baseline and its left edge at the side bearing."""
    by = proportion(shape, name)
    parts = [outline_of(part.outline, by) for part in shape.parts]
    # A cross or a ball is too small to be open: its outline would clot.
    small = [part for part in parts if abs(open_part(part).area) < 0.2 * abs(part.area)]
    large = joined([part for part in parts if part not in small])
    silhouette = joined([large, stroked(large, STEM), *small, *(stroked(part, STEM * 0.45) for part in small)])
    inside = pathops.op(joined(list(engraved(shape, by))), large, pathops.PathOp.INTERSECTION)
    if solid:
        left, _, right, _ = large.bounds
        foot = pathops.Path()
        foot.moveTo(left, FOOT)
        foot.lineTo(right, FOOT)
        glyph = without(without(silhouette, inside), stroked(foot, STEM * 0.7, pathops.LineCap.BUTT_CAP))
    else:
        glyph = joined([without(silhouette, without(open_part(large), joined(small))), inside])
    left, bottom, _, _ = glyph.bounds
    return glyph.transform(1, 0, 0, 1, SIDE - left, BASELINE - bottom)


def draw(target: Path) -> None:
    """Write the font."""
    described = tomllib.loads(SHAPES.read_text(encoding="utf-8"))
    glyphs = {".notdef": pathops.Path(), "space": pathops.Path()}
    codes = {0x20: "space"}
    for name, code in WHITE.items():
        shape = shape_of(name, described)
        for colour, offset in (("white", 0), ("black", 6)):
            glyphs[f"{colour}.{name}"] = figurine(shape, name, solid=colour == "black")
            codes[code + offset] = f"{colour}.{name}"
    widths = {name: round(path.bounds[2]) + SIDE if path.bounds[2] else 300 for name, path in glyphs.items()}
    builder = FontBuilder(EM, isTTF=False)
    builder.setupGlyphOrder(list(glyphs))
    builder.setupCharacterMap(codes)
    drawn = {}
    for name, path in glyphs.items():
        pen = T2CharStringPen(widths[name], None)
        path.draw(pen)
        drawn[name] = pen.getCharString()
    named = {
        "copyright": "The Studyboard authors, GPL-3.0-or-later",
        "familyName": FAMILY,
        "styleName": "Regular",
        "fullName": f"{FAMILY} Regular",
        "psName": f"{FAMILY.replace(' ', '')}-Regular",
    }
    builder.setupCFF(named["psName"], {"FullName": named["fullName"]}, drawn, {})
    builder.setupHorizontalMetrics({name: (width, SIDE) for name, width in widths.items()})
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable(named)
    builder.setupOS2(sTypoAscender=800, sTypoDescender=-200, usWinAscent=800, usWinDescent=200, usWeightClass=400)
    builder.setupPost()
    builder.font["head"].created = builder.font["head"].modified = MADE
    builder.font.recalcTimestamp = False
    builder.save(target)


if __name__ == "__main__":
    draw(HERE / "StudyboardFigurine.otf")
