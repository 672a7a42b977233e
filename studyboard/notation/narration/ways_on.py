"""What words can play from a line: going on with it, or leaving it for a side-line.

Many readings of a talk share a line, and each asks what the next words can mean from there: the answers are kept for as
long as one phrase is looked at.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from operator import attrgetter
from typing import NamedTuple

import chess

from studyboard.notation.narration.costs import COSTS
from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.place import Answer, Place
from studyboard.notation.narration.readings import Line

_FURTHEST = len(COSTS.branch_at) - 1
_DEAREST = max(COSTS.branch_at)

#: By how much the words can speak for one move more than for nothing in particular.
_BEST_FIT = 1.0


class WayOn(NamedTuple):
    """The next move of a line. cost: of understanding the phrase so; unsaid: the moves ahead of it that nobody said."""

    cost: float
    place: Place
    unsaid: tuple[Place, ...]


class WayOff(NamedTuple):
    """The first move of a side-line.

    cost: of leaving there with this move, without what leaving costs anywhere
    alternative: what more it costs as one of several ways that were announced, None where it cannot be one of them
    at: the position that the side-line leaves from
    sibling: whether it takes the place of the line that it leaves, as another line from the same position
    """

    cost: float
    alternative: float | None
    at: Place
    place: Place
    sibling: bool


class Places:
    """Every position that a talk may have reached.

    State: the positions so far, by the moves from the start.
    """

    def __init__(self, start: chess.Board) -> None:
        self.start = Place(0, None, None, start)
        self._count = 1

    def after(self, place: Place, move: chess.Move) -> Place:
        """The position after a move."""
        after = place.steps_to.get(move)
        if after is None:
            after = place.steps_to[move] = Place(self._count, place, move, None)
            self._count += 1
        return after

    def along(self, moves: Sequence[chess.Move]) -> list[Place]:
        """The positions along a line from the start, the start first."""
        found = [self.start]
        for move in moves:
            found.append(self.after(found[-1], move))
        return found


class WaysOn:
    """What one phrase after the other can play.

    places: the positions of the talk
    game: the positions of the game, where it is known
    beyond: whether the main line may be told further than the game that is known

    State: the phrase that is looked at, and what was found for it.
    """

    def __init__(self, places: Places, game: Sequence[Place] | None, beyond: bool) -> None:
        self._places = places
        self._game = game
        self._beyond = beyond
        self._on_game = {place.number for place in game or ()}
        self._phrase: Phrase | None = None
        self._on: dict[tuple[int, bool, bool], list[WayOn]] = {}
        self._off: dict[tuple[int, int, bool, int, int, int], list[WayOff]] = {}
        self._number: int | None = None
        self._written: int | None = None
        self._replaced: Sequence[Phrase] = ()

    def look_at(self, phrase: Phrase, number: int | None, written: int | None, replaced: Sequence[Phrase]) -> None:
        """The phrase that is asked about from now on.

        number, written: the number of the move that its sentence names, and that stands just ahead of it, if any
        replaced: the phrases for the move in whose stead its sentence names others
        """
        self._phrase, self._number, self._written, self._replaced = phrase, number, written, replaced
        self._on.clear()
        self._off.clear()

    def going_on(self, tip: Place, most: float, *, main: bool) -> list[WayOn]:
        """The phrase as the next move from *tip*, the cheapest first; what costs more than *most* may be missing."""
        filled = most + _BEST_FIT > COSTS.forced_unsaid
        key = tip.number, main, filled
        found = self._on.get(key)
        if found is None:
            found = self._on[key] = sorted(self._next(tip, main, filled), key=_BY_COST)
        return found

    def leaving(self, line: Line, reach: int, anchor: Place | None, most: float, *, main: bool) -> list[WayOff]:
        """The phrase as the first move of a side-line in place of one of the last moves of *line*, or of its next one.

        reach: how many moves it may reach back; anchor: the position just named, if any

        The cheapest first; what costs more than *most* may be missing.
        """
        near = reach
        if self._number is None and anchor is None and not self._replaced:
            near = min(reach, sum(cost <= most + _BEST_FIT for cost in COSTS.branch_at) if most < _DEAREST else reach)
        key = line.tip.number, line.root.number, main, reach, near, -1 if anchor is None else anchor.number
        found = self._off.get(key)
        if found is None:
            found = self._off[key] = sorted(self._leaving(line, reach, near, anchor, main), key=_BY_COST)
        return found

    def misnumbered(self, at: Place) -> float:
        """What it costs that another number is written ahead of the phrase than that of the move to be played."""
        return 0.0 if self._written is None or self._written == at.move_number else COSTS.misnumbered

    def _next(self, tip: Place, main: bool, filled: bool) -> Iterator[WayOn]:
        phrase, after_move = self._phrase, self._places.after
        assert phrase is not None
        form = phrase.form
        if main and self._game is not None and not (self._beyond and tip is self._game[-1]):
            yield from self._on_with_the_game(self._game, tip, phrase)
            return
        share = COSTS.unlikely if main else COSTS.unlikely_aside
        for fit, unlikely, after in self._answers_at(tip):
            cost = fit + share * unlikely
            if form.trades:
                for reply in after.recaptures():
                    yield WayOn(cost + COSTS.traded, after_move(after, reply), (after,))
            if form.castles.startswith("both"):
                doubt_after, answers = after.fits(phrase)
                for reply, further_fit in answers:
                    yield WayOn(cost + further_fit + doubt_after, after_move(after, reply), (after,))
            else:
                yield WayOn(cost, after, ())
        if form.vague or form.bare or not filled:
            return
        for move, fill in _fills(tip):
            between = after_move(tip, move)
            for fit, unlikely, after in self._answers_at(between):
                yield WayOn(fit + fill + share * unlikely, after, (between,))

    @staticmethod
    def _on_with_the_game(game: Sequence[Place], tip: Place, phrase: Phrase) -> Iterator[WayOn]:
        ahead = game[tip.ply + 1 : tip.ply + 2 + COSTS.unsaid_of_game]
        at = tip
        for skipped, place in enumerate(ahead):
            for move, fit in at.fits(phrase)[1]:
                if move == place.move:
                    unsaid = COSTS.unsaid_first + COSTS.unsaid_further * (skipped - 1) if skipped else 0.0
                    unsaid += COSTS.unsaid_before_vague * (skipped > 0 and not phrase.form.names_piece)
                    cost = fit * COSTS.expected + unsaid - COSTS.game_bonus
                    yield WayOn(cost, place, tuple(ahead[:skipped]))
            at = place

    def _leaving(self, line: Line, reach: int, near: int, anchor: Place | None, main: bool) -> Iterator[WayOff]:
        """near: for how many moves back it could be cheap to leave in place of a move"""
        below: Place | None = None
        at = line.tip
        for steps in range(reach):
            sibling = at is line.root and not main
            answers = self._answers_at(at) if steps < near or sibling else None
            if answers:
                yield from self._left_at(at, below, steps, answers, line.root, at is anchor, main)
            if at is line.root or at.parent is None:
                return
            at, below = at.parent, at

    def _left_at(
        self,
        at: Place,
        below: Place | None,
        steps: int,
        answers: Sequence[Answer],
        root: Place,
        named: bool,
        main: bool,
    ) -> Iterator[WayOff]:
        first_of_line = at is root
        sibling = first_of_line and not main
        here = COSTS.sibling if sibling else self._place_cost(at, steps)
        if named:
            here = min(here, COSTS.at_the_number)
        if self._replaced and below is not None:
            meant = any(below.fits_last(phrase) is not None for phrase in self._replaced)
            here = min(here, COSTS.at_the_number) if meant else here + COSTS.in_place_of_another
        here += self.misnumbered(at)
        nearer = 1 if first_of_line else steps
        alternative = COSTS.alternative_further * (nearer - 1) if steps % 2 else None
        for fit, unlikely, place in answers:
            if place is not below and not (main and place.number in self._on_game):
                yield WayOff(here + fit + COSTS.unlikely_first * unlikely, alternative, at, place, sibling)

    def _answers_at(self, at: Place) -> list[Answer]:
        phrase = self._phrase
        assert phrase is not None
        found = at.answers.get(phrase.form_number)
        if found is None:
            doubt, fits = at.fits(phrase)
            found = at.answers[phrase.form_number] = [
                Answer(fit + doubt, at.unlikelihood(move), self._places.after(at, move)) for move, fit in fits
            ]
        return found

    def _place_cost(self, at: Place, steps: int) -> float:
        cost = COSTS.branch_at[min(steps, _FURTHEST)]
        if self._number is None:
            return cost
        return COSTS.at_the_number if at.move_number == self._number else cost + COSTS.at_another_number


_BY_COST = attrgetter("cost")


def _fills(tip: Place) -> Iterator[tuple[chess.Move, float]]:
    """Moves that follow so much of themselves that a speaker may leave them out."""
    only = tip.only_move()
    if only is not None:
        yield only, COSTS.forced_unsaid
        return
    recaptures = tip.recaptures()
    for move in recaptures:
        yield move, COSTS.recapture_unsaid + 0.7 * (len(recaptures) - 1)
