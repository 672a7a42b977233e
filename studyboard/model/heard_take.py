"""What is heard of one take: its sound without what is left out, with its pickups in their places."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import Events, Span, Take


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of one take, heard without a break. take: its id; span: which stretch"""

    take: int
    span: Span

    @property
    def samples(self) -> int:
        """How long it is."""
        return self.span.samples


@dataclass(frozen=True, slots=True)
class Laid:
    """A stretch of a take, and what is heard in its place: itself, or a pickup.

    own: the stretch; pieces: what is heard; picked_up: the pickup's id, None where it is the take itself
    """

    own: Span
    pieces: tuple[Piece, ...]
    picked_up: int | None = None

    @property
    def samples(self) -> int:
        """How long what is heard is."""
        return sum(piece.samples for piece in self.pieces)


@dataclass(frozen=True, slots=True)
class Telling:
    """One beat being told in a take, without a break: from which sample to which, and what the board did."""

    beat: BeatKey
    span: Span
    events: Events


@dataclass(frozen=True, slots=True)
class HeardTake:
    """One take as it is heard. parts: in the order of time; what is left out lies between them"""

    take: Take
    parts: tuple[Laid, ...]

    @property
    def samples(self) -> int:
        """How long what is heard is."""
        return sum(part.samples for part in self.parts)

    def pieces(self, span: Span) -> tuple[Piece, ...]:
        """What is heard of this stretch; a pickup belongs to the stretch in which it begins."""
        found: list[Piece] = []
        for part in self._within(span):
            found.extend(part.pieces)
        return tuple(found)

    def place(self, span: Span, sample: int) -> int:
        """How far into what is heard of this stretch (samples) a sample of the take lies.

        What is left out lies where it was cut; the samples that a pickup replaces are spread over the pickup.
        """
        at = 0
        for part in self._within(span):
            if sample < part.own.start:
                break
            if sample < part.own.end:
                inside = sample - part.own.start
                return at + (inside if part.picked_up is None else inside * part.samples // part.own.samples)
            at += part.samples
        return at

    def own_place(self, heard: int) -> int:
        """The sample of the take that is heard at this place of all that is heard of it; its end behind the end."""
        at = 0
        for part in self.parts:
            if heard < at + part.samples:
                inside = heard - at
                return part.own.start + (
                    inside if part.picked_up is None else inside * part.own.samples // part.samples
                )
            at += part.samples
        return self.take.samples

    def _within(self, span: Span) -> Iterable[Laid]:
        for part in self.parts:
            if part.picked_up is not None:
                if span.start <= part.own.start < span.end:
                    yield part
                continue
            start, end = max(part.own.start, span.start), min(part.own.end, span.end)
            if start < end:
                own = Span(start, end)
                yield Laid(own, (Piece(self.take.id, own),))


def heard_take(study: Study, take: Take) -> HeardTake:
    """The take as it is heard at present. O(its cuts and the pickups of the study).

    Where two pickups replace the same words, the newer one is heard. A pickup may itself have pickups.
    """
    taken: list[Laid] = []
    for pickup in sorted(pickups(study, take), key=lambda one: -one.id):
        assert pickup.replaces is not None
        span = pickup.replaces.span
        clash = any(span.meets(other.own) for other in taken)
        if clash or any(out.start <= span.start and span.end <= out.end for out in take.left_out):
            continue
        heard = heard_take(study, pickup)
        pieces = tuple(piece for part in heard.parts for piece in part.pieces)
        taken.append(Laid(span, pieces, pickup.id))
    silent = sorted([*take.left_out, *(part.own for part in taken)], key=lambda span: span.start)
    parts = [*taken, *(Laid(own, (Piece(take.id, own),)) for own in _between(silent, take.samples))]
    return HeardTake(take, tuple(sorted(parts, key=lambda part: part.own.start)))


def pickups(study: Study, take: Take) -> list[Take]:
    """Kept takes that are heard in place of some words of this one."""
    return [
        one
        for one in study.takes.values()
        if one.kept
        and one.replaces is not None
        and one.replaces.take == take.id < one.id
        and one.replaces.span.end <= take.samples
        and one.rate == take.rate
        and one.samples
    ]


def tellings(take: Take) -> tuple[Telling, ...]:
    """The take cut where another beat begins, from its very start; empty where nothing of the talk was told."""
    runs: list[tuple[BeatKey, list[int]]] = []
    for number, event in enumerate(take.events):
        if event.beat is not None and (not runs or runs[-1][0] != event.beat):
            runs.append((event.beat, []))
        # What belongs to no beat and shows what is shown already only says that the last beat was told to its end.
        changes = event.beat is not None or event.node != take.events[number - 1].node
        if runs and changes:
            runs[-1][1].append(number)
    starts = [0, *(take.events[numbers[0]].at.samples for _, numbers in runs[1:])]
    ends = [*starts[1:], take.samples]
    return tuple(
        Telling(beat, Span(start, end), tuple(take.events[number] for number in numbers))
        for (beat, numbers), start, end in zip(runs, starts, ends, strict=False)
        if start < end
    )


def best_telling(told: Sequence[Telling]) -> Telling:
    """Of several tellings of one beat in a take, the last one; one that was broken off early does not count."""
    longest = max(one.span.samples for one in told)
    return next(one for one in reversed(told) if 2 * one.span.samples >= longest)


def _between(spans: Sequence[Span], samples: int) -> Iterable[Span]:
    """What none of these stretches holds."""
    at = 0
    for span in spans:
        if at < span.start:
            yield Span(at, span.start)
        at = max(at, span.end)
    if at < samples:
        yield Span(at, samples)
