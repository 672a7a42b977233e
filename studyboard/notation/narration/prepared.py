"""A text made ready for the search: its words, what they can mean, and what surrounds them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from studyboard.notation.narration.costs import COSTS
from studyboard.notation.narration.cues import Context, contexts_of
from studyboard.notation.narration.forms import Form, Phrase
from studyboard.notation.narration.hints import ACTIONS, PASSED, Hints, anchors_of, features_of
from studyboard.notation.narration.lexicon import Lexicon
from studyboard.notation.narration.move_numbers import move_numbers
from studyboard.notation.narration.phrases import phrases_of
from studyboard.notation.narration.stray_stops import without_stray_stops
from studyboard.notation.narration.tokens import Break, Token, tokens_of
from studyboard.notation.narration.units import Unit, units_of

_COLOUR_BEFORE = 4
_DIGITS = 3
_CLEARER, _PIECE_HEARD = 0.4, 0.5
_HINT_BEFORE = 4
_NAMED_SOON, _NAMED_CLEARLY, _SENTENCE_AROUND = 4, 0.8, 25


@dataclass(frozen=True, slots=True)
class Prepared:
    """A text with what its words can mean; the sequences are as long as there are words.

    phrases: those that may say a move, by the word with which they begin
    contexts: what the words around each word say about it
    passing: what it costs to pass a word over
    numbers: the number of the move that the sentence of each word names, if it does
    written: the number of the move that is written just ahead of a word ("12." or "12..."), if there is one
    replaced: for each word the phrases for the move in whose stead its sentence names others ("instead of …")
    hinted: for each word what each action with it costs more or less than usual, by the words around it
    trained: whether there was a trained model to say so
    """

    tokens: tuple[Token, ...]
    phrases: Sequence[Sequence[Phrase]]
    contexts: Sequence[Context]
    passing: Sequence[float]
    numbers: Sequence[int | None]
    written: Sequence[int | None]
    replaced: Sequence[Sequence[Phrase]]
    hinted: Sequence[Sequence[float]]
    trained: bool


_NO_HINT = (0.0,) * len(ACTIONS)


def prepared(text: str, words: Lexicon, trained: Hints | None = None) -> Prepared:
    """Cut *text* into words and find what they can mean. O(length).

    trained: what was learned about the words around moves, if anything
    """
    tokens = tokens_of(text)
    units = units_of(tokens, words)
    tokens = without_stray_stops(tokens, units)
    contexts = contexts_of(tokens, _anchors(units), words)
    phrases = _coloured(phrases_of(tokens, units, words), tokens, units, _sides_by_dots(tokens, text))
    hinted = _hinted(tokens, contexts, phrases, trained)
    passing = [cost + hint[PASSED] for cost, hint in zip(_passing_costs(units, contexts), hinted, strict=True)]
    return Prepared(
        tokens,
        phrases,
        contexts,
        passing,
        move_numbers(tokens, units, words),
        _written(tokens),
        _replaced(tokens, units, phrases),
        hinted,
        trained is not None,
    )


def _hinted(
    tokens: Sequence[Token], contexts: Sequence[Context], phrases: Sequence[Sequence[Phrase]], trained: Hints | None
) -> list[tuple[float, ...]]:
    found = [_NO_HINT] * len(tokens)
    if trained is not None:
        for at, features in features_of(tokens, contexts, anchors_of(phrases)).items():
            found[at] = trained.costs(features)
    return found


def _written(tokens: Sequence[Token]) -> list[int | None]:
    found: list[int | None] = [None] * len(tokens)
    for at in range(1, len(tokens)):
        if tokens[at - 1].numbered and len(tokens[at - 1].text) <= _DIGITS:
            found[at] = int(tokens[at - 1].text)
    return found


def _sides_by_dots(tokens: Sequence[Token], text: str) -> list[bool | None]:
    """For each word whether a number with one dot stands ahead of it (White's move), or one with several (Black's)."""
    found: list[bool | None] = [None] * len(tokens)
    for at in range(1, len(tokens)):
        if tokens[at - 1].numbered:
            between = text[tokens[at - 1].end : tokens[at].start]
            found[at] = ".." not in between and "…" not in between
    return found


def _replaced(
    tokens: Sequence[Token], units: Sequence[Sequence[Unit]], phrases: Sequence[Sequence[Phrase]]
) -> list[tuple[Phrase, ...]]:
    """For each word the phrases behind an "instead of" in its sentence; none for these words themselves."""
    found: list[tuple[Phrase, ...]] = [()] * len(tokens)
    for at, here in enumerate(units):
        behind = max((unit.end for unit in here if unit.kind == "instead"), default=None)
        if behind is None:
            continue
        named = [
            phrase
            for start in range(behind, min(len(tokens), behind + _NAMED_SOON))
            for phrase in phrases[start]
            if not phrase.form.vague and phrase.cost < _NAMED_CLEARLY
        ]
        if not named:
            continue
        end = max(phrase.end for phrase in named)
        first, last = at, end
        while first > 0 and tokens[first].broken < Break.SENTENCE and at - first < _SENTENCE_AROUND:
            first -= 1
        while last < len(tokens) and tokens[last].broken < Break.SENTENCE and last - end < _SENTENCE_AROUND:
            last += 1
        found[first:at] = [tuple(named)] * (at - first)
        found[end:last] = [tuple(named)] * (last - end)
    return found


def _anchors(units: Sequence[Sequence[Unit]]) -> list[int]:
    """For each word: 2 where it, plainly read, begins a square or a whole move, 3 where it ends one, 1 for a piece or a
    capture, else 0."""
    found = [0] * len(units)
    for here in units:
        for unit in here:
            if unit.kind in ("square", "written", "castles") and unit.cost < 0.7:
                found[unit.start : unit.end] = [2] + [3] * (unit.end - unit.start - 1)
            elif (unit.kind in ("piece", "capture") and unit.cost < 0.4) or (
                unit.kind == "letter" and unit.cost == 0 and _stands_before_a_capture(unit, units)
            ):
                found[unit.start] = max(found[unit.start], 1)
    return found


def _stands_before_a_capture(unit: Unit, units: Sequence[Sequence[Unit]]) -> bool:
    return unit.end < len(units) and any(further.kind == "capture" for further in units[unit.end])


def _passing_costs(units: Sequence[Sequence[Unit]], contexts: Sequence[Context]) -> list[float]:
    """For each word what it costs not to understand it as part of a move."""
    costs: list[float] = []
    for at, (here, context) in enumerate(zip(units, contexts, strict=True)):
        most = 0.0
        for unit in here:
            plain = _PASSING.get(unit.kind, 0.0)
            if unit.kind == "capture" and unit.value == "loosely":
                plain = COSTS.capture_loosely
            doubt = unit.cost
            if unit.kind == "square" and doubt and _behind_a_piece(at, units):
                # "See three" may be anything; "night see three" hardly.
                doubt *= _CLEARER
            most = max(most, plain * max(0.12, 1.0 - 1.3 * doubt))
        costs.append(most * context.passing)
    return costs


def _behind_a_piece(at: int, units: Sequence[Sequence[Unit]]) -> bool:
    return any(
        unit.kind in ("piece", "capture") and unit.cost < _PIECE_HEARD
        for before in range(max(0, at - 2), at)
        for unit in units[before]
    )


_PASSING = {
    "square": COSTS.square,
    "piece": COSTS.piece,
    "capture": COSTS.capture,
    "castles": COSTS.castles,
    "written": COSTS.written,
    "check": COSTS.check,
    "mate": COSTS.check,
    "promotes": COSTS.promotes,
}


def _coloured(
    phrases: Sequence[Sequence[Phrase]],
    tokens: Sequence[Token],
    units: Sequence[Sequence[Unit]],
    by_dots: Sequence[bool | None],
) -> list[tuple[Phrase, ...]]:
    """The phrases with the colour that is named just ahead of them, as in "White's knight takes", and numbered."""
    found: list[tuple[Phrase, ...]] = []
    numbers: dict[Form, int] = {}
    for at, here in enumerate(phrases):
        white = by_dots[at]
        if here and white is None:
            white = _colour_before(at, tokens, units)
        hint = _hint_before(at, tokens, units) if here else ""
        numbered: list[Phrase] = []
        for phrase in here:
            form = phrase.form if white is None else replace(phrase.form, white=white)
            if hint and form.piece is None and form.to is not None:
                form = replace(form, hint=hint)
            numbered.append(replace(phrase, form=form, form_number=numbers.setdefault(form, len(numbers))))
        found.append(tuple(numbered))
    return found


def _colour_before(at: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> bool | None:
    for before in range(at - 1, max(-1, at - 1 - _COLOUR_BEFORE), -1):
        if tokens[before + 1].broken >= Break.CLAUSE:
            return None
        for unit in units[before]:
            if unit.kind == "colour":
                # "Knight c6 from Black, h3": the colour belongs to what was said before it.
                looks_back = before and any(further.kind in ("origin", "with") for further in units[before - 1])
                return None if looks_back else unit.value == "white"
            if unit.kind in ("square", "piece", "capture", "written") and unit.cost < 0.3:
                return None
    return None


def _hint_before(at: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> str:
    """What a pronoun just ahead speaks for: "mine to c6", "she could go to d3"."""
    for before in range(at, max(-1, at - 1 - _HINT_BEFORE), -1):
        for unit in units[before]:
            if unit.kind == "stands_for":
                return str(unit.value)
            if before < at and unit.kind in ("square", "piece", "capture", "written") and unit.cost < 0.3:
                return ""
        if tokens[before].broken >= Break.CLAUSE:
            return ""
    return ""
