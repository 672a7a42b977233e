"""Claims about pawn structure and files."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

import chess

from studyboard.board.naming import counted, listed, sentence, side, the_piece
from studyboard.board.pawns import (
    is_backward,
    is_doubled,
    is_isolated,
    is_passed,
    majority,
    pawn_structure,
    pawn_words,
)
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_inventory import holder, side_after_with
from studyboard.reading.findings import Topic, Verdict
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import referents

_SAID_OF: Final = re.compile(r"§p(\d+) (?:is|are|was|were|stand|stands)$")
#: What is said of a pawn, by its word.
FEATURES: Final[dict[str, Callable[[chess.BaseBoard, chess.Square], bool]]] = {
    "passed": is_passed,
    "doubled": is_doubled,
    "isolated": is_isolated,
    "backward": is_backward,
}


def judge_feature(claim: Claim) -> list[Judgement]:
    """Features of pawns, with the side that is said to have them."""
    return [replace(_guarded_too(claim, judgement), reach=_reach(claim)) for judgement in _judge_feature(claim)]


def _guarded_too(claim: Claim, judgement: Judgement) -> Judgement:
    """“A protected passed pawn”: where nothing at all protects it, it is passed and no more."""
    words = [token.text for token in claim.scene.tokens[max(claim.sentence.start, claim.start - 2) : claim.end]]
    if claim.kind != "passed" or judgement.verdict is not Verdict.CONFIRMED or "protected" not in words:
        return judgement
    if claim.hinted("or_less_after"):
        return judgement
    if any(_is_guarded(board, at) for board in claim.boards() for at in judgement.squares):
        return judgement
    return replace(judgement, verdict=Verdict.CONTRADICTED, why=f"Nothing protects it. {judgement.why}")


def _is_guarded(board: chess.BaseBoard, at: chess.Square) -> bool:
    return bool(board.attackers_mask(bool(board.color_at(at)), at))


def _reach(claim: Claim) -> tuple[int, int] | None:
    """The words from the side that has the pawns to the claim, where one is named around it."""
    owner = _owner(claim)
    near = [m for m in claim.scene.mentions if m.what is Named.SIDE and m.colour == owner and owner is not None]
    before = [m for m in near if claim.sentence.start <= m.start < claim.start]
    after = [m for m in near if claim.end <= m.start < claim.sentence.end]
    if before:
        return before[-1].start, claim.end
    return (claim.start, after[0].end) if after else None


def _judge_feature(claim: Claim) -> list[Judgement]:
    """“The d-pawn is passed”, “an isolated pawn on d4”, “doubled pawns on the c-file”."""
    feature = FEATURES[claim.kind]
    thing = claim.mention("piece")
    of_pawn = thing is None or thing.kind == chess.PAWN or _one_of_those(claim, thing)
    if not of_pawn or _in_general(claim, thing):
        return []
    said_of = _SAID_OF.search(claim.before())
    if thing is None and said_of and claim.scene.mentions[int(said_of[1])].kind not in (chess.PAWN, None):
        # “The rook and the queen are doubled on the d-file.”
        return []
    square, file = claim.mention("square"), claim.mention("file")
    colours = {m.colour for group in claim.subjects() for m in group if m.colour is not None}
    owner = _owner(claim)
    if owner is not None and (thing is None or thing.colour is None):
        colours = {owner}
    if thing is not None and thing.colour is not None:
        colours = {thing.colour}
    boards = claim.boards()
    candidates: list[chess.Square] = []
    for board in boards:
        pawns = referents(claim.scene, thing, board) if thing is not None else list(chess.scan_forward(board.pawns))
        if square is not None:
            pawns = [at for at in pawns if at == square.square]
        if file is not None:
            pawns = [at for at in pawns if chess.square_file(at) == file.file]
        if claim.said("letter"):
            pawns = [at for at in pawns if "abcdefgh"[chess.square_file(at)] == claim.said("letter")]
        pawns = [at for at in pawns if board.piece_type_at(at) == chess.PAWN]
        pawns = [at for at in pawns if owner is None or board.color_at(at) in colours]
        # “A protected passed pawn” is one that something guards, if any is.
        pawns.sort(key=lambda at: not _is_guarded(board, at))
        named = thing is not None or square is not None or file is not None
        candidates = candidates or pawns
        for at in pawns:
            if feature(board, at) and (named or not colours or board.color_at(at) in colours):
                return confirmed(
                    Topic.PAWNS,
                    claim.quote(),
                    sentence(f"{the_piece(board, at)} is {claim.kind}"),
                    at,
                    exact=owner is not None or (thing is not None and _certain(thing, pawns, board, feature)),
                )
    board = boards[0]
    if thing is not None and not candidates and owner is None:
        return undecided(Topic.PAWNS, claim.quote(), "It is not clear which pawn is meant.")
    if len(candidates) == 1:
        why = sentence(f"{the_piece(board, candidates[0])} is not {claim.kind}{_why(board, candidates[0], claim.kind)}")
        return contradicted(Topic.PAWNS, claim.quote(), why, *candidates)
    words = " ".join(words for colour in (colours or set(chess.COLORS)) for words in pawn_words(board, colour))
    return contradicted(Topic.PAWNS, claim.quote(), words or f"No pawn is {claim.kind} here.")


def _one_of_those(claim: Claim, thing: Mention) -> bool:
    """“The one on b7”, where pawns are spoken of before it in the sentence."""
    if thing.kind is not None or thing.square is None or thing.pronoun:
        return False
    return any(m.kind == chess.PAWN and claim.sentence.start <= m.start < thing.start for m in claim.scene.mentions)


def _in_general(claim: Claim, thing: Mention | None) -> bool:
    """“A passed pawn is a force”, “plays for a passed pawn”: said of no pawn on the board."""
    if claim.hinted("is_what_after"):
        return True
    if thing is not None and (thing.definite or thing.square is not None or thing.file is not None):
        return False
    return _owner(claim) is None and (claim.hinted("general_after") or claim.hinted("aim_before"))


def _certain(
    thing: Mention,
    pawns: Sequence[chess.Square],
    board: chess.BaseBoard,
    feature: Callable[[chess.BaseBoard, chess.Square], bool],
) -> bool:
    """Is it said of this pawn, or these, and of no other?"""
    if thing.square is None and thing.file is None and not (thing.plural and thing.colour is not None):
        return False
    return all(feature(board, at) for at in pawns) or thing.plural


def _owner(claim: Claim) -> chess.Color | None:
    """The side that is said right before to have it: “Black has a passed pawn”."""
    before = [m for m in claim.scene.mentions if claim.sentence.start <= m.start < claim.start and m.colour is not None]
    if not before:
        return next(iter(side_after_with(claim)), None)
    if before[-1].what is not Named.SIDE:
        return None
    gap = " ".join(token.text for token in claim.scene.tokens[before[-1].end : claim.start])
    if not gap:
        return before[-1].colour if claim.scene.tokens[claim.start - 1].text.endswith(("'s", "'")) else None
    return before[-1].colour if claim.scene.words.hint("has_gap", gap) else None


def judge_count_feature(claim: Claim) -> list[Judgement]:
    """“White has three passed pawns”, “there are two isolated pawns”."""
    number, thing = claim.mention("number"), claim.mention("pawns")
    kind = next((name for name in FEATURES if claim.scene.words.hint(f"is_{name}", claim.match.group())), "")
    wanted = 0 if claim.has("neither") or claim.has("none") else 2 if claim.has("pair") else None
    if wanted is None and number is not None:
        wanted = number.value
    if wanted is None or thing is None or thing.kind != chess.PAWN or not kind or thing.square is not None:
        return []
    if thing.file is not None or not claim.hinted("counted_after") or claim.hinted("not_all_after"):
        return []
    owner = holder(claim) or (() if thing.colour is None else (thing.colour,))
    feature, told = FEATURES[kind], []
    for board in claim.boards():
        counts = [sum(feature(board, at) for at in board.pieces(chess.PAWN, c)) for c in owner or chess.COLORS]
        told.append((counts, board))
        every = claim.has("both") or claim.has("neither") or claim.has("none")
        right = all(n == wanted for n in counts) if every else wanted in (*counts, sum(counts))
        if right:
            return confirmed(Topic.PAWNS, claim.quote(), _counts_words(counts, owner, kind))
    if not owner and not _of_both(claim, told[0][0], wanted):
        return undecided(Topic.PAWNS, claim.quote(), _counts_words(told[0][0], owner, kind))
    return contradicted(Topic.PAWNS, claim.quote(), _counts_words(told[0][0], owner, kind))


def _of_both(claim: Claim, counts: Sequence[int], wanted: int) -> bool:
    """Is it said of both sides together, or wrong of either: “not a single passed pawn on the board”?"""
    return claim.hinted("of_both_after") or wanted not in counts


def _counts_words(counts: Sequence[int], owner: Sequence[chess.Color], kind: str) -> str:
    sides = zip(owner or chess.COLORS, counts, strict=True)
    return " ".join(f"{side(colour)} has {counted(number, f'{kind} pawn')}." for colour, number in sides)


def _why(board: chess.BaseBoard, at: chess.Square, kind: str) -> str:
    colour = board.color_at(at)
    if board.piece_type_at(at) != chess.PAWN or colour is None:
        return ""
    file = chess.square_file(at)
    beside = sum(chess.BB_FILES[f] for f in (file - 1, file, file + 1) if 0 <= f <= 7)
    if kind == "passed":
        ahead = [s for s in board.pieces(chess.PAWN, not colour) if (s >> 3 > at >> 3) == colour and s >> 3 != at >> 3]
        stops = [the_piece(board, s) for s in ahead if chess.BB_SQUARES[s] & beside]
        return f": {listed(stops)} can stop it" if stops else ""
    if kind == "isolated":
        friends = [
            the_piece(board, s)
            for s in board.pieces(chess.PAWN, colour)
            if chess.square_file(s) in (file - 1, file + 1)
        ]
        return f": {listed(friends)} can stand by it" if friends else ""
    return ""


def judge_islands(claim: Claim) -> list[Judgement]:
    """“Three pawn islands”."""
    number = claim.mention("number")
    if number is None:
        return []
    colours = {m.colour for group in claim.subjects() for m in group if m.colour is not None} or set(chess.COLORS)
    for board in claim.boards():
        for colour in colours:
            if pawn_structure(board, colour).islands == number.value:
                return confirmed(
                    Topic.PAWNS, claim.quote(), f"{side(colour)} has {counted(number.value, 'pawn island')}."
                )
    board = claim.boards()[0]
    words = " ".join(f"{side(c)} has {counted(pawn_structure(board, c).islands, 'pawn island')}." for c in colours)
    return contradicted(Topic.PAWNS, claim.quote(), words)


def judge_majority(claim: Claim) -> list[Judgement]:
    """“White has a majority on the queenside”, “the queenside majority is White's”, “has more pawns there”."""
    hint, words_said = claim.scene.words.hint, claim.quote().lower()
    kingside = hint("king_wing", words_said)
    if kingside == hint("queen_wing", words_said):
        return []
    who = holder(claim)
    if who is None:
        return []
    wing = "kingside" if kingside else "queenside"
    held = majority(claim.boards()[0], kingside)
    found = {majority(board, kingside) for board in claim.boards()}
    words = f"{'Neither side' if held is None else side(held)} has more pawns on the {wing}."
    if claim.has("neither"):
        right = None in found
    else:
        right = bool(found & set(who)) if len(who) == 1 else bool(found - {None})
    if right:
        return confirmed(Topic.PAWNS, claim.quote(), words)
    return contradicted(Topic.PAWNS, claim.quote(), words)


JUDGES: Final[dict[str, Judge]] = {
    "passed": judge_feature,
    "doubled": judge_feature,
    "isolated": judge_feature,
    "backward": judge_feature,
    "islands": judge_islands,
    "majority": judge_majority,
    "count_feature": judge_count_feature,
}
