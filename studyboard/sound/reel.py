"""What a player plays: the talk, a take or a stretch of one, as it is heard with its cuts and pickups."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from studyboard.model.assembly import Assembly, Gap
from studyboard.model.heard_take import Piece, heard_take
from studyboard.model.study import Study
from studyboard.model.takes import Events, SoundTime, Span, Take, TakeEvent
from studyboard.sound.assembled import AssembledSound, SoundShelf


@dataclass(frozen=True, slots=True)
class Reel:
    """Pieces of takes one after the other. events: what the board shows, in samples of the whole"""

    name: str
    rate: int
    sources: tuple[Piece | Gap, ...]
    events: Events = ()


def talk_reel(assembly: Assembly, first: int = 0, last: int | None = None) -> Reel:
    """The talk put together, from the beat with this index to another, both included."""
    sources: list[Piece | Gap] = []
    events: list[TakeEvent] = []
    at = 0
    for heard in assembly.beats[first : None if last is None else last + 1]:
        told = [(one.at, one.node) for one in heard.events] or [(0, heard.beat.node)]
        events.extend(TakeEvent(SoundTime(at + place, assembly.rate), node, heard.beat.key) for place, node in told)
        sources.extend(source for source in heard.sources if source.samples)
        at += heard.samples
    return Reel("", assembly.rate, tuple(sources), tuple(events))


def take_reel(study: Study, take: Take, span: Span | None = None) -> Reel:
    """A take as it is heard, all of it or this stretch."""
    stretch = Span(0, max(1, take.samples)) if span is None else span
    heard = heard_take(study, take)
    events: list[TakeEvent] = []
    for event in take.events:
        if event.at.samples < stretch.end:
            place = heard.place(stretch, max(event.at.samples, stretch.start))
            if events and events[-1].at.samples == place:
                events.pop()
            events.append(TakeEvent(SoundTime(place, take.rate), event.node, event.beat))
    return Reel(take.name, take.rate, heard.pieces(stretch), tuple(events))


def raw_reel(take: Take, span: Span) -> Reel:
    """A stretch of a take as it was recorded, what is left out of it included."""
    return Reel(take.name, take.rate, (Piece(take.id, span),))


class ReelShelf:
    """Gives a player the sound of reels as if each were a take.

    State: the sound of the reel that was put on last, and the number that it got.
    """

    def __init__(self, shelf: SoundShelf) -> None:
        self._shelf = shelf
        self._number = 0
        self._sound: AssembledSound | None = None

    def put_on(self, reel: Reel, takes: Mapping[int, Take]) -> Take:
        """The reel as a take, to be loaded into the player; the one before cannot be read any more."""
        self._number -= 1
        self._sound = AssembledSound(self._shelf, takes, reel.sources, reel.rate)
        return Take(self._number, reel.name, reel.rate, self._sound.samples, "", reel.events)

    def read_sound(self, take: int, start: int, count: int) -> bytes:
        """See the player's shelf."""
        return self._sound.read(start, count) if self._sound is not None and take == self._number else b""
