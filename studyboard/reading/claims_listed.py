"""Claims that list the squares of several pieces: “White has four pawns, on a4, f2, g3 and h4”."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.naming import counted, plural_name, sentence, side, squares_listed, their_piece
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted
from studyboard.reading.claims_inventory import holder
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention, Named


def judge_on_squares(claim: Claim) -> list[Judgement]:
    """“Black's pawns are on e5, g6 and h5”, “Black has four as well, on e6, f7, g6 and h5”."""
    thing, squares = _sort(claim), _squares(claim)
    if thing is None or thing.kind is None or len(squares) < 2:
        return []
    colour = _colour(claim, thing)
    if colour is None:
        return []
    number, piece = claim.mention("number"), chess.Piece(thing.kind, colour)
    boards = claim.boards()
    for board in boards:
        right = all(board.piece_at(square) == piece for square in squares)
        if right and (number is None or number.value == len(squares) == len(board.pieces(thing.kind, colour))):
            return confirmed(Topic.SQUARE, claim.quote(), sentence(f"{_places(board, piece)} there"), *squares)
    board = boards[0]
    odd = next((square for square in squares if board.piece_at(square) != piece), None)
    if odd is not None:
        there = f"{their_piece(board, odd)} stands on {chess.square_name(odd)}" if board.piece_at(odd) else ""
        why = " ".join(sentence(words) for words in (there, f"{_places(board, piece)} on the board") if words)
        return contradicted(Topic.SQUARE, claim.quote(), why, odd)
    total = len(board.pieces(thing.kind, colour))
    if number is None or number.value in (len(squares), total):
        # “White has three on the queenside, on a2, b2 and c4”: some of them are listed.
        return []
    return contradicted(
        Topic.NUMBER, claim.quote(), f"{side(colour)} has {counted(total, chess.piece_name(thing.kind))}."
    )


def _places(board: chess.BaseBoard, piece: chess.Piece) -> str:
    squares = list(board.pieces(piece.piece_type, piece.color))
    colour = chess.COLOR_NAMES[piece.color]
    if not squares:
        return f"no {colour} {chess.piece_name(piece.piece_type)} is"
    name = chess.piece_name(piece.piece_type) if len(squares) == 1 else plural_name(piece.piece_type)
    return f"the {colour} {name} on {squares_listed(squares)} {'is' if len(squares) == 1 else 'are'}"


def _sort(claim: Claim) -> Mention | None:
    """What stands there: named in the claim, or in the plural before it in this sentence or the one before."""
    thing = claim.mention("sort")
    if thing is not None:
        return thing if thing.plural and not thing.vague and not thing.pronoun else None
    start, _ = claim.scene.sentence(claim.start)
    first = claim.scene.sentence(start - 1)[0] if start else 0
    before = [m for m in claim.scene.mentions if first <= m.start < claim.start and m.what is Named.PIECE and m.kind]
    return before[-1] if before and before[-1].plural else None


def _squares(claim: Claim) -> list[chess.Square]:
    """The squares of the list, those that are part of the name among them: “the pawns on e5, g6 and h5”."""
    sort = claim.mention("sort")
    named = [] if sort is None or sort.square is None else [sort.square, *sort.also]
    return [*named, *(m.square for m in claim.mentions("squares") if m.square is not None)]


def _colour(claim: Claim, thing: Mention) -> chess.Color | None:
    who = claim.mention("side")
    if who is not None:
        return who.colour
    if thing.colour is not None and claim.mention("sort") is not None:
        return thing.colour
    held = holder(claim) if claim.mention("piece") is not None else None
    return held[0] if held is not None and len(held) == 1 else None


JUDGES: Final[dict[str, Judge]] = {"on_squares": judge_on_squares}
