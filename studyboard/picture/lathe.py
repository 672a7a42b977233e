"""Turns the shapes of a set of pieces into one SVG file per piece and colour."""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final, TypeAlias

AXIS: Final = 50.0
"""x of the axis of every piece, in hundredths of a square."""

SQUARE: Final = 100
"""Side of the grid on which a piece is drawn."""

NAMES: Final = {"king": "K", "queen": "Q", "bishop": "B", "knight": "N", "rook": "R", "pawn": "P"}
COLOURS: Final = {"white": "w", "black": "b"}

_CIRCLE: Final = 0.5523
"""Length of the handles with which four cubic curves make a circle of radius 1."""

_SHADE_FROM: Final = 0.34
_SHINE: Final = (-0.66, -0.46)
"""Where shadow and light lie on a turned part, as shares of its radius (negative: left of the axis)."""

Point: TypeAlias = tuple[float, float]


class ShapeError(ValueError):
    """A set of pieces is described in a way that cannot be drawn; the sentence says which piece and why."""


@dataclass(frozen=True, slots=True)
class Step:
    """One step of an outline: ``M`` and ``L`` take one point, ``C`` three, ``Z`` none."""

    op: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Finish:
    """The colours of one side's pieces, as hex strings."""

    outline: str
    fill: str
    shade: str
    shine: str
    seam: str
    inlay: str


@dataclass(frozen=True, slots=True)
class Part:
    """One solid of a piece: its outline, with the shadow and the light that lie on it."""

    outline: tuple[Step, ...]
    shade: tuple[Step, ...]
    shine: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class Engraving:
    """A line cut into the piece, or with width 0 an inlaid spot; *seam* gives it the colour of a joint."""

    steps: tuple[Step, ...]
    width: float
    seam: bool = False


@dataclass(frozen=True, slots=True)
class Shape:
    """Everything that is drawn of one piece, in either colour."""

    parts: tuple[Part, ...]
    engravings: tuple[Engraving, ...]


def steps_of(text: str) -> tuple[Step, ...]:
    """Read an outline such as ``"M 0 4 L 8 4 C 9 4 9 2 8 2 Z"``.

    Raises ShapeError for a letter other than M, L, C and Z or a wrong number of figures.
    """
    wanted = {"M": 2, "L": 2, "C": 6, "Z": 0}
    steps: list[Step] = []
    words = text.split()
    at = 0
    while at < len(words):
        op = words[at]
        if op not in wanted:
            raise ShapeError(f"An outline has {op!r} where M, L, C or Z belongs: {text}")
        figures = [float(word) for word in words[at + 1 : at + 1 + wanted[op]]]
        if len(figures) != wanted[op]:
            raise ShapeError(f"An outline ends too early after {op}: {text}")
        steps.append(Step(op, tuple(zip(figures[0::2], figures[1::2], strict=True))))
        at += 1 + wanted[op]
    return tuple(steps)


def scaled(steps: Iterable[Step], across: float, along: float = 1.0) -> tuple[Step, ...]:
    """The outline with every radius multiplied by *across* and every height by *along*."""
    return tuple(Step(s.op, tuple((x * across, y * along) for x, y in s.points)) for s in steps)


def backwards(steps: Sequence[Step]) -> tuple[Step, ...]:
    """An open outline walked from its end to its beginning, without its first move."""
    turned: list[Step] = []
    for before, step in zip(reversed(steps[:-1]), reversed(steps), strict=False):
        turned.append(Step(step.op, (*reversed(step.points[:-1]), before.points[-1])))
    return tuple(turned)


def between(profile: Sequence[Step], near: float, far: float) -> tuple[Step, ...]:
    """The band of a turned part that lies between two shares of its radius."""
    outer, inner = scaled(profile, far), scaled(profile, near)
    joint = () if inner[-1].points[-1] == outer[-1].points[-1] else (Step("L", (inner[-1].points[-1],)),)
    return (*outer, *joint, *backwards(inner), Step("Z", ()))


def ball_profile(height: float, radius: float) -> tuple[Step, ...]:
    """Right half of a ball whose centre lies at *height* on the axis."""
    handle = radius * _CIRCLE
    return (
        Step("M", ((0.0, height + radius),)),
        Step("C", ((handle, height + radius), (radius, height + handle), (radius, height))),
        Step("C", ((radius, height - handle), (handle, height - radius), (0.0, height - radius))),
    )


def turned_part(profile: Sequence[Step]) -> Part:
    """The solid that comes off the lathe when *profile* is spun about the axis."""
    return Part(
        outline=between(profile, -1.0, 1.0),
        shade=between(profile, _SHADE_FROM, 1.0),
        shine=between(profile, *_SHINE),
    )


def moved(steps: Iterable[Step], right: float) -> tuple[Step, ...]:
    """The outline shifted to the right by *right*."""
    return tuple(Step(s.op, tuple((x + right, y) for x, y in s.points)) for s in steps)


