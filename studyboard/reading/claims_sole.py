"""Claims that one piece alone does it: “only the king guards f7”, “the knight is the only attacker of e4”."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import chess

from studyboard.board.relations import attack_words, attackers, attackers_with_support
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention
from studyboard.reading.referents import referents, squares_before

#: A pronoun that can mean more pieces than this is held against none of them.
_FEW: Final = 3


def judge_sole(claim: Claim) -> list[Judgement]:
    """“Only the king guards f7”, “nobody but the bishop attacks it”, “the only defender of e5 is the knight”."""
    target, named = claim.mention("target"), claim.things() or claim.mentions("piece")
    guards = _guards(claim)
    if target is None or guards is None or not _named_plainly(named) or target.kind == chess.KING:
        return []
    seen: list[tuple[chess.Board, chess.Square]] = []
    for board in claim.boards():
        for at in _targets(claim, target, board):
            for colour in _colours(board, at, guards):
                if not _can_be_theirs(claim, board, named, colour):
                    # “My knight covers it. And that knight was the last guard of e6”, of a black pawn: another one.
                    continue
                counts = attackers(board, colour, at), attackers_with_support(board, colour, at)
                if any(sole(claim, board, those, named) for those in counts):
                    return confirmed(Topic.ATTACK, claim.quote(), attack_words(board, at), at)
                seen.append((board, at))
    return _not_so(claim, target, seen, "" if not seen else attack_words(*seen[0]))


def sole(claim: Claim, board: chess.Board, those: Sequence[chess.Square], named: list[Mention]) -> bool:
    """Are the named pieces, each of them and no others, among *those*, pinned ones counted or not?"""
    each = [set(referents(claim.scene, mention, board)) for mention in named]
    free = [square for square in those if not board.is_pinned(bool(board.color_at(square)), square)]
    return any(
        some and set(some) <= set().union(*each) and all(one & set(some) for one in each) for some in (those, free)
    )


def _can_be_theirs(claim: Claim, board: chess.Board, named: list[Mention], colour: chess.Color) -> bool:
    """Is there any of them of this side among what each name can mean, where a word points back at it?"""
    pointing = [m for m in named if claim.scene.tokens[m.start].text in claim.scene.words.names.pointing]
    return all(any(board.color_at(at) == colour for at in referents(claim.scene, m, board)) for m in pointing)


def _not_so(claim: Claim, target: Mention, seen: list[tuple[chess.Board, chess.Square]], why: str) -> list[Judgement]:
    if not seen or (target.pronoun and len({at for _, at in seen}) > _FEW):
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which piece is meant.")
    return contradicted(Topic.ATTACK, claim.quote(), why, seen[0][1])


def _named_plainly(named: list[Mention]) -> bool:
    return bool(named) and all(m.kind is not None and m.definite and not m.plural and not m.vague for m in named)


def _targets(claim: Claim, target: Mention, board: chess.Board) -> list[chess.Square]:
    if target.pronoun != "it":
        return referents(claim.scene, target, board)
    doing = {at for m in claim.mentions("things") for at in referents(claim.scene, m, board)}
    meant = [*referents(claim.scene, target, board), *squares_before(claim.scene, target.start)]
    return [at for at in meant if board.piece_type_at(at) != chess.KING and at not in doing]


def _colours(board: chess.Board, at: chess.Square, guards: bool) -> list[chess.Color]:
    owner = board.color_at(at)
    return list(chess.COLORS) if owner is None else [owner if guards else not owner]


def _guards(claim: Claim) -> bool | None:
    """Is it said of guards (True) or of attackers; None where of neither, or where no word says that these are all."""
    role = claim.mention("role")
    words = claim.said("how")
    if role is not None:
        said = [token.text for token in claim.scene.tokens[role.start : role.end]]
        all_named = claim.has("number") or claim.scene.words.hint("sole_before", " ".join(said[:-1]))
        words = (words or said[-1]) if all_named else ""
    guard, attack = claim.scene.words.hint("counts_guards", words), claim.scene.words.hint("counts_attackers", words)
    return None if guard == attack else guard


JUDGES: Final[dict[str, Judge]] = {"sole": judge_sole}
