"""Which stretch of which take is heard for each beat of the talk."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from studyboard.model.beats import Beat, beats
from studyboard.model.heard_take import HeardTake, Piece, Telling, best_telling, heard_take, tellings
from studyboard.model.order import running_order
from studyboard.model.said_words import said_words
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import Span, Take

#: A take that was stopped in a beat is heard for it only if it tells at least this share of what an older one tells:
#: who stops in the middle of a line means to say it again. Who goes on from its last beat ends it with an event that
#: belongs to no beat.
_WHOLE = 0.6


@dataclass(frozen=True, slots=True)
class Gap:
    """A stretch without a take, in which the room is heard. samples: how long it is"""

    samples: int


@dataclass(frozen=True, slots=True)
class HeardEvent:
    """The board showing a node. at: samples from the start of the beat"""

    at: int
    node: int


@dataclass(frozen=True, slots=True)
class HeardWord:
    """A word of which the time is known. word: its index in the line; start, end: samples from the start of the beat"""

    word: int
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class HeardBeat:
    """One beat as it is heard.

    take: id of the take that tells it, None for a gap
    sources: what is heard, in order; never empty, but a gap may be of no length
    events: what the board did meanwhile, in the order of time
    words: those of its line that were found in the sound
    """

    beat: Beat
    take: int | None
    sources: tuple[Piece | Gap, ...]
    events: tuple[HeardEvent, ...] = ()
    words: tuple[HeardWord, ...] = ()

    @property
    def samples(self) -> int:
        """How long it is heard."""
        return sum(source.samples for source in self.sources)


@dataclass(frozen=True, slots=True)
class Assembly:
    """The talk put together from takes. rate: samples a second (Hz); beats: each of the talk once, in its order"""

    rate: int
    beats: tuple[HeardBeat, ...]

    @property
    def samples(self) -> int:
        """How long the talk is."""
        return sum(one.samples for one in self.beats)

    @property
    def missing(self) -> tuple[BeatKey, ...]:
        """Beats with a spoken line that no take tells."""
        return tuple(one.beat.key for one in self.beats if one.take is None and one.beat.spoken)

    @property
    def told(self) -> bool:
        """True where every spoken line is told, and there is at least one."""
        return not self.missing and any(one.take is not None for one in self.beats)

    @property
    def sources(self) -> tuple[Piece | Gap, ...]:
        """All that is heard, in order; what follows without a break in one take is one piece."""
        return joined_sources([source for one in self.beats for source in one.sources if source.samples])


@dataclass(frozen=True, slots=True)
class Holder:
    """A take that tells a beat. cut: True where recording was stopped in it, instead of going on to the next"""

    heard: HeardTake
    telling: Telling
    cut: bool

    @property
    def take(self) -> Take:
        """The take."""
        return self.heard.take

    @property
    def samples(self) -> int:
        """How long the beat is heard in it."""
        return sum(piece.samples for piece in self.heard.pieces(self.telling.span))


def assembled(study: Study, gap: Callable[[Beat], float]) -> Assembly:
    """The talk as its takes tell it. O(events of the takes and size of the script).

    gap: how long a beat is that no take tells (s)
    """
    held = holders(study)
    rate = _rate(study)
    found: list[HeardBeat] = []
    for beat in beats(study, running_order(study)):
        holder = heard_in(study, beat.key, held.get(beat.key, ()))
        if holder is None:
            found.append(HeardBeat(beat, None, (Gap(max(0, round(gap(beat) * rate))),)))
        else:
            found.append(_heard(beat, holder))
    return Assembly(rate, tuple(found))


def holders(study: Study) -> dict[BeatKey, list[Holder]]:
    """The kept takes that tell each beat, the newest first; takes of another rate than the newest one's are left out.

    O(events of the takes).
    """
    rate = _rate(study)
    found: dict[BeatKey, list[Holder]] = {}
    for take in sorted(whole_takes(study), key=lambda one: -one.id):
        if take.rate != rate:
            continue
        heard = heard_take(study, take)
        told: dict[BeatKey, list[Telling]] = {}
        runs = tellings(take)
        for telling in runs:
            if heard.pieces(telling.span):
                told.setdefault(telling.beat, []).append(telling)
        for beat, several in told.items():
            best = best_telling(several)
            cut = best is runs[-1] and not take.origin and take.events[-1].beat is not None
            found.setdefault(beat, []).append(Holder(heard, best, cut))
    return found


def heard_in(study: Study, beat: BeatKey, held: Sequence[Holder]) -> Holder | None:
    """Of the takes that tell a beat, the newest first, the one in which it is heard; None where there is none."""
    chosen = study.chosen.get(beat)
    for holder in held:
        if holder.take.id == chosen:
            return holder
    for newer, older in pairwise(held):
        if not newer.cut or newer.samples >= _WHOLE * older.samples:
            return newer
    return held[-1] if held else None


def whole_takes(study: Study) -> list[Take]:
    """Kept takes that tell whole beats, the oldest first: all but pickups."""
    return [take for _, take in sorted(study.takes.items()) if take.kept and take.replaces is None and take.samples]


def joined_sources(sources: Sequence[Piece | Gap]) -> tuple[Piece | Gap, ...]:
    """The same, with what follows without a break in one take made one piece."""
    found: list[Piece | Gap] = []
    for source in sources:
        last = found[-1] if found else None
        if isinstance(source, Gap):
            if isinstance(last, Gap):
                found[-1] = Gap(last.samples + source.samples)
                continue
        elif isinstance(last, Piece) and last.take == source.take and last.span.end == source.span.start:
            found[-1] = Piece(last.take, Span(last.span.start, source.span.end))
            continue
        found.append(source)
    return tuple(found)


def _heard(beat: Beat, holder: Holder) -> HeardBeat:
    heard, span = holder.heard, holder.telling.span
    events = tuple(HeardEvent(heard.place(span, one.at.samples), one.node) for one in holder.telling.events)
    words = tuple(
        HeardWord(word.word, heard.place(span, word.start), heard.place(span, word.end))
        for word in said_words(heard.take, beat.key, beat.spoken.text, span)
    )
    return HeardBeat(beat, holder.take.id, heard.pieces(span), events, words)


def _rate(study: Study) -> int:
    """Samples a second of the newest take that tells whole beats."""
    takes = whole_takes(study)
    return takes[-1].rate if takes else 48_000
