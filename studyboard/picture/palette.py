"""The colours of boards and windows, read from the palettes that the program ships."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, fields, replace
from functools import cache
from typing import Any, Final

from studyboard.resources_path import resource

DEFAULT_BOARD: Final = "mist"
PRINT_BOARD: Final = "print"

_HEX: Final = re.compile(r"#[0-9A-Fa-f]{6}")
_THEMES_FILE: Final = "themes"


class PaletteError(ValueError):
    """A palette is missing or wrong; the sentence says which one and what is wrong with it."""


@dataclass(frozen=True, slots=True)
class BoardPalette:
    """The colours of a board, as ``#rrggbb``.

    light, dark: the squares
    coordinate_on_light, coordinate_on_dark: file letters and rank figures, on or beside those squares
    frame: the line around the board
    last_move: corner brackets of the last move
    check: the jagged ring under a king in check
    coordinates: ``"inside"`` the border squares or in the ``"margin"`` around the board
    hatch: colour of the lines that make a square dark in print; None where the fill does
    piece_halo: colour of a rim that keeps pieces free of the hatching; None for no rim
    """

    name: str
    title: str
    light: str
    dark: str
    coordinate_on_light: str
    coordinate_on_dark: str
    frame: str
    last_move: str
    check: str
    coordinates: str = "inside"
    hatch: str | None = None
    piece_halo: str | None = None


@dataclass(frozen=True, slots=True)
class Theme:
    """The colours of the windows, as ``#rrggbb``; themes.toml says what each token is for."""

    name: str
    paper: str
    surface: str
    ink: str
    ink_quiet: str
    rule: str
    rail: str
    accent: str
    on_accent: str
    accent_soft: str
    track: str
    over: str
    over_soft: str
    query: str
    query_soft: str
    spelling: str
    think: str
    think_soft: str
    side_line: str
    side_line_soft: str
    focus: str
    selection: str
    recording: str
    wave: str


def strong(look: Theme) -> Theme:
    """The same theme for somebody whose system asks for more contrast: nothing is quiet, and every line is drawn."""
    return replace(look, ink_quiet=look.ink, rule=look.ink_quiet, rail=look.ink_quiet)


@cache
def board_palette(name: str = DEFAULT_BOARD) -> BoardPalette:
    """The board palette called *name*. Raises PaletteError when there is none or it cannot be used."""
    if name not in board_palette_names():
        raise PaletteError(f"There is no board palette {name!r}; there are {', '.join(board_palette_names())}.")
    read = tomllib.loads(resource("palettes", f"{name}.toml").read_text(encoding="utf-8"))
    palette = BoardPalette(name=name, **_tokens(f"board palette {name!r}", BoardPalette, read))
    if palette.coordinates not in ("inside", "margin"):
        raise PaletteError(f"The board palette {name!r} puts its coordinates neither inside nor in the margin.")
    return palette


@cache
def board_palette_names() -> tuple[str, ...]:
    """Names of the board palettes, the everyday one first."""
    names = {path.stem for path in resource("palettes").glob("*.toml")} - {_THEMES_FILE}
    return tuple(sorted(names, key=lambda name: (name != DEFAULT_BOARD, name == PRINT_BOARD, name)))


@cache
def theme(name: str = "light") -> Theme:
    """The window theme called *name*. Raises PaletteError when there is none or it cannot be used."""
    read = tomllib.loads(resource("palettes", f"{_THEMES_FILE}.toml").read_text(encoding="utf-8"))
    if name not in read:
        raise PaletteError(f"There is no theme {name!r}; there are {', '.join(read)}.")
    return Theme(name=name, **_tokens(f"theme {name!r}", Theme, read[name]))


@cache
def theme_names() -> tuple[str, ...]:
    """Names of the window themes."""
    return tuple(tomllib.loads(resource("palettes", f"{_THEMES_FILE}.toml").read_text(encoding="utf-8")))


def relative_luminance(colour: str) -> float:
    """Relative luminance of ``#rrggbb``, 0 for black to 1 for white (WCAG 2.2, definition of relative luminance)."""
    if not _HEX.fullmatch(colour):
        raise PaletteError(f"{colour!r} is not a colour of the form #rrggbb.")
    red, green, blue = (_linear(int(colour[at : at + 2], 16) / 255) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast_ratio(one: str, other: str) -> float:
    """Contrast of two colours from 1 to 21, (L1 + 0.05) / (L2 + 0.05) (WCAG 2.2, definition of contrast ratio)."""
    darker, lighter = sorted((relative_luminance(one), relative_luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def blend(over: str, under: str, opacity: float) -> str:
    """The colour seen where *over* is laid on *under* with *opacity* 0 to 1."""
    mixed = (
        round(opacity * int(over[at : at + 2], 16) + (1 - opacity) * int(under[at : at + 2], 16)) for at in (1, 3, 5)
    )
    return "#" + "".join(f"{part:02X}" for part in mixed)


def _linear(share: float) -> float:
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


def _tokens(what: str, kind: type[BoardPalette] | type[Theme], read: dict[str, Any]) -> dict[str, str]:
    known = {field.name for field in fields(kind)} - {"name"}
    if unknown := sorted(read.keys() - known):
        raise PaletteError(f"The {what} has tokens that mean nothing here: {', '.join(unknown)}.")
    for token, value in read.items():
        if token not in ("title", "coordinates") and not (isinstance(value, str) and _HEX.fullmatch(value)):
            raise PaletteError(f"In the {what}, {token} = {value!r} is not a colour of the form #rrggbb.")
    try:
        kind(name="", **read)
    except TypeError as missing:
        raise PaletteError(f"The {what} is not complete: {missing}.") from missing
    return read
