"""A position that is being set up by hand: changed piece by piece, with what is wrong with it told in words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import chess

from studyboard.board.naming import listed, number_name, side, squares_listed, the_piece
from studyboard.model.errors import StudyboardError
from studyboard.translation import tr

#: The squares that king and rook must stand on for each right to castle (FIDE Laws of Chess, 3.8.2).
_CASTLING = {
    "K": (chess.E1, chess.H1, chess.WHITE),
    "Q": (chess.E1, chess.A1, chess.WHITE),
    "k": (chess.E8, chess.H8, chess.BLACK),
    "q": (chess.E8, chess.A8, chess.BLACK),
}
#: How many of each piece a side begins with; more of them must have been pawns.
_FIRST = {chess.QUEEN: 1, chess.ROOK: 2, chess.BISHOP: 2, chess.KNIGHT: 2}


class SetUpError(StudyboardError):
    """A text that is no position; the message says why."""


@dataclass(frozen=True, slots=True)
class SetUp:
    """One position on the way to being playable.

    pieces: the board as the first field of FEN
    turn: who moves; castling: the rights, of ``"KQkq"``, only such as fit kings and rooks
    en_passant: the square that a pawn has just passed, only such as fits the pawns; None for none
    quiet: half-moves since the last capture or pawn move
    number: of the move, 1 for the first
    """

    pieces: str = chess.STARTING_BOARD_FEN
    turn: chess.Color = chess.WHITE
    castling: str = "KQkq"
    en_passant: chess.Square | None = None
    quiet: int = 0
    number: int = 1


EMPTY = SetUp("8/8/8/8/8/8/8/8", castling="")


def set_up_of(fen: str) -> SetUp:
    """The position that *fen* describes; missing fields at the end have their usual values.

    Rights to castle and a square for en passant that do not fit the pieces are left out. Raises SetUpError.
    """
    text = " ".join(fen.split())
    if not text:
        raise SetUpError(tr("No position is written there."))
    try:
        board = chess.Board(text)
    except ValueError as reason:
        raise SetUpError(
            tr(
                "That is no position ({reason}). A position looks like “{example}”.",
                reason=reason,
                example=chess.STARTING_FEN,
            )
        ) from reason
    castling = "".join(letter for letter in _CASTLING if letter in text.split(" ")[2]) if text.count(" ") > 1 else ""
    found = SetUp(board.board_fen(), board.turn, castling, board.ep_square, board.halfmove_clock, board.fullmove_number)
    return _fitting(found)


def board_of(set_up: SetUp) -> chess.Board:
    """The position as a board, whether or not it can be played on."""
    return chess.Board(fen_of(set_up))


def fen_of(set_up: SetUp) -> str:
    """The position in FEN."""
    passed = "-" if set_up.en_passant is None else chess.square_name(set_up.en_passant)
    turn = "w" if set_up.turn == chess.WHITE else "b"
    return f"{set_up.pieces} {turn} {set_up.castling or '-'} {passed} {set_up.quiet} {set_up.number}"


def with_piece(set_up: SetUp, square: chess.Square, piece: chess.Piece | None) -> SetUp:
    """The same with *piece* on *square*, in place of what stood there; None leaves it empty."""
    board = chess.BaseBoard(set_up.pieces)
    board.set_piece_at(square, piece)
    return _fitting(replace(set_up, pieces=board.board_fen()))


def with_move(set_up: SetUp, origin: chess.Square, destination: chess.Square) -> SetUp:
    """The same with what stood on *origin* on *destination*, by no rule of the game."""
    board = chess.BaseBoard(set_up.pieces)
    piece = board.remove_piece_at(origin)
    if piece is None:
        return set_up
    board.set_piece_at(destination, piece)
    return _fitting(replace(set_up, pieces=board.board_fen()))


def with_turn(set_up: SetUp, turn: chess.Color) -> SetUp:
    """The same with *turn* to move; a pawn that has just passed belongs to the other side, so that is forgotten."""
    return set_up if turn == set_up.turn else replace(set_up, turn=turn, en_passant=None)


def with_castling(set_up: SetUp, right: str, kept: bool) -> SetUp:
    """The same with one right of ``"KQkq"``, or without it."""
    rights = {*set_up.castling, right} if kept else set(set_up.castling) - {right}
    return _fitting(replace(set_up, castling="".join(letter for letter in _CASTLING if letter in rights)))


def mirrored(set_up: SetUp) -> SetUp:
    """The same with the a-file for the h-file. Nobody may castle there, since the kings stand on other squares."""
    board = chess.BaseBoard(set_up.pieces).transform(chess.flip_horizontal)
    passed = None if set_up.en_passant is None else set_up.en_passant ^ 7
    return _fitting(replace(set_up, pieces=board.board_fen(), castling="", en_passant=passed))


def swapped(set_up: SetUp) -> SetUp:
    """The same game with the colours exchanged: White's pieces are Black's, seen from the other side."""
    board = chess.BaseBoard(set_up.pieces).mirror()
    passed = None if set_up.en_passant is None else chess.square_mirror(set_up.en_passant)
    rights = set_up.castling.swapcase()
    castling = "".join(letter for letter in _CASTLING if letter in rights)
    return replace(set_up, pieces=board.board_fen(), turn=not set_up.turn, castling=castling, en_passant=passed)


def possible_castling(set_up: SetUp) -> str:
    """The rights that kings and rooks leave open, of ``"KQkq"``."""
    board = chess.BaseBoard(set_up.pieces)
    return "".join(
        letter
        for letter, (king, rook, colour) in _CASTLING.items()
        if board.piece_at(king) == chess.Piece(chess.KING, colour)
        and board.piece_at(rook) == chess.Piece(chess.ROOK, colour)
    )


def possible_en_passant(set_up: SetUp) -> tuple[chess.Square, ...]:
    """The squares that a pawn of the side that has just moved can have passed, so that a pawn could take it there."""
    board, mover = chess.BaseBoard(set_up.pieces), not set_up.turn
    rank, step = (2, 8) if mover == chess.WHITE else (5, -8)
    found = []
    for file in range(8):
        passed = chess.square(file, rank)
        empty = board.piece_at(passed) is None and board.piece_at(passed - step) is None
        pawn = board.piece_at(passed + step) == chess.Piece(chess.PAWN, mover)
        takers = board.pieces_mask(chess.PAWN, set_up.turn) & chess.BB_PAWN_ATTACKS[mover][passed]
        if empty and pawn and takers:
            found.append(passed)
    return tuple(found)


def problems(set_up: SetUp) -> tuple[str, ...]:
    """Why the position cannot be played on, each reason as a sentence that says what to do; none where it can."""
    return tuple(_problems(board_of(set_up)))


def remarks(set_up: SetUp) -> tuple[str, ...]:
    """What is odd about a position that can be played on: the game is over, or no game can have led there."""
    return () if problems(set_up) else tuple(_remarks(board_of(set_up)))


def _problems(board: chess.Board) -> Iterator[str]:
    if not board.occupied:
        yield tr("The board is empty: put two kings on it to begin with.")
        return
    for colour in chess.COLORS:
        yield from _wrong_numbers(board, colour)
    misplaced = board.pawns & chess.BB_BACKRANKS
    if misplaced:
        where = squares_listed(tuple(chess.scan_forward(misplaced)))
        yield tr("No pawn can stand on the first or the last rank: take it away from {where}.", where=where)
    if all(len(board.pieces(chess.KING, colour)) == 1 for colour in chess.COLORS):
        yield from _wrong_checks(board)


def _wrong_numbers(board: chess.Board, colour: chess.Color) -> Iterator[str]:
    name, kings = side(colour), len(board.pieces(chess.KING, colour))
    if not kings:
        yield tr("{name} has no king.", name=name)
    elif kings > 1:
        where = squares_listed(tuple(board.pieces(chess.KING, colour)))
        yield tr("{name} has {number} kings, on {where}: leave one.", name=name, number=number_name(kings), where=where)
    pawns = len(board.pieces(chess.PAWN, colour))
    if pawns > 8:
        yield tr("{name} has {number} pawns: eight are the most.", name=name, number=number_name(pawns))
    elif chess.popcount(board.occupied_co[colour]) > 16:
        yield tr(
            "{name} has {count} pieces: sixteen are the most.",
            name=name,
            count=chess.popcount(board.occupied_co[colour]),
        )


def _wrong_checks(board: chess.Board) -> Iterator[str]:
    status = board.status()
    waiting = not board.turn
    if status & chess.STATUS_OPPOSITE_CHECK:
        king = board.king(waiting)
        attackers = board.attackers(board.turn, king) if king is not None else ()
        by = listed([the_piece(board, square) for square in attackers])
        yield (
            tr(
                "{side} is in check from {by}, and it is {other}'s move: let {side} move, or end the check.",
                side=side(waiting),
                by=by,
                other=side(board.turn),
            )
        )
        return
    by = listed([the_piece(board, square) for square in board.checkers()])
    if status & chess.STATUS_TOO_MANY_CHECKERS:
        yield tr(
            "{side} is in check from {by}: two pieces are the most that one move can let give check.",
            side=side(board.turn),
            by=by,
        )
    elif status & chess.STATUS_IMPOSSIBLE_CHECK:
        yield tr("{side} is in check from {by}, and no move can have led to that.", side=side(board.turn), by=by)


def _remarks(board: chess.Board) -> Iterator[str]:
    if board.is_checkmate():
        yield tr("{side} is checkmated: no move can be played.", side=side(board.turn))
    elif board.is_stalemate():
        yield tr("{side} is stalemated: no move can be played.", side=side(board.turn))
    elif board.is_insufficient_material():
        yield tr("Neither side has enough to give mate.")
    for colour in chess.COLORS:
        more = sum(max(0, len(board.pieces(kind, colour)) - first) for kind, first in _FIRST.items())
        if more > 8 - len(board.pieces(chess.PAWN, colour)):
            yield tr(
                "{side} has more pieces than its missing pawns can have become; no game leads here.", side=side(colour)
            )


def _fitting(set_up: SetUp) -> SetUp:
    """The same without rights that do not fit the pieces."""
    possible = possible_castling(set_up)
    castling = "".join(letter for letter in set_up.castling if letter in possible)
    passed = set_up.en_passant if set_up.en_passant in possible_en_passant(set_up) else None
    return replace(set_up, castling=castling, en_passant=passed)
