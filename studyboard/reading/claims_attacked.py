"""Claims that something is attacked or guarded: by whom, how often, or by nothing."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import chess

from studyboard.board.relations import attack_words, attackers, attackers_with_support
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_relations import (
    Relation,
    attacks,
    guards_own,
    guards_own_or_square,
    is_nowhere,
    no_such,
)
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import referents, royal, salient

#: A pronoun that can mean more pieces than this is held against none of them: where one piece does it, where several.
_FEW, _MANY = 4, 8
_TIMES: Final = {"once": 1, "twice": 2, "thrice": 3}


def judge_attacked(claim: Claim) -> list[Judgement]:
    """“The rook is attacked twice by …”."""
    return _passive(claim, attacks, _enemy_of)


def judge_guarded(claim: Claim) -> list[Judgement]:
    """“The knight is guarded by …”, “nothing guards it”."""
    return _passive(claim, guards_own_or_square, lambda board, at: bool(board.color_at(at)))


def judge_relies(claim: Claim) -> list[Judgement]:
    """“The pawn leans on its neighbour, the queen”: where both are of one side, it is guarded by what it leans on."""
    thing, by = claim.mention("piece"), claim.things()
    if thing is None or thing.pronoun or any(m.what is not Named.PIECE or m.kind is None for m in by):
        return []
    pairs = [
        (board, at, other)
        for board in claim.boards()
        for at in referents(claim.scene, thing, board)
        for m in by
        for other in referents(claim.scene, m, board)
    ]
    if any(attacks(*pair) for pair in pairs) or all(b.color_at(one) != b.color_at(two) for b, one, two in pairs):
        # It presses on an enemy piece.
        return []
    return _passive(claim, guards_own, lambda board, at: bool(board.color_at(at)))


def _enemy_of(board: chess.Board, at: chess.Square) -> chess.Color:
    return not board.color_at(at)


def _standing_there(claim: Claim, mention: Mention, board: chess.Board) -> list[chess.Square]:
    """The squares that a mention can mean on which a piece stands."""
    return [square for square in referents(claim.scene, mention, board) if board.piece_at(square)]


def _passive(claim: Claim, relation: Relation, who: Callable[[chess.Board, chess.Square], bool]) -> list[Judgement]:
    thing = claim.mention("piece") or claim.mention("square")
    by = claim.things() if claim.mentions("things") else []
    if thing is None or (thing.kind == chess.KING and (relation is not attacks or not by)):
        return []
    if done_by_none(claim):
        return _by_nobody(claim, thing, who)
    sort = claim.mention("counted")
    if sort is not None and (sort.kind is not None or not sort.plural):
        return []
    counted = claim.mention("times") or claim.mention("count")
    times = _TIMES.get(claim.said("times"), 0) if counted is None else counted.value
    topic = Topic.ATTACK
    boards = claim.boards()
    if thing.pronoun in ("he", "she", "they", "this", "one") and royal(claim.scene, thing) is None:
        return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    seen = False
    for board in boards:
        for at in salient(claim.scene, thing, board):
            empty = board.piece_at(at) is None
            if empty and thing.what is not Named.SQUARE:
                continue
            seen = True
            colour = who(board, at)
            counts = {len(attackers(board, either, at)) for either in chess.COLORS} if empty else set()
            if empty and (times in counts if times else not attackers(board, colour, at)):
                colour = next(c for c in (not colour, colour) if not times or len(attackers(board, c, at)) == times)
            front, all_of_them = attackers(board, colour, at), attackers_with_support(board, colour, at)
            named = all(
                any(relation(board, square, at) for square in _standing_there(claim, m, board) if square != at)
                for m in by
            )
            if named and by and (claim.hinted("only") or claim.said("alone")):
                everyone = {square for m in by for square in referents(claim.scene, m, board)}
                named = all(square in everyone for square in front)
            # Those counted without the ones that stand behind a piece of their own are all in front.
            in_front = all(any(square in front for square in _standing_there(claim, m, board)) for m in by)
            right = times == len(all_of_them) or (times == len(front) and in_front)
            enough = right if times else bool(front) or bool(by)
            if enough and named:
                return confirmed(
                    topic, claim.quote(), attack_words(board, at), at, *front, exact=len(boards) == 1 and not times
                )
    if not seen and thing.what is Named.PIECE and thing.kind and thing.definite and is_nowhere(claim, thing):
        return contradicted(topic, claim.quote(), no_such(thing))
    if not seen:
        return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    named_all = bool(by) and not times and all(m.square is not None for m in by)
    most = _MANY if len(by) > 1 else _FEW
    if thing.pronoun and not named_all and len(referents(claim.scene, thing, boards[0])) > most:
        return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    if times and thing.square is None and _times_elsewhere(claim, thing, boards, times, who):
        return undecided(topic, claim.quote(), "It is true of another one.")
    squares = salient(claim.scene, thing, boards[0])
    why = attack_words(boards[0], squares[0]) if squares else "No such piece stands there."
    return contradicted(topic, claim.quote(), why, *squares[:1])


def done_by_none(claim: Claim) -> bool:
    """“Protected by nobody”, “by no piece at all”: is what does it named only to say that nothing does?"""
    by = claim.mentions("things")
    return claim.has("nobody") or (len(by) == 1 and claim.scene.tokens[by[0].start].text == "no")


def _by_nobody(claim: Claim, thing: Mention, who: Callable[[chess.Board, chess.Square], bool]) -> list[Judgement]:
    """“Is attacked by nobody”, “is guarded by no piece”: nothing of that side reaches it."""
    seen = [] if thing.pronoun not in ("", "it") else list(claim.standing(thing))
    free = [(board, at) for board, at in seen if not attackers(board, who(board, at), at)]
    if not seen or (0 < len(free) < len(seen) and len({at for _, at in seen}) > 1):
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which piece is meant.")
    board, at = (free or seen)[0]
    return (confirmed if free else contradicted)(Topic.ATTACK, claim.quote(), attack_words(board, at), at)


def _times_elsewhere(
    claim: Claim,
    thing: Mention,
    boards: list[chess.Board],
    times: int,
    who: Callable[[chess.Board, chess.Square], bool],
) -> bool:
    """Is any piece of that name attacked or guarded so often, though another one moved last?"""
    return any(
        len(count(board, colour, at)) == times
        for board in boards
        for at in referents(claim.scene, thing, board)
        for colour in ([who(board, at)] if board.piece_at(at) else chess.COLORS)
        for count in (attackers, attackers_with_support)
    )


def judge_nobody_attacks(claim: Claim) -> list[Judgement]:
    """“Nothing attacks the pawn on a5”."""
    named = [m for m in claim.things() if m.pronoun == "it" or m.what is not Named.PIECE or m.kind is not None]
    return [judgement for thing in named for judgement in _by_nobody(claim, thing, _enemy_of)]


JUDGES: Final[dict[str, Judge]] = {
    "attacked": judge_attacked,
    "guarded": judge_guarded,
    "relies": judge_relies,
    "listed_attackers": judge_attacked,
    "listed_guards": judge_guarded,
    "nobody_attacks": judge_nobody_attacks,
}
