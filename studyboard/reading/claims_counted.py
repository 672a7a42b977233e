"""Claims that count who attacks or guards what: “a second attacker”, “attacks three pawns”, “protects nothing”."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.naming import listed, sentence, the_piece
from studyboard.board.relations import attack_words, attackers, attackers_with_support
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_relations import attacks, doers, guards_own
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import referents

_ORDINALS: Final = {"second": 2, "third": 3, "fourth": 4, "fifth": 5}


def judge_ordinal_piece(claim: Claim) -> list[Judgement]:
    """“It is the third piece that protects e5”, “adds a second attacker against d5”: there are at least so many."""
    thing = claim.mention("piece")
    target = claim.mention("target")
    if thing is None or target is None or thing.kind is not None or thing.pronoun:
        return []
    words = [token.text for token in claim.scene.tokens[thing.start : thing.end]]
    number = next((_ORDINALS[word] for word in words if word in _ORDINALS), 0)
    return _judge_count(claim, target, number, f"{claim.said('how')} {words[-1]}", least=True, colour=thing.colour)


def judge_count_pieces(claim: Claim) -> list[Judgement]:
    """“Two attackers against e5”, “two pieces protect e5”."""
    number, target, thing = claim.mention("number"), claim.mention("target"), claim.mention("piece")
    if number is None or target is None or (thing is not None and thing.plural != (number.value > 1)):
        return []
    if thing is not None and (thing.pronoun or thing.vague or thing.square is not None):
        return []
    owner = thing or claim.mention("side")
    colour = None if owner is None else owner.colour
    sort = None if thing is None else thing.kind
    how = f"{claim.said('how')} {claim.said('noun')}"
    if thing is not None and not how.strip():
        # “The pawn has one attacker.”
        how = claim.scene.tokens[thing.end - 1].text
    return _judge_count(claim, target, number.value, how, least=False, colour=colour, sort=sort)


def _judge_count(
    claim: Claim,
    target: Mention,
    number: int,
    how: str,
    *,
    least: bool,
    colour: chess.Color | None,
    sort: chess.PieceType | None = None,
) -> list[Judgement]:
    """Is the number of those that attack (or guard) the target right, or at least so big?

    sort: of which kind they are, None for any
    """
    hint = claim.scene.words.hint
    attack, guard = hint("counts_attackers", how), hint("counts_guards", how)
    if not number or attack == guard or target.kind == chess.KING:
        return []
    if target.pronoun and (target.pronoun != "it" or colour is None):
        return []
    most = 0
    seen: tuple[chess.Board, chess.Square] | None = None
    for board in claim.boards(wide=True):
        targets = referents(claim.scene, target, board)
        if target.pronoun:
            targets = [at for at in targets if board.color_at(at) is (colour if guard else not colour)]
            if len(targets) != 1:
                continue
        for at in targets:
            owner = board.color_at(at)
            sides = [colour] if colour is not None else [owner if guard else not owner] if owner is not None else []
            for side in sides or ([] if target.what is not Named.SQUARE else list(chess.COLORS)):
                both = attackers(board, side, at), attackers_with_support(board, side, at)
                counts = [sum(sort in (None, board.piece_type_at(by)) for by in those) for those in both]
                if number in counts or (least and max(counts) >= number):
                    return confirmed(Topic.NUMBER, claim.quote(), attack_words(board, at), at)
                most = max(most, *counts)
                seen = seen or (board, at)
    if seen is None:
        return undecided(Topic.NUMBER, claim.quote(), "It is not clear what is meant.")
    if most > number:
        return undecided(Topic.NUMBER, claim.quote(), attack_words(*seen))
    return contradicted(Topic.NUMBER, claim.quote(), attack_words(*seen), seen[1])


def judge_attacks_so_many(claim: Claim) -> list[Judgement]:
    """“On d4 it attacks three white pawns”: queried where no piece that is meant attacks so many of them."""
    number, sort, groups = claim.mention("number"), claim.mention("piece"), claim.subjects()
    if number is None or sort is None or not sort.plural or sort.pronoun or sort.square is not None or sort.vague:
        return []
    if sort.kind is None and sort.colour is None:
        # “In a fork, the knight attacks two pieces.”
        return []
    if len(groups) != 1 or len(groups[0]) != 1 or groups[0][0].plural or groups[0][0].what is not Named.PIECE:
        return []
    guards = claim.scene.words.hint("counts_guards", claim.said("how"))
    most, without_king, told = -1, -1, ""
    for board in claim.boards():
        for by in doers(claim, board, groups[0]):
            targets = [at for at in _targets(board, by, guards) if _is_of(board, at, sort)]
            if len(targets) > most:
                most, told = len(targets), _target_words(board, by, guards, targets, "none of them")
                without_king = sum(board.piece_type_at(at) != chess.KING for at in targets)
    if most < 0:
        return []
    if number.value in (most, without_king):
        return confirmed(Topic.NUMBER, claim.quote(), told)
    return contradicted(Topic.NUMBER, claim.quote(), told) if number.value > most else []


def judge_does_nothing(claim: Claim) -> list[Judgement]:
    """“The knight on e4 protects nothing”."""
    groups = claim.subjects()
    if len(groups) != 1 or len(groups[0]) != 1 or groups[0][0].kind is None or groups[0][0].plural:
        return []
    guards = claim.scene.words.hint("counts_guards", claim.said("how"))
    told = ""
    for board in claim.boards():
        for by in doers(claim, board, groups[0]):
            targets = _targets(board, by, guards)
            words = _target_words(board, by, guards, targets, "nothing")
            if not targets:
                return confirmed(Topic.ATTACK, claim.quote(), words, by)
            told = told or words
    return contradicted(Topic.ATTACK, claim.quote(), told) if told else []


def _targets(board: chess.Board, by: chess.Square, guards: bool) -> list[chess.Square]:
    """Squares of the pieces that it attacks, the king among them, or of those of its side that it guards."""
    if guards:
        return [at for at in chess.scan_forward(board.occupied & ~board.kings) if guards_own(board, by, at)]
    return [at for at in chess.scan_forward(board.occupied) if attacks(board, by, at)]


def _is_of(board: chess.Board, at: chess.Square, sort: Mention) -> bool:
    return sort.kind in (None, board.piece_type_at(at)) and sort.colour in (None, board.color_at(at))


def _target_words(board: chess.Board, by: chess.Square, guards: bool, targets: list[chess.Square], none: str) -> str:
    """“The knight on d6 attacks the queen on b5.” none: what is said where there is no target"""
    names = listed([the_piece(board, at) for at in targets]) or none
    return sentence(f"{the_piece(board, by)} {'guards' if guards else 'attacks'} {names}")


JUDGES: Final[dict[str, Judge]] = {
    "ordinal_piece": judge_ordinal_piece,
    "count_pieces": judge_count_pieces,
    "attacks_so_many": judge_attacks_so_many,
    "does_nothing": judge_does_nothing,
}
