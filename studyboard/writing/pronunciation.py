"""Where in a line words stand of which the author has written down how they are said."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True, slots=True)
class Hint:
    """One such word: where it begins and ends in the line (characters), and how it is said."""

    start: int
    end: int
    said: str


def hints_in(text: str, pronunciations: Mapping[str, str]) -> tuple[Hint, ...]:
    """Every word of *text* with a pronunciation, in its order; also in another case, and before a possessive s.

    A key may be several words; the longest that fits is taken. O(length of the text).
    """
    if not pronunciations or not text:
        return ()
    pattern = _pattern(tuple(pronunciations))
    folded = {_folded(word): said for word, said in pronunciations.items()}
    return tuple(
        Hint(found.start(), found.end(), pronunciations.get(found[0], folded.get(_folded(found[0]), "")))
        for found in pattern.finditer(text)
    )


@lru_cache(maxsize=8)
def _pattern(words: tuple[str, ...]) -> re.Pattern[str]:
    longest_first = sorted(words, key=len, reverse=True)
    either = "|".join(r"\s+".join(re.escape(part) for part in word.split()) for word in longest_first)
    return re.compile(rf"(?<!\w)(?:{either})(?!\w)", re.IGNORECASE)


def _folded(word: str) -> str:
    return " ".join(word.split()).casefold()
