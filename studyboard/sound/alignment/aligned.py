"""What listening to a recording has found."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from studyboard.model.script import BeatKey


class Departure(StrEnum):
    """How a recording departs from the script, or how far it could be followed."""

    SKIPPED = "skipped"
    REPEATED = "repeated"
    AD_LIBBED = "ad-libbed"
    DOUBTFUL = "doubtful"


@dataclass(frozen=True, slots=True)
class AlignedWord:
    """One word of the script in the sound.

    beat: whose line has it; word: index in that line; text: as it is written
    start, end: when it is said (s from the start of the sound); where it is not said, the moment at which it would be
    sure: False where its time is a guess
    """

    beat: BeatKey
    word: int
    text: str
    start: float
    end: float
    sure: bool


@dataclass(frozen=True, slots=True)
class Unmatched:
    """A place at which sound and script do not agree.

    kind: words of the script that were not said, words that were said once more, or that are in no line; or words
        of which the time is not certain
    start, end: where in the sound (s)
    text: the words of the script that are skipped, repeated or doubtful; for what is ad-libbed, empty: what was said
        cannot be known, since only words of the script are recognised
    beat, word, words: where the words stand in the script, and how many; None and 0 for what is ad-libbed
    """

    kind: Departure
    start: float
    end: float
    text: str = ""
    beat: BeatKey | None = None
    word: int = 0
    words: int = 0


@dataclass(frozen=True, slots=True)
class Alignment:
    """A script found in a recording.

    words: all words of the script, in the order in which they should be said
    unmatched: where it departs, in the order of time
    seconds: length of the recording (s)
    """

    words: tuple[AlignedWord, ...]
    unmatched: tuple[Unmatched, ...]
    seconds: float

    @property
    def sure(self) -> float:
        """The share of the words whose time is certain, from 0.0 to 1.0."""
        return sum(word.sure for word in self.words) / len(self.words) if self.words else 0.0
