"""Claims about checks: given, double, discovered."""

from __future__ import annotations

from typing import Final

from studyboard.board.facts import check_fact
from studyboard.board.naming import side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import before_moves, imagined_moves, landed_on, san_of


def judge_check(claim: Claim) -> list[Judgement]:
    """“Check”, “with check”, “gives check”, “in check”."""
    word = claim.said("check")
    several = word == "checks"
    if claim.hinted("no_checks_before" if several else "no_check_before") or claim.hinted("no_check_after"):
        return []
    if several and not claim.hinted("checks_before"):
        return []
    topic = Topic.CHECK
    refers = claim.hinted("check_referred_before") and not claim.hinted("check_given_before")
    boards = claim.boards()
    for board in [*boards, *before_moves(claim)] if refers or claim.hinted("in_check_before") else boards:
        if board.is_check():
            fact = check_fact(board)
            return confirmed(
                topic, claim.quote(), fact.words if fact else "", *(fact.squares if fact else ()), exact=True
            )
    imagined = imagined_moves(claim)
    for board, move in imagined:
        if board.gives_check(move):
            return confirmed(topic, claim.quote(), f"{board.san(move)} gives check.", move.to_square)
    if refers:
        return undecided(topic, claim.quote(), "It may be a check that was or could be given.")
    if imagined:
        board, move = imagined[0]
        return contradicted(topic, claim.quote(), f"{board.san(move)} gives no check.", move.to_square)
    steps = claim.scene.played_near(claim.start)
    if not steps and not claim.hinted("said_of_position_before"):
        return undecided(topic, claim.quote(), "No move is played here.")
    if steps:
        return contradicted(topic, claim.quote(), f"{san_of(steps[0])} gives no check.", *landed_on(steps[0]))
    return contradicted(topic, claim.quote(), f"{side(boards[0].turn)} is not in check.")


def judge_double_check(claim: Claim) -> list[Judgement]:
    """“Double check”."""
    for board in claim.boards():
        if len(board.checkers()) > 1:
            fact = check_fact(board)
            return confirmed(Topic.CHECK, claim.quote(), fact.words if fact else "", exact=True)
    steps = claim.scene.played_near(claim.start)
    if not steps:
        return undecided(Topic.CHECK, claim.quote(), "No move is played here.")
    fact = check_fact(steps[0].board)
    return contradicted(Topic.CHECK, claim.quote(), fact.words if fact else f"{san_of(steps[0])} gives no check.")


def judge_discovered_check(claim: Claim) -> list[Judgement]:
    """“Discovered check”: a check by a piece that did not move."""
    steps = claim.scene.played_near(claim.start)
    if not steps:
        return undecided(Topic.CHECK, claim.quote(), "No move is played here.")
    for step in steps:
        if any(square != step.landed for square in step.board.checkers()):
            fact = check_fact(step.board)
            return confirmed(Topic.CHECK, claim.quote(), fact.words if fact else "", exact=True)
    fact = check_fact(steps[0].board)
    return contradicted(Topic.CHECK, claim.quote(), fact.words if fact else f"{san_of(steps[0])} gives no check.")


JUDGES: Final[dict[str, Judge]] = {
    "check": judge_check,
    "double_check": judge_double_check,
    "discovered_check": judge_discovered_check,
}
