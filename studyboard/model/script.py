"""What is said: spoken lines with their cues, and the figures of a presenter's pace."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

_WORD = re.compile(r"\S+")


def words(text: str) -> list[str]:
    """The words of a spoken line: runs of characters without white space, punctuation included."""
    return _WORD.findall(text)


def word_spans(text: str) -> list[tuple[int, int]]:
    """Start and end of each word of *text*, in characters."""
    return [match.span() for match in _WORD.finditer(text)]


@dataclass(frozen=True, slots=True)
class Cue:
    """The word of a spoken line at which a move is played or a mark appears.

    word: index of the word, from 0; the number of words means "after the last one"
    node: id of the node whose move is played, or None
    mark: index into the marks of the node that has the line, or None

    Exactly one of node and mark is given; anything else raises ValueError.
    """

    word: int
    node: int | None = None
    mark: int | None = None

    def __post_init__(self) -> None:
        if (self.node is None) == (self.mark is None):
            raise ValueError("A cue plays a move or shows a mark: exactly one of the two.")
        if self.word < 0:
            raise ValueError("A cue cannot come before the first word.")


@dataclass(frozen=True, slots=True)
class SpokenLine:
    """What the presenter says at one stop, with its cues in the order of their words."""

    text: str = ""
    cues: tuple[Cue, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.text.strip())

    def sorted(self) -> SpokenLine:
        """The same line with its cues in the order of their words (stable) and none beyond the end."""
        last = len(words(self.text))
        cues = (Cue(min(cue.word, last), cue.node, cue.mark) for cue in self.cues)
        return SpokenLine(self.text, tuple(sorted(cues, key=lambda cue: cue.word)))


SILENT = SpokenLine()


class Part(StrEnum):
    """The spoken lines that belong to no move, by their place in the talk."""

    GREETING = "greeting"
    CLOSING = "closing"
    THANKS = "thanks"

    @property
    def opens(self) -> bool:
        """True for the parts that are said before the first move."""
        return self is Part.GREETING


#: What one beat is known by: the id of the node that has its spoken line, or the part of the talk.
BeatKey: TypeAlias = "int | Part"


@dataclass(frozen=True, slots=True)
class FreeLine:
    """A spoken line that belongs to no move.

    intended: how long it should take (s), None where the estimate decides
    locked: fitting the talk to its slot leaves the intended length as it is
    """

    spoken: SpokenLine = SILENT
    intended: float | None = None
    locked: bool = False


@dataclass(frozen=True, slots=True)
class Pace:
    """How one presenter speaks; the estimate itself is in the timing layer.

    syllables_per_second: articulation rate, pauses left out (1/s)
    clause_pause, sentence_pause, paragraph_pause: silence after a comma, a full stop, a paragraph (s)
    move_time: a move played without a word (s)
    back_time: the board stepping back from a side-line (s)
    move_pause: silence around a move or square that is said, beyond that of the sentence (s)
    side_line_rate: how fast side-lines are told, as a share of the rate on the main line
    doubt: how far a whole talk may come out from its estimate, as a share of it (one standard deviation)
    stray: the same of a single line, beyond that

    The default makes running prose come out inside the 160-180 words per minute recommended for radio:
    E. Rodero, Text & Talk 32(3), 2012. Its doubt is how far presenters differ: single paragraphs of a fluent talk lie
    between 140 and 235 words a minute around 185 (common practice).
    """

    syllables_per_second: float = 4.9
    clause_pause: float = 0.22
    sentence_pause: float = 0.50
    paragraph_pause: float = 0.90
    move_time: float = 1.2
    back_time: float = 0.8
    move_pause: float = 0.0
    side_line_rate: float = 1.0
    doubt: float = 0.12
    stray: float = 0.08

    def __post_init__(self) -> None:
        if not self.syllables_per_second > 0:
            raise ValueError("A pace needs more than no syllables per second.")
        pauses = (self.clause_pause, self.sentence_pause, self.paragraph_pause, self.move_time, self.back_time)
        if any(not pause >= 0 for pause in (*pauses, self.move_pause)):
            raise ValueError("A pause cannot be shorter than nothing.")
        if not self.side_line_rate > 0:
            raise ValueError("Side-lines are told at some rate.")
        if not (self.doubt >= 0 and self.stray >= 0):
            raise ValueError("A doubt cannot be smaller than none.")
