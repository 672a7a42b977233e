"""A position as layers of primitives, drawn the same on screen, on paper and in a video."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Final

import chess

from studyboard.model.marks import Mark
from studyboard.picture.geometry import centre, corner, is_light
from studyboard.picture.hatch import hatch_lines
from studyboard.picture.marks import ground_marks_scene, marks_scene
from studyboard.picture.palette import BoardPalette, board_palette
from studyboard.picture.primitives import (
    Bounds,
    Circle,
    Fill,
    Layer,
    PieceAt,
    Polygon,
    Primitive,
    Rect,
    Segments,
    Stroke,
    Text,
)

MARGIN: Final = 0.5
"""Room for coordinates outside the board (squares)."""

FRAME: Final = 0.03
"""Width of the line around the board (squares)."""

_HATCH_COUNT: Final = 7
_COORDINATE_SIZE: Final = 0.16
_MARGIN_COORDINATE_SIZE: Final = 0.3


def board_scene(
    board: chess.Board,
    *,
    flipped: bool = False,
    marks: Iterable[Mark] = (),
    last_move: chess.Move | None = None,
    check: bool = True,
    coordinates: bool = True,
    palette: BoardPalette | None = None,
    coordinate_size: float | None = None,
) -> Layer:
    """Everything that is drawn of *board*, from the ground up.

    flipped: seen from Black's side
    marks: what the presenter points at
    last_move: the move that led here, to be indicated on both its squares
    check: indicate a king that stands in check
    coordinates: name files and ranks
    palette: the board's colours; the everyday ones when None
    coordinate_size: the em of the coordinates in squares, at most 0.4 where they stand in a margin; the usual when None
    """
    palette = palette or board_palette()
    drawn = tuple(marks)
    return (
        *squares_scene(flipped=flipped, coordinates=coordinates, palette=palette, coordinate_size=coordinate_size),
        *ground_marks_scene(drawn, flipped=flipped),
        *indication_scene(board, flipped=flipped, last_move=last_move, check=check, palette=palette),
        *pieces_scene(board, flipped=flipped, palette=palette),
        *marks_scene(drawn, flipped=flipped),
    )


def board_bounds(*, coordinates: bool = True, palette: BoardPalette | None = None) -> Bounds:
    """What a picture of the board must show: the eight by eight squares, the frame, and a margin if it is used."""
    palette = palette or board_palette()
    margin = MARGIN if coordinates and palette.coordinates == "margin" else 0.0
    rim = FRAME if palette.hatch or margin else 0.0
    return Bounds(-margin - rim, -rim, 8 + margin + 2 * rim, 8 + margin + 2 * rim)


def squares_scene(
    *,
    flipped: bool = False,
    coordinates: bool = True,
    palette: BoardPalette | None = None,
    coordinate_size: float | None = None,
) -> Layer:
    """The empty board with its coordinates."""
    palette = palette or board_palette()
    drawn: list[Primitive] = [Rect(0, 0, 8, 8, Fill(palette.light))]
    dark = [corner(square, flipped=flipped) for square in chess.SQUARES if not is_light(square)]
    if palette.hatch:
        lines = [line for x, y in dark for line in hatch_lines(x, y, count=_HATCH_COUNT)]
        drawn.append(Segments(tuple(lines), Stroke(palette.hatch, 0.022, cap="butt")))
        drawn.append(Rect(0, 0, 8, 8, stroke=Stroke(palette.frame, FRAME, join="miter")))
    else:
        drawn.extend(Rect(x, y, 1, 1, Fill(palette.dark)) for x, y in dark)
    if coordinates:
        drawn.extend(_coordinates(flipped, palette, coordinate_size))
    return tuple(drawn)


def indication_scene(
    board: chess.Board,
    *,
    flipped: bool = False,
    last_move: chess.Move | None = None,
    check: bool = True,
    palette: BoardPalette | None = None,
) -> Layer:
    """What shows the last move and a check: both lie under the pieces.

    The square that was left has thin corner brackets, the square that was reached thick ones and an ink
    underline. A king in check stands in a jagged ring with a plain ring inside. A null move is not indicated.
    """
    palette = palette or board_palette()
    drawn: list[Primitive] = []
    if last_move:
        drawn.extend(_brackets(last_move.from_square, 0.045, 0.17, flipped, palette))
        drawn.extend(_brackets(last_move.to_square, 0.075, 0.22, flipped, palette, underline=True))
    king = board.king(board.turn)
    if check and king is not None and board.is_check():
        drawn.extend(_check_rings(king, flipped, palette))
    return tuple(drawn)


def pieces_scene(
    board: chess.BaseBoard,
    *,
    flipped: bool = False,
    without: Iterable[chess.Square] = (),
    palette: BoardPalette | None = None,
) -> Layer:
    """The pieces, rear ranks first; *without* leaves squares empty, for a piece that is being moved."""
    palette = palette or board_palette()
    hidden = set(without)
    standing = [(square, piece) for square, piece in board.piece_map().items() if square not in hidden]
    places = [(*corner(square, flipped=flipped), piece) for square, piece in standing]
    return tuple(
        PieceAt(x, y, piece, palette.piece_halo)
        for x, y, piece in sorted(places, key=lambda place: (place[1], place[0]))
    )


def _coordinates(flipped: bool, palette: BoardPalette, em: float | None) -> Layer:
    texts: list[Primitive] = []
    for index in range(8):
        file, rank = chess.FILE_NAMES[index], chess.RANK_NAMES[index]
        column, row = (7 - index, index) if flipped else (index, 7 - index)
        if palette.coordinates == "margin":
            size = em or _MARGIN_COORDINATE_SIZE
            texts.append(Text(column + 0.5, 8.38, file, size, palette.coordinate_on_light))
            texts.append(Text(-0.25, row + 0.5 + 0.36 * size, rank, size, palette.coordinate_on_light))
            continue
        size = em or _COORDINATE_SIZE
        below = chess.square(index, 7 if flipped else 0)
        beside = chess.square(7 if flipped else 0, index)
        texts.append(Text(column + 0.95, 7.94, file, size, _coordinate_colour(below, palette), "end"))
        texts.append(Text(0.05, row + 0.19, rank, size, _coordinate_colour(beside, palette), "start"))
    return tuple(texts)


def _coordinate_colour(square: chess.Square, palette: BoardPalette) -> str:
    return palette.coordinate_on_light if is_light(square) else palette.coordinate_on_dark


def _brackets(
    square: chess.Square, width: float, arm: float, flipped: bool, palette: BoardPalette, *, underline: bool = False
) -> Layer:
    x, y = corner(square, flipped=flipped)
    near, far = 0.055, 0.945
    lines = [
        ((x + across, y + down + toward_y * arm), (x + across, y + down), (x + across + toward_x * arm, y + down))
        for across, toward_x in ((near, 1), (far, -1))
        for down, toward_y in ((near, 1), (far, -1))
    ]
    if underline:
        lines.append(((x + near, y + far), (x + 0.5, y + far), (x + far, y + far)))
    shape = tuple(lines)
    return (
        Segments(shape, Stroke(palette.light, width + 0.045)),
        Segments(shape, Stroke(palette.last_move, width, join="miter", cap="butt")),
    )


def _check_rings(square: chess.Square, flipped: bool, palette: BoardPalette) -> Layer:
    x, y = centre(square, flipped=flipped)
    teeth = 14
    jagged = tuple(
        (
            x + (0.485 if tooth % 2 == 0 else 0.39) * math.sin(math.pi * tooth / teeth),
            y - (0.485 if tooth % 2 == 0 else 0.39) * math.cos(math.pi * tooth / teeth),
        )
        for tooth in range(2 * teeth)
    )
    return (
        Polygon(jagged, Fill(palette.light), Stroke(palette.light, 0.1, join="round")),
        Polygon(jagged, stroke=Stroke(palette.check, 0.045, join="miter")),
        Circle(x, y, 0.32, stroke=Stroke(palette.check, 0.035)),
    )
