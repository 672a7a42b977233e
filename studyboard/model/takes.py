"""Recordings: what is known of a take besides its sound."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from studyboard.model.script import BeatKey


@dataclass(frozen=True, slots=True)
class SoundTime:
    """A moment of a recording, counted in samples of its own sound clock.

    samples: from the start of the sound
    rate: samples a second (Hz)
    """

    samples: int
    rate: int

    @property
    def seconds(self) -> float:
        """The same moment in seconds from the start of the sound."""
        return self.samples / self.rate


@dataclass(frozen=True, slots=True)
class TakeEvent:
    """The board showing a node from one moment of a take on.

    at: the moment
    node: id of the node that is shown
    beat: the beat that is being told, None while the presenter wanders off the running order
    """

    at: SoundTime
    node: int
    beat: BeatKey | None


Events: TypeAlias = tuple[TakeEvent, ...]


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of the sound of one take, in samples from its start: the first one, and the one behind the last."""

    start: int
    end: int

    def __post_init__(self) -> None:
        if not 0 <= self.start < self.end:
            raise ValueError("A stretch of sound begins before it ends.")

    @property
    def samples(self) -> int:
        """How long it is."""
        return self.end - self.start

    def meets(self, other: Span) -> bool:
        """True where both have a sample in common."""
        return self.start < other.end and other.start < self.end


@dataclass(frozen=True, slots=True)
class Replaced:
    """The stretch of another take in whose place a pickup is heard.

    take: id of that take, which is always an earlier one
    """

    take: int
    span: Span


@dataclass(frozen=True, slots=True)
class SaidLine:
    """When the words of one line were said in a take, as listening to it has found.

    beat: whose line; text: the line as it was when it was listened for
    starts, ends: of each of its words (samples from the start of the take); None for words that were not found
    """

    beat: BeatKey
    text: str
    starts: tuple[int | None, ...]
    ends: tuple[int | None, ...]


@dataclass(frozen=True, slots=True)
class Take:
    """One recording of one or more beats; its sound lies in the study file under the same id.

    id: stable, never used again
    name: what the presenter calls it
    rate: samples a second (Hz); mono, 16 bits
    samples: how long the sound is
    started: when recording began, ISO 8601 with its offset
    events: what the board showed, in the order of time
    kept: False once discarded; a discarded take can be taken back until it is purged
    complete: False when the program was stopped before the recording was
    note: what the presenter wants to remember about it
    origin: name of the file that it was taken from; empty where it was recorded here
    left_out: what is not heard of it: trimmed ends, a cough; in the order of time, none touching another
    replaces: what it is heard in place of, for a pickup of some words; None for a take that tells whole beats
    room_tone: where nobody speaks, to fill gaps with; None where that is looked for
    said: when its words are said, for the lines in which that was found
    """

    id: int
    name: str
    rate: int
    samples: int
    started: str
    events: Events = ()
    kept: bool = True
    complete: bool = True
    note: str = ""
    origin: str = ""
    left_out: tuple[Span, ...] = ()
    replaces: Replaced | None = None
    room_tone: Span | None = None
    said: tuple[SaidLine, ...] = ()

    @property
    def length(self) -> SoundTime:
        """How long the take is."""
        return SoundTime(self.samples, self.rate)
