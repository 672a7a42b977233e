"""The three designs of title pictures, painted with cairo."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Final, Literal, TypeAlias

import chess

from studyboard.delivery.still_crop import Crop, decisive_crop
from studyboard.delivery.still_options import StillDesign, StillOptions, StillShape
from studyboard.delivery.still_words import Fitted, StillWords, fitted
from studyboard.model.node import Node
from studyboard.picture.lettering import Lettering
from studyboard.picture.palette import board_palette, theme
from studyboard.picture.primitives import PieceAt
from studyboard.picture.raster import Canvas
from studyboard.picture.scene import board_scene

PIECES: Final = "bold"
"""The set of pieces: pictures of this kind are mostly seen small."""

LEAST: Final = 26
"""The smallest type (px): on a picture that is shown 320 px wide it is 6 px high, as small as anything can be."""

_LIGHT_PLATE, _DARK_PLATE = ("#F5F3EC", "#23252C"), ("#23252C", "#F5F3EC")


@dataclass(frozen=True, slots=True)
class Placed:
    """A text of the picture and where it stands (px)."""

    role: str
    text: Fitted
    x: int
    y: int


@dataclass(frozen=True, slots=True)
class PaintedStill:
    """A picture, its texts, and whether one of them had to be cut."""

    canvas: Canvas
    placed: tuple[Placed, ...]

    @property
    def shortened(self) -> bool:
        """Whether a text had to be cut."""
        return any(one.text.shortened for one in self.placed)


@dataclass(frozen=True, slots=True)
class Room:
    """A rectangle that a text may fill (px)."""

    x: int
    y: int
    width: int
    height: int


def paint_still(
    node: Node, board: chess.Board, words: StillWords, options: StillOptions, shape: StillShape, *, worded: bool = True
) -> PaintedStill:
    """One picture. worded: False leaves its texts out."""
    painter = _Painter(node, board, words, options, shape)
    _DESIGNS[options.design, shape](painter)
    if worded:
        for one in painter.placed:
            painter.canvas.text(one.text.lettering, one.x, one.y)
    return PaintedStill(painter.canvas, tuple(painter.placed))


class _Painter:
    """State: the canvas, and the texts that are to be put on it when everything behind them is painted."""

    def __init__(
        self, node: Node, board: chess.Board, words: StillWords, options: StillOptions, shape: StillShape
    ) -> None:
        self.node, self.board, self.words, self.options = node, board, words, options
        self.look = theme(options.theme)
        self.palette = board_palette(options.palette)
        self.width, self.height = shape.size
        self.canvas = Canvas(self.width, self.height, piece_set=PIECES)
        self.canvas.fill(self.look.paper)
        self.placed: list[Placed] = []

    # ---- the board --------------------------------------------------------------------------------------------------

    def crop(self, width: int, height: int, sides: tuple[int, ...]) -> Crop:
        """The piece of the board in which most happens, for a room of this size (px)."""
        return decisive_crop(self.board, self.node, width, height, sides, flipped=self.options.flipped)

    def whole(self, x: int, y: int, side: int, *, coordinates: bool = True) -> None:
        """The whole board with squares of this side (px)."""
        self.piece_of_board(Room(x, y, 8 * side, 8 * side), Crop(0, 0, side), coordinates=coordinates)

    def piece_of_board(self, room: Room, crop: Crop, *, coordinates: bool = False) -> None:
        """A piece of the board that fills the room."""
        scene = board_scene(
            self.board,
            flipped=self.options.flipped,
            marks=self.node.marks,
            last_move=self.node.move,
            coordinates=coordinates,
            palette=self.palette,
        )
        context = self.canvas.context
        context.save()
        context.rectangle(room.x, room.y, room.width, room.height)
        context.clip()
        x, y = room.x - round(crop.column * crop.side), room.y - round(crop.row * crop.side)
        self.canvas.scene(scene, x, y, crop.side)
        context.restore()

    # ---- texts ------------------------------------------------------------------------------------------------------

    def text(
        self,
        role: str,
        text: str,
        room: Room,
        size: float,
        colour: str,
        *,
        bold: bool = False,
        align: Literal["left", "center"] = "left",
        at: Literal["top", "middle", "bottom"] = "middle",
        least: float = LEAST,
    ) -> Fitted | None:
        """A text as large as its room allows, at most of this size; None where there is nothing to say."""
        if not text.strip():
            return None
        found = fitted(
            self.canvas.letterer,
            Lettering(text, size, colour, bold=bold, align=align),
            (room.width, room.height),
            min(least, size),
            tear=role == "headline",
        )
        free = room.height - found.height
        y = room.y + {"top": 0, "middle": free // 2, "bottom": free}[at]
        self.placed.append(Placed(role, found, room.x, y))
        return found

    def occasion(
        self,
        room: Room,
        size: float,
        colour: str,
        *,
        at: Literal["top", "middle", "bottom"] = "middle",
        least: float,
    ) -> None:
        """Where and when it was played, with as much of it as there is room for."""
        before = len(self.placed)
        for text in self.words.occasions:
            del self.placed[before:]
            found = self.text("occasion", text, room, size, colour, at=at, least=least)
            if found is not None and not found.shortened:
                return

    def call(self, x: int, y: int, height: int, width: int) -> None:
        """Whose move it is or what was played, on a small plate of its own."""
        look, words = self.look, self.words
        ground, colour = (look.think_soft, look.think) if words.asks else (look.accent_soft, look.accent)
        inside = height // 3
        text = Lettering(words.call, height * 0.62, colour, bold=True)
        found = fitted(self.canvas.letterer, text, (width - 2 * inside, height), height * 0.3)
        one_line = replace(found.lettering, width=None)
        wide, tall = self.canvas.letterer.size(one_line)
        if wide <= width - 2 * inside:
            found = Fitted(one_line, wide, tall, found.shortened)
        self.canvas.box(x, y, found.width + 2 * inside, height, ground, radius=height * 0.2)
        self.placed.append(Placed("call", found, x + inside, y + (height - found.height) // 2))

    def _player(self, colour: chess.Color) -> str:
        return self.words.white if colour else self.words.black

    def _name(self, colour: chess.Color, room: Room, size: float, ink: str) -> None:
        self.text("white" if colour else "black", self._player(colour), room, size, ink, bold=True, least=size * 0.42)

    def player(self, colour: chess.Color, room: Room, size: float) -> None:
        """A player's name behind the king of that colour."""
        if not self._player(colour):
            return
        king = round(min(room.height, size * 1.35))
        at = PieceAt(0, 0, chess.Piece(chess.KING, colour), self.palette.piece_halo)
        self.canvas.scene((at,), room.x - round(king * 0.12), room.y + (room.height - king) // 2, king)
        before = round(king * 0.9)
        self._name(colour, Room(room.x + before, room.y, room.width - before, room.height), size, self.look.ink)

    def mover(self, x: int, y: int, height: int) -> None:
        """Where no players are known, a king of the side that is to move instead of them."""
        if not self._player(chess.WHITE) and not self._player(chess.BLACK):
            at = PieceAt(0, 0, chess.Piece(chess.KING, self.board.turn), self.palette.piece_halo)
            self.canvas.scene((at,), x - round(height * 0.12), y, height)

    def plate(self, colour: chess.Color, box: Room, size: float, inside: int) -> None:
        """A player's name on a plate of that colour; nothing where nobody is known."""
        if not self._player(colour):
            return
        ground, ink = _LIGHT_PLATE if colour else _DARK_PLATE
        self.canvas.box(box.x, box.y, box.width, box.height, ground)
        self._name(colour, Room(box.x + inside, box.y, box.width - 2 * inside, box.height), size, ink)


def _page_wide(it: _Painter) -> None:
    look, edge = it.look, 44
    side = 79
    board = 8 * side
    x, y = it.width - edge - board, (it.height - board) // 2
    it.canvas.box(x - 3, y - 3, board + 6, board + 6, look.rail)
    it.whole(x, y, side)
    column = x - 2 * edge
    it.canvas.box(0, 0, 14, it.height, look.accent)
    it.call(edge, y, 46, column)
    players_at = it.height - y - 64 - 2 * 58
    result = 66 if it.words.result else 0
    it.text(
        "headline",
        it.words.headline,
        Room(edge, y + 66, column, players_at - result - y - 66 - 24),
        92,
        look.ink,
        bold=True,
        at="top",
        least=34,
    )
    if result:
        it.text("result", it.words.result, Room(edge, players_at - result, column, 60), 48, look.accent, bold=True)
    it.mover(edge, players_at - 60, 180)
    it.player(chess.WHITE, Room(edge, players_at, column, 56), 40)
    it.player(chess.BLACK, Room(edge, players_at + 58, column, 56), 40)
    it.occasion(
        Room(edge, it.height - y - 60, column, 60),
        27,
        look.ink_quiet,
        at="bottom",
        least=20,
    )


def _page_tall(it: _Painter) -> None:
    look, edge = it.look, 64
    side = 119
    board = 8 * side
    inside = it.width - 2 * edge
    x, y = (it.width - board) // 2, 600
    it.canvas.box(0, 0, it.width, 20, look.accent)
    it.call(edge, 110, 76, inside)
    it.text(
        "headline", it.words.headline, Room(edge, 214, inside, 350), 128, look.ink, bold=True, at="middle", least=52
    )
    it.canvas.box(x - 4, y - 4, board + 8, board + 8, look.rail)
    it.whole(x, y, side)
    below = y + board + 34
    names = inside - 200 if it.words.result else inside
    it.mover(edge, below, 200)
    it.player(chess.WHITE, Room(edge, below, names, 84), 62)
    it.player(chess.BLACK, Room(edge, below + 88, names, 84), 62)
    it.text("result", it.words.result, Room(it.width - edge - 180, below, 180, 172), 84, look.accent, bold=True)
    it.occasion(Room(edge, below + 184, inside, 84), 38, look.ink_quiet, at="top", least=28)


def _band_wide(it: _Painter) -> None:
    look, edge = it.look, 40
    above = 504
    band = it.height - above
    crop = it.crop(it.width, above, tuple(-(-above // rows) for rows in (5, 6, 7, 8)))
    x = it.width - 8 * crop.side
    it.piece_of_board(Room(x, 0, 8 * crop.side, above), crop)
    column = x - 2 * edge
    it.canvas.box(0, 0, x, it.height - band, look.paper)
    it.canvas.box(x - 6, 0, 6, it.height - band, look.accent)
    it.call(edge, edge, 46, column)
    it.mover(edge, 130, 240)
    it.player(chess.WHITE, Room(edge, 130, column, 88), 46)
    it.player(chess.BLACK, Room(edge, 222, column, 88), 46)
    it.text("result", it.words.result, Room(edge, 312, column, 60), 50, look.accent, bold=True)
    it.occasion(Room(edge, 376, column, 96), 26, look.ink_quiet, at="bottom", least=20)
    it.canvas.box(0, it.height - band, it.width, band, look.accent)
    it.text(
        "headline",
        it.words.headline,
        Room(edge, it.height - band + 14, it.width - 2 * edge, band - 28),
        104,
        look.on_accent,
        bold=True,
        least=40,
    )


def _band_tall(it: _Painter) -> None:
    look, edge = it.look, 64
    side = it.width // 8
    band_at, band = 8 * side, 400
    inside = it.width - 2 * edge
    it.whole(0, 0, side, coordinates=False)
    it.canvas.box(0, band_at, it.width, band, look.accent)
    it.text(
        "headline",
        it.words.headline,
        Room(edge, band_at + 24, inside, band - 48),
        136,
        look.on_accent,
        bold=True,
        least=52,
    )
    below = band_at + band + 36
    it.call(edge, below, 70, inside)
    names = inside - 200 if it.words.result else inside
    it.mover(edge, below + 100, 220)
    it.player(chess.WHITE, Room(edge, below + 88, names, 82), 62)
    it.player(chess.BLACK, Room(edge, below + 172, names, 82), 62)
    it.text("result", it.words.result, Room(it.width - edge - 180, below + 88, 180, 166), 84, look.accent, bold=True)
    it.occasion(Room(edge, below + 262, inside, 80), 36, look.ink_quiet, at="top", least=28)


def _corner_wide(it: _Painter) -> None:
    look, edge = it.look, 36
    room = Room(it.width - 900, 0, 900, it.height)
    panel = room.x
    it.piece_of_board(room, it.crop(room.width, room.height, (180, 150, 129, 113)))
    it.canvas.box(0, 0, panel, it.height, look.accent)
    inside = panel - 2 * edge
    it.call(edge, edge, 46, inside)
    plates = it.height - 2 * 76 - 72
    result = 70 if it.words.result else 0
    it.text(
        "headline",
        it.words.headline,
        Room(edge, 104, inside, plates - result - 104 - 20),
        76,
        look.on_accent,
        bold=True,
        at="top",
        least=32,
    )
    it.text("result", it.words.result, Room(edge, plates - result, inside, 60), 54, look.on_accent, bold=True)
    it.plate(chess.WHITE, Room(0, plates, panel, 76), 42, edge)
    it.plate(chess.BLACK, Room(0, plates + 76, panel, 76), 42, edge)
    it.occasion(Room(edge, it.height - 66, inside, 60), 22, look.on_accent, least=18)


def _corner_tall(it: _Painter) -> None:
    look, edge = it.look, 64
    top = it.width
    it.piece_of_board(Room(0, 0, it.width, top), it.crop(it.width, top, (216, 180, 155, 135)))
    it.canvas.box(0, top, it.width, it.height - top, look.accent)
    inside = it.width - 2 * edge
    it.plate(chess.WHITE, Room(0, top, it.width, 116), 66, edge)
    it.plate(chess.BLACK, Room(0, top + 116, it.width, 116), 66, edge)
    it.call(edge, top + 264, 70, inside - (220 if it.words.result else 0))
    it.text("result", it.words.result, Room(it.width - edge - 200, top + 250, 200, 100), 84, look.on_accent, bold=True)
    it.text(
        "headline",
        it.words.headline,
        Room(edge, top + 352, inside, 340),
        124,
        look.on_accent,
        bold=True,
        at="middle",
        least=52,
    )
    it.occasion(Room(edge, top + 706, inside, 90), 36, look.on_accent, at="middle", least=28)


_Design: TypeAlias = Callable[[_Painter], None]

_DESIGNS: Final[Mapping[tuple[StillDesign, StillShape], _Design]] = MappingProxyType(
    {
        (StillDesign.PAGE, StillShape.WIDE): _page_wide,
        (StillDesign.PAGE, StillShape.TALL): _page_tall,
        (StillDesign.BAND, StillShape.WIDE): _band_wide,
        (StillDesign.BAND, StillShape.TALL): _band_tall,
        (StillDesign.CORNER, StillShape.WIDE): _corner_wide,
        (StillDesign.CORNER, StillShape.TALL): _corner_tall,
    }
)
