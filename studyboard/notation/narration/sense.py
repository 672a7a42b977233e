"""How unlikely a legal move is at first sight: by what it leaves to be taken, and what it leaves untaken."""

from __future__ import annotations

from typing import Final

import chess

#: What pieces are worth, in pawns; common practice. A king is never left to be taken.
_WORTH: Final = {chess.PAWN: 1, chess.KNIGHT: 3, chess.BISHOP: 3, chess.ROOK: 5, chess.QUEEN: 9, chess.KING: 100}
#: By how much a move that costs so many pawns, at once and compared with the best capture, is less likely than one that
#: costs none, as a difference of logarithms; the last one for all that is more. Rounded from a fit to the main lines of
#: the narrations that may be looked at, as a choice among all legal moves (2.2, 2.9, 2.4, 3.3 and 4.5 for one, two,
#: three, four or more and six or more pawns), and held down at the end: some do leave a queen to be taken.
_COSTLY: Final = (0.0, 2.0, 2.3, 2.5, 2.8, 3.0, 3.2)
_TO_THE_BACK_RANK, _BARE_KING, _TO_THE_EDGE, _OTHER_KNIGHT_AT_HOME = 1.4, 0.9, 1.2, 1.2


def best_gain(board: chess.Board) -> int:
    """What the side to move can win with one capture of a piece, in pawns. O(pieces)."""
    gains = (
        _loss_at(board, square, board.turn, board.occupied, 0, 0)
        for square in chess.scan_forward(_pieces(board, not board.turn))
    )
    return max(gains, default=0)


def unlikelihood(board: chess.Board, move: chess.Move, best: int, left_before: int = 0) -> float:
    """How unlikely a legal move is, from 0 up, as a logarithm of odds against a move that nothing speaks against.

    best: what could be won at once, by best_gain
    left_before: what the other side could have won with its last move and did not: leaving that again is nothing new

    Each square is looked at by itself, without pins and without pieces behind each other: quick, and good enough to
    tell likely moves from accidents. O(pieces).
    """
    if board.is_castling(move):
        return _COSTLY[min(best, len(_COSTLY) - 1)]
    missed = max(0, best - _net_gain(board, move, left_before))
    return _COSTLY[min(missed, len(_COSTLY) - 1)] + _by_habit(board, move)


def _by_habit(board: chess.Board, move: chess.Move) -> float:
    piece = board.piece_type_at(move.from_square)
    rank = chess.square_rank(move.to_square)
    at_home = board.knights & board.occupied_co[board.turn] & (chess.BB_RANK_1 if board.turn else chess.BB_RANK_8)
    if piece == chess.KNIGHT and at_home and not at_home & chess.BB_SQUARES[move.from_square]:
        return _OTHER_KNIGHT_AT_HOME
    if piece in (chess.KNIGHT, chess.BISHOP, chess.QUEEN):
        if rank == (0 if board.turn else 7):
            return _TO_THE_BACK_RANK
        if piece == chess.KNIGHT and chess.square_file(move.to_square) in (0, 7):
            return _TO_THE_EDGE
    elif piece == chess.KING and board.queens and not board.is_check():
        return _BARE_KING
    return 0.0


def _net_gain(board: chess.Board, move: chess.Move, left_before: int) -> int:
    """What a move takes, less the most that the other side can take back, or take elsewhere for the first time."""
    us = board.turn
    piece = board.piece_type_at(move.from_square) or chess.PAWN
    taken = board.piece_type_at(move.to_square)
    gained = _WORTH[taken] if taken else int(board.is_en_passant(move))
    if move.promotion:
        gained += _WORTH[move.promotion] - 1
        piece = move.promotion
    left, reached = chess.BB_SQUARES[move.from_square], chess.BB_SQUARES[move.to_square]
    occupied = (board.occupied & ~left) | reached
    lost = 0
    if piece != chess.KING:
        lost = _loss_at(board, move.to_square, not us, occupied, reached | left, 0, _WORTH[piece])
    protects: int | None = None
    for square in chess.scan_forward(_pieces(board, us) & ~left):
        worth = _WORTH[board.piece_type_at(square) or chess.PAWN]
        if worth > max(lost, left_before) and board.attackers_mask(not us, square, occupied) & ~reached:
            if protects is None:
                protects = attacked_from(piece, us, move.to_square, occupied)
            covered = protects & chess.BB_SQUARES[square]
            elsewhere = _loss_at(board, square, not us, occupied, reached | left, covered)
            if elsewhere > left_before:
                lost = max(lost, elsewhere)
    return gained - lost


def _pieces(board: chess.Board, colour: chess.Color) -> int:
    """Where a side has pieces that are neither pawns nor king."""
    return board.occupied_co[colour] & ~board.pawns & ~board.kings


def _loss_at(
    board: chess.Board, square: int, by: chess.Color, occupied: int, moved: int, covered: int, worth: int = 0
) -> int:
    """What *by* wins by taking on a square, in pawns; *moved* are squares whose pieces no longer attack or protect.

    worth: of what stands on the square, 0 to look it up; covered: not empty where it is protected anyway
    """
    against = board.attackers_mask(by, square, occupied) & ~moved
    if not against:
        return 0
    worth = worth or _WORTH[board.piece_type_at(square) or chess.PAWN]
    if not covered and not board.attackers_mask(not by, square, occupied) & ~moved:
        return worth
    cheapest = min(_WORTH[board.piece_type_at(attacker) or chess.PAWN] for attacker in chess.scan_forward(against))
    return max(0, worth - cheapest)


def attacked_from(piece: int, colour: chess.Color, square: int, occupied: int) -> int:
    """The squares that such a piece attacks from a square, or would attack if it stood there."""
    if piece == chess.PAWN:
        return chess.BB_PAWN_ATTACKS[colour][square]
    if piece == chess.KNIGHT:
        return chess.BB_KNIGHT_ATTACKS[square]
    if piece == chess.KING:
        return chess.BB_KING_ATTACKS[square]
    found = 0
    if piece in (chess.BISHOP, chess.QUEEN):
        found |= chess.BB_DIAG_ATTACKS[square][chess.BB_DIAG_MASKS[square] & occupied]
    if piece in (chess.ROOK, chess.QUEEN):
        found |= chess.BB_FILE_ATTACKS[square][chess.BB_FILE_MASKS[square] & occupied]
        found |= chess.BB_RANK_ATTACKS[square][chess.BB_RANK_MASKS[square] & occupied]
    return found
