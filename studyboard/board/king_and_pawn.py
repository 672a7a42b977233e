"""Who wins with king and pawn against king, and with the queen or rook that the pawn becomes: exactly, from a table."""

from __future__ import annotations

from functools import cache
from typing import Final

import chess

#: What stands beside the kings where one of these pieces alone wins (common knowledge: no other single piece does).
_MATING = (chess.QUEEN, chess.ROOK)
_LAST_RANK: Final = 7
_RANK_TWO: Final = chess.BB_RANK_2


def ending_result(board: chess.Board) -> str | None:
    """The result with best play, "1-0", "0-1" or "1/2-1/2"; None where the board shows another ending.

    Known are the bare kings, alone or with one piece or pawn of one side. Exact but for the rule of fifty moves, which
    none of these wins comes near. The first call with a pawn makes the table, in a fifth of a second.
    """
    others = board.occupied & ~board.kings
    if len(board.piece_map()) > 3 or not board.is_valid():
        return None
    if not others:
        return "1/2-1/2"
    at = chess.lsb(others)
    kind, strong = board.piece_type_at(at), bool(board.color_at(at))
    if kind == chess.PAWN:
        won = _pawn_wins(board, at, strong)
    else:
        won = kind in _MATING and (board.turn == strong or _keeps(board, at))
    return ("1-0" if strong else "0-1") if won else "1/2-1/2"


def winning_moves(board: chess.Board) -> list[chess.Move] | None:
    """The moves of the side to move that win; empty where none does. None where the ending is another one."""
    if ending_result(board) is None:
        return None
    wanted = "1-0" if board.turn else "0-1"
    found = []
    for move in board.legal_moves:
        board.push(move)
        if board.is_checkmate() or (not board.is_stalemate() and ending_result(board) == wanted):
            found.append(move)
        board.pop()
    return found


def drawing_moves(board: chess.Board) -> list[chess.Move] | None:
    """The moves of the side to move that draw and do not win. None where the ending is another one."""
    if ending_result(board) is None:
        return None
    found = []
    for move in board.legal_moves:
        board.push(move)
        if board.is_stalemate() or (not board.is_checkmate() and ending_result(board) == "1/2-1/2"):
            found.append(move)
        board.pop()
    return found


def _keeps(board: chess.Board, at: chess.Square) -> bool:
    """Does the bare side, which is to move, neither take the piece nor have no move without being in check?"""
    moves = list(board.legal_moves)
    return board.is_check() if not moves else all(move.to_square != at for move in moves)


def _pawn_wins(board: chess.Board, pawn: chess.Square, strong: chess.Color) -> bool:
    def seen(square: chess.Square) -> chess.Square:
        square = square if strong else chess.square_mirror(square)
        return square ^ 7 if chess.square_file(pawn) > 3 else square

    strong_king, bare_king = board.king(strong), board.king(not strong)
    if strong_king is None or bare_king is None:
        return False
    moves, waits = _table()
    here = (seen(pawn), seen(strong_king))
    won = (moves if board.turn == strong else waits).get(here, 0)
    return bool(won & chess.BB_SQUARES[seen(bare_king)])


@cache
def _table() -> tuple[dict[tuple[int, int], int], dict[tuple[int, int], int]]:
    """Where the bare king stands when White wins, by White's pawn (files a to d) and king: White, Black to move.

    Worked backwards from the pawns that queen in safety, until nothing is added; a set of squares is a bitboard.
    """
    pawns = [chess.square(file, rank) for rank in range(6, 0, -1) for file in range(4)]
    moves = {(pawn, king): 0 for pawn in pawns for king in chess.SQUARES if king != pawn}
    waits = dict.fromkeys(moves, 0)
    for pawn in pawns:
        kings = [king for king in chess.SQUARES if king != pawn]
        changed = True
        while changed:
            changed = False
            for king in kings:
                won = _white_wins(pawn, king, waits)
                if won != moves[pawn, king]:
                    moves[pawn, king] = won
                    changed = True
            for king in kings if changed else ():
                waits[pawn, king] = _black_loses(pawn, king, moves[pawn, king])
    return moves, waits


def _white_wins(pawn: int, king: int, waits: dict[tuple[int, int], int]) -> int:
    taken = chess.BB_SQUARES[pawn] | chess.BB_SQUARES[king]
    # Black, who has just moved, stands in no check.
    places = ~(chess.BB_KING_ATTACKS[king] | taken | chess.BB_PAWN_ATTACKS[chess.WHITE][pawn]) & chess.BB_ALL
    won = 0
    for to in chess.scan_forward(chess.BB_KING_ATTACKS[king] & ~taken):
        won |= waits[pawn, to] & ~chess.BB_KING_ATTACKS[to]
    ahead = pawn + 8
    if ahead != king:
        if chess.square_rank(ahead) == _LAST_RANK:
            guarded = chess.BB_KING_ATTACKS[ahead] & chess.BB_SQUARES[king]
            won |= ~chess.BB_SQUARES[ahead] & (chess.BB_ALL if guarded else ~chess.BB_KING_ATTACKS[ahead])
        else:
            won |= waits[ahead, king] & ~chess.BB_SQUARES[ahead]
            if chess.BB_SQUARES[pawn] & _RANK_TWO and ahead + 8 != king:
                won |= waits[ahead + 8, king] & ~chess.BB_SQUARES[ahead] & ~chess.BB_SQUARES[ahead + 8]
    return won & places


def _black_loses(pawn: int, king: int, moves: int) -> int:
    white = chess.BB_KING_ATTACKS[king] | chess.BB_SQUARES[king]
    places = ~(white | chess.BB_SQUARES[pawn])
    free = ~(white | chess.BB_PAWN_ATTACKS[chess.WHITE][pawn]) & chess.BB_ALL
    escapes = _king_steps(free & ~moves)
    return places & _king_steps(free) & ~escapes & chess.BB_ALL


def _king_steps(squares: int) -> int:
    """All squares next to one of these."""
    sides = (squares << 1 & ~chess.BB_FILE_A & chess.BB_ALL) | (squares >> 1 & ~chess.BB_FILE_H)
    row = squares | sides
    return (sides | row << 8 | row >> 8) & chess.BB_ALL
