"""What the last move changed: squares that a side covers now and did not before, and the other way round."""

from __future__ import annotations

from dataclasses import dataclass

import chess

from studyboard.board.naming import side, squares_listed, the_piece


@dataclass(frozen=True, slots=True)
class Cover:
    """Squares whose guard by the moved piece changed.

    piece: where it stands now
    gained: squares that it attacks now and did not before; lost: the other way round
    abandoned: the lost ones that nothing else of its side covers
    opened: squares that other pieces of its side cover now because it left the line
    """

    piece: chess.Square
    gained: tuple[chess.Square, ...]
    lost: tuple[chess.Square, ...]
    abandoned: tuple[chess.Square, ...]
    opened: tuple[chess.Square, ...]


def cover_after(before: chess.Board, move: chess.Move) -> Cover:
    """What *move*, legal on *before*, changes for the side that plays it."""
    after = before.copy(stack=False)
    after.push(move)
    colour = before.turn
    to = move.to_square
    if before.is_castling(move):
        king = after.king(colour)
        assert king is not None
        to = king
    was, now = before.attacks_mask(move.from_square), after.attacks_mask(to)
    lost = was & ~now & ~chess.BB_SQUARES[to]
    covered_before, covered_now = covered(before, colour), covered(after, colour)
    return Cover(
        to,
        tuple(chess.scan_forward(now & ~was)),
        tuple(chess.scan_forward(lost)),
        tuple(chess.scan_forward(lost & ~covered_now)),
        tuple(chess.scan_forward(covered_now & ~covered_before & ~now)),
    )


def covered(board: chess.BaseBoard, colour: chess.Color) -> chess.Bitboard:
    """All squares that *colour* attacks or guards."""
    mask = chess.BB_EMPTY
    for square in chess.scan_forward(board.occupied_co[colour]):
        mask |= board.attacks_mask(square)
    return mask


def abandoned_words(after: chess.BaseBoard, cover: Cover) -> str | None:
    """``"White no longer covers g4 and h5, as the bishop on c4 did."``; None where nothing was given up."""
    if not cover.abandoned:
        return None
    owner = side(after.color_at(cover.piece) is True)
    return f"{owner} no longer covers {squares_listed(cover.abandoned)}: {the_piece(after, cover.piece)} has left."
