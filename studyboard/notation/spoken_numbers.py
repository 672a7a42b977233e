"""Numbers as they are said."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class NumberWords:
    """The words for numbers in one language.

    small, tens: zero to nineteen, and the tens by their figure
    words: “hundred”, “thousand”, “million”, “and”, “oh”, “minus”
    ordinals, decades: the last word of a number in other forms; `ending` for those not listed
    """

    small: tuple[str, ...]
    tens: tuple[str, ...]
    words: Mapping[str, str]
    ordinals: Mapping[str, str]
    decades: Mapping[str, str]


def number_words(number: int, say: NumberWords, in_pairs: bool = True) -> str:
    """A whole number in words.

    in_pairs: say 1100 to 2999 as years and ratings are said, “eighteen fifty”, “twenty-four oh five”

    From a billion on it is a telephone number rather than a count, and said figure by figure.
    """
    words = say.words
    if number < 0:
        return f"{words['minus']} {number_words(-number, say, in_pairs)}"
    if number >= 1_000_000_000:
        return figures(str(number), say)
    if in_pairs and 1100 <= number < 3000 and number // 10 != 200 and number % 1000:
        return _pairs(number, say)
    parts: list[str] = []
    for size, name in ((1_000_000, "million"), (1_000, "thousand"), (100, "hundred")):
        count, number = divmod(number, size)
        if count:
            parts.append(f"{number_words(count, say)} {words[name]}")
    if number or not parts:
        parts += [words["and"]] if parts else []
        parts.append(_below_hundred(number, say))
    return " ".join(parts)


def ordinal_words(number: int, say: NumberWords) -> str:
    """A place in an order: “twenty-first”."""
    return _with_last_word(number_words(number, say), say.ordinals)


def decade_words(number: int, say: NumberWords) -> str:
    """Several of a number, or a decade: “eighteen fifties”."""
    return _with_last_word(number_words(number, say), say.decades)


def figures(digits: str, say: NumberWords) -> str:
    """Figures one by one: “zero zero seven”."""
    return " ".join(say.small[int(digit)] for digit in digits)


def _pairs(number: int, say: NumberWords) -> str:
    first, second = divmod(number, 100)
    if not second:
        rest = say.words["hundred"]
    elif second < 10:
        rest = f"{say.words['oh']} {say.small[second]}"
    else:
        rest = _below_hundred(second, say)
    return f"{_below_hundred(first, say)} {rest}"


def _below_hundred(number: int, say: NumberWords) -> str:
    if number < len(say.small):
        return say.small[number]
    tens, ones = divmod(number, 10)
    return f"{say.tens[tens]}-{say.small[ones]}" if ones else say.tens[tens]


def _with_last_word(said: str, forms: Mapping[str, str]) -> str:
    start = max(said.rfind(" "), said.rfind("-")) + 1
    last = said[start:]
    return said[:start] + forms.get(last, last + forms["ending"])
