"""Claims about pieces that nothing guards, that hang, and that are safe."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.exchange import best_exchange
from studyboard.board.relations import attack_words, attackers, attackers_with_support, can_capture, worth
from studyboard.board.tactics import turned
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_relative import attacked_here
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import no_king, referents, royal, salient

#: A name that can mean more pieces than this is held against none of them.
_FEW: Final = 3


def judge_unguarded(claim: Claim) -> list[Judgement]:
    """“… is loose”, “nobody protects …”, “… without a defender”."""
    if claim.kind == "unguarded" and claim.scene.words.hint("is_not", claim.match.group()):
        # “The bishop isn't loose.”
        return undecided(Topic.HANGING, claim.quote(), "It is denied.")
    thing = claim.mention("piece") or claim.mention("square")
    topic = Topic.HANGING
    if thing is None or thing.kind == chess.KING:
        return []
    said_of = claim.scene.words.hints["with_nothing_before"].search(claim.before()) if claim.has("nobody") else None
    if said_of is not None and thing.pronoun == "it":
        # “The knight is pinned to its king, with nothing to protect it”: the one of which the clause speaks.
        thing = claim.scene.mentions[int(said_of["who"])]
    thing = no_king(claim.scene, thing)
    if thing.pronoun in ("he", "she", "him", "her", "they") and royal(claim.scene, thing) is None:
        return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    boards = claim.boards()
    none = claim.mention("none")
    if none is not None and not claim.scene.words.hint("no_guard", claim.scene.quote(none.start, none.end).lower()):
        return []
    if none is not None and claim.scene.words.hint("has_one", claim.match.group()) and not _says_none(claim, none):
        # “The pawn has a defender.”
        return []
    if claim.hinted("except_after") or (claim.has("nobody") and claim.scene.words.hint("hedged", claim.match.group())):
        return undecided(topic, claim.quote(), "Only what guards it besides is named.")
    doubtful = False
    seen: list[tuple[chess.Board, chess.Square]] = []
    for board in boards:
        for at in attacked_here(claim, thing, board):
            if board.piece_at(at) is None or (thing.pronoun and board.piece_type_at(at) == chess.KING):
                doubtful = doubtful or thing.what is Named.SQUARE
                continue
            guards = attackers(board, bool(board.color_at(at)), at)
            if not guards:
                return confirmed(topic, claim.quote(), attack_words(board, at), at, exact=len(boards) == 1)
            doubtful = doubtful or not any(_counts(board, guard, at) for guard in guards)
            doubtful = doubtful or (not _by_a_lesser(board, at) and _takes_with_profit(board, at))
            seen.append((board, at))
    # “Knight to g1. Now nothing guards the knight”: the one that has moved, of several.
    likely = {at for board, _ in seen for at in salient(claim.scene, thing, board)}
    if doubtful or not seen or len({at for _, at in seen} & likely) > _FEW:
        return undecided(topic, claim.quote(), "It is not clear which piece is meant, or its guards may be pinned.")
    seen = [one for one in seen if one[1] in likely] or seen
    board, at = seen[0]
    return contradicted(topic, claim.quote(), attack_words(board, at), at)


def _says_none(claim: Claim, none: Mention) -> bool:
    return claim.scene.tokens[none.start].text in ("no", "not", "nobody", "nothing")


def _counts(board: chess.Board, guard: chess.Square, at: chess.Square) -> bool:
    """Can this guard take back? A king does where no second enemy covers the square."""
    if board.piece_type_at(guard) == chess.KING:
        return len(attackers_with_support(board, not board.color_at(at), at)) < 2
    colour = bool(board.color_at(guard))
    if board.color_at(at) == colour:
        # Whose turn it is does not matter: it takes back once its own piece is taken.
        return bool(board.pin_mask(colour, guard) & chess.BB_SQUARES[at])
    return can_capture(board, guard, at)


def judge_hanging(claim: Claim) -> list[Judgement]:
    """“The rook is hanging”."""
    if claim.scene.words.hint("is_not", claim.match.group()):
        return undecided(Topic.HANGING, claim.quote(), "It is denied.")
    if claim.hinted("depends_after"):
        # “The bishop hangs on the support of the queen.”
        return []
    thing = claim.mention("piece") or claim.mention("square")
    topic = Topic.HANGING
    if thing is None or thing.kind == chess.KING:
        return []
    seen: list[tuple[chess.Board, chess.Square]] = []
    doubtful = False
    for board, at in claim.standing(thing):
        colour = bool(board.color_at(at))
        if _takes_with_profit(board, at):
            return confirmed(topic, claim.quote(), attack_words(board, at), at)
        if turned(board, not colour) is None or not attackers(board, colour, at):
            doubtful = doubtful or bool(attackers(board, not colour, at)) or not attackers(board, colour, at)
        seen.append((board, at))
    if doubtful or not seen or len({at for _, at in seen}) > _FEW:
        return undecided(topic, claim.quote(), "It is not attacked now, or it is not clear which piece is meant.")
    board, at = seen[0]
    return contradicted(topic, claim.quote(), attack_words(board, at), at)


def judge_safe(claim: Claim) -> list[Judgement]:
    """“The knight is safe”: confirmed where no capture wins anything, else left to the author."""
    thing = claim.mention("piece")
    if thing is None or thing.kind == chess.KING or "poisoned" in claim.match.group():
        return []
    board = claim.boards()[0]
    squares = [at for at in referents(claim.scene, thing, board) if board.piece_at(at)]
    if len(squares) != 1:
        return undecided(Topic.HANGING, claim.quote(), "It is not clear which piece is meant.")
    if _takes_with_profit(board, squares[0]):
        return undecided(Topic.HANGING, claim.quote(), attack_words(board, squares[0]))
    return confirmed(Topic.HANGING, claim.quote(), attack_words(board, squares[0]), squares[0])


def _by_a_lesser(board: chess.Board, at: chess.Square) -> bool:
    """Is it attacked by something that is worth less, so that its guard does not save it, and is one all the same?"""
    return any(worth(board, by) < worth(board, at) for by in attackers(board, not board.color_at(at), at))


def _takes_with_profit(board: chess.Board, at: chess.Square) -> bool:
    colour = board.color_at(at)
    facing = None if colour is None else turned(board, not colour)
    return facing is not None and best_exchange(facing, at).gain > 0


JUDGES: Final[dict[str, Judge]] = {
    "nobody_guards": judge_unguarded,
    "unguarded": judge_unguarded,
    "hanging": judge_hanging,
    "safe": judge_safe,
}
