"""Numbers of moves that a talk names, as in "on move twenty-three"."""

from __future__ import annotations

from collections.abc import Sequence

from studyboard.notation.narration.lexicon import Lexicon
from studyboard.notation.narration.tokens import Break, Token
from studyboard.notation.narration.units import Unit

_MOST = 300
_TENS = 10


def move_numbers(tokens: Sequence[Token], units: Sequence[Sequence[Unit]], words: Lexicon) -> list[int | None]:
    """For each word the number of the move that its sentence names, None where it names none. O(words)."""
    found: list[int | None] = [None] * len(tokens)
    for at, here in enumerate(units):
        announced = [unit.end for unit in here if unit.kind == "number"]
        number = _number(tokens, max(announced), words) if announced else None
        if number is None:
            continue
        first = at
        while first > 0 and tokens[first].broken < Break.SENTENCE:
            first -= 1
        last = at + 1
        while last < len(tokens) and tokens[last].broken < Break.SENTENCE:
            last += 1
        found[first:last] = [number] * (last - first)
    return found


def _number(tokens: Sequence[Token], at: int, words: Lexicon) -> int | None:
    """The number that is said at a word: in figures, or in one or two words."""
    if at >= len(tokens) or tokens[at].broken >= Break.CLAUSE:
        return None
    text = tokens[at].text
    if text.isdecimal():
        return int(text) if len(text) < len(str(_MOST)) + 1 and 0 < int(text) <= _MOST else None
    number = words.numerals.get(text)
    if number is not None and number >= 2 * _TENS and at + 1 < len(tokens) and tokens[at + 1].broken == Break.NONE:
        ones = words.numerals.get(tokens[at + 1].text, _TENS)
        return number + ones if ones < _TENS else number
    return number
