"""The search over a whole talk: which words play which moves, where lines are left and taken up again.

A reading is a way through the text. At each word it may pass the word over, take a phrase that begins there as a move
(going on, leaving the line, or coming back to one), or take it as the name of something on the board. Everything has a
cost, as unlikelihood; the cheapest few readings are kept at every word, so that later words decide what earlier ones
meant.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import accumulate

import chess

from studyboard.notation.narration.arrivals import Allowed, Arrivals
from studyboard.notation.narration.costs import COSTS, COSTS_BESIDE_HINTS, USUAL_WIDTH, Width
from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.hints import MAIN, SIDE
from studyboard.notation.narration.naming import Naming, named_in
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.prepared import Prepared
from studyboard.notation.narration.prices import Prices
from studyboard.notation.narration.readings import NO_LINES, Heard, How, Line, Reading, cheapest, line_key
from studyboard.notation.narration.thread import Thread
from studyboard.notation.narration.tokens import Break, Token
from studyboard.notation.narration.ways_on import Places, WaysOn

#: With fewer full stops than one for so many words, a text has none that could be relied on.
_LONG_SENTENCE = 50

#: By how much the words can speak for one move more than for nothing in particular.
_BEST_FIT = 1.0
_NAMED_AHEAD = 7
#: From here on a cue says that a line is left, so that it may be left far behind.
_CLEAR_CUE = 0.5
_PASS = chess.Move.null()


class _Step:
    """One phrase that is being understood in all readings that have come to it.

    ahead: those that have come to its end; prices: what each kind of step costs

    State: for each line, by its key, the least that it costs so far to go on with it, to leave it, or to come back to
    it by naming its last move: whoever comes to the same line at a higher cost can only find the same again.
    """

    __slots__ = ("ahead", "gone_on", "left", "phrase", "prices", "returned")

    def __init__(self, phrase: Phrase, ahead: Arrivals, prices: Prices) -> None:
        self.phrase = phrase
        self.ahead = ahead
        self.prices = prices
        self.gone_on: dict[int, float] = {}
        self.left: dict[tuple[int, int, int, Place | None, bool], float] = {}
        self.returned: dict[int, float] = {}


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
        self._named: dict[int, Naming] = {}

    def after(self, place: Place, move: chess.Move) -> Place:
        """The position after a move, legal or a passed turn."""
        return self._places.after(place, move)

    def best_reading(self) -> Reading:
        """The cheapest way through the whole text, with passed turns where a move was left out.

        Where the words fit so badly that the thread must have been lost, it is looked for once more from some way
        before, among many more readings. O(words × readings kept × phrases at a word).
        """
        return self._best(can_be_lost=self.game is None)

    def reading_of(self, lines: Sequence[Sequence[chess.Move]]) -> Reading:
        """The cheapest reading that tells nothing but these lines, each from the start, and the first as its main line.

        For training, where the moves of a talk are known. O(words × readings kept × phrases at a word).
        """
        told = [[place.number for place in self._places.along(line)] for line in lines]
        main, anywhere = set(told[0]), set().union(*told)

        def allowed(reading: Reading) -> bool:
            first, *others = reading.lines
            return first.tip.number in main and all(line.tip.number in anywhere for line in others)

        return self._best(allowed)

    def _best(self, allowed: Allowed | None = None, *, can_be_lost: bool = False) -> Reading:
        end = len(self._phrases)
        thread = Thread(end, can_be_lost=can_be_lost)
        arrived = [Arrivals(USUAL_WIDTH, allowed) for _ in range(end + 1)]
        arrived[0].add(Reading(0.0, (Line(self.start, self.start, line_key(NO_LINES, self.start)),), None, 0))
        at = 0
        while at < end:
            thread.mark(at, arrived)
            best = self._read_word(at, arrived, thread.width(at))
            lost_from = thread.lost_from(at, best)
            if lost_from is None:
                at += 1
            else:
                at = lost_from
                thread.restore(at, arrived)
        found = list(arrived[end].readings.values())
        if allowed is not None:
            furthest = max(reading.lines[0].tip.ply for reading in found)
            found = [reading for reading in found if reading.lines[0].tip.ply == furthest]
        return min(found, key=self._in_the_end)

    def _read_word(self, at: int, arrived: list[Arrivals], width: Width) -> float:
        """Take what has come to a word further in every way; the cost of the cheapest."""
        here, arrived[at] = arrived[at], Arrivals(width)
        if not self._phrases[at] and not self._passing[at] and not self._contexts[at].home:
            arrived[at + 1].join(here)
            return here.least
        kept = cheapest(here.readings.values(), width)
        self._pass_over(at, kept, arrived[at + 1])
        for phrase in self._phrases[at]:
            self._understand(phrase, kept, arrived[phrase.end])
        return here.least

    def _pass_over(self, at: int, kept: Sequence[Reading], ahead: Arrivals) -> None:
        passing, home = self._passing[at], self._contexts[at].home
        ahead.expect(math.inf)
        for reading in kept:
            cost = reading.cost + passing
            if home and len(reading.lines) == 1 and reading.heard is not None:
                cost += COSTS.back_from_nowhere
            if ahead.take(reading.lines[-1].key, cost):
                ahead.add(Reading(cost, reading.lines, reading.heard, reading.said_to))

    def _understand(self, phrase: Phrase, kept: Sequence[Reading], ahead: Arrivals) -> None:
        """Take the readings on by everything that the phrase can mean in each."""
        self._look_at(phrase)
        prices = Prices(
            self._costs,
            phrase,
            self._contexts[phrase.start],
            self._contexts[phrase.anchor],
            self._hinted[phrase.anchor],
            game_known=self.game is not None,
            runs_on=self._runs_on,
        )
        step = _Step(phrase, ahead, prices)
        passed_over = self._passed_by[phrase.end] - self._passed_by[phrase.start]
        most = kept[0].cost + COSTS.worst_step
        if len(kept) >= ahead.places:
            # These will be there too, with the phrase passed over.
            most = min(most, max(kept[0].cost + ahead.near, kept[ahead.places - 1].cost))
        ahead.expect(most + passed_over)
        for rank, reading in enumerate(kept):
            if reading.cost + phrase.cost > ahead.limit:
                break
            if rank < COSTS.gaps_tried:
                self._after_a_gap(reading, step)
            self._name(reading, step)
            self._return(reading, step)
            self._go_on(reading, step)
            self._branch(reading, step)

    def _look_at(self, phrase: Phrase) -> None:
        start = phrase.start
        self._ways_on.look_at(phrase, self._numbers[start], self._written[start], self._replaced[start])
        self._named.clear()

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

    def _name(self, reading: Reading, step: _Step) -> None:
        """The phrase as a name of what is on the board or was played."""
        phrase, ahead, line = step.phrase, step.ahead, reading.lines[-1]
        named, place = named_in(reading, phrase, self._named)
        cost = reading.cost + named
        cost += step.prices.naming if len(reading.lines) == 1 else step.prices.naming_inside
        if ahead.take(line.key, cost):
            heard = Heard(How.NAMED, phrase, line.tip, len(reading.lines) - 1, reading.heard, place)
            ahead.add(Reading(cost, reading.lines, heard, reading.said_to))

    @staticmethod
    def _return(reading: Reading, step: _Step) -> None:
        """Coming back to a line by naming its last move once more."""
        phrase, ahead = step.phrase, step.ahead
        innermost = len(reading.lines) - 1
        if phrase.form.vague:
            return
        for depth in range(innermost - 1, -1, -1):
            line = reading.lines[depth]
            move = line.tip.move
            if move is None or (phrase.form.to is not None and phrase.form.to != move.to_square):
                continue
            here = reading.cost + step.prices.returning(innermost - depth)
            if step.returned.get(line.key, math.inf) <= here:
                continue
            step.returned[line.key] = here
            fits = line.tip.fits_last(phrase)
            if fits is not None and ahead.take(line.key, here + sum(fits)):
                heard = Heard(How.NAMED, phrase, line.tip, depth, reading.heard)
                ahead.add(Reading(here + sum(fits), reading.lines[: depth + 1], heard, phrase.end))

    def _go_on(self, reading: Reading, step: _Step) -> None:
        """The phrase as the next move of the line that is told, or of one that is still open."""
        phrase, ahead = step.phrase, step.ahead
        lines = reading.lines
        innermost = len(lines) - 1
        sentences, paragraphs = self._breaks
        since = max(0, reading.said_to - 1)
        over_sentence = sentences[phrase.start] > sentences[since]
        over_paragraph = paragraphs[phrase.start] > paragraphs[since]
        prices = step.prices.going_on(innermost, over_sentence, over_paragraph)
        for depth in range(innermost, -1, -1):
            line = lines[depth]
            here = reading.cost + prices[depth] + self._ways_on.misnumbered(line.tip)
            if depth == innermost and depth and line.tip.ply - line.root.ply >= COSTS.long_side_line_from:
                here += COSTS.long_side_line
            if here > ahead.limit + _BEST_FIT or step.gone_on.get(line.key, math.inf) <= here:
                continue
            step.gone_on[line.key] = here
            around = lines[depth - 1].key if depth else NO_LINES
            for fit, place, unsaid in self._ways_on.going_on(line.tip, ahead.limit - here, main=not depth):
                cost = here + fit
                if cost > ahead.limit:
                    break
                key = line_key(around, place)
                if ahead.take(key, cost):
                    heard = reading.heard
                    for skipped in unsaid:
                        heard = Heard(How.UNSAID, phrase, skipped, depth, heard)
                    how = How.GOES_ON if depth == innermost else How.RETURNS
                    heard = Heard(how, phrase, place, depth, heard)
                    ahead.add(Reading(cost, (*lines[:depth], Line(line.root, place, key)), heard, phrase.end))

    def _after_a_gap(self, reading: Reading, step: _Step) -> None:
        """The phrase as the move after one that was not said; the turn is passed, and a move is found for it later."""
        phrase, ahead = step.phrase, step.ahead
        form, context = phrase.form, self._contexts[phrase.anchor]
        line = reading.lines[-1]
        tip = line.tip
        whole = form.to is not None and form.names_piece and not form.promotes
        if not whole or context.against > COSTS.gap_despite or phrase.cost > COSTS.gap_despite or self.game is not None:
            return
        if tip.move == _PASS or tip.board.is_check() or tip.stands(phrase):
            return
        passed = self.after(tip, _PASS)
        doubt, fits = passed.fits(phrase)
        depth = len(reading.lines) - 1
        around = reading.lines[-2].key if depth else NO_LINES
        here = reading.cost + phrase.cost + context.against + doubt + COSTS.gap
        here += self._hinted[phrase.anchor][SIDE if depth else MAIN]
        for move, fit in fits:
            place = self.after(passed, move)
            key = line_key(around, place)
            if ahead.take(key, here + fit):
                unsaid = Heard(How.UNSAID, phrase, passed, depth, reading.heard)
                heard = Heard(How.GOES_ON, phrase, place, depth, unsaid)
                lines = (*reading.lines[:-1], Line(line.root, place, key))
                ahead.add(Reading(here + fit, lines, heard, phrase.end))

    def _branch(self, reading: Reading, step: _Step) -> None:
        """The phrase as the first move of a side-line, in place of one of the last moves or of the next one."""
        phrase, ahead = step.phrase, step.ahead
        innermost = len(reading.lines) - 1
        anchor = self._just_named(reading, phrase)
        number = self._numbers[phrase.start] or self._written[phrase.start]
        reach = COSTS.branch_reach_with_cue if step.prices.branch > _CLEAR_CUE else COSTS.branch_reach
        if number is not None or anchor is not None:
            reach = innermost + max(line.tip.ply for line in reading.lines) + 1
        prices = step.prices.leaving(innermost)
        for depth in range(innermost, -1, -1):
            line = reading.lines[depth]
            levels, other = prices[depth]
            here = reading.cost + levels
            most = ahead.limit - reading.cost - min(levels, other)
            if most < -_BEST_FIT:
                continue
            same = line.key, line.root.number, reach, anchor, depth == innermost
            if step.left.get(same, math.inf) <= here:
                continue
            step.left[same] = here
            for way in self._ways_on.leaving(line, reach, anchor, most, main=not depth):
                if way.cost > most:
                    break
                cost = here if way.alternative is None else min(here, reading.cost + other + way.alternative)
                cost += way.cost
                shared = depth if way.sibling else depth + 1
                key = line_key(reading.lines[shared - 1].key if shared else NO_LINES, way.place)
                if ahead.take(key, cost):
                    heard = Heard(How.BRANCHES, phrase, way.place, shared, reading.heard)
                    lines = (*reading.lines[:shared], Line(way.at, way.place, key))
                    ahead.add(Reading(cost, lines, heard, phrase.end))

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
