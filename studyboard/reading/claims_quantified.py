"""Claims of all or none of several pieces: “neither knight guards d5”, “both rooks attack it”, “hits it twice”."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import chess

from studyboard.board.naming import listed, sentence, the_piece
from studyboard.board.relations import attack_words, attackers, attackers_with_support
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted
from studyboard.reading.claims_relations import Relation, attacks, defends, guards_own, looks, target_words
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Named
from studyboard.reading.referents import referents

_TIMES: Final = {"once": 1, "twice": 2, "thrice": 3}
#: Of how many pieces “both” and “neither” are said.
_PAIR: Final = 2


def judge_none_of(claim: Claim) -> list[Judgement]:
    """“Neither knight guards d5”, “no black piece protects the rook”, “nothing of White's attacks it”."""
    target, relation = claim.mention("target"), _relation(claim)
    if target is None or relation is None or target.pronoun or not _is_none(claim):
        return []
    told: list[tuple[chess.Board, chess.Square, list[chess.Square]]] = []
    for board in claim.boards():
        for at in referents(claim.scene, target, board):
            who = _those(claim, board, at)
            if not who:
                continue
            doing = [by for by in who if by != at and relation(board, by, at)]
            if not doing:
                return confirmed(Topic.ATTACK, claim.quote(), _who_does_what(claim, board, [], at), at)
            told.append((board, at, doing))
    if not told:
        return []
    board, at, doing = told[0]
    loose = claim.mention("who")
    minor = loose is not None and loose.what is Named.PIECE and loose.kind is None
    if minor and not any(board.piece_type_at(by) not in (chess.PAWN, chess.KING) for by in doing):
        # “No piece” does not tell of pawns for certain, nor of kings.
        return []
    return contradicted(Topic.ATTACK, claim.quote(), _who_does_what(claim, board, doing, at), at, *doing[:1])


def judge_all_of(claim: Claim) -> list[Judgement]:
    """“Both knights guard d5”, “all three pawns are attacked by it”: every one of the pieces that are meant does."""
    target, relation, who = claim.mention("target"), _relation(claim), claim.mention("who")
    if target is None or relation is None or who is None or target.pronoun or who.pronoun or not who.plural:
        return []
    if who.square is not None or who.kind is None or who.vague:
        return []
    told: list[tuple[chess.Board, chess.Square, list[chess.Square]]] = []
    for board in claim.boards():
        for at in referents(claim.scene, target, board):
            for those in _of_one_side(board, referents(claim.scene, who, board)):
                doing = [by for by in those if relation(board, by, at)]
                if len(those) >= _PAIR and len(doing) == len(those):
                    return confirmed(Topic.ATTACK, claim.quote(), _who_does_what(claim, board, doing, at), at)
                if doing or len(those) == _PAIR:
                    told.append((board, at, doing))
    if not told:
        return []
    board, at, doing = told[0]
    return contradicted(Topic.ATTACK, claim.quote(), _who_does_what(claim, board, doing, at), at)


def judge_side_times(claim: Claim) -> list[Judgement]:
    """“White attacks the pawn on d5 twice”."""
    target, who, counted = claim.mention("target"), claim.mention("side"), claim.mention("times")
    times = _TIMES.get(claim.said("times"), 0) if counted is None else counted.value
    if target is None or who is None or who.colour is None or not times or target.pronoun:
        return []
    why = ""
    for board in claim.boards():
        for at in referents(claim.scene, target, board):
            counts = {len(count(board, who.colour, at)) for count in (attackers, attackers_with_support)}
            if times in counts:
                return confirmed(Topic.NUMBER, claim.quote(), attack_words(board, at), at)
            why = why or attack_words(board, at)
    return contradicted(Topic.NUMBER, claim.quote(), why) if why else []


def _relation(claim: Claim) -> Relation | None:
    """What the verb says; None where it says nothing of the kind."""
    how, target = claim.said("how"), claim.mention("target")
    hint = claim.scene.words.hint
    if hint("counts_attackers", how):
        return attacks
    if hint("counts_guards", how):
        return guards_own if target is not None and target.what is Named.PIECE else defends
    return looks if hint("counts_lookers", how) else None


def _is_none(claim: Claim) -> bool:
    """Is it said by a word of none: one of the pattern, or the article of what is named?"""
    who = claim.mention("who")
    return claim.has("none") or (who is not None and claim.scene.tokens[who.start].text in ("no", "neither"))


def _those(claim: Claim, board: chess.Board, at: chess.Square) -> list[chess.Square]:
    """The pieces of which none does it, of the side that could."""
    found: set[chess.Square] = set()
    for mention in claim.mentions("who") + claim.mentions("nor"):
        if mention.what is Named.PIECE and mention.kind is None and mention.square is None:
            found.update(
                by
                for colour in (chess.COLORS if mention.colour is None else (mention.colour,))
                for by in chess.scan_forward(board.occupied_co[colour])
            )
        else:
            found.update(referents(claim.scene, mention, board))
    return sorted(found - {at})


def _of_one_side(board: chess.Board, those: list[chess.Square]) -> Iterator[list[chess.Square]]:
    for colour in chess.COLORS:
        own = [at for at in those if board.color_at(at) == colour]
        if own:
            yield own


def _who_does_what(claim: Claim, board: chess.Board, doing: list[chess.Square], at: chess.Square) -> str:
    if board.piece_at(at):
        return attack_words(board, at)
    there = listed([the_piece(board, by) for by in doing])
    return sentence(
        f"{there} {'does' if len(doing) == 1 else 'do'}" if there else f"nothing reaches {target_words(board, at)}"
    )


JUDGES: Final[dict[str, Judge]] = {
    "none_of": judge_none_of,
    "all_of": judge_all_of,
    "side_times": judge_side_times,
}
