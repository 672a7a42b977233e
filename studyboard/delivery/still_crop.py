"""Which part of the board a close picture shows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import chess

from studyboard.model.node import Node
from studyboard.picture.geometry import corner

_PIECE: Final = {
    chess.PAWN: 0.4,
    chess.KNIGHT: 1.0,
    chess.BISHOP: 1.0,
    chess.ROOK: 1.0,
    chess.QUEEN: 1.6,
    chess.KING: 1.2,
}
_KING_TO_BE_MATED, _MARKED, _MOVED = 2.5, 3.0, 1.5


@dataclass(frozen=True, slots=True)
class Crop:
    """The squares that are seen, by the upper left one: column and row of the drawn board, from 0."""

    column: int
    row: int


def decisive_crop(board: chess.Board, node: Node, columns: int, rows: int, *, flipped: bool = False) -> Crop:
    """The window of so many columns and rows in which most happens.

    Marks count most, then the king whose side does not have the move, the move that was played, and the pieces by
    their strength. The move that is asked for is not looked at: the picture must not hint at it.
    """
    interest = _interest(board, node)
    best = Crop(0, 0)
    most = -1.0
    for row in range(9 - rows):
        for column in range(9 - columns):
            inside = 0.0
            for square, weight in interest.items():
                x, y = corner(square, flipped=flipped)
                if column <= x < column + columns and row <= y < row + rows:
                    inside += weight
            if inside > most:
                best, most = Crop(column, row), inside
    return best


def _interest(board: chess.Board, node: Node) -> Mapping[chess.Square, float]:
    found = dict.fromkeys(chess.SQUARES, 0.0)
    for square, piece in board.piece_map().items():
        found[square] += _PIECE[piece.piece_type]
    threatened = board.king(not board.turn) if node.think or not board.is_check() else board.king(board.turn)
    if threatened is not None:
        found[threatened] += _KING_TO_BE_MATED
    if node.move:
        found[node.move.from_square] += _MOVED / 2
        found[node.move.to_square] += _MOVED
    for mark in node.marks:
        for square in mark.squares:
            found[square] += _MARKED / len(mark.squares)
    return found
