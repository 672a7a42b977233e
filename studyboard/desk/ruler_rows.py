"""Where the rows of the time ruler lie."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.desk.ruler_talk import DEEPEST

#: Blocks narrower than this are drawn together with their neighbours (px).
NARROW = 3.0


@dataclass(frozen=True, slots=True)
class RulerRows:
    """Where the rows of the ruler lie (px from its top).

    ticks: height of the row of ticks at the top
    takes: top and height of the strip of each take, the newest lowest
    blocks: top and height of the main line and of each depth below
    height: of the whole ruler
    """

    ticks: int
    takes: tuple[tuple[int, int], ...]
    blocks: tuple[tuple[int, int], ...]
    height: int


def ruler_rows(text_height: int, depth: int, takes: int) -> RulerRows:
    """Rows for text of this height, side-lines of this depth, and that many takes."""
    tick_row = text_height + 16
    strip = text_height + 2
    strips = tuple((tick_row + number * (strip + 2), strip) for number in reversed(range(takes)))
    top = tick_row + (takes * (strip + 2) + 4 if takes else 0)
    main, side = text_height + 12, text_height + 4
    blocks = [(top, main)]
    top += main + 8
    for _ in range(max(1, min(depth, DEEPEST))):
        blocks.append((top, side))
        top += side + 6
    return RulerRows(tick_row, strips, tuple(blocks), top + 2)
