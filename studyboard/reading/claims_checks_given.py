"""Claims that no check was given up to now, or in the whole game."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import chess

from studyboard.board.naming import side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic


def judge_no_check_given(claim: Claim) -> list[Judgement]:
    """“Neither side has given a check”, “White never gave check”, “not a single check in this game”."""
    who = claim.mention("side")
    if claim.scene.talk.root is None or (who is not None and who.colour is None):
        return []
    giver = None if who is None else bool(who.colour) != claim.has("suffered")
    board = claim.scene.talk.root.copy(stack=False)
    for move in _moves(claim):
        if move and not board.is_legal(move):
            return []
        if move and board.gives_check(move) and giver in (None, board.turn):
            told = f"{side(board.turn)} gave check on move {board.fullmove_number}: {board.san(move)}."
            if claim.hinted("since_then_after"):
                return undecided(Topic.CHECK, claim.quote(), told)
            return contradicted(Topic.CHECK, claim.quote(), told)
        board.push(move)
    none = "No check was given." if giver is None else f"{side(giver)} has given no check."
    return confirmed(Topic.CHECK, claim.quote(), none)


def _moves(claim: Claim) -> Iterator[chess.Move]:
    """The moves that are looked back on: of the game in the talk's last words, else those played up to the claim."""
    talk = claim.scene.talk
    if talk.part == "closing":
        yield from talk.game
        return
    yield from talk.history
    for step in claim.scene.steps[: claim.scene.board_index(claim.start) + 1]:
        if step.move is not None:
            yield step.move


JUDGES: Final[dict[str, Judge]] = {"no_check_given": judge_no_check_given}
