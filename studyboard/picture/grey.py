"""A picture as a printer without colours prints it, with greys that were chosen and not left to the printer."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from studyboard.model.marks import MarkKind
from studyboard.picture.marks import INK, MARK_STYLES, PAPER
from studyboard.picture.palette import relative_luminance

GREY_MARKS: Final[Mapping[MarkKind, str]] = MappingProxyType(
    {
        MarkKind.THREAT: "#262626",
        MarkKind.TARGET: "#262626",
        MarkKind.ROUTE: "#4D4D4D",
        MarkKind.KEY_SQUARE: "#6E6E6E",
        MarkKind.GUARD: "#404040",
    }
)
"""The grey of each meaning. Lines and shapes tell them apart; all have at least 4.5:1 on white paper."""

_COLOUR: Final = re.compile(r"#[0-9A-Fa-f]{6}\b")
_CHOSEN: Final = {
    PAPER.upper(): "#FFFFFF",
    INK.upper(): "#1A1A1A",
    **{style.colour.upper(): GREY_MARKS[kind] for kind, style in MARK_STYLES.items()},
}


def grey(colour: str) -> str:
    """The grey for ``#rrggbb``: the chosen one for marks and paper, else the one of the same luminance."""
    chosen = _CHOSEN.get(colour.upper())
    if chosen is not None:
        return chosen
    light = relative_luminance(colour)
    share = 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
    return "#" + f"{round(share * 255):02X}" * 3


def grey_svg(svg: str) -> str:
    """The SVG document with every colour made grey."""
    known: dict[str, str] = {}
    return _COLOUR.sub(lambda match: known.get(match[0]) or known.setdefault(match[0], grey(match[0])), svg)
