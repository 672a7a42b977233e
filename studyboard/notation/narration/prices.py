"""What each kind of step costs at one phrase, whatever the phrase then plays."""

from __future__ import annotations

from collections.abc import Sequence

from studyboard.notation.narration.costs import COSTS, Costs
from studyboard.notation.narration.cues import Context
from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.hints import BRANCH, MAIN, NAMED, RETURN, SIDE

#: From here on a cue speaks against what it does not say.
_HEARD = 0.3


class Prices:
    """The costs of the steps at a phrase, the cost of the phrase itself included.

    costs: the weights
    lead, context: what is around its first word, and around the one that decides
    hint: what each action costs more or less than usual there
    game_known: whether the moves of the game are known
    runs_on: whether the text has no full stops to rely on

    naming, naming_inside: a name of something, on the main line and in a side-line
    branch, back, alternative: how clearly the words around it speak of a side-line, of coming back, of several ways
    """

    def __init__(
        self,
        costs: Costs,
        phrase: Phrase,
        lead: Context,
        context: Context,
        hint: Sequence[float],
        *,
        game_known: bool,
        runs_on: bool,
    ) -> None:
        self._costs = costs
        self._hint = hint
        self._runs_on = runs_on
        self.branch, self.back = max(context.branch, lead.branch), max(context.back, lead.back)
        self.alternative = lead.alternative
        self.naming = self.naming_inside = phrase.cost + hint[NAMED]
        if not phrase.form.bare:
            self.naming_inside += COSTS.named_despite_return * max(0.0, self.back - _HEARD)
        self._named_again = phrase.cost + hint[RETURN] + COSTS.just_played
        against = context.against
        if phrase.form.bare or phrase.form.vague:
            against += context.against * COSTS.bare_against
        self._played = phrase.cost + against
        self._told = self._played + costs.alternative_ignored * lead.alternative
        self._rejected = costs.rejected_and_told * max(context.rejected, lead.rejected)
        ignored = costs.cue_to_branch_ignored * max(0.0, self.branch - COSTS.weak_cue) / (1.0 - COSTS.weak_cue)
        self._branch_ignored = ignored * (COSTS.known_despite_cue if game_known else 1.0)
        self._going_on: dict[tuple[int, bool, bool], list[float]] = {}
        self._leaving: dict[int, list[tuple[float, float]]] = {}

    def returning(self, levels: int) -> float:
        """Coming back over so many levels by naming the last move there once more."""
        return self._named_again + self._coming_back(levels)

    def going_on(self, innermost: int, over_sentence: bool, over_paragraph: bool) -> list[float]:
        """The next move of each open line, by its depth.

        innermost: the depth of the line that is told
        over_sentence, over_paragraph: whether one has ended since its last move
        """
        key = innermost, over_sentence, over_paragraph
        found = self._going_on.get(key)
        if found is None:
            found = self._going_on[key] = [
                self._next(depth, innermost, over_sentence, over_paragraph) for depth in range(innermost + 1)
            ]
        return found

    def leaving(self, innermost: int) -> list[tuple[float, float]]:
        """Leaving each open line, by its depth; and what it costs at least to do so for one of several ways."""
        found = self._leaving.get(innermost)
        if found is None:
            found = self._leaving[innermost] = [self._off(depth, innermost) for depth in range(innermost + 1)]
        return found

    def _coming_back(self, levels: int) -> float:
        back = max(COSTS.returns_least, COSTS.returns - self._costs.cue * self.back)
        return back + COSTS.each_level * (levels - 1)

    def _next(self, depth: int, innermost: int, over_sentence: bool, over_paragraph: bool) -> float:
        cost = self._told + (self._rejected if innermost else 0.0)
        if depth < innermost:
            cost += self._hint[RETURN] + self._coming_back(innermost - depth)
            if depth:
                cost += COSTS.returns_to_side_line
            cost -= COSTS.returns_after_sentence * (over_sentence or self._runs_on)
            cost -= COSTS.returns_after_paragraph * over_paragraph
        elif depth:
            cost += self._hint[SIDE] + COSTS.side_line_goes_on
            cost += self._costs.cue_ignored * max(0.0, self.back - _HEARD)
            cost += COSTS.side_line_over_sentence * over_sentence + COSTS.side_line_over_paragraph * over_paragraph
        else:
            cost += self._hint[MAIN]
        return cost + (0.0 if depth else self._branch_ignored)

    def _off(self, depth: int, innermost: int) -> tuple[float, float]:
        costs = self._costs
        here = self._played + self._hint[BRANCH]
        leaving = max(COSTS.branches_least, costs.branches - costs.cue_to_branch * self.branch)
        leaving += costs.cue_ignored * max(0.0, self.back - _HEARD - self.branch)
        leaving += COSTS.each_level_left * (innermost - depth) + (COSTS.nested if depth else 0.0)
        other = COSTS.alternative / max(0.1, self.alternative) if depth == innermost else leaving
        return here + leaving, here + other
