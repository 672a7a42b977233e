"""What the last move changed: squares that a side covers now and did not before, and the other way round."""

from __future__ import annotations

from dataclasses import dataclass

import chess

from studyboard.board.moves import landing_square
from studyboard.board.naming import sentence, side, squares_listed, the_piece
from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class Cover:
    """Squares whose guard changed with a move.

    piece: where the moved piece stands now; when castling, the king
    gained: squares that it attacks now and did not before; lost: the other way round
    abandoned: squares that its side covered before and does not cover any more, the piece's own square left aside
    shut: those of them that the moved piece did not cover itself: it stands in the way of others, or the rook has
        left with castling
    opened: squares that its side covers now and did not before, thanks to others: the piece has left their line
    taken_away: squares that the other side covered before and does not cover any more: a line of it is shut, or what
        covered them was taken
    allowed: squares that the other side covers now and did not before, since a line of it has opened
    castled: whether the move was castling
    """

    piece: chess.Square
    gained: tuple[chess.Square, ...]
    lost: tuple[chess.Square, ...]
    abandoned: tuple[chess.Square, ...]
    shut: tuple[chess.Square, ...]
    opened: tuple[chess.Square, ...]
    taken_away: tuple[chess.Square, ...]
    allowed: tuple[chess.Square, ...]
    castled: bool


def cover_after(before: chess.Board, move: chess.Move) -> Cover:
    """What *move*, legal on *before*, changes in what both sides cover."""
    after = before.copy(stack=False)
    after.push(move)
    colour = before.turn
    to = landing_square(before, move)
    elsewhere = ~chess.BB_SQUARES[to]
    was, now = before.attacks_mask(move.from_square), after.attacks_mask(to)
    covered_before, covered_now = covered(before, colour), covered(after, colour)
    foes_before, foes_now = covered(before, not colour), covered(after, not colour)
    abandoned = covered_before & ~covered_now & elsewhere
    return Cover(
        to,
        tuple(chess.scan_forward(now & ~was)),
        tuple(chess.scan_forward(was & ~now & elsewhere)),
        tuple(chess.scan_forward(abandoned)),
        tuple(chess.scan_forward(abandoned & ~was)),
        tuple(chess.scan_forward(covered_now & ~covered_before & ~now)),
        tuple(chess.scan_forward(foes_before & ~foes_now)),
        tuple(chess.scan_forward(foes_now & ~foes_before)),
        before.is_castling(move),
    )


def covered(board: chess.BaseBoard, colour: chess.Color) -> chess.Bitboard:
    """All squares that *colour* attacks or guards."""
    mask = chess.BB_EMPTY
    for square in chess.scan_forward(board.occupied_co[colour]):
        mask |= board.attacks_mask(square)
    return mask


def abandoned_words(after: chess.BaseBoard, cover: Cover) -> str | None:
    """``"White no longer covers g4 and h5: the knight on e5 has left."``; None where nothing was given up.

    Where a piece stands in the way of others it says so: ``"…: the pawn on c4 stands in the way."``
    """
    if not cover.abandoned:
        return None
    owner, piece = side(after.color_at(cover.piece) is True), the_piece(after, cover.piece)
    left = [square for square in cover.abandoned if square not in cover.shut]
    if cover.castled:
        why = tr("it has castled")
    elif not cover.shut:
        why = tr("{piece} has left", piece=piece)
    elif not left:
        why = tr("{piece} stands in the way", piece=piece)
    else:
        why = tr(
            "{piece} has left {squares} and stands in the way of {more}",
            piece=piece,
            squares=squares_listed(left),
            more=squares_listed(cover.shut),
        )
    return tr(
        "{owner} no longer covers {squares}: {why}.", owner=owner, squares=squares_listed(cover.abandoned), why=why
    )


def covered_words(after: chess.BaseBoard, cover: Cover) -> str | None:
    """``"The knight on g5 now covers f7 and h7."``, and ``"White also covers d8 now: a line has opened."``; or None."""
    words = []
    if cover.gained:
        words.append(
            sentence(
                tr(
                    "{piece} now covers {squares}",
                    piece=the_piece(after, cover.piece),
                    squares=squares_listed(cover.gained),
                )
            )
        )
    if cover.opened:
        owner = side(after.color_at(cover.piece) is True)
        why = tr("it has castled") if cover.castled else tr("a line has opened")
        squares = squares_listed(cover.opened)
        words.append(
            tr("{owner} also covers {squares} now: {why}.", owner=owner, squares=squares, why=why)
            if cover.gained
            else tr("{owner} covers {squares} now: {why}.", owner=owner, squares=squares, why=why)
        )
    return " ".join(words) or None


def taken_away_words(after: chess.BaseBoard, cover: Cover) -> str | None:
    """``"Black no longer covers e4, since White's move."``; None where the other side covers all that it did."""
    if not cover.taken_away:
        return None
    owner = after.color_at(cover.piece) is True
    return tr(
        "{side} no longer covers {squares}, since {other}'s move.",
        side=side(not owner),
        squares=squares_listed(cover.taken_away),
        other=side(owner),
    )
