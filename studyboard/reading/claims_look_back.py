"""Claims that look back on the game: where a king was mated, what a pawn was made into."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.naming import listed, side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic


def judge_king_ended(claim: Claim) -> list[Judgement]:
    """“The king began on e8 and died on d5”: the mated king stands there at the end of the game or line."""
    who, where = claim.mention("piece"), claim.mention("square")
    if who is None or where is None or where.square is None or who.kind not in (chess.KING, None):
        return []
    boards = [_end(claim)] if claim.scene.talk.part else [step.board for step in claim.scene.steps[-1:]]
    ended = next((board for board in boards if board is not None and board.is_checkmate()), None)
    if ended is None or (who.colour is not None and who.colour != ended.turn):
        return undecided(Topic.SQUARE, claim.quote(), "No king is mated at the end.")
    king = ended.king(ended.turn)
    if king is None:
        return []
    why = f"{side(ended.turn)}'s king is mated on {chess.square_name(king)}."
    return (confirmed if king == where.square else contradicted)(Topic.SQUARE, claim.quote(), why, king)


def judge_made_of_pawn(claim: Claim) -> list[Judgement]:
    """“White won by making a knight”, told of the whole game: a pawn became one."""
    piece = claim.mention("becomes")
    if piece is None or piece.kind in (None, chess.PAWN, chess.KING) or not claim.scene.talk.part:
        return []
    made = {move.promotion for move in claim.scene.talk.game if move.promotion}
    if not made:
        return undecided(Topic.PIECE, claim.quote(), "No pawn is promoted in the game.")
    why = f"A pawn becomes {listed([f'a {chess.piece_name(kind)}' for kind in sorted(made)])}."
    return (confirmed if piece.kind in made else contradicted)(Topic.PIECE, claim.quote(), why)


def _end(claim: Claim) -> chess.Board | None:
    talk = claim.scene.talk
    if talk.root is None:
        return None
    board = talk.root.copy(stack=False)
    for move in talk.game:
        board.push(move)
    return board


JUDGES: Final[dict[str, Judge]] = {"king_ended": judge_king_ended, "made_of_pawn": judge_made_of_pawn}
