"""Words that name what was just played or stands on the board, instead of playing a move."""

from __future__ import annotations

from studyboard.notation.narration.costs import COSTS
from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.readings import Reading


def named_in(reading: Reading, phrase: Phrase) -> tuple[float | None, Place | None]:
    """The cost of taking the words for the name of something that was just played or stands on the board.

    With it the position after the move that is named, if it is a move.
    """
    form = phrase.form
    tip = reading.lines[-1].tip
    best: float | None = None
    named: Place | None = None
    if tip.stands(phrase):
        best = COSTS.stands_bare if form.bare else COSTS.stands
    at, cost = tip, COSTS.just_played
    last = reading.heard
    if last is not None and last.place is tip and form.piece and form.names_all and not last.phrase.form.names_all:
        cost = COSTS.said_again if last.phrase.form.to is not None else COSTS.said_more_closely
    twice = last is not None and last.phrase.form_number == phrase.form_number
    if twice and last is not None and phrase.start - last.phrase.end <= 1:
        cost += COSTS.said_twice
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
