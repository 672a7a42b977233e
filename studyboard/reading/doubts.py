"""Why a statement that the board contradicts may yet be meant otherwise: a wrong query costs more than none."""

from __future__ import annotations

import re

from studyboard.reading.claim import Claim
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import imagined_moves
from studyboard.reading.mentions import Named
from studyboard.reading.moves_said import Said, means, overlapping, stands
from studyboard.reading.scene import Scene

_NAMED = re.compile(r"§[pcsnf](\d+)")
#: Claims about what does something: who it is has to be known.
_OF_A_DOER = frozenset({"attacks", "eyes", "defends", "pins", "forks", "skewers", "blocks", "gives_a_poke"})
#: Statements about one moment, which may be said of the position that a move named before would lead to.
_OF_A_POSITION = frozenset(
    {Topic.CHECK, Topic.MATE, Topic.ATTACK, Topic.PIN, Topic.FORK, Topic.HANGING, Topic.TRAPPED, Topic.MATERIAL}
)


def doubt(claim: Claim, topic: Topic) -> str:
    """Words for what makes a contradiction uncertain; empty where nothing does."""
    scene = claim.scene
    if _in_general(claim):
        return "It may be said of such things in general."
    if claim.hinted("excepted_after"):
        return "What is left out is said behind it."
    if claim.hinted("thought_after"):
        return "It is said of what could be."
    if claim.kind in _OF_A_DOER and _unknown_doer(claim):
        return "It is not clear which pieces are meant."
    if topic in _OF_A_POSITION and _after_an_unplayed_move(claim):
        return "A move is named before it that is not played here."
    if scene.words.hint("any_before", _clause_before(claim)):
        return "It is said of any of them."
    return ""


def _clause_before(claim: Claim) -> str:
    start, _ = claim.scene.clause(claim.start)
    return " ".join(token.text for token in claim.scene.tokens[start : claim.start])


def _in_general(claim: Claim) -> bool:
    """“Rooks belong behind passed pawns”, “I like opposite-coloured bishops”: names none of those on the board."""
    named = [claim.scene.mentions[int(found)] for found in _NAMED.findall(claim.match.group())]
    if any(m.definite or m.what is not Named.PIECE or m.pronoun or m.square is not None for m in named):
        return False
    return claim.scene.words.hint("general_before", claim.before())


def _unknown_doer(claim: Claim) -> bool:
    """“Two of mine are looking at f8”, “hers hits d5”: the words before the verb name it, and not for the board."""
    return claim.scene.words.hint("unnamed_doer_before", claim.before())


def _after_an_unplayed_move(claim: Claim) -> bool:
    """Does the sentence name a move before the claim that neither the line nor the game has played?"""
    scene = claim.scene
    start, _ = scene.sentence(claim.start)
    said = [one for one in scene.said if one.placed and start <= one.phrase.start and one.phrase.end <= claim.start]
    if not said or imagined_moves(claim):
        return False
    last = max(said, key=lambda one: (one.phrase.end, one.phrase.end - one.phrase.start))
    beside = overlapping(scene.said, last.phrase.start, last.phrase.end)
    return not any(played(scene, one) for one in beside)


def played(scene: Scene, said: Said) -> bool:
    """Is it a move of the line or before it, or does it name a piece where it stands?"""
    form = said.phrase.form
    steps = [step for step in scene.steps if step.before is not None and step.move]
    if any(step.before is not None and step.move and means(form, step.before, step.move) for step in steps):
        return True
    if any(form.to == move.to_square for move in scene.talk.history):
        return True
    boards = [scene.start, *(step.board for step in scene.steps)]
    # A wrong square or piece at the cue of a move is a slip of its own; what follows is said of the move played.
    told = any(step.cued and said.phrase.start - 1 <= step.token <= said.phrase.end for step in steps)
    return told or form.bare or any(stands(form, board) for board in boards)
