"""Pawn structure: passed, doubled, isolated and backward pawns, islands, majorities, open files."""

from __future__ import annotations

from dataclasses import dataclass

import chess

from studyboard.board.naming import counted, number_name, side, squares_listed
from studyboard.translation import tr

QUEENSIDE_FILES, KINGSIDE_FILES = range(4), range(4, 8)


@dataclass(frozen=True, slots=True)
class PawnStructure:
    """The pawns of one side.

    passed: no enemy pawn in front of it on its own file or a neighbouring one
    doubled: files (0 for a) with more than one pawn
    isolated: no pawn of its own on a neighbouring file
    backward: no pawn of its own beside or behind it on a neighbouring file, and the square in front is attacked by
        an enemy pawn (so that it cannot safely go on)
    islands: groups of files that hang together
    """

    passed: tuple[chess.Square, ...]
    doubled: tuple[int, ...]
    isolated: tuple[chess.Square, ...]
    backward: tuple[chess.Square, ...]
    islands: int


def pawn_structure(board: chess.BaseBoard, colour: chess.Color) -> PawnStructure:
    """The structure of one side. Definitions as in the trade (common practice), given with PawnStructure."""
    ours = board.pieces_mask(chess.PAWN, colour)
    pawns = tuple(chess.scan_forward(ours))
    files = [bool(ours & chess.BB_FILES[file]) for file in range(8)]
    return PawnStructure(
        tuple(at for at in pawns if is_passed(board, at)),
        tuple(file for file in range(8) if chess.popcount(ours & chess.BB_FILES[file]) > 1),
        tuple(at for at in pawns if is_isolated(board, at)),
        tuple(at for at in pawns if is_backward(board, at)),
        sum(has and not (file and files[file - 1]) for file, has in enumerate(files)),
    )


def is_passed(board: chess.BaseBoard, square: chess.Square) -> bool:
    """Is there no enemy pawn ahead of this pawn, on its file or beside it? False where no pawn stands."""
    colour = _pawn_colour(board, square)
    if colour is None:
        return False
    files = _beside(square) | chess.BB_FILES[chess.square_file(square)]
    return not board.pieces_mask(chess.PAWN, not colour) & files & _ahead(square, colour)


def is_isolated(board: chess.BaseBoard, square: chess.Square) -> bool:
    """Has this pawn no pawn of its own on a neighbouring file? False where no pawn stands."""
    colour = _pawn_colour(board, square)
    return colour is not None and not board.pieces_mask(chess.PAWN, colour) & _beside(square)


def is_backward(board: chess.BaseBoard, square: chess.Square) -> bool:
    """Can no pawn of its own support this pawn any more, and an enemy pawn keep it from going on?"""
    colour = _pawn_colour(board, square)
    if colour is None or is_isolated(board, square):
        return False
    level = chess.BB_RANKS[chess.square_rank(square)]
    behind = ~_ahead(square, colour) | level
    if board.pieces_mask(chess.PAWN, colour) & _beside(square) & behind:
        return False
    front = square + (8 if colour else -8)
    stops = chess.BB_PAWN_ATTACKS[colour][front] & board.pieces_mask(chess.PAWN, not colour)
    return bool(stops)


def is_doubled(board: chess.BaseBoard, square: chess.Square) -> bool:
    """Does another pawn of its own stand on this pawn's file?"""
    colour = _pawn_colour(board, square)
    if colour is None:
        return False
    return chess.popcount(board.pieces_mask(chess.PAWN, colour) & chess.BB_FILES[chess.square_file(square)]) > 1


def majority(board: chess.BaseBoard, kingside: bool) -> chess.Color | None:
    """Who has more pawns on this wing (files e to h, or a to d); None where neither."""
    files = KINGSIDE_FILES if kingside else QUEENSIDE_FILES
    wing = sum(chess.BB_FILES[file] for file in files)
    white, black = (chess.popcount(board.pieces_mask(chess.PAWN, colour) & wing) for colour in chess.COLORS)
    return None if white == black else white > black


def majority_words(board: chess.BaseBoard) -> tuple[str, ...]:
    """``"White has the majority on the queenside: three pawns to two."`` for each wing where someone has it."""
    words = []
    for kingside, files in ((False, QUEENSIDE_FILES), (True, KINGSIDE_FILES)):
        owner = majority(board, kingside)
        if owner is None:
            continue
        wing = sum(chess.BB_FILES[file] for file in files)
        more, fewer = (chess.popcount(board.pieces_mask(chess.PAWN, colour) & wing) for colour in (owner, not owner))
        pawns, number = counted(more, "pawn"), number_name(fewer) if fewer else tr("none")
        words.append(
            tr(
                "{side} has the majority on the kingside: {pawns} to {number}.",
                side=side(owner),
                pawns=pawns,
                number=number,
            )
            if kingside
            else tr(
                "{side} has the majority on the queenside: {pawns} to {number}.",
                side=side(owner),
                pawns=pawns,
                number=number,
            )
        )
    return tuple(words)


def is_open_file(board: chess.BaseBoard, file: int) -> bool:
    """Is there no pawn on this file (0 for a)?"""
    return not board.pawns & chess.BB_FILES[file]


def is_half_open_file(board: chess.BaseBoard, file: int, colour: chess.Color) -> bool:
    """Is there no pawn of *colour* on this file, but one of the other side?"""
    pawns = board.pawns & chess.BB_FILES[file]
    return bool(pawns) and not pawns & board.occupied_co[colour]


def pawn_words(board: chess.BaseBoard, colour: chess.Color) -> tuple[str, ...]:
    """What is special about the pawns of one side, a sentence each; none where nothing is."""
    structure = pawn_structure(board, colour)
    owner = side(colour)
    words = []
    for one, several, squares in (
        (
            tr("{owner}'s pawn on {squares} is passed."),
            tr("{owner}'s pawns on {squares} are passed."),
            structure.passed,
        ),
        (
            tr("{owner}'s pawn on {squares} is isolated."),
            tr("{owner}'s pawns on {squares} are isolated."),
            structure.isolated,
        ),
        (
            tr("{owner}'s pawn on {squares} is backward."),
            tr("{owner}'s pawns on {squares} are backward."),
            structure.backward,
        ),
    ):
        if squares:
            words.append((several if len(squares) > 1 else one).format(owner=owner, squares=squares_listed(squares)))
    for file in structure.doubled:
        words.append(tr("{owner} has doubled pawns on the {file}-file.", owner=owner, file="abcdefgh"[file]))
    if structure.islands > 1:
        words.append(tr("{owner} has {islands}.", owner=owner, islands=counted(structure.islands, "pawn island")))
    return tuple(words)


def _pawn_colour(board: chess.BaseBoard, square: chess.Square) -> chess.Color | None:
    return board.color_at(square) if board.piece_type_at(square) == chess.PAWN else None


def _beside(square: chess.Square) -> chess.Bitboard:
    file = chess.square_file(square)
    beside = chess.BB_FILES[file - 1] if file else chess.BB_EMPTY
    return beside | (chess.BB_FILES[file + 1] if file < 7 else chess.BB_EMPTY)


def _ahead(square: chess.Square, colour: chess.Color) -> chess.Bitboard:
    rank = chess.square_rank(square)
    ranks = range(rank + 1, 8) if colour else range(rank)
    return sum(chess.BB_RANKS[r] for r in ranks)
