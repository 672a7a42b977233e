"""Claims of how many checks were given and captures made up to now, or in the whole game."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import chess

from studyboard.board.naming import counted, side
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


def judge_so_many_given(claim: Claim) -> list[Judgement]:
    """“Six captures have been made”, “White has given three checks”: up to any moment of the line."""
    number, who, root = claim.mention("number"), claim.mention("side"), claim.scene.talk.root
    if number is None or root is None or claim.scene.talk.part == "greeting":
        return []
    doers = chess.COLORS if who is None or who.colour is None else (who.colour,)
    moves, since = _all_moves(claim)
    board, count, counts = root.copy(stack=False), 0, []
    for move in moves:
        if move and not board.is_legal(move):
            return []
        done = board.gives_check(move) if claim.has("checks") else board.is_capture(move)
        count += bool(move) and board.turn in doers and done
        board.push(move)
        counts.append(count)
    here = counts[max(0, since - 1) :] or [0]
    topic, what = (Topic.CHECK, "check") if claim.has("checks") else (Topic.NUMBER, "capture")
    why = f"Up to here {counted(here[-1], what)} {'was' if here[-1] == 1 else 'were'} told."
    if number.value in here:
        return confirmed(topic, claim.quote(), why)
    return contradicted(topic, claim.quote(), why)


def _all_moves(claim: Claim) -> tuple[list[chess.Move], int]:
    """The moves up to the end of the line, and how many of them come before it."""
    talk = claim.scene.talk
    if talk.part == "closing":
        return list(talk.game), len(talk.game)
    moves = [*talk.history, *(step.move for step in claim.scene.steps if step.move is not None)]
    return moves, len(talk.history)


JUDGES: Final[dict[str, Judge]] = {"no_check_given": judge_no_check_given, "so_many_given": judge_so_many_given}
