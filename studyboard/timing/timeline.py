"""The Timeline: who is on the board and what is said, from second a to second b."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from studyboard.model.script import BeatKey, SpokenLine


class Source(StrEnum):
    """Where the times of a timeline come from."""

    PLANNED = "planned"
    RECORDED = "recorded"


class Happening(StrEnum):
    """What the board does at one moment."""

    MOVE = "move"
    BACK = "back"
    MARK = "mark"
    THINK = "think"
    CARD = "card"


@dataclass(frozen=True, slots=True)
class BoardEvent:
    """The board changing at one moment.

    at: when (s from the start of the talk)
    what: a move is played, the board steps back, a mark appears, a think pause begins, or the board of a line
        that belongs to no move is shown
    node: id of the node that is on the board from then on
    mark: for a MARK, the index of the mark among the node's; None otherwise
    """

    at: float
    what: Happening
    node: int
    mark: int | None = None


@dataclass(frozen=True, slots=True)
class WordTime:
    """One word of a spoken line and when it is said (s from the start of the talk).

    at: start; until: end; word: index within its line; text: as written
    """

    at: float
    until: float
    word: int
    text: str


@dataclass(frozen=True, slots=True)
class Stretch:
    """One beat with its times (s from the start of the talk).

    start, end: when it begins and ends; the next one begins where it ends
    speech_end: when its spoken line ends; pauses follow
    think: seconds of its end in which the viewer is asked to find the next move
    node: what is on the board when it ends
    said, shown: its words and board events, in seconds from *since*, so that a beat that is told later than before
        keeps them as they are
    """

    key: BeatKey
    start: float
    speech_end: float
    end: float
    think: float
    node: int
    depth: int
    spoken: SpokenLine
    said: tuple[WordTime, ...]
    shown: tuple[BoardEvent, ...]
    since: float = 0.0

    @property
    def seconds(self) -> float:
        """How long the beat takes (s)."""
        return self.end - self.start

    @property
    def words(self) -> tuple[WordTime, ...]:
        """The words of its line. O(their number)."""
        since = self.since
        if not since:
            return self.said
        return tuple(WordTime(since + word.at, since + word.until, word.word, word.text) for word in self.said)

    @property
    def events(self) -> tuple[BoardEvent, ...]:
        """What the board does, in the order of time. O(their number)."""
        since = self.since
        if not since:
            return self.shown
        return tuple(BoardEvent(since + event.at, event.what, event.node, event.mark) for event in self.shown)

    def moved(self, start: float) -> Stretch:
        """A beat that was timed from second 0, beginning at another second of the talk."""
        return Stretch(
            self.key,
            start,
            start + self.speech_end,
            start + self.end,
            self.think,
            self.node,
            self.depth,
            self.spoken,
            self.said,
            self.shown,
            start,
        )

    def showing(self, events: Iterable[BoardEvent], end: float) -> Stretch:
        """The same words until second *end* of the talk, with these board events (s from the start of the talk)."""
        return replace(self, end=end, said=self.words, shown=tuple(events), since=0.0)


@dataclass(frozen=True, slots=True)
class Timeline:
    """The whole talk in time, planned or recorded; every delivery is made from it.

    source: where its times come from
    opening_node: what is on the board at second 0
    stretches: the beats in order, without gaps
    """

    source: Source
    opening_node: int
    stretches: tuple[Stretch, ...]

    @property
    def seconds(self) -> float:
        """The length of the talk (s)."""
        return self.stretches[-1].end if self.stretches else 0.0

    @property
    def events(self) -> tuple[BoardEvent, ...]:
        """All board events in the order of time."""
        return tuple(event for stretch in self.stretches for event in stretch.events)

    def stretch_at(self, seconds: float) -> int | None:
        """Index of the stretch that is being told at this second; the last one from the end on; None if empty."""
        if not self.stretches:
            return None
        return max(0, bisect_right(self.stretches, seconds, key=lambda stretch: stretch.start) - 1)

    def node_at(self, seconds: float) -> int:
        """Id of the node that is on the board at this second. O(number of beats before that show nothing)."""
        for stretch in reversed(self.stretches[: bisect_right(self.stretches, seconds, key=lambda one: one.start)]):
            shown = [event.node for event in stretch.events if event.at <= seconds]
            if shown:
                return shown[-1]
        return self.opening_node
