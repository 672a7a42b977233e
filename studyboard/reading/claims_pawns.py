"""Claims about pawn structure and files."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import chess

from studyboard.board.naming import counted, listed, sentence, side, the_piece
from studyboard.board.pawns import (
    is_backward,
    is_doubled,
    is_half_open_file,
    is_isolated,
    is_open_file,
    is_passed,
    majority,
    pawn_structure,
    pawn_words,
)
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Named
from studyboard.reading.referents import referents

_FEATURES: Final[dict[str, Callable[[chess.BaseBoard, chess.Square], bool]]] = {
    "passed": is_passed,
    "doubled": is_doubled,
    "isolated": is_isolated,
    "backward": is_backward,
}


def judge_feature(claim: Claim) -> list[Judgement]:
    """“The d-pawn is passed”, “an isolated pawn on d4”, “doubled pawns on the c-file”."""
    feature = _FEATURES[claim.kind]
    thing = claim.mention("piece")
    if thing is not None and thing.kind != chess.PAWN:
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
        named = thing is not None or square is not None or file is not None
        candidates = candidates or pawns
        for at in pawns:
            if feature(board, at) and (named or not colours or board.color_at(at) in colours):
                return confirmed(
                    Topic.PAWNS,
                    claim.quote(),
                    sentence(f"{the_piece(board, at)} is {claim.kind}"),
                    at,
                    exact=owner is not None,
                )
    board = boards[0]
    if thing is not None and not candidates and owner is None:
        return undecided(Topic.PAWNS, claim.quote(), "It is not clear which pawn is meant.")
    if len(candidates) == 1:
        why = sentence(f"{the_piece(board, candidates[0])} is not {claim.kind}{_why(board, candidates[0], claim.kind)}")
        return contradicted(Topic.PAWNS, claim.quote(), why, *candidates)
    words = " ".join(words for colour in (colours or set(chess.COLORS)) for words in pawn_words(board, colour))
    return contradicted(Topic.PAWNS, claim.quote(), words or f"No pawn is {claim.kind} here.")


def _owner(claim: Claim) -> chess.Color | None:
    """The side that is said right before to have it: “Black has a passed pawn”."""
    before = [m for m in claim.scene.mentions if claim.sentence.start <= m.start < claim.start and m.colour is not None]
    if not before or before[-1].what is not Named.SIDE:
        return None
    gap = " ".join(token.text for token in claim.scene.tokens[before[-1].end : claim.start])
    return before[-1].colour if claim.scene.words.hint("has_gap", gap) else None


def judge_empty_file(claim: Claim) -> list[Judgement]:
    """“There is no pawn on the b-file”, “no black pawn on the d-file”."""
    thing = claim.mention("piece")
    if thing is None or thing.kind != chess.PAWN or thing.file is None:
        return []
    if claim.scene.tokens[thing.start].text != "no":
        return []
    boards = claim.boards(wide=True)
    left: list[chess.Square] = []
    for board in boards:
        mask = board.pawns & chess.BB_FILES[thing.file]
        mask &= board.occupied if thing.colour is None else board.occupied_co[thing.colour]
        if not mask:
            return confirmed(Topic.PAWNS, claim.quote(), f"There is none on the {chess.FILE_NAMES[thing.file]}-file.")
        left = left or list(chess.scan_forward(mask))
    names = listed([the_piece(boards[0], at) for at in left if boards[0].piece_at(at)])
    return contradicted(Topic.PAWNS, claim.quote(), sentence(f"there is {names}"), *left)


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
    """“White has a majority on the queenside”."""
    who = claim.mention("side") or claim.mention("piece")
    kingside = claim.said("wing") == "kingside"
    found = {majority(board, kingside) for board in claim.boards()}
    wanted = None if who is None else who.colour
    holder = majority(claim.boards()[0], kingside)
    words = f"{'Neither side' if holder is None else side(holder)} has more pawns on the {claim.said('wing')}."
    if wanted is None:
        return (
            confirmed(Topic.PAWNS, claim.quote(), words)
            if found - {None}
            else contradicted(Topic.PAWNS, claim.quote(), words)
        )
    if wanted in found:
        return confirmed(Topic.PAWNS, claim.quote(), words)
    return contradicted(Topic.PAWNS, claim.quote(), words)


def judge_open_file(claim: Claim) -> list[Judgement]:
    """“The open c-file”, “the d-file is half open”."""
    file = claim.mention("file")
    if file is None or file.file is None:
        return []
    half = claim.has("half") or claim.hinted("half_before") or claim.hinted("half") or claim.hinted("open_for_after")
    letter = "abcdefgh"[file.file]
    boards = claim.boards(wide=True)
    for board in boards:
        if half and any(is_half_open_file(board, file.file, colour) for colour in chess.COLORS):
            return confirmed(Topic.PAWNS, claim.quote(), f"One side has no pawn on the {letter}-file.")
        if is_open_file(board, file.file):
            return confirmed(Topic.PAWNS, claim.quote(), f"There is no pawn on the {letter}-file.")
    board = boards[0]
    pawns = list(chess.scan_forward(board.pawns & chess.BB_FILES[file.file]))
    names = listed([f"{side(bool(board.color_at(at)))}'s pawn on {chess.square_name(at)}" for at in pawns])
    why = f"On the {letter}-file there is {names}." if pawns else f"There is no pawn on the {letter}-file at all."
    return contradicted(Topic.PAWNS, claim.quote(), why, *pawns)


JUDGES: Final[dict[str, Judge]] = {
    "passed": judge_feature,
    "doubled": judge_feature,
    "isolated": judge_feature,
    "backward": judge_feature,
    "islands": judge_islands,
    "majority": judge_majority,
    "open_file": judge_open_file,
    "empty_file": judge_empty_file,
}
