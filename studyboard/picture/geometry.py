"""Where squares lie in a picture of the board."""

from __future__ import annotations

import chess

from studyboard.picture.primitives import Point


def corner(square: chess.Square, *, flipped: bool = False) -> Point:
    """Top left corner of *square* in board units; a8 is at (0, 0) from White's side, h1 when *flipped*."""
    file, rank = chess.square_file(square), chess.square_rank(square)
    return (float(7 - file), float(rank)) if flipped else (float(file), float(7 - rank))


def centre(square: chess.Square, *, flipped: bool = False) -> Point:
    """Centre of *square* in board units."""
    x, y = corner(square, flipped=flipped)
    return x + 0.5, y + 0.5


def square_at(x: float, y: float, *, flipped: bool = False) -> chess.Square | None:
    """The square under a point in board units; None off the board."""
    if not (0 <= x < 8 and 0 <= y < 8):
        return None
    column, row = int(x), int(y)
    return chess.square(7 - column, row) if flipped else chess.square(column, 7 - row)


def is_light(square: chess.Square) -> bool:
    """Whether *square* is a light one (h1 is: FIDE Laws of Chess 2.1)."""
    return bool(chess.BB_LIGHT_SQUARES & chess.BB_SQUARES[square])
