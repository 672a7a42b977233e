"""Which part of the board a close picture shows, and how close it may come."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

import chess

from studyboard.model.node import Node
from studyboard.picture.geometry import corner

_PIECE: Final = {
    chess.PAWN: 0.3,
    chess.KNIGHT: 1.0,
    chess.BISHOP: 1.0,
    chess.ROOK: 1.0,
    chess.QUEEN: 1.6,
    chess.KING: 1.2,
}
_KING_TO_BE_MATED, _MARKED, _MOVED = 2.5, 3.0, 1.5

ENOUGH: Final = 0.6
"""A picture comes as close as still shows this share of what matters."""

FEW: Final = 7
"""Where no more pieces than this are left, all of them matter: endings live on distances."""


@dataclass(frozen=True, slots=True)
class Crop:
    """A piece of the drawn board.

    column, row: of its upper left corner, in squares from the upper left corner of the board
    side: of one square in the picture (px)
    """

    column: float
    row: float
    side: int


def decisive_crop(
    board: chess.Board, node: Node, width: int, height: int, sides: Iterable[int], *, flipped: bool = False
) -> Crop:
    """The piece of the board, for a room of this width and height (px), in which most happens.

    sides: of a square, from the closest picture on; the first is taken that shows ENOUGH of what matters whole, else
        the one that shows most; where FEW pieces are left, all must be seen

    Marks count most, then the king against which the talk goes, the move that was played, and the pieces by their
    strength. The move that is asked for is not looked at: the picture must not hint at it.
    """
    interest = {corner(square, flipped=flipped): weight for square, weight in _interest(board, node).items() if weight}
    total = sum(interest.values()) or 1.0
    enough = ENOUGH if chess.popcount(board.occupied) > FEW else 1.0
    best, most = Crop(0, 0, 1), -1.0
    for side in sides:
        columns, rows = min(8.0, width / side), min(8.0, height / side)
        here, share = best, -1.0
        for row in _offsets(rows):
            for column in _offsets(columns):
                inside = sum(
                    weight
                    for (x, y), weight in interest.items()
                    if column <= x <= column + columns - 1 and row <= y <= row + rows - 1
                )
                if inside / total > share:
                    here, share = Crop(column, row, side), inside / total
        if share > most:
            best, most = here, share
        if share >= enough:
            break
    return best


def _offsets(seen: float) -> list[float]:
    """Where a window over so many of eight squares can begin: at a square, or so that it ends with the last."""
    free = 8 - seen
    return [*map(float, range(int(free) + 1)), *([free] if free != int(free) else [])]


def _interest(board: chess.Board, node: Node) -> Mapping[chess.Square, float]:
    found = dict.fromkeys(chess.SQUARES, 0.0)
    for square, piece in board.piece_map().items():
        found[square] += _PIECE[piece.piece_type]
    # Where the viewer is asked, the move to be found goes against the other side; else the last move did against this.
    asked = bool(node.think) or node.move is None
    threatened = board.king(not board.turn if asked else board.turn)
    if threatened is not None:
        found[threatened] += _KING_TO_BE_MATED
    if node.move:
        found[node.move.from_square] += _MOVED / 2
        found[node.move.to_square] += _MOVED
    for mark in node.marks:
        for square in mark.squares:
            found[square] += _MARKED / len(mark.squares)
    return found
