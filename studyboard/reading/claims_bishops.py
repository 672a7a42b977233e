"""Claims about bishops: the pair, opposite colours, on squares of which colour they move."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import chess

from studyboard.board.naming import counted, listed, sentence, side
from studyboard.board.rights import bishops_words, has_bishop_pair, opposite_bishops
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_inventory import BOTH, holder
from studyboard.reading.claims_material import of_kind, says
from studyboard.reading.findings import Topic
from studyboard.reading.referents import referents


def judge_bishop_pair(claim: Claim) -> list[Judgement]:
    """“White has the bishop pair”, “Black is without the bishop pair”, “neither side has it”."""
    if not of_kind(claim, chess.BISHOP) or (claim.has("two") and not says(claim, "two", "two", "both")):
        return []
    who = claim.mention("side") or claim.mention("piece")
    if who is not None and who.kind is not None:
        return []
    colours = list(holder(claim) or chess.COLORS)
    boards = claim.boards()
    kept = claim.has("none") and claim.has("neither")
    denied = not kept and (claim.has("none") or claim.has("neither") or says(claim, "kind2", "no"))
    sure = denied or kept or claim.has("both")
    pairs = [[has_bishop_pair(board, colour) for colour in colours] for board in boards]
    right = any((not any(of) if denied else all(of)) if sure else any(of) for of in pairs)
    words = " ".join(
        f"{side(colour)} has {counted(len(boards[0].pieces(chess.BISHOP, colour)), 'bishop')}." for colour in colours
    )
    if right:
        return confirmed(Topic.MATERIAL, claim.quote(), words, exact=who is not None)
    if claim.has("bare"):
        return undecided(
            Topic.MATERIAL, claim.quote(), "Nobody has both bishops here; it may be said of another moment."
        )
    return contradicted(Topic.MATERIAL, claim.quote(), words)


def judge_opposite_bishops(claim: Claim) -> list[Judgement]:
    """“Opposite-coloured bishops”."""
    return _bishops(claim, wanted=True)


def judge_same_bishops(claim: Claim) -> list[Judgement]:
    """“Bishops of the same colour”."""
    return _bishops(claim, wanted=False)


def _bishops(claim: Claim, *, wanted: bool) -> list[Judgement]:
    if not of_kind(claim, chess.BISHOP):
        return []
    boards = claim.boards()
    for board in boards:
        words = bishops_words(board)
        if words is not None and opposite_bishops(board) == wanted:
            return confirmed(
                Topic.MATERIAL,
                claim.quote(),
                words,
                *board.pieces(chess.BISHOP, True),
                *board.pieces(chess.BISHOP, False),
            )
    words = bishops_words(boards[0])
    if words is None:
        numbers = [counted(len(boards[0].pieces(chess.BISHOP, colour)), "bishop") for colour in (True, False)]
        words = f"White has {numbers[0]} and Black {numbers[1]}."
    return contradicted(Topic.MATERIAL, claim.quote(), words)


def judge_bishop_shade(claim: Claim) -> list[Judgement]:
    """“Both bishops run on light squares”, “White's bishop is dark-squared”."""
    thing = claim.mention("piece")
    if thing is None or thing.kind != chess.BISHOP or thing.moves_to or thing.other:
        return []
    owner = claim.mention("side")
    if owner is not None and thing.colour is None:
        # “The bishop that Black has kept is the light-squared one.”
        thing = replace(thing, colour=owner.colour)
    mask = chess.BB_LIGHT_SQUARES if claim.has("light") else chess.BB_DARK_SQUARES
    boards = claim.boards()
    for board in boards:
        bishops = board.bishops & sum(
            chess.BB_SQUARES[at] for at in referents(claim.scene, replace(thing, light=None), board)
        )
        if bishops and (not bishops & ~mask if thing.plural else bishops & mask):
            return confirmed(Topic.MATERIAL, claim.quote(), _shades(board), *chess.scan_forward(bishops), exact=True)
    return contradicted(Topic.MATERIAL, claim.quote(), _shades(boards[0]))


def judge_shade_too(claim: Claim) -> list[Judgement]:
    """“… and Black's on the dark ones”, said after the other side's bishop."""
    who = claim.mention("side")
    spoken = any(m.kind == chess.BISHOP for m in claim.scene.mentions if claim.sentence.start <= m.start < claim.start)
    if who is None or who.colour is None or not spoken:
        return []
    mask = chess.BB_LIGHT_SQUARES if claim.said("light") else chess.BB_DARK_SQUARES
    boards = claim.boards()
    for board in boards:
        if board.pieces_mask(chess.BISHOP, who.colour) & mask:
            return confirmed(Topic.MATERIAL, claim.quote(), _shades(board))
    return contradicted(Topic.MATERIAL, claim.quote(), _shades(boards[0]))


def _shades(board: chess.BaseBoard) -> str:
    told = []
    for colour in BOTH:
        for at in board.pieces(chess.BISHOP, colour):
            shade = "light" if chess.BB_SQUARES[at] & chess.BB_LIGHT_SQUARES else "dark"
            told.append(f"the bishop on {chess.square_name(at)} moves on {shade} squares")
    return sentence(listed(told)) if told else "There is no bishop on the board."


JUDGES: Final[dict[str, Judge]] = {
    "bishop_pair": judge_bishop_pair,
    "opposite_bishops": judge_opposite_bishops,
    "same_bishops": judge_same_bishops,
    "bishop_shade": judge_bishop_shade,
    "shade_too": judge_shade_too,
}
