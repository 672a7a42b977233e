"""How little sense a legal move makes at first sight: what it leaves to be taken, and what it does not take back."""

from __future__ import annotations

from typing import Final

import chess

#: What pieces are worth, in pawns; common practice. A king is never left to be taken.
_WORTH: Final = {chess.PAWN: 1, chess.KNIGHT: 3, chess.BISHOP: 3, chess.ROOK: 5, chess.QUEEN: 9, chess.KING: 100}
_SENSELESS = 4.0
_NOT_TAKEN_BACK = 0.5
_A_PIECE = 3


def senselessness(board: chess.Board, move: chess.Move, taken_before: int) -> float:
    """0 for a move that loses nothing at once, up to 1 for one that leaves much to be taken.

    taken_before: the type of the piece that the last move took, 0 where it took none

    Only the square that is moved to is looked at, without pins and without pieces behind each other: quick, and good
    enough to tell likely moves from accidents. O(1).
    """
    us = board.turn
    moved = board.piece_type_at(move.from_square) or chess.PAWN
    gained = _WORTH.get(board.piece_type_at(move.to_square) or 0, 0)
    lost = 0
    if moved != chess.KING:
        against = board.attackers_mask(not us, move.to_square)
        if against:
            worth = _WORTH[move.promotion or moved]
            cover = board.attackers_mask(us, move.to_square) & ~chess.BB_SQUARES[move.from_square]
            cheapest = min(_WORTH[board.piece_type_at(square) or chess.PAWN] for square in chess.scan_forward(against))
            if not cover:
                lost = worth - gained
            elif cheapest < worth:
                lost = worth - gained - cheapest
    senseless = min(1.0, max(0, lost) / _SENSELESS)
    if not gained and _WORTH.get(taken_before, 0) >= _A_PIECE:
        senseless = max(senseless, _NOT_TAKEN_BACK)
    return senseless
