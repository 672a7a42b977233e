"""Where the board and everything beside it lie in the picture of a video."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from studyboard.delivery.video.options import Composition, Shape, VideoOptions

SAFE: Final = 0.05
"""Share of the picture that stays free at each side, so that every screen shows the rest: EBU R 95, graphics-safe
area of 90 % (from memory)."""

_RIM: Final = 22
"""What surrounds a board: room for a side-line's frame and for the bar of a think pause (px of 1080 lines)."""


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle (px)."""

    x: int
    y: int
    width: int
    height: int

    @property
    def right(self) -> int:
        """Where it ends to the right."""
        return self.x + self.width

    @property
    def bottom(self) -> int:
        """Where it ends below."""
        return self.y + self.height


@dataclass(frozen=True, slots=True)
class Places:
    """Where things are.

    unit: pixels of what would be one pixel in a picture of 1080 lines
    board: the square of the board, its side a multiple of eight
    header: players and occasion; None where they are not shown
    notice: one line that says where the talk is: in a side-line, back from it, at a think pause
    strip: the lanes of moves; None where they are not shown
    band: what is said; None where it is not shown
    centred: the notice stands in the middle of its box
    """

    unit: float
    board: Box
    header: Box | None
    notice: Box
    strip: Box | None
    band: Box | None
    centred: bool


def places(options: VideoOptions) -> Places:
    """Where things are in a picture of this kind."""
    return _wide(options) if options.shape is Shape.WIDE else _tall(options)


def _wide(options: VideoOptions) -> Places:
    width, height = options.size
    unit = options.lines / 1080

    def px(value: float) -> int:
        return round(value * unit)

    edge, top = round(SAFE * width), round(SAFE * height)
    band_height = px(128) if options.worded else 0
    line = px(44)
    below = band_height + px(18) if band_height else 0
    if options.composition is Composition.LANES:
        side = _board_side(height - 2 * top - below)
        board = Box(width - edge - side, top + (height - 2 * top - below - side) // 2, side, side)
        column = board.x - edge - px(64)
        header = Box(edge, board.y, column, px(168))
        notice = Box(edge, header.bottom + px(14), column, line)
        strip: Box | None = Box(edge, notice.bottom + px(20), column, board.bottom - notice.bottom - px(20))
        centred = False
    else:
        # The bar of a think pause and the frame of a side-line lie between the board and the notice.
        side = _board_side(height - 2 * top - below - line - px(_RIM))
        board = Box((width - side) // 2, top, side, side)
        notice = Box(edge, board.bottom + px(_RIM), width - 2 * edge, line)
        header = None
        if options.composition is Composition.WORDS:
            header = Box(edge, board.y, board.x - edge - px(40), px(300))
        strip = None
        centred = True
    band = Box(edge, height - top - band_height, width - 2 * edge, band_height) if band_height else None
    return Places(unit, board, header, notice, strip, band, centred)


def _tall(options: VideoOptions) -> Places:
    width, height = options.size
    unit = options.lines / 1080

    def px(value: float) -> int:
        return round(value * unit)

    edge, top = round(SAFE * width), round(SAFE * height)
    side = _board_side(width - 2 * px(36))
    x = (width - side) // 2
    inside = width - 2 * edge
    if options.composition is Composition.BOARD and not options.worded:
        board = Box(x, (height - side) // 2, side, side)
        return Places(unit, board, None, Box(edge, board.bottom + px(_RIM), inside, px(56)), None, None, True)
    header = Box(edge, top, inside, px(168)) if options.composition is not Composition.BOARD else None
    board = Box(x, top + px(200), side, side)
    notice = Box(edge, board.bottom + px(_RIM), inside, px(52))
    rest = height - top - notice.bottom - px(16)
    band = strip = None
    if options.composition is Composition.LANES:
        band_height = px(190) if options.worded else 0
        strip = Box(edge, notice.bottom + px(16), inside, rest - band_height)
        band = Box(edge, height - top - band_height, inside, band_height) if band_height else None
    else:
        band = Box(edge, notice.bottom + px(16), inside, min(rest, px(260)))
    return Places(unit, board, header, notice, strip, band, True)


def _board_side(room: int) -> int:
    return room // 8 * 8