def _ball(text: str) -> Part:
    across, height, radius = (float(word) for word in text.split())
    part = turned_part(ball_profile(height, radius))
    return Part(moved(part.outline, across), moved(part.shade, across), moved(part.shine, across))


def _part(described: Mapping[str, Any]) -> Part:
    if "turned" in described:
        return turned_part(steps_of(described["turned"]))
    if "ball" in described:
        return _ball(described["ball"])
    return Part(
        steps_of(described["carved"]), steps_of(described.get("shade", "")), steps_of(described.get("shine", ""))
    )


def shape_of(name: str, described: Mapping[str, Any]) -> Shape:
    """The shape of the piece *name* (``"king"`` …) in a set as read from its TOML file.

    Raises ShapeError when the piece is missing or described wrongly.
    """
    try:
        piece = described[name]
        size = float(piece["base"]) / 10.0
        rise = float(piece.get("rise", size))
        base = [turned_part(scaled(steps_of(described["base"][key]), size, rise)) for key in ("torus", "plinth")]
        parts = [_part(part) for part in piece["part"]]
        lines = [
            Engraving(steps_of(line["path"]), float(line.get("width", described["seam"])), bool(line.get("seam")))
            for line in piece.get("line", ())
        ]
        spots = [
            Engraving(steps_of(spot["path"]) if "path" in spot else _ball(spot["ball"]).outline, 0.0)
            for spot in piece.get("spot", ())
        ]
    except KeyError as missing:
        raise ShapeError(f"The set of pieces lacks {missing} for the {name}.") from missing
    return Shape(parts=(*base, *parts), engravings=(*lines, *spots))


def _figure(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")


def path_data(steps: Iterable[Step], foot: float) -> str:
    """The outline as the text of an SVG ``d`` attribute, standing on *foot*."""
    return " ".join(
        step.op + " ".join(f"{_figure(AXIS + x)} {_figure(foot - y)}" for x, y in step.points) for step in steps
    )


def fragment(shape: Shape, finish: Finish, *, foot: float, outline: float, seam: float) -> str:
    """The inside of the piece's SVG on a grid of 100 × 100; plain attributes only, as SVG Tiny 1.2 asks."""
    bodies = [path_data(part.outline, foot) for part in shape.parts]
    lines = [
        f'<g fill="{finish.outline}" stroke="{finish.outline}" stroke-width="{_figure(2 * outline)}"'
        ' stroke-linejoin="round">',
        *(f'<path d="{d}"/>' for d in bodies),
        "</g>",
    ]
    for part, body in zip(shape.parts, bodies, strict=True):
        lines.append(f'<path d="{body}" fill="{finish.fill}"/>')
        if part.shade:
            lines.append(f'<path d="{path_data(part.shade, foot)}" fill="{finish.shade}"/>')
        if part.shine:
            lines.append(f'<path d="{path_data(part.shine, foot)}" fill="{finish.shine}"/>')
        lines.append(
            f'<path d="{body}" fill="none" stroke="{finish.seam}" stroke-width="{_figure(seam)}"'
            ' stroke-linejoin="round"/>'
        )
    for engraving in shape.engravings:
        d = path_data(engraving.steps, foot)
        if engraving.width:
            lines.append(
                f'<path d="{d}" fill="none" stroke="{finish.seam if engraving.seam else finish.inlay}"'
                f' stroke-width="{_figure(engraving.width)}"'
                ' stroke-linecap="round" stroke-linejoin="round"/>'
            )
        else:
            lines.append(f'<path d="{d}" fill="{finish.inlay}"/>')
    return "\n".join(lines)


def piece_files(described: Mapping[str, Any]) -> dict[str, str]:
    """Text of each SVG file of a set by file name (``"wK.svg"`` …), from the set as read from its TOML file."""
    files: dict[str, str] = {}
    for colour, prefix in COLOURS.items():
        finish = Finish(**described[colour])
        for name, letter in NAMES.items():
            inside = fragment(
                shape_of(name, described),
                finish,
                foot=float(described["foot"]) - float(described["outline"]),
                outline=float(described["outline"]),
                seam=float(described["seam"]),
            )
            files[f"{prefix}{letter}.svg"] = (
                f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {SQUARE} {SQUARE}"'
                f' width="{SQUARE}" height="{SQUARE}">\n<title>{colour} {name}</title>\n{inside}\n</svg>\n'
            )
    return files


def write_set(folder: Path) -> tuple[Path, ...]:
    """Draw the set described by ``shapes.toml`` in *folder* into the same folder; the files written."""
    described = tomllib.loads((folder / "shapes.toml").read_text(encoding="utf-8"))
    written = []
    for name, text in piece_files(described).items():
        (folder / name).write_text(text, encoding="utf-8")
        written.append(folder / name)
    return tuple(written)


if __name__ == "__main__":
    for path in write_set(Path(sys.argv[1])):
        print(path)
