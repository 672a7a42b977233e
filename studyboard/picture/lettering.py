"""Text as pictures, set with the fonts that typst brings, so that it is the same on every machine."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING, Final, Literal

import typst

from studyboard.resources_path import resource

if TYPE_CHECKING:
    import cairocffi

BASELINE: Final = 0.8
"""Where the baseline of the first line lies below the top of the picture (em)."""

LINE: Final = 1.05 + 0.12
"""From one baseline to the next (em)."""

KEPT: Final = 48_000_000
"""How much memory set texts may take (bytes)."""


@dataclass(frozen=True, slots=True)
class Lettering:
    """A piece of text as it is to be set.

    size: the font's em (px)
    colour: ``#rrggbb``
    width: where lines are broken (px); None for one line as wide as it becomes
    align: of the lines in that width
    """

    text: str
    size: float
    colour: str
    bold: bool = False
    italic: bool = False
    width: float | None = None
    align: Literal["left", "center", "right"] = "left"


class Letterer:
    """Sets texts and keeps their pictures.

    State: the pictures that were made, by what they show, those used last at the end, and how much they take; of more
    than KEPT the longest unused ones are forgotten.
    """

    def __init__(self) -> None:
        self._pictures: dict[Lettering, cairocffi.ImageSurface] = {}
        self._bytes = 0

    def prepare(self, wanted: Iterable[Lettering]) -> None:
        """Set many texts at once, which takes about a millisecond for each; one by one they take thirty."""
        missing = [one for one in dict.fromkeys(wanted) if one.text.strip() and one not in self._pictures]
        if not missing:
            return
        import cairocffi

        for one, png in zip(missing, _set_texts(missing), strict=True):
            picture = cairocffi.ImageSurface.create_from_png(BytesIO(png))
            self._pictures[one] = picture
            self._bytes += picture.get_stride() * picture.get_height()
        while self._bytes > KEPT and len(self._pictures) > len(missing):
            forgotten = self._pictures.pop(next(iter(self._pictures)))
            self._bytes -= forgotten.get_stride() * forgotten.get_height()

    def picture(self, wanted: Lettering) -> cairocffi.ImageSurface | None:
        """The text on a transparent ground; None for one that has nothing to see."""
        if not wanted.text.strip():
            return None
        if wanted not in self._pictures:
            self.prepare((wanted,))
        picture = self._pictures[wanted] = self._pictures.pop(wanted)
        return picture

    def size(self, wanted: Lettering) -> tuple[int, int]:
        """Width and height of the text (px); zeros for one that has nothing to see."""
        picture = self.picture(wanted)
        return (0, 0) if picture is None else (picture.get_width(), picture.get_height())


def _set_texts(texts: list[Lettering]) -> list[bytes]:
    document = [
        {
            "text": one.text,
            "size": one.size,
            "colour": one.colour,
            "bold": one.bold,
            "italic": one.italic,
            "width": one.width,
            "align": one.align,
        }
        for one in texts
    ]
    for own_fonts_only in (True, False):
        # The fonts that typst brings cover Latin, Greek and Cyrillic; the computer's own are asked for the rest.
        if own_fonts_only and not all(_covered(one.text) for one in texts):
            continue
        made = typst.compile(
            str(resource("lettering", "lettering.typ")),
            root=str(resource("lettering")),
            font_paths=[str(resource("fonts"))],
            ignore_system_fonts=own_fonts_only,
            format="png",
            ppi=72,
            sys_inputs={"texts": json.dumps(document, ensure_ascii=False)},
        )
        break
    # One page comes as bytes, several as a list.
    return [bytes(made)] if isinstance(made, bytes) else [bytes(page) for page in made]


def _covered(text: str) -> bool:
    return all(ord(sign) < 0x530 or 0x1E00 <= ord(sign) < 0x2100 or 0x2150 <= ord(sign) < 0x2700 for sign in text)
