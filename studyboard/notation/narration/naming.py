"""Words that name what was just played or stands on the board, instead of playing a move."""

from __future__ import annotations

import math
from typing import NamedTuple

from studyboard.notation.narration.costs import COSTS
from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.readings import Reading

_NEVER = math.inf


class Naming(NamedTuple):
    """What the words can name in one position.

    stands: the cost of naming what stands on the board
    last: the cost of the words for the last move
    earlier: the same for one of those before it, with what it costs that it is longer ago
    move: the position after the latest move that they can mean

    A cost is infinite where the words cannot mean it.
    """

    stands: float
    last: float
    earlier: float
    move: Place | None


def named_in(reading: Reading, phrase: Phrase, known: dict[int, Naming]) -> tuple[float, Place | None]:
    """The cost of taking the words for the name of something that was just played or stands on the board.

    It is infinite where they name nothing. With it the position after the move that is named, if it is a move.

    known: what can be named by this phrase in the positions of other readings, by their number; it is added to
    """
    form = phrase.form
    tip = reading.lines[-1].tip
    naming = known.get(tip.number)
    if naming is None:
        naming = known[tip.number] = _naming(tip, phrase)
    cost = COSTS.just_played
    last = reading.heard
    if last is not None:
        if last.place is tip and form.piece and form.names_all and not last.phrase.form.names_all:
            cost = COSTS.said_again if last.phrase.form.to is not None else COSTS.said_more_closely
        if last.phrase.form_number == phrase.form_number and phrase.start - last.phrase.end <= 1:
            cost += COSTS.said_twice
    earlier = max(cost, COSTS.just_played) + naming.earlier
    return min(naming.stands, cost + naming.last, earlier), naming.move


def _naming(at: Place, phrase: Phrase) -> Naming:
    form = phrase.form
    stands = last = earlier = _NEVER
    named: Place | None = None
    if at.stands(phrase):
        stands = COSTS.stands_bare if form.bare else COSTS.stands
    if form.vague or not (form.to is not None or form.castles or form.capture):
        return Naming(stands, last, earlier, None)
    for ago in range(COSTS.remembered):
        if at.parent is None or at.move is None:
            break
        fits = at.fits_last(phrase) if form.to is None or form.to == at.move.to_square else None
        if fits is not None:
            named = named or at
            if ago:
                earlier = min(earlier, fits[1] + COSTS.longer_ago * ago)
            else:
                last = fits[1]
        at = at.parent
    return Naming(stands, last, earlier, named)
