"""Claims hidden in how things are called: “his only bishop”, “between two white bishops”."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.naming import counted, side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted
from studyboard.reading.claims_inventory import BOTH, one_side_before
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention


def judge_only_one(claim: Claim) -> list[Judgement]:
    """“It is his only bishop”: the side has one; where no side is named, one of them has."""
    thing = claim.mention("only")
    if thing is None or thing.kind in (None, chess.KING) or thing.plural or thing.square is not None:
        return []
    words = [token.text for token in claim.scene.tokens[thing.start : thing.end]]
    if len(words) != 3 or not claim.scene.words.hint("his_only", " ".join(words[:2])):
        return []
    colours = (thing.colour,) if thing.colour is not None else one_side_before(claim) or BOTH
    return _judge_number(claim, thing, 1, colours)


def judge_so_many(claim: Claim) -> list[Judgement]:
    """“Between two white bishops”: queried where that side has fewer."""
    thing, number = claim.mention("piece"), claim.mention("number")
    if thing is None or number is None or thing.kind is None or thing.colour is None or not thing.plural:
        return []
    if thing.square is not None or thing.vague or number.value < 2 or claim.hinted("traded_before"):
        return []
    shown = [claim.scene.start, *(step.board for step in claim.scene.steps)]
    if any(len(board.pieces(thing.kind, thing.colour)) >= number.value for board in shown):
        return []
    return _judge_number(claim, thing, number.value, (thing.colour,))


def _judge_number(claim: Claim, thing: Mention, number: int, colours: tuple[chess.Color, ...]) -> list[Judgement]:
    kind = thing.kind or chess.PAWN
    boards = claim.boards()
    masks = {True: chess.BB_LIGHT_SQUARES, False: chess.BB_DARK_SQUARES, None: chess.BB_ALL}
    found = {
        (board.fen(), colour): chess.popcount(board.pieces_mask(kind, colour) & masks[thing.light])
        for board in boards
        for colour in colours
    }
    here = [found[boards[0].fen(), colour] for colour in colours]
    told = " ".join(f"{side(c)} has {counted(n, chess.piece_name(kind))}." for c, n in zip(colours, here, strict=True))
    judged = confirmed if number in found.values() else contradicted
    return judged(Topic.NUMBER, claim.quote(), told)


JUDGES: Final[dict[str, Judge]] = {"only_one": judge_only_one, "so_many": judge_so_many}
