"""The times of the words of a line that may have been rewritten since they were found."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import SequenceMatcher

from studyboard.model.script import BeatKey, words
from studyboard.model.takes import SaidLine, Span, Take


@dataclass(frozen=True, slots=True)
class SaidWord:
    """One word of a line as it stands now. word: its index; start, end: samples from the start of the take"""

    word: int
    start: int
    end: int


def said_words(take: Take, beat: BeatKey, text: str, within: Span | None = None) -> tuple[SaidWord, ...]:
    """The words of a line of which a take knows the times, in the order of time. O(length of the line).

    text: the line as it stands now; words that were put in since have no times, and those that stay keep theirs
    within: only the words that lie in this stretch of the take
    """
    line = next((one for one in take.said if one.beat == beat), None)
    if line is None:
        return ()
    found: list[SaidWord] = []
    for old, new in _places(line, text):
        start, end = line.starts[old], line.ends[old]
        if start is not None and end is not None and (not found or start >= found[-1].end):
            found.append(SaidWord(new, start, max(start, end)))
    return tuple(one for one in found if within is None or (within.start <= one.start and one.end <= within.end))


def _places(line: SaidLine, text: str) -> list[tuple[int, int]]:
    """Which word of the line as it was is which word of it now."""
    known = min(len(line.starts), len(line.ends))
    if text == line.text:
        return [(place, place) for place in range(min(known, len(words(text))))]
    blocks = SequenceMatcher(None, words(line.text)[:known], words(text), autojunk=False).get_matching_blocks()
    return [(block.a + step, block.b + step) for block in blocks for step in range(block.size)]
