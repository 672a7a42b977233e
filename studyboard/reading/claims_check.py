"""Claims about checks: given, double, discovered."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import chess

from studyboard.board.facts import check_fact
from studyboard.board.naming import side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import before_moves, imagined_moves, landed_on, san_of
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import referents


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
            squares = fact.squares if fact else ()
            every = all(one.is_check() for one in boards)
            return confirmed(topic, claim.quote(), fact.words if fact else "", *squares, exact=every)
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
            giver = claim.scene.words.hints["given_by"].search(claim.after())
            named = None if giver is None else claim.scene.mentions[int(giver["giver"])]
            if (
                named is not None
                and named.kind
                and not _gives(claim, named, step.board, set(step.board.checkers()), None, set())
            ):
                found = contradicted(Topic.CHECK, claim.quote(), fact.words if fact else "")
                return [replace(one, reach=(claim.start, named.end)) for one in found]
            return confirmed(Topic.CHECK, claim.quote(), fact.words if fact else "", exact=True)
    fact = check_fact(steps[0].board)
    return contradicted(Topic.CHECK, claim.quote(), fact.words if fact else f"{san_of(steps[0])} gives no check.")


def judge_no_check(claim: Claim) -> list[Judgement]:
    """“Nobody is in check”."""
    for board in claim.boards():
        if not board.is_check():
            return confirmed(Topic.CHECK, claim.quote(), "No king is in check.", exact=len(claim.boards()) == 1)
    fact = check_fact(claim.boards()[0])
    return contradicted(Topic.CHECK, claim.quote(), fact.words if fact else "")


def judge_out_of_check(claim: Claim) -> list[Judgement]:
    """“The king steps out of the check”: there was one before the move."""
    steps = claim.scene.played_near(claim.start)
    if not steps:
        return undecided(Topic.CHECK, claim.quote(), "No move is played here.")
    if any(step.before is not None and step.before.is_check() for step in steps):
        return confirmed(Topic.CHECK, claim.quote(), "There was a check.")
    return contradicted(Topic.CHECK, claim.quote(), f"There was no check before {san_of(steps[0])}.")


def judge_check_from(claim: Claim) -> list[Judgement]:
    """“Check from the rook”, “a check on e1”, “checks along the e-file”."""
    topic = Topic.CHECK
    named = [
        m
        for n, m in enumerate(claim.things() if claim.mentions("things") else [])
        if not n or (m.kind is not None and not m.moves_to)
    ]
    named = named or [m for m in (claim.mention("square"), claim.mention("file")) if m is not None]
    if not named or any(m.pronoun for m in named):
        return []
    boards = [board for board in claim.boards() if board.is_check()]
    if not boards:
        return judge_check(claim)
    steps = claim.scene.played_near(claim.start)
    # “Bishop b5, check, from f1”: where it came from.
    landed = {step.landed for step in steps} | {step.move.from_square for step in steps if step.move is not None}
    for board in boards:
        king = board.king(board.turn)
        givers = set(board.checkers())
        fits = [_gives(claim, m, board, givers, king, landed) for m in named]
        if all(fits):
            fact = check_fact(board)
            return confirmed(topic, claim.quote(), fact.words if fact else "", *givers)
    if claim.hinted("check_referred_before") and not claim.hinted("check_given_before"):
        return undecided(topic, claim.quote(), "It may be a check that was or could be given.")
    fact = check_fact(boards[0])
    return contradicted(topic, claim.quote(), fact.words if fact else "", *boards[0].checkers())


def _gives(
    claim: Claim,
    mention: Mention,
    board: chess.Board,
    givers: set[chess.Square],
    king: chess.Square | None,
    landed: set[chess.Square | None],
) -> bool:
    if mention.what is Named.FILE:
        return any(chess.square_file(at) == mention.file for at in (*givers, king) if at is not None)
    if mention.what is Named.SQUARE:
        return mention.square in givers or mention.square == king or mention.square in landed
    return bool(givers & set(referents(claim.scene, mention, board)))


JUDGES: Final[dict[str, Judge]] = {
    "no_check": judge_no_check,
    "out_of_check": judge_out_of_check,
    "check_from": judge_check_from,
    "check": judge_check,
    "double_check": judge_double_check,
    "discovered_check": judge_discovered_check,
}
