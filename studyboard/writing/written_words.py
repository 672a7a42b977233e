"""The words of a text that a dictionary is asked about: no moves, squares, numbers, addresses or abbreviations."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from studyboard.notation.written_move import readings

_RUN = re.compile(r"\S+")
_JOINT = re.compile(r"[-–—/…]")
_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*['’]?")
_ADDRESS = re.compile(r"@|://|www\.|\.(?:com|org|net|de|uk)\b", re.IGNORECASE)
_PLACEHOLDER = re.compile(r"\{\w*\}?")
_CASTLES = re.compile(r"[O0]-[O0](?:-[O0])?")
_EDGES = ".,;:!?()[]\"“”„‘’'«»+#"


@dataclass(frozen=True, slots=True)
class WrittenWord:
    """One word of a text: where it begins and ends (characters), and its letters."""

    start: int
    end: int
    text: str


def written_words(text: str) -> Iterator[WrittenWord]:
    """Every word of *text* that a dictionary may know, in its order. O(length)."""
    for run in _RUN.finditer(text):
        if _ADDRESS.search(run[0]) or _CASTLES.fullmatch(run[0].strip(_EDGES)):
            continue
        begin = run.start()
        for part in _parts(run[0]):
            bare = part.text.strip(_EDGES)
            if any(letter.isdigit() for letter in bare) or _PLACEHOLDER.search(part.text) or readings(bare):
                continue
            for word in _WORD.finditer(part.text):
                start = begin + part.start + word.start()
                letters = word[0].rstrip("'’")
                if len(letters) > 1 and not letters.isupper():
                    yield WrittenWord(start, start + len(letters), letters)


def word_at(text: str, character: int) -> WrittenWord | None:
    """The word in which, or at whose end, this character of the text is; None where there is none."""
    for word in _WORD.finditer(text):
        letters = word[0].rstrip("'’")
        if word.start() <= character <= word.start() + len(letters):
            return WrittenWord(word.start(), word.start() + len(letters), letters)
    return None


def names_in(values: Iterable[str]) -> frozenset[str]:
    """Every word of these texts, such as the tags of a game: names of players, clubs and places."""
    return frozenset(word[0].rstrip("'’") for value in values for word in _WORD.finditer(value))


def _parts(run: str) -> Iterator[WrittenWord]:
    at = 0
    for joint in _JOINT.finditer(run):
        yield WrittenWord(at, joint.start(), run[at : joint.start()])
        at = joint.end()
    yield WrittenWord(at, len(run), run[at:])
