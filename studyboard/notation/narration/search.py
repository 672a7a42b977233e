"""The search over a whole talk: which words play which moves, where lines are left and taken up again.

A reading is a way through the text. At each word it may pass the word over, take a phrase that begins there as a move
(going on, leaving the line, or coming back to one), or take it as the name of something on the board. Everything has a
cost, as unlikelihood; the cheapest few readings are kept at every word, so that later words decide what earlier ones
meant.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import accumulate

import chess

from studyboard.notation.narration.costs import COSTS, COSTS_BESIDE_HINTS, GREAT_WIDTH, USUAL_WIDTH, Width
from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.hints import BRANCH, MAIN, NAMED, RETURN, SIDE
from studyboard.notation.narration.naming import Named, named_in
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.prepared import Prepared
from studyboard.notation.narration.readings import Heard, How, Line, Reading, cheapest, offer
from studyboard.notation.narration.tokens import Break, Token
from studyboard.notation.narration.ways_on import Places, WaysOn

#: With fewer full stops than one for so many words, a text has none that could be relied on.
_LONG_SENTENCE = 50

#: By how much the words can speak for one move more than for nothing in particular.
_BEST_FIT = 1.0
_NAMED_AHEAD = 7
_PASS = chess.Move.null()


class Talk:
    """One text in the course of being read.

    game: the moves of the game, where they are known
    beyond: whether the main line may be told further than the game that is known

    State: every position that any reading has reached, and what was found for the phrase that is looked at.
    """

    def __init__(
        self, said: Prepared, start: chess.Board, game: Sequence[chess.Move] | None = None, *, beyond: bool = False
    ) -> None:
        self._phrases = said.phrases
        self._contexts = said.contexts
        self._passing = said.passing
        self._hinted = said.hinted
        self._costs = COSTS_BESIDE_HINTS if said.trained else COSTS
        self._passed_by = [0.0, *accumulate(said.passing)]
        self._breaks = _counted(said.tokens, Break.SENTENCE), _counted(said.tokens, Break.PARAGRAPH)
        self._runs_on = self._breaks[0][-1] * _LONG_SENTENCE < len(said.tokens)
        self._beyond = beyond
        self._numbers = said.numbers
        self._replaced = said.replaced
        self._written = said.written
        self._places = Places(start)
        self.start = self._places.start
        self.game = None if game is None else self._places.along(game)
        self._ways_on = WaysOn(self._places, self.game, beyond)
        self._named: Named = {}

    def after(self, place: Place, move: chess.Move) -> Place:
        """The position after a move, legal or a passed turn."""
        return self._places.after(place, move)

    def best_reading(self) -> Reading:
        """The cheapest way through the whole text, with passed turns where a move was left out.

        Where the words fit so badly that the thread must have been lost, it is looked for once more among many more
        readings. O(words × readings kept × phrases at a word).
        """
        found = self._best(USUAL_WIDTH)
        cost = self._in_the_end(found)
        if self.game is not None or cost <= COSTS.lost * len(self._phrases):
            return found
        return min(found, self._best(GREAT_WIDTH), key=self._in_the_end)

    def reading_of(self, lines: Sequence[Sequence[chess.Move]]) -> Reading:
        """The cheapest reading that tells nothing but these lines, each from the start, and the first as its main line.

        For training, where the moves of a talk are known. O(words × readings kept × phrases at a word).
        """
        told = [[place.number for place in self._places.along(line)] for line in lines]
        main, anywhere = set(told[0]), set().union(*told)

        def allowed(reading: Reading) -> bool:
            first, *others = reading.lines
            return first.tip.number in main and all(line.tip.number in anywhere for line in others)

        return self._best(USUAL_WIDTH, allowed)

    def _best(self, width: Width, allowed: Callable[[Reading], bool] | None = None) -> Reading:
        end = len(self._phrases)
        waiting: list[dict[tuple[int, ...], Reading]] = [{} for _ in range(end + 1)]
        first = Reading(0.0, (Line(self.start, self.start),), None, 0)
        waiting[0][(0,)] = first
        least = [math.inf] * (end + 1)
        for at in range(end):
            passing, home = self._passing[at], self._contexts[at].home
            if not self._phrases[at] and not passing and not home:
                self._pass_on(waiting, at)
                continue
            kept = cheapest(waiting[at].values(), width)
            waiting[at] = {}
            for reading in kept:
                cost = reading.cost + passing
                if home and len(reading.lines) == 1 and reading.heard is not None:
                    cost += COSTS.back_from_nowhere
                passed = Reading(cost, reading.lines, reading.heard, reading.said_to)
                offer(waiting[at + 1], passed)
            if not kept:
                continue
            for phrase in self._phrases[at]:
                self._look_at(phrase)
                ahead = waiting[phrase.end]
                limit = kept[0].cost + COSTS.worst_step + self._passed_by[phrase.end] - self._passed_by[at]
                limit = min(limit, least[phrase.end] + COSTS.worst)
                for rank, reading in enumerate(kept):
                    if reading.cost + phrase.cost > limit:
                        break
                    if rank < COSTS.gaps_tried:
                        for further in self._after_a_gap(reading, phrase):
                            if allowed is None or allowed(further):
                                offer(ahead, further)
                    for further in self._understood(reading, phrase, limit):
                        if further.cost <= limit and (allowed is None or allowed(further)):
                            offer(ahead, further)
                            if further.cost < least[phrase.end]:
                                least[phrase.end] = further.cost
                                limit = min(limit, further.cost + COSTS.worst)
        if allowed is not None:
            furthest = max(reading.lines[0].tip.ply for reading in waiting[end].values())
            return min(
                (reading for reading in waiting[end].values() if reading.lines[0].tip.ply == furthest),
                key=self._in_the_end,
            )
        return min(waiting[end].values(), key=self._in_the_end)

    def _look_at(self, phrase: Phrase) -> None:
        start = phrase.start
        self._ways_on.look_at(phrase, self._numbers[start], self._written[start], self._replaced[start])
        self._named.clear()

    @staticmethod
    def _pass_on(waiting: list[dict[tuple[int, ...], Reading]], at: int) -> None:
        """A word that means nothing: whatever has come to it has come to the next one."""
        if waiting[at + 1]:
            for reading in waiting[at].values():
                offer(waiting[at + 1], reading)
        else:
            waiting[at + 1] = waiting[at]
        waiting[at] = {}

    def _in_the_end(self, reading: Reading) -> float:
        left_open = len(reading.lines) > 1 and not self._beyond
        if not left_open:
            return reading.cost
        main, open_line = reading.lines[0], reading.lines[1]
        length = open_line.tip.ply - open_line.root.ply
        cost = COSTS.left_open + COSTS.left_open_each * length
        if open_line.root is main.tip and self.game is None:
            # A line in place of a move that never comes is likely to be the main line itself.
            cost += COSTS.never_came_back + COSTS.never_came_back_each * max(0, length - COSTS.short_line)
        return reading.cost + cost + COSTS.nothing_played * (main.tip is self.start)

    def _understood(self, reading: Reading, phrase: Phrase, limit: float) -> Iterator[Reading]:
        """The reading gone on by what the phrase can mean here."""
        context = self._contexts[phrase.anchor]
        lead = self._contexts[phrase.start]
        cost = reading.cost + phrase.cost
        branch, back = max(context.branch, lead.branch), max(context.back, lead.back)
        hint = self._hinted[phrase.anchor]
        named, place = named_in(reading, phrase, self._named)
        if named is not None:
            heard = Heard(How.NAMED, phrase, reading.lines[-1].tip, len(reading.lines) - 1, reading.heard, place)
            if len(reading.lines) > 1 and not phrase.form.bare:
                named += COSTS.named_despite_return * max(0.0, back - 0.3)
            yield Reading(cost + named + hint[NAMED], reading.lines, heard, reading.said_to)
        yield from self._returned(reading, phrase, cost + hint[RETURN], back)
        if phrase.form.bare or phrase.form.vague:
            cost += context.against * COSTS.bare_against
        cost += context.against
        sentences, paragraphs = (count[phrase.start] - count[max(0, reading.said_to - 1)] for count in self._breaks)
        going_on = cost + self._costs.alternative_ignored * lead.alternative
        if len(reading.lines) > 1:
            going_on += self._costs.rejected_and_told * max(context.rejected, lead.rejected)
        if going_on + min(hint[MAIN], hint[SIDE], hint[RETURN]) <= limit:
            yield from self._gone_on(reading, phrase, going_on, branch, back, sentences, paragraphs, limit)
        yield from self._branched(reading, phrase, cost + hint[BRANCH], branch, back, lead.alternative, limit)

    def _returned(self, reading: Reading, phrase: Phrase, cost: float, back: float) -> Iterator[Reading]:
        """Coming back to a line by naming its last move once more."""
        innermost = len(reading.lines) - 1
        for depth in range(innermost - 1, -1, -1):
            tip = reading.lines[depth].tip
            if tip.parent is None or tip.move is None or phrase.form.vague:
                continue
            if phrase.form.to is not None and phrase.form.to != tip.move.to_square:
                continue
            doubt, fits = tip.parent.fits(phrase)
            for move, fit in fits:
                if move == tip.move:
                    coming = max(COSTS.returns_least, COSTS.returns - self._costs.cue * back) + COSTS.each_level * (
                        innermost - depth - 1
                    )
                    heard = Heard(How.NAMED, phrase, tip, depth, reading.heard)
                    total = cost + coming + COSTS.just_played + fit + doubt
                    yield Reading(total, reading.lines[: depth + 1], heard, phrase.end)

    def _gone_on(
        self,
        reading: Reading,
        phrase: Phrase,
        cost: float,
        branch: float,
        back: float,
        sentences: int,
        paragraphs: int,
        limit: float,
    ) -> Iterator[Reading]:
        """The phrase as the next move of the line that is told, or of one that is still open."""
        innermost = len(reading.lines) - 1
        hint = self._hinted[phrase.anchor]
        for depth in range(innermost, -1, -1):
            line = reading.lines[depth]
            here = cost + hint[RETURN if depth < innermost else SIDE if depth else MAIN]
            if depth < innermost:
                how = How.RETURNS
                here += max(COSTS.returns_least, COSTS.returns - self._costs.cue * back) + COSTS.each_level * (
                    innermost - depth - 1
                )
                if depth:
                    here += COSTS.returns_to_side_line
                here -= COSTS.returns_after_sentence * (
                    sentences > 0 or self._runs_on
                ) + COSTS.returns_after_paragraph * (paragraphs > 0)
            else:
                how = How.GOES_ON
                if depth:
                    here += COSTS.side_line_goes_on + self._costs.cue_ignored * max(0.0, back - 0.3)
                    here += COSTS.side_line_over_sentence * (sentences > 0)
                    here += COSTS.side_line_over_paragraph * (paragraphs > 0)
                    here += COSTS.long_side_line * (line.tip.ply - line.root.ply >= COSTS.long_side_line_from)
            if depth == 0:
                ignored = self._costs.cue_to_branch_ignored * max(0.0, branch - COSTS.weak_cue) / (1.0 - COSTS.weak_cue)
                here += ignored * (COSTS.known_despite_cue if self.game is not None else 1.0)
            here += self._ways_on.misnumbered(line.tip)
            if here > limit + _BEST_FIT:
                continue
            lines = reading.lines[:depth]
            for fit, place, unsaid in self._ways_on.going_on(line.tip, main=not depth):
                if here + fit > limit:
                    break
                heard = reading.heard
                for step in unsaid:
                    heard = Heard(How.UNSAID, phrase, step, depth, heard)
                heard = Heard(how, phrase, place, depth, heard)
                yield Reading(here + fit, (*lines, Line(line.root, place)), heard, phrase.end)

    def _after_a_gap(self, reading: Reading, phrase: Phrase) -> Iterator[Reading]:
        """The phrase as the move after one that was not said; the turn is passed, and a move is found for it later."""
        form, context = phrase.form, self._contexts[phrase.anchor]
        tip = reading.lines[-1].tip
        whole = form.to is not None and form.names_piece and not form.promotes
        if not whole or context.against > COSTS.gap_despite or phrase.cost > COSTS.gap_despite or self.game is not None:
            return
        if tip.move == _PASS or tip.board.is_check() or tip.stands(phrase):
            return
        passed = self.after(tip, _PASS)
        doubt, fits = passed.fits(phrase)
        depth = len(reading.lines) - 1
        cost = reading.cost + phrase.cost + context.against + doubt + COSTS.gap
        cost += self._hinted[phrase.anchor][SIDE if depth else MAIN]
        for move, fit in fits:
            place = self.after(passed, move)
            unsaid = Heard(How.UNSAID, phrase, passed, depth, reading.heard)
            heard = Heard(How.GOES_ON, phrase, place, depth, unsaid)
            lines = (*reading.lines[:-1], Line(reading.lines[-1].root, place))
            yield Reading(cost + fit, lines, heard, phrase.end)

    def _branched(
        self,
        reading: Reading,
        phrase: Phrase,
        cost: float,
        branch: float,
        back: float,
        alternative: float,
        limit: float,
    ) -> Iterator[Reading]:
        """The phrase as the first move of a side-line, in place of one of the last moves or of the next one."""
        costs = self._costs
        leaving = max(COSTS.branches_least, costs.branches - costs.cue_to_branch * branch)
        leaving += costs.cue_ignored * max(0.0, back - 0.3 - branch)
        innermost = len(reading.lines) - 1
        anchor = self._just_named(reading, phrase)
        number = self._numbers[phrase.start] or self._written[phrase.start]
        reach = COSTS.branch_reach_with_cue if branch > 0.5 else COSTS.branch_reach
        if number is not None or anchor is not None:
            reach = innermost + max(line.tip.ply for line in reading.lines) + 1
        for depth in range(innermost, -1, -1):
            line = reading.lines[depth]
            levels = leaving + COSTS.each_level_left * (innermost - depth) + (COSTS.nested if depth else 0.0)
            other = COSTS.alternative / max(0.1, alternative) if depth == innermost else levels
            most = limit - cost - min(levels, other)
            if most < -_BEST_FIT:
                continue
            for way in self._ways_on.leaving(line, reach, anchor, main=not depth):
                if way.cost > most:
                    break
                here = levels if way.alternative is None else min(levels, other + way.alternative)
                total = cost + here + way.cost
                if total <= limit:
                    outer = reading.lines[: depth if way.sibling else depth + 1]
                    heard = Heard(How.BRANCHES, phrase, way.place, len(outer), reading.heard)
                    yield Reading(total, (*outer, Line(way.at, way.place)), heard, phrase.end)

    def _just_named(self, reading: Reading, phrase: Phrase) -> Place | None:
        """The position after the move that was named just ahead, as in "against d3 I had prepared knight takes"."""
        last = reading.heard
        if last is None or last.how is not How.NAMED or phrase.start - last.phrase.end > _NAMED_AHEAD:
            return None
        same_sentence = self._breaks[0][phrase.start] == self._breaks[0][last.phrase.start]
        return last.named if same_sentence else None


def _counted(tokens: Sequence[Token], least: Break) -> list[int]:
    """How many breaks of at least this kind there are before each word, and before the end."""
    counts, so_far = [], 0
    for token in tokens:
        so_far += token.broken >= least
        counts.append(so_far)
    return [*counts, so_far]
