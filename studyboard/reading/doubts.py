"""Why a statement that the board contradicts may yet be meant otherwise: a wrong query costs more than none."""

from __future__ import annotations

import re

from studyboard.reading.claim import Claim
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import imagined_moves
from studyboard.reading.mentions import Named
from studyboard.reading.moves_said import Said, means, overlapping, stands
from studyboard.reading.referents import royal
from studyboard.reading.scene import Scene

_NAMED = re.compile(r"§[pcsnf](\d+)")
#: Claims about what does something: who it is has to be known.
_OF_A_DOER = frozenset({"attacks", "eyes", "defends", "pins", "forks", "skewers", "blocks", "gives_a_poke"})
#: Pronouns that may be a player's; a move told so soon behind a statement may be what it is said of (words).
_PLAYERS, _SOON = frozenset({"he", "she", "they"}), 4
#: Statements about all the moves up to now.
_OF_MANY_MOVES = frozenset({"no_check_given", "so_many_given"})
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
    if claim.kind == "attacks" and claim.scene.words.hint("adds_pressure", claim.match.group()):
        return "Pressure may go through a piece of one's own."
    if claim.kind in _OF_A_DOER and _of_pronouns_only(claim):
        return "It is not clear which pieces are meant."
    if claim.kind in _OF_A_DOER and _move_is_yet_to_come(claim):
        return "It may be said of the move that follows."
    if topic in _OF_A_POSITION and claim.kind not in _OF_MANY_MOVES and _after_an_unplayed_move(claim, topic):
        return "A move is named before it that is not played here."
    if claim.kind == "defends" and claim.scene.words.hint("supports_advance", claim.match.group()):
        return "A square may be supported through a piece of one's own."
    if topic is Topic.CHECK and _check_follows(claim):
        return "It may be the check that follows."
    if scene.words.hint("any_before", _clause_before(claim)):
        return "It is said of any of them."
    return ""


def _check_follows(claim: Claim) -> bool:
    """“F takes e3, and now a check”: given by the next move that the line plays."""
    later = [step for step in claim.scene.steps if step.move and step.token >= claim.start]
    return claim.hinted("next_comes_before") and any(step.board.is_check() for step in later[:1])


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
    named = len(claim.subjects()) > 1 and not any(m.pronoun for m in claim.mentions("things"))
    return not named and claim.scene.words.hint("unnamed_doer_before", claim.before())


def _of_pronouns_only(claim: Claim) -> bool:
    """“… where she pins her”: neither who does it nor who suffers it is named."""
    things = claim.mentions("things")
    doing = [mention for group in claim.subjects() for mention in group]
    return bool(things) and all(m.pronoun for m in things) and bool(doing) and all(m.pronoun for m in doing)


def _move_is_yet_to_come(claim: Claim) -> bool:
    """“I hit your queen, {Bg5}bishop g5”, “she put the question to it, {h3}h3”: done by the move told right behind."""
    doing = [mention for group in claim.subjects() for mention in group]
    scene = claim.scene
    if any(m.what is not Named.SIDE and (m.pronoun not in _PLAYERS or royal(scene, m) is not None) for m in doing):
        return False
    start, _ = scene.clause(claim.start)
    if any(step.cued and step.move and start <= step.token <= claim.start for step in scene.steps):
        return False
    return bool(doing) or any(step.cued and claim.end <= step.token <= claim.end + _SOON for step in scene.steps)


def _after_an_unplayed_move(claim: Claim, topic: Topic) -> bool:
    """Does the sentence, or the one before, name a move before the claim that neither line nor game has played?"""
    scene = claim.scene
    start, _ = scene.sentence(claim.start)
    cued = any(step.cued and start <= step.token <= claim.start for step in scene.steps)
    opening = " ".join(token.text for token in scene.tokens[start : start + 2])
    if start and not cued and scene.words.hint("goes_on_from", opening):
        start, _ = scene.sentence(start - 1)
    if _went_elsewhere(claim):
        return True
    said = [one for one in scene.said if one.placed and start <= one.phrase.start and one.phrase.end <= claim.start]
    said = [one for one in said if not _standing(scene, one)]
    if not said:
        return False
    if topic in (Topic.CHECK, Topic.MATE) and (imagined_moves(claim) or imagined_moves(claim, again=True)):
        return False
    last = max(said, key=lambda one: (one.phrase.end, one.phrase.end - one.phrase.start))
    if any(step.cued and step.move and last.phrase.end < step.token <= claim.start for step in scene.steps):
        return False
    beside = overlapping(scene.said, last.phrase.start, last.phrase.end)
    return not any(_played(scene, one) for one in beside)


def _standing(scene: Scene, one: Said) -> bool:
    """“A rook on g7” names where one stands, “rook on g7” may be a move."""
    first = one.phrase.start
    words = [token.text for token in scene.tokens[max(0, first - 1) : one.phrase.end]]
    return "on" in words and (words[0] in ("a", "an") or scene.tokens[first].text in ("a", "an"))


def _went_elsewhere(claim: Claim) -> bool:
    """“From f1 it hops to e3, and from there it stares at d5”, where nothing has gone to e3."""
    scene = claim.scene
    found = list(scene.words.hints["went_there"].finditer(claim.before()))
    if not found:
        return False
    to = scene.mentions[int(found[-1]["square"])].square
    return to not in {step.landed for step in scene.steps} | {move.to_square for move in scene.talk.history}


def _played(scene: Scene, said: Said) -> bool:
    """Is it a move of the line or before it, or does it name a piece where it stands?"""
    form = said.phrase.form
    if any(step.before is not None and step.move and means(form, step.before, step.move) for step in scene.steps):
        return True
    if any(form.to == move.to_square for move in scene.talk.history):
        return True
    boards = [scene.start, *(step.board for step in scene.steps)]
    return form.bare or any(stands(form, board) for board in boards)
