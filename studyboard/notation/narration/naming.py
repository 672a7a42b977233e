"""Words that name what was just played or stands on the board, instead of playing a move."""

from __future__ import annotations

from typing import TypeAlias

from studyboard.notation.narration.costs import COSTS
from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.readings import Reading

#: The cost of a name by the position in which it is said and what naming the last move costs, and the position named.
Named: TypeAlias = "dict[tuple[int, float], tuple[float | None, Place | None]]"


def named_in(reading: Reading, phrase: Phrase, known: Named) -> tuple[float | None, Place | None]:
    """The cost of taking the words for the name of something that was just played or stands on the board.

    With it the position after the move that is named, if it is a move.

    known: what was found for this phrase in other readings; it is added to
    """
    form = phrase.form
    tip = reading.lines[-1].tip
    cost = COSTS.just_played
    last = reading.heard
    if last is not None:
        if last.place is tip and form.piece and form.names_all and not last.phrase.form.names_all:
            cost = COSTS.said_again if last.phrase.form.to is not None else COSTS.said_more_closely
        if last.phrase.form_number == phrase.form_number and phrase.start - last.phrase.end <= 1:
            cost += COSTS.said_twice
    key = tip.number, cost
    found = known.get(key)
    if found is None:
        found = known[key] = _named_from(tip, phrase, cost)
    return found


def _named_from(at: Place, phrase: Phrase, cost: float) -> tuple[float | None, Place | None]:
    """cost: of naming the last move"""
    form = phrase.form
    best: float | None = None
    named: Place | None = None
    if at.stands(phrase):
        best = COSTS.stands_bare if form.bare else COSTS.stands
    if form.vague or not (form.to is not None or form.castles or form.capture):
        return best, None
    for _ in range(COSTS.remembered):
        if at.parent is None or at.move is None:
            break
        if form.to is None or form.to == at.move.to_square:
            for move, fit in at.parent.fits(phrase)[1]:
                if move == at.move:
                    named = named or at
                    best = cost + fit if best is None else min(best, cost + fit)
        at, cost = at.parent, max(cost, COSTS.just_played) + COSTS.longer_ago
    return best, named
