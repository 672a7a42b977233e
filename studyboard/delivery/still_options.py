"""How a title picture is to be: its design, its shapes, its words and its position."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from studyboard.picture.palette import DEFAULT_BOARD


class StillDesign(StrEnum):
    """How near the board is looked at.

    PAGE: the whole board on paper, a large headline beside or above it
    BAND: a wide piece of the board to the picture's edges, the headline on a band across
    CORNER: the few squares where it happens, the players on plates of their colours
    """

    PAGE = "page"
    BAND = "band"
    CORNER = "corner"


class StillShape(StrEnum):
    """1280 x 720 pixels, 1080 x 1920, or a picture of each."""

    WIDE = "wide"
    TALL = "tall"
    BOTH = "both"

    @property
    def each(self) -> tuple[StillShape, ...]:
        """The pictures that it means."""
        return (StillShape.WIDE, StillShape.TALL) if self is StillShape.BOTH else (self,)

    @property
    def size(self) -> tuple[int, int]:
        """Width and height of one picture (px)."""
        return (1080, 1920) if self is StillShape.TALL else (1280, 720)


@dataclass(frozen=True, slots=True)
class StillOptions:
    """How a still is to be.

    headline: what stands on it largest; the study's own where it is empty
    at: the position, by the move that leads there, as one would search for it (“24... Ke8”); empty for the one that
        stands for the study
    result: the result is on it, and the end of the game may be; else neither is given away
    flipped: the board seen from Black's side
    theme, palette: the look, by name
    """

    design: StillDesign = StillDesign.PAGE
    shape: StillShape = StillShape.WIDE
    headline: str = ""
    at: str = ""
    result: bool = False
    flipped: bool = False
    theme: str = "light"
    palette: str = DEFAULT_BOARD
