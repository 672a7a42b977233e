"""Claims about castling: the right to it, whether it can be done now, who has castled."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.naming import side
from studyboard.board.rights import castling
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Named
from studyboard.reading.referents import referents, side_meant


def judge_castling_right(claim: Claim) -> list[Judgement]:
    """“Black can no longer castle”, “White can still castle kingside”, “neither side has castled”."""
    topic = Topic.CASTLING
    who = claim.mention("side") or claim.mention("piece")
    wing = _said_wing(claim)
    every = claim.has("neither") or claim.has("both")
    if every:
        colours = list(chess.COLORS)
    elif who is None or (who.colour is None and who.what is Named.SIDE) or claim.hinted("castled_nowhere_after"):
        return []
    else:
        colours = _colours(claim, who.colour, who.kind) or _side_before(claim)
    if (
        not colours
        and not claim.hinted("could")
        and not any(claim.has(group) for group in ("no", "rights", "notyet", "done"))
    ):
        board, wings = claim.boards()[0], [True, False] if wing is None else [wing]
        if not any(castling(board, colour, kingside).right for colour in chess.COLORS for kingside in wings):
            return contradicted(topic, claim.quote(), castling(board, chess.WHITE, wings[0]).why)
    if not colours:
        return undecided(topic, claim.quote(), "It is not clear who is meant.")
    if claim.has("notyet") or claim.has("done"):
        return _has_castled(claim, colours, wing)
    if claim.has("rights"):
        return _rights(claim, colours, wing)
    board = claim.boards()[0]
    states = [
        [castling(board, c, kingside) for kingside in ([True, False] if wing is None else [wing])] for c in colours
    ]
    every_state = [state for of in states for state in of]
    at_once = claim.has("at_once") or claim.hinted("at_once_after")
    if claim.has("no") or claim.has("neither"):
        now = next((state for state in every_state if state.now), None)
        if now is not None:
            return contradicted(topic, claim.quote(), now.why)
        if claim.hinted("for_good") and any(all(state.right for state in of) for of in states):
            return contradicted(topic, claim.quote(), f"{every_state[0].why} The right is still there.")
        if claim.has("no") or not any(state.right for state in every_state):
            return confirmed(topic, claim.quote(), every_state[0].why)
        return undecided(topic, claim.quote(), every_state[0].why)
    if claim.has("each"):
        wanted = [[state] for state in every_state]
    else:
        wanted = states
    lost = next((of[0] for of in wanted if not any(state.right for state in of)), None)
    if lost is not None:
        return contradicted(topic, claim.quote(), lost.why)
    late = next((of for of in wanted if not any(state.now for state in of)), None)
    if late is None:
        return confirmed(topic, claim.quote(), next(state.why for state in every_state if state.now))
    if at_once:
        return contradicted(topic, claim.quote(), late[0].why)
    return undecided(topic, claim.quote(), next(state.why for state in late if state.right))


def _has_castled(claim: Claim, colours: list[chess.Color], wing: bool | None) -> list[Judgement]:
    """“Neither side has castled”, “White has castled long”."""
    wanted = claim.has("done")
    # “Black castled as well, and …” may be said before the words at which it is played.
    last = len(claim.scene.tokens) if wanted else claim.start
    known = [claim.scene.castled(colour, last) for colour in colours]
    if any(one is None for one in known):
        return undecided(Topic.CASTLING, claim.quote(), "The moves before this position are not known.")
    right = all(bool(one) == wanted and (wing is None or (one == "k") == wing or not one) for one in known)
    wrong = next((n for n, one in enumerate(known) if bool(one) != wanted), 0)
    why = f"{side(colours[wrong])} {'has castled' if known[wrong] else 'has not castled'}{_wing(known[wrong])}."
    if right:
        return confirmed(Topic.CASTLING, claim.quote(), why)
    return contradicted(Topic.CASTLING, claim.quote(), why)


def judge_castled_wings(claim: Claim) -> list[Judgement]:
    """“They have castled on opposite sides”, “I castled on the same side as he”."""
    last = len(claim.scene.tokens)
    known = [claim.scene.castled(colour, last) for colour in chess.COLORS]
    if not all(known):
        return undecided(Topic.CASTLING, claim.quote(), "Not both sides have castled by then.")
    why = " ".join(f"{side(colour)} has castled{_wing(one)}." for colour, one in zip(chess.COLORS, known, strict=True))
    right = (known[0] == known[1]) == claim.has("same")
    return (confirmed if right else contradicted)(Topic.CASTLING, claim.quote(), why)


def _rights(claim: Claim, colours: list[chess.Color], wing: bool | None) -> list[Judgement]:
    """Whether the right is there or lost, whatever stands in the way now."""
    board = claim.boards()[0]
    wings = [True, False] if wing is None else [wing]
    states = [[castling(board, c, kingside) for kingside in wings] for c in colours]
    lost = claim.has("no") and not claim.has("neither") and not claim.has("kept")
    if lost:
        odd = next((state for of in states for state in of if state.right), None)
        if odd is not None:
            return contradicted(Topic.CASTLING, claim.quote(), f"{odd.why} The right is still there.")
    else:
        each = claim.has("each")
        odd = next((of[0] for of in states if not (all if each else any)(state.right for state in of)), None)
        if odd is not None:
            gone = next((state for of in states for state in of if not state.right), odd)
            return contradicted(Topic.CASTLING, claim.quote(), gone.why)
    return confirmed(Topic.CASTLING, claim.quote(), states[0][0].why)


def _colours(claim: Claim, colour: chess.Color | None, kind: chess.PieceType | None) -> list[chess.Color]:
    """Whose castling is spoken of: the side named, or the one that can be meant by "he" or "the king"."""
    if colour is not None:
        return [colour]
    who = claim.mention("piece")
    player = None if who is None else side_meant(claim.scene, who)
    if player is not None:
        return [player]
    if who is not None and kind == chess.KING:
        board = claim.boards()[0]
        kings = referents(claim.scene, who, board)
        if len(kings) == 1:
            return [bool(board.color_at(kings[0]))]
    return []


def _side_before(claim: Claim) -> list[chess.Color]:
    """The one side that the clauses before name, for “he” and “she”."""
    who = claim.mention("piece")
    if who is None or not who.pronoun:
        return []
    named = [
        m.colour
        for m in claim.scene.mentions
        if m.what is Named.SIDE and claim.sentence.start <= m.start < who.start and m.colour is not None
    ]
    return [named[-1]] if len(set(named)) == 1 else []


def _said_wing(claim: Claim) -> bool | None:
    """True for the king's side, False for the queen's, None where none is said."""
    words = claim.match.group()
    if claim.scene.words.hint("queen_wing", words):
        return False
    return True if claim.scene.words.hint("king_wing", words) else None


def _wing(castled: str | None) -> str:
    return {"k": " kingside", "q": " queenside"}.get(castled or "", "")


JUDGES: Final[dict[str, Judge]] = {
    "castling_right": judge_castling_right,
    "castled_wings": judge_castled_wings,
}
