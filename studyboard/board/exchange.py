"""Exchanges: what a series of captures on one square wins or loses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

import chess

from studyboard.board.moves import captured_square

#: What a piece counts, in pawns: common practice. The king's figure only has to outweigh all others together.
PIECE_VALUES: Mapping[chess.PieceType, int] = MappingProxyType(
    {chess.PAWN: 1, chess.KNIGHT: 3, chess.BISHOP: 3, chess.ROOK: 5, chess.QUEEN: 9, chess.KING: 1000}
)


@dataclass(frozen=True, slots=True)
class Exchange:
    """Captures on one square as both sides would best play them, each free to stop.

    gain: what the side that begins wins (pawns); never less than 0, because nobody has to begin
    moves: the captures in their order, empty where beginning wins nothing
    """

    gain: int
    moves: tuple[chess.Move, ...]


NO_EXCHANGE = Exchange(0, ())


def best_exchange(board: chess.Board, square: chess.Square, *, kept_out: chess.Bitboard = chess.BB_EMPTY) -> Exchange:
    """What the side to move wins by taking the piece on *square*, when both sides go on taking there.

    Pieces that stand on the squares of *kept_out* take no part, as if they had other things to do.

    Only legal moves count, so pinned pieces take no part and x-rays join in when their way opens. Exact for captures
    on that square: every order is tried, not only the cheapest piece first. The board is left as it was.
    """
    if board.color_at(square) != (not board.turn):
        return NO_EXCHANGE
    if not _attacked(board, square):
        return NO_EXCHANGE
    return _best(board.copy(stack=False), square, {}, kept_out)


def exchange_after(board: chess.Board, move: chess.Move) -> int:
    """What the side that plays *move* comes out with (pawns, negative where it loses), when both go on taking there."""
    after = board.copy(stack=False)
    won = value_taken(after, move)
    after.push(move)
    return won - _best(after, move.to_square, {}, chess.BB_EMPTY).gain


def value_taken(board: chess.Board, move: chess.Move) -> int:
    """What *move* takes, and what it promotes to beyond the pawn (pawns)."""
    taken = _worth(board, captured_square(board, move))
    if move.promotion:
        taken += PIECE_VALUES[move.promotion] - PIECE_VALUES[chess.PAWN]
    return taken


def _best(
    board: chess.Board, square: chess.Square, known: dict[tuple[int, ...], Exchange], kept_out: chess.Bitboard
) -> Exchange:
    """Depth is bounded by the number of pieces that can reach one square, so this may call itself."""
    if not _attacked(board, square):
        return NO_EXCHANGE
    key = (square, board.occupied, board.occupied_co[chess.WHITE], board.piece_type_at(square) or 0, board.turn)
    if (found := known.get(key)) is not None:
        return found
    best = NO_EXCHANGE
    for move in _captures_of(board, square):
        won = value_taken(board, move)
        if won <= best.gain or kept_out >> move.from_square & 1:
            continue
        board.push(move)
        answer = _best(board, move.to_square, known, kept_out)
        board.pop()
        if won - answer.gain > best.gain:
            best = Exchange(won - answer.gain, (move, *answer.moves))
    known[key] = best
    return best


def _attacked(board: chess.Board, square: chess.Square) -> bool:
    """False where no move can take on *square*: most squares of most positions, told far faster than moves are made."""
    return board.ep_square is not None or bool(board.attackers_mask(board.turn, square))


def _captures_of(board: chess.Board, square: chess.Square) -> list[chess.Move]:
    """The legal captures of the piece on *square*, the cheapest capturing piece first."""
    captures = list(board.generate_legal_captures(to_mask=chess.BB_SQUARES[square]))
    # An en passant capture takes on another square than the pawn's own.
    captures = [move for move in captures if captured_square(board, move) == square]
    if board.ep_square is not None and board.piece_type_at(square) == chess.PAWN:
        captures += [move for move in board.generate_legal_ep() if captured_square(board, move) == square]
    return sorted(captures, key=lambda move: (_worth(board, move.from_square), -value_taken(board, move)))


def _worth(board: chess.Board, square: chess.Square | None) -> int:
    kind = None if square is None else board.piece_type_at(square)
    return PIECE_VALUES[kind] if kind else 0
