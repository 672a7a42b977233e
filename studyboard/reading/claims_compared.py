"""Claims that set the pieces of one side against the other's: four against three, the same number, more, lost."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product
from typing import Final

import chess

from studyboard.board.material import material_words
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_inventory import BOTH, holder, holdings_words, one_side_before
from studyboard.reading.claims_material import EXCHANGE, MINOR, amounts
from studyboard.reading.counted_things import Thing, cut_short, is_number, things_named
from studyboard.reading.findings import Topic
from studyboard.reading.parts_of_board import parts_meant


def judge_versus(claim: Claim) -> list[Judgement]:
    """“Four pawns against three”, “White has a rook for two knights”, “six against seven” where pawns are counted."""
    areas = parts_meant(claim)
    if not areas or claim.hinted("traded_before"):
        return []
    first = things_named(claim, "list")
    named = bool(first)
    if not first and is_number(claim, "list"):
        counts = _pawns_meant(claim, areas[0])
        if counts is None:
            return []
        first = [counts]
    if not first:
        return []
    second = things_named(claim, "list2", like=first[-1])
    # “A queen against two rooks, and the kings are safe”: the last of the names begins the next clause.
    if not second or not (claim.hinted("versus_after") or cut_short(claim, "list2", second)):
        return []
    colours = _first_side(claim, first)
    boards = claim.boards()
    for board, within in product(boards, areas):
        for colour in colours or BOTH:
            if _against(board, colour, first, second, within):
                return confirmed(Topic.NUMBER, claim.quote(), _versus_words(board, first, second, colour, within))
    shown = (colours or BOTH)[0]
    why = _versus_words(boards[0], first, second, shown, areas[0])
    numbers = [thing for thing in (*first, *second) if thing.exact]
    clear = len(numbers) > 1 or (numbers and (len(first) + len(second) > 2 or claim.hinted("told_before")))
    told = (
        claim.has("holds")
        or not claim.before()
        or claim.hinted("told_before")
        or (named and claim.scene.words.hint("told_of_it", claim.before()))
        or claim.hinted("wing_before")
        or claim.before().endswith(",")
    )
    if not told and " ," in claim.said("list"):
        # “Two pawns for the bishop, eight pawns against seven”: what stands against it begins behind the comma.
        return []
    if not numbers or not told or (not colours and not clear):
        return undecided(Topic.NUMBER, claim.quote(), why)
    return contradicted(Topic.NUMBER, claim.quote(), why)


def judge_list_more(claim: Claim) -> list[Judgement]:
    """“A rook and two knights more than he has”: just so many more than the other side, whoever is meant."""
    things = things_named(claim, "list")
    if not things:
        return []
    boards = claim.boards()
    for board in boards:
        for colour in BOTH:
            if all(_more(board, colour, thing) == thing.count for thing in things):
                return confirmed(Topic.MATERIAL, claim.quote(), material_words(board))
    return contradicted(Topic.MATERIAL, claim.quote(), material_words(boards[0]))


def _pawns_meant(claim: Claim, area: int) -> Thing | None:
    """What a number alone counts: pawns, where a wing is named or pawns are spoken of before."""
    number, sort = claim.mentions("list")[0], claim.mention("sort")
    begins = claim.scene.sentence(claim.sentence.start - 1)[0] if claim.sentence.start else 0
    pawns = any(m.kind == chess.PAWN and begins <= m.start < claim.start for m in claim.scene.mentions)
    bare = all(not board.occupied & ~board.kings & ~board.pawns for board in claim.boards())
    if sort is not None and sort.kind != chess.PAWN:
        return None
    if sort is None and not pawns and area == chess.BB_ALL and not bare:
        return None
    return Thing(chess.PAWN, "", number.value, True, plural=True)


def _first_side(claim: Claim, first: Sequence[Thing]) -> tuple[chess.Color, ...]:
    """Whose the pieces are that are named first."""
    second = next((m.colour for m in claim.mentions("list2") if m.colour is not None), None)
    second = next((m.colour for m in claim.mentions("other") if m.colour is not None), second)
    who = claim.mention("side")
    if who is not None and who.colour is not None:
        return (who.colour,)
    owned = next((thing.colour for thing in first if thing.colour is not None), None)
    if owned is not None:
        return (owned,)
    if second is not None:
        return (not second,)
    return one_side_before(claim) if claim.has("holds") else ()


def _against(
    board: chess.BaseBoard, colour: chess.Color, first: Sequence[Thing], second: Sequence[Thing], area: int
) -> bool:
    """Has this side the first and the other side the second, all of it or over and above what both have?"""
    if all(t.fits(board, [colour], area) for t in first) and all(t.fits(board, [not colour], area) for t in second):
        return True
    if area != chess.BB_ALL:
        return False
    mine = [_more(board, colour, thing) for thing in first]
    theirs = [_more(board, not colour, thing) for thing in second]
    return all(n == t.count for n, t in zip((*mine, *theirs), (*first, *second), strict=True)) and any(mine)


def _more(board: chess.BaseBoard, colour: chess.Color, thing: Thing, area: chess.Bitboard = chess.BB_ALL) -> int:
    return max(thing.tallies(board, [colour], area)) - max(thing.tallies(board, [not colour], area))


def _versus_words(
    board: chess.BaseBoard, first: Sequence[Thing], second: Sequence[Thing], colour: chess.Color, area: int
) -> str:
    return f"{holdings_words(board, first, [colour], area)} {holdings_words(board, second, [not colour], area)}"


def judge_same_number(claim: Claim) -> list[Judgement]:
    """“Both sides have the same number of pawns”, “the pawns are level”."""
    things = things_named(claim, "list") or [Thing.several(m.kind) for m in claim.mentions("piece")]
    areas = parts_meant(claim)
    if len(things) != 1 or not areas or (not things[0].plural and things[0].kind is not None):
        return []
    thing = things[0]
    boards = claim.boards()
    for board, area in product(boards, areas):
        if max(thing.tallies(board, [chess.WHITE], area)) == max(thing.tallies(board, [chess.BLACK], area)):
            return confirmed(Topic.NUMBER, claim.quote(), holdings_words(board, things, BOTH, area), exact=True)
    return contradicted(Topic.NUMBER, claim.quote(), holdings_words(boards[0], things, BOTH, areas[0]))


def judge_more_things(claim: Claim) -> list[Judgement]:
    """“White has more pawns”, “Black has fewer pawns than White”."""
    things = things_named(claim, "list")
    colours, areas = holder(claim), parts_meant(claim)
    if len(things) != 1 or not colours or not areas or not claim.hinted("more_after"):
        return []
    thing = things[0]
    boards = claim.boards()
    sign = -1 if claim.has("fewer") else 1
    found = []
    for board, area in product(boards, areas):
        numbers = [max(thing.tallies(board, [c], area)) for c in (chess.WHITE, chess.BLACK)]
        ahead = (numbers[0] - numbers[1]) * (1 if colours[0] else -1) * sign
        found.append(numbers[0] == numbers[1] if claim.has("neither") else ahead > 0)
    words = holdings_words(boards[0], things, BOTH, areas[0])
    if any(found):
        return confirmed(Topic.NUMBER, claim.quote(), words, exact=True)
    return contradicted(Topic.NUMBER, claim.quote(), words)


def judge_lost_count(claim: Claim) -> list[Judgement]:
    """“Each side has lost one pawn”: since the beginning, or more than the other side."""
    things, colours = things_named(claim, "list") or _his_queen(claim), holder(claim)
    if (
        not things
        or not colours
        or any(t.kind is None and not t.group for t in things)
        or not claim.hinted("counted_exactly_after")
    ):
        return []
    if len(colours) == 1 and not any(thing.exact for thing in things):
        return []
    boards = claim.boards()
    if claim.has("neither"):
        # A side that has lost none of them has all of them.
        things = [replace(thing, count=0) for thing in things]
    for board in boards:
        since = any(
            all(_lost(begin, board, colour, thing) == thing.count for thing in things for colour in colours)
            for begin in (chess.Board(), claim.scene.talk.root or chess.Board())
        )
        net = len(colours) == 1 and all(-_more(board, colours[0], thing) == thing.count for thing in things)
        if since or net:
            return confirmed(Topic.NUMBER, claim.quote(), holdings_words(board, things, colours, chess.BB_ALL))
    return contradicted(Topic.NUMBER, claim.quote(), holdings_words(boards[0], things, colours, chess.BB_ALL))


def _his_queen(claim: Claim) -> list[Thing]:
    named = claim.mentions("list")
    alone = len(named) == 1 and named[0].kind == chess.QUEEN and named[0].square is None and not named[0].plural
    return [Thing(chess.QUEEN, "", 1, True)] if alone else []


def _lost(begin: chess.BaseBoard, board: chess.BaseBoard, colour: chess.Color, thing: Thing) -> int:
    return max(thing.tallies(begin, [colour])) - max(thing.tallies(board, [colour]))


def judge_more_there(claim: Claim) -> list[Judgement]:
    """“White has a pawn more on the kingside”, “Black one more on the queenside”, “is a pawn up on that wing”."""
    colours, areas = holder(claim), parts_meant(claim)
    found = _alone(claim) if claim.has("alone") else amounts(claim)
    if len(found) != 1 or found[0][1] == EXCHANGE or not colours or not areas or not claim.said("where"):
        return []
    count, name = found[0]
    sign = -1 if claim.has("fewer") else 1
    thing = Thing(
        None if name == MINOR else chess.PIECE_NAMES.index(name), "minor" if name == MINOR else "", count, True
    )
    boards = claim.boards()
    why = holdings_words(boards[0], [thing], BOTH, areas[0])
    for board, colour, area in product(boards, colours, (*areas, chess.BB_ALL)):
        if _more(board, colour, thing, area) == sign * count:
            return confirmed(Topic.NUMBER, claim.quote(), why)
    return contradicted(Topic.NUMBER, claim.quote(), why)


def _alone(claim: Claim) -> list[tuple[int, str]]:
    """“…, Black one more on the queenside”: pawns, where they are spoken of before."""
    number = claim.mention("alone")
    begins = claim.sentence.start
    pawns = any(m.kind == chess.PAWN and begins <= m.start < claim.start for m in claim.scene.mentions)
    return [(number.value, "pawn")] if number is not None and pawns else []


def judge_more_by(claim: Claim) -> list[Judgement]:
    """“White has six pawns left, one fewer than his opponent”: by how many, whatever their number."""
    things, colours, by = things_named(claim, "list"), holder(claim), claim.mention("by")
    if len(things) != 1 or not colours or len(colours) != 1:
        return []
    count = (1 if by is None else by.value) * (-1 if claim.has("fewer") else 1)
    boards = claim.boards()
    why = holdings_words(boards[0], things, BOTH, chess.BB_ALL)
    if any(_more(board, colours[0], things[0]) == count and things[0].fits(board, colours) for board in boards):
        return confirmed(Topic.NUMBER, claim.quote(), why)
    return contradicted(Topic.NUMBER, claim.quote(), why)


def judge_number_each(claim: Claim) -> list[Judgement]:
    """“The pawns are level at six each”: a number alone, of the pawns that are spoken of before it."""
    pawns, number, areas = claim.mention("sort"), claim.mention("number"), parts_meant(claim)
    if pawns is None or pawns.kind != chess.PAWN or not pawns.plural or number is None or not areas:
        return []
    thing = Thing(chess.PAWN, "", number.value, True, plural=True)
    boards = claim.boards()
    why = holdings_words(boards[0], [thing], BOTH, areas[0])
    if any(all(thing.fits(board, [c], area) for c in BOTH) for board, area in product(boards, areas)):
        return confirmed(Topic.NUMBER, claim.quote(), why)
    return contradicted(Topic.NUMBER, claim.quote(), why)


JUDGES: Final[dict[str, Judge]] = {
    "versus": judge_versus,
    "list_more": judge_list_more,
    "same_number": judge_same_number,
    "more_things": judge_more_things,
    "lost_count": judge_lost_count,
    "more_there": judge_more_there,
    "more_by": judge_more_by,
    "number_each": judge_number_each,
}
