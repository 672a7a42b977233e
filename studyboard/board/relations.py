"""Who attacks and who guards what: attackers, defenders, pieces seen through others, guards that count."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import chess

from studyboard.board.exchange import PIECE_VALUES
from studyboard.board.naming import listed, sentence, square_words, the_piece
from studyboard.translation import tr


class Sight(StrEnum):
    """How a piece looks at a square."""

    DIRECT = "direct"
    THROUGH = "through"
    BLOCKED = "blocked"
    NEVER = "never"


@dataclass(frozen=True, slots=True)
class View:
    """What one piece sees of one square.

    sight: DIRECT where it could take there; THROUGH where only a piece of its own that moves along the same line
        stands between (it backs that piece up); BLOCKED where others stand between; NEVER where it does not move so
    between: the squares of the pieces that stand between
    """

    sight: Sight
    between: tuple[chess.Square, ...] = ()


def view(board: chess.BaseBoard, origin: chess.Square, target: chess.Square) -> View:
    """How the piece on *origin* looks at *target*; pins are left aside. Raises ValueError where none stands there."""
    piece = board.piece_at(origin)
    if piece is None:
        raise ValueError(f"No piece stands on {chess.square_name(origin)}.")
    if board.attacks_mask(origin) & chess.BB_SQUARES[target]:
        return View(Sight.DIRECT)
    if origin == target or not _moves_along(piece.piece_type, origin, target):
        return View(Sight.NEVER)
    squares = tuple(chess.scan_forward(chess.between(origin, target) & board.occupied))
    helps = all(
        board.color_at(square) == piece.color and _moves_along(board.piece_type_at(square) or 0, square, target)
        for square in squares
    )
    return View(Sight.THROUGH if helps else Sight.BLOCKED, squares)


def attackers(board: chess.BaseBoard, colour: chess.Color, square: chess.Square) -> tuple[chess.Square, ...]:
    """Pieces of *colour* that attack or guard *square*, the least valuable first; pinned ones as well."""
    found = chess.scan_forward(board.attackers_mask(colour, square))
    return tuple(sorted(found, key=lambda at: (worth(board, at), at)))


def attackers_with_support(
    board: chess.BaseBoard, colour: chess.Color, square: chess.Square
) -> tuple[chess.Square, ...]:
    """The same, with those that stand behind another one on the same line.

    A pawn or a king in front counts here too, because the piece behind takes part once that one has taken.
    """
    front = attackers(board, colour, square)
    behind = [
        slider
        for slider in chess.scan_forward(board.occupied_co[colour] & (board.queens | board.rooks | board.bishops))
        if slider not in front and slider != square and _backs_up(board, slider, square)
    ]
    return (*front, *behind)


def defenders(board: chess.BaseBoard, square: chess.Square) -> tuple[chess.Square, ...]:
    """Pieces that guard the piece on *square*, of its own colour; none where it is empty."""
    colour = board.color_at(square)
    return () if colour is None else attackers(board, colour, square)


def can_capture(board: chess.Board, origin: chess.Square, target: chess.Square) -> bool:
    """Could the piece on *origin* legally take on *target*, if it were its turn?"""
    piece = board.piece_at(origin)
    if piece is None or not board.attacks_mask(origin) & chess.BB_SQUARES[target]:
        return False
    if board.turn == piece.color:
        return any(
            move.to_square == target
            for move in board.generate_legal_moves(chess.BB_SQUARES[origin], chess.BB_SQUARES[target])
        )
    if piece.piece_type == chess.KING:
        return not board.attackers_mask(not piece.color, target)
    return bool(board.pin_mask(piece.color, origin) & chess.BB_SQUARES[target])


def could_take_part(board: chess.BaseBoard, origin: chess.Square, target: chess.Square) -> bool:
    """Could the piece on *origin* ever take on *target*, as the pieces stand or once those between have gone?"""
    return bool(board.attacks_mask(origin) >> target & 1) or _moves_along(
        board.piece_type_at(origin) or 0, origin, target
    )


def attack_words(board: chess.BaseBoard, square: chess.Square) -> str:
    """Who attacks and who guards the piece on *square*, in one sentence, and which of them are pinned."""
    colour = board.color_at(square)
    if colour is None:
        return tr("{square} is empty.", square=square_words(square))
    foes, friends = attackers(board, not colour, square), defenders(board, square)
    hit = tr("is attacked by {pieces}", pieces=_takers(board, square, foes)) if foes else tr("is not attacked")
    kept = tr("guarded by {pieces}", pieces=_takers(board, square, friends)) if friends else tr("not guarded")
    if friends and not foes:
        return sentence(tr("{piece} {hit}, but {kept}", piece=the_piece(board, square), hit=hit, kept=kept))
    return sentence(tr("{piece} {hit} and {kept}", piece=the_piece(board, square), hit=hit, kept=kept))


def _backs_up(board: chess.BaseBoard, slider: chess.Square, target: chess.Square) -> bool:
    """Does the slider see the target as soon as pieces of its own that attack it have taken there?"""
    if not _moves_along(board.piece_type_at(slider) or 0, slider, target):
        return False
    own = board.occupied_co[board.color_at(slider) is True]
    between = list(chess.scan_forward(chess.between(slider, target) & board.occupied))
    return all(
        own >> at & 1
        and (board.attacks_mask(at) >> target & 1 or _moves_along(board.piece_type_at(at) or 0, at, target))
        for at in between
    )


def _takers(board: chess.BaseBoard, target: chess.Square, squares: tuple[chess.Square, ...]) -> str:
    """``"the rook on d2 and the knight on e3 (which is pinned to its king)"``."""
    names = []
    for at in squares:
        free = board.pin_mask(board.color_at(at) is True, at) & chess.BB_SQUARES[target]
        names.append(
            the_piece(board, at) if free else tr("{piece} (which is pinned to its king)", piece=the_piece(board, at))
        )
    return listed(names)


def worth(board: chess.BaseBoard, square: chess.Square) -> int:
    """What the piece on *square* counts (pawns); 0 where none stands."""
    kind = board.piece_type_at(square)
    return PIECE_VALUES[kind] if kind else 0


def _moves_along(kind: chess.PieceType, origin: chess.Square, target: chess.Square) -> bool:
    """Does a piece of this kind move along the line through both squares?"""
    straight = chess.BB_RANK_ATTACKS[origin][0] | chess.BB_FILE_ATTACKS[origin][0]
    if straight & chess.BB_SQUARES[target]:
        return kind in (chess.ROOK, chess.QUEEN)
    return bool(chess.BB_DIAG_ATTACKS[origin][0] & chess.BB_SQUARES[target]) and kind in (chess.BISHOP, chess.QUEEN)
