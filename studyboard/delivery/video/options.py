"""How a video is to be: its shape, its size, what is in the picture, and how smoothly it runs."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from studyboard.delivery.errors import DeliveryError
from studyboard.picture.palette import DEFAULT_BOARD
from studyboard.picture.pieces import DEFAULT_SET
from studyboard.translation import tr


class Shape(StrEnum):
    """The shape of the picture, width to height."""

    WIDE = "16:9"
    TALL = "9:16"


class Composition(StrEnum):
    """What is in the picture beside the board: the moves in their lanes, what is said, or nothing."""

    LANES = "lanes"
    WORDS = "words"
    BOARD = "board"


LINES: Final = (720, 1080, 1440, 2160)
"""The sizes that there are: pixels of the picture's shorter side."""

PREVIEW_LINES: Final = 216
"""The size in which a video is looked through before it is written."""

RATES: Final = (25, 30, 50, 60)
"""The numbers of frames a second that there are."""


@dataclass(frozen=True, slots=True)
class VideoOptions:
    """How a video is to be.

    lines: pixels of the picture's shorter side, one of LINES
    rate: frames a second, one of RATES
    composition: what is in the picture beside the board
    captions: what is said is written into the picture; always so where the composition is WORDS
    constant: every frame is there; else only those that differ from the one before (a variable frame rate)
    flipped: the board seen from Black's side
    theme, palette, piece_set: the look, by name
    still_moves: pieces are put down without sliding

    Raises DeliveryError for a size or a rate that there is not.
    """

    shape: Shape = Shape.WIDE
    lines: int = 1080
    rate: int = 30
    composition: Composition = Composition.LANES
    captions: bool = False
    constant: bool = True
    flipped: bool = False
    theme: str = "light"
    palette: str = DEFAULT_BOARD
    piece_set: str = DEFAULT_SET
    still_moves: bool = False

    def __post_init__(self) -> None:
        if self.lines not in (*LINES, PREVIEW_LINES):
            raise DeliveryError(tr("A video has {sizes} lines, not {lines}.", sizes=_either(LINES), lines=self.lines))
        if self.rate not in RATES:
            raise DeliveryError(
                tr("A video has {rates} frames a second, not {rate}.", rates=_either(RATES), rate=self.rate)
            )

    @property
    def size(self) -> tuple[int, int]:
        """Width and height (px)."""
        long = self.lines * 16 // 9
        return (long, self.lines) if self.shape is Shape.WIDE else (self.lines, long)

    @property
    def worded(self) -> bool:
        """Whether what is said is in the picture."""
        return self.captions or self.composition is Composition.WORDS


def _either(choices: tuple[int, ...]) -> str:
    *first, last = (str(choice) for choice in choices)
    return tr("{first} or {last}", first=", ".join(first), last=last)
