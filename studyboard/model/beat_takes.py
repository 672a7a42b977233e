"""The takes of one beat: those that tell it, discarded ones too, and the pickups in them."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.model.assembly import heard_in, holders
from studyboard.model.heard_take import best_telling, tellings
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import Span, Take


@dataclass(frozen=True, slots=True)
class BeatTake:
    """One take that has something of a beat.

    span: the stretch of it that tells the beat; all of it for a pickup
    heard: True where the beat is heard in it, or the pickup in its place
    """

    take: Take
    span: Span
    heard: bool

    @property
    def is_pickup(self) -> bool:
        """True where it tells some words of the beat anew."""
        return self.take.replaces is not None

    @property
    def is_loose(self) -> bool:
        """True where it tells no beat at all yet: taking its file in was cut off, or nothing was on the board."""
        return not self.is_pickup and not tellings(self.take)


def beat_takes(study: Study, beat: BeatKey) -> tuple[BeatTake, ...]:
    """The takes of a beat, the newest first, each followed by its pickups; then those that tell no beat yet.

    O(events of the takes).
    """
    heard = heard_in(study, beat, holders(study).get(beat, ()))
    found: list[BeatTake] = []
    for _, take in sorted(study.takes.items(), reverse=True):
        tells = take.replaces is None and take.samples > 0
        told = [one for one in tellings(take) if one.beat == beat] if tells else []
        if not told:
            continue
        is_heard = heard is not None and heard.take.id == take.id
        span = heard.telling.span if is_heard and heard is not None else best_telling(told).span
        found.append(BeatTake(take, span, is_heard))
        found.extend(_pickups(study, take, span, is_heard))
    all_of = (BeatTake(take, Span(0, take.samples), False) for _, take in sorted(study.takes.items()) if take.samples)
    return (*found, *(one for one in all_of if one.is_loose))


def beats_of(take: Take) -> tuple[BeatKey, ...]:
    """The beats that a take tells, in the order in which it begins them."""
    return tuple(dict.fromkeys(one.beat for one in tellings(take)))


def _pickups(study: Study, take: Take, span: Span, heard: bool) -> list[BeatTake]:
    found: list[BeatTake] = []
    for _, one in sorted(study.takes.items(), reverse=True):
        replaced = one.replaces
        if replaced is None or replaced.take != take.id or not one.samples:
            continue
        if span.start <= replaced.span.start < span.end:
            found.append(BeatTake(one, Span(0, one.samples), heard and one.kept))
            found.extend(_pickups(study, one, Span(0, one.samples), heard and one.kept))
    return found
