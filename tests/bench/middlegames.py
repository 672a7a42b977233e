"""Middlegames from sensible play to measure on: the same ones in every run."""

from __future__ import annotations

import random
from collections.abc import Iterator

import chess

from studyboard.board.exchange import best_exchange, exchange_after

#: Half-moves after which a position is kept: the opening is over, the ending has not begun.
FROM_PLY, TO_PLY = 24, 50

#: So many moves are looked at closely, the others are not played.
_LOOKED_AT = 6


def middlegames(count: int, seed: int = 1) -> list[chess.Board]:
    """*count* positions of as many games, with a queen on the board and the side to move not in check."""
    chance = random.Random(seed)
    found: list[chess.Board] = []
    while len(found) < count:
        ply = chance.randint(FROM_PLY, TO_PLY)
        board = chess.Board()
        for move in played(board, chance):
            board.push(move)
            if board.ply() >= ply and not board.is_check():
                break
        if board.queens and board.ply() >= ply and not board.is_check() and any(board.legal_moves):
            found.append(board.copy(stack=False))
    return found


def played(board: chess.Board, chance: random.Random) -> Iterator[chess.Move]:
    """Moves of a player who takes what hangs, leaves nothing hanging, brings pieces out, castles and seeks activity.

    The caller plays each of them on *board* before asking for the next; ends with the game or after 100 moves.
    """
    while not board.is_game_over() and board.ply() < 200:
        liked = {move: _outlook(board, move) + chance.uniform(0, 0.8) for move in board.legal_moves}
        close = sorted(liked, key=lambda move: -liked[move])[:_LOOKED_AT]
        yield max(close, key=lambda move: liked[move] - _left_hanging(board, move))


def _outlook(board: chess.Board, move: chess.Move) -> float:
    """What a move wins on its square, and a little for activity and order."""
    liked = float(exchange_after(board, move))
    kind = board.piece_type_at(move.from_square)
    if board.is_castling(move):
        return liked + 1.5
    if kind == chess.KING:
        return liked - 1.0
    if board.ply() < 20 and kind in (chess.QUEEN, chess.ROOK):
        liked -= 0.6
    seen = chess.popcount(board.attacks_mask(move.from_square))
    board.push(move)
    liked += 0.08 * (chess.popcount(board.attacks_mask(move.to_square)) - seen) + 0.3 * board.is_check()
    if board.is_checkmate():
        liked += 1000
    board.pop()
    if kind == chess.PAWN and move.to_square in (chess.E4, chess.D4, chess.E5, chess.D5):
        liked += 0.4
    return liked


def _left_hanging(board: chess.Board, move: chess.Move) -> int:
    """The most that the other side can take after the move."""
    board.push(move)
    most = max(best_exchange(board, at).gain for at in chess.scan_forward(board.occupied_co[not board.turn]))
    board.pop()
    return most
