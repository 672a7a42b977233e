"""Moves that a statement speaks of without the line playing them, and moves in words."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.naming import sentence
from studyboard.board.tactics import turned
from studyboard.reading.claim import Claim
from studyboard.reading.moves_said import legal_meanings
from studyboard.reading.scene import Step

#: So many words may stand between a move and what is said of it.
_NEAR: Final = 4


def before_moves(claim: Claim) -> list[chess.Board]:
    """The positions before the moves that are played around the claim."""
    return [step.before for step in claim.scene.played_near(claim.start) if step.before is not None]


def imagined_moves(claim: Claim, *, again: bool = False) -> list[tuple[chess.Board, chess.Move]]:
    """The move named right before the claim, with the position where it is legal; empty where none is or several.

    again: only where the side that has just moved plays once more: “rook b6, for one, is mate”
    """
    start, _ = claim.scene.sentence(claim.start)
    # “Queen to c4, and that would be mate” has a word more between.
    near = _NEAR + 1 if claim.hinted("threatened_mate_before") else _NEAR
    named = [
        said
        for said in claim.scene.said
        if said.placed and start <= said.phrase.start < claim.start and claim.start - said.phrase.end < near
    ]
    if not named:
        return []
    last = max(named, key=lambda said: (said.phrase.end, -said.phrase.start))
    boards = [*claim.boards(), *before_moves(claim)]
    if again:
        boards = [waiting for board in claim.boards() if (waiting := turned(board, not board.turn)) is not None]
    elif last.context.against:
        # What is threatened is played if the other side does nothing.
        boards += [waiting for board in boards if (waiting := turned(board, not board.turn)) is not None]
    for board in boards:
        moves = legal_meanings(last.phrase.form, board)
        if len(moves) == 1:
            return [(board, moves[0])]
    return []


def gives_mate(board: chess.Board, move: chess.Move) -> bool:
    after = board.copy(stack=False)
    after.push(move)
    return after.is_checkmate()


def way_out(board: chess.Board, move: chess.Move) -> str:
    after = board.copy(stack=False)
    after.push(move)
    if not after.is_check():
        return ", nor check"
    first = next(iter(after.legal_moves), None)
    return "" if first is None else f": {after.san(first)} can be played"


def sans(board: chess.Board, line: tuple[chess.Move, ...]) -> tuple[str, ...]:
    """The moves of a line in SAN."""
    after, found = board.copy(stack=False), []
    for move in line:
        found.append(after.san(move))
        after.push(move)
    return tuple(found)


def line_words(board: chess.Board, line: tuple[chess.Move, ...]) -> str:
    return sentence(" ".join(sans(board, line)))


def san_of(step: Step) -> str:
    assert step.before is not None
    assert step.move is not None
    return step.before.san(step.move)


def landed_on(step: Step) -> tuple[chess.Square, ...]:
    return () if step.landed is None else (step.landed,)
