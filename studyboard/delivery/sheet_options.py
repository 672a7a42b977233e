"""How a study sheet is to be: its paper, its type, what is on it, and whether it asks before it tells."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from studyboard.delivery.errors import DeliveryError
from studyboard.translation import tr

WRITING_LINES: Final = (0, 2, 4, 6, 8, 12)
"""The numbers of ruled lines that there are: of more, not every exercise would fit on a page."""


class Paper(StrEnum):
    """A4 (ISO 216) or letter (ANSI)."""

    A4 = "a4"
    LETTER = "letter"


class SheetText(StrEnum):
    """Which text is printed: the notes alone, or the notes and, more quietly, what is said."""

    NOTES = "notes"
    TALK = "talk"


@dataclass(frozen=True, slots=True)
class SheetOptions:
    """How a sheet is to be.

    paper: what it is printed on
    text: which text is on it
    large_print: type of 18 points in one column, for those who do not see well
    exercises: what a think pause asks for is told on the last page, and the story goes on on a new one
    writing_lines: ruled lines below each exercise, one of WRITING_LINES; also whether a page that is not full is
        ruled for notes
    coloured: marks in their colours; otherwise in greys that every printer prints
    flipped: diagrams seen from Black's side

    Raises DeliveryError for a paper or a number of lines that there is not.
    """

    paper: Paper = Paper.A4
    text: SheetText = SheetText.TALK
    large_print: bool = False
    exercises: bool = True
    writing_lines: int = 4
    coloured: bool = False
    flipped: bool = False

    def __post_init__(self) -> None:
        if self.paper not in list(Paper):
            raise DeliveryError(
                tr("There is no paper “{paper}” here; the sheet can be printed on a4 or letter.", paper=self.paper)
            )
        if self.writing_lines not in WRITING_LINES:
            raise DeliveryError(
                tr(
                    "An exercise has {choices} lines to write on, not {lines}.",
                    choices=", ".join(map(str, WRITING_LINES)),
                    lines=self.writing_lines,
                )
            )
