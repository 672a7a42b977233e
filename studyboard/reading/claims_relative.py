"""Claims in a relative clause: “f7, which only the king protects”, “the pawn that the bishop attacks”."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.relations import attack_words, attackers
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_relations import Relation, attacks, guards_own
from studyboard.reading.claims_sole import sole
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention
from studyboard.reading.referents import referents


def judge_which_guards(claim: Claim) -> list[Judgement]:
    """“… f7, which only the king protects”."""
    return _judge_which(claim, lambda board, by, at: guards_own(board, by, at) or not board.piece_at(at))


def judge_which_attacks(claim: Claim) -> list[Judgement]:
    """“… the pawn that the bishop attacks”."""
    return _judge_which(claim, attacks)


def _judge_which(claim: Claim, relation: Relation) -> list[Judgement]:
    by, target = claim.mention("by"), claim.mention("target")
    if by is None or target is None or by.pronoun or target.pronoun or by.kind is None:
        return []
    seen: tuple[chess.Board, chess.Square] | None = None
    for board in claim.boards():
        for at in attacked_here(claim, target, board):
            if claim.scene.words.hint("only", claim.match.group()) and not _alone(claim, board, at, by):
                seen = seen or (board, at)
                continue
            bys = [square for square in referents(claim.scene, by, board) if square != at]
            if any(relation(board, square, at) for square in bys):
                return confirmed(Topic.ATTACK, claim.quote(), attack_words(board, at), at)
            seen = seen or (board, at)
    if seen is None:
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which piece is meant.")
    return contradicted(Topic.ATTACK, claim.quote(), attack_words(*seen), seen[1])


def attacked_here(claim: Claim, target: Mention, board: chess.Board) -> list[chess.Square]:
    """What the name can mean; behind “{Re8}attacks”, if any of it, what the piece that moved attacks."""
    squares = referents(claim.scene, target, board)
    if not claim.hinted("attacks_before"):
        return squares
    return [at for at in squares if any(attacks(board, by, at) for by in claim.movers())] or squares


def _alone(claim: Claim, board: chess.Board, at: chess.Square, by: Mention) -> bool:
    """“… which only the king protects”: is there no other guard?"""
    owner = board.color_at(at)
    colours = list(chess.COLORS) if owner is None else [owner]
    return any(sole(claim, board, attackers(board, colour, at), [by]) for colour in colours)


JUDGES: Final[dict[str, Judge]] = {"which_guards": judge_which_guards, "which_attacks": judge_which_attacks}
