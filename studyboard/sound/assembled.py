"""The sound of a talk that is put together from takes, without a click where they are joined."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import accumulate
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from studyboard.model.assembly import Gap, joined_sources
from studyboard.model.heard_take import Piece
from studyboard.model.takes import Take
from studyboard.sound.room_tone import loop, quietest

#: Half of a crossfade (s). Common practice for dialogue is 5 to 20 ms for the whole.
HALF_FADE = 0.0075
#: How far a join may be moved to a quieter place (s): less than the shortest syllable.
REACH = 0.03
#: How finely that is searched (s).
_STEP = 0.001
#: How much of a stretch of room goes over into its own beginning (s).
_OVERLAP = 0.1

Samples = NDArray[np.float32]


class SoundShelf(Protocol):
    """Where the sound of takes is read; the sound of a study file is one. May raise a StudyboardError."""

    def read_sound(self, take: int, start: int = 0, count: int | None = None) -> bytes:
        """16-bit mono sound from this sample on; less than was asked for at the end."""

    def sound_chunks(self, take: int) -> Iterator[bytes]:
        """All of it."""


class AssembledSound:
    """What is heard, sample by sample, of pieces of takes one after the other.

    It is exactly as long as the pieces together. Where one ends and another begins, both are moved by the same few
    milliseconds to where they are quietest and go over into each other, so that nothing becomes longer or shorter.
    What lies beyond the end of a take, and every gap, is filled with the sound of the room from that take.

    State: where the pieces lie; of each join that was read, by how much it is moved; the room of each take that was
    needed. Memory does not grow with the length. To be used by one thread at a time.
    """

    def __init__(self, shelf: SoundShelf, takes: Mapping[int, Take], sources: Sequence[Piece | Gap], rate: int) -> None:
        """sources: what is heard, in order; rate: samples a second of all of it (Hz)"""
        self._shelf = shelf
        self._takes = takes
        self._sources = joined_sources([source for source in sources if source.samples])
        self._ends = list(accumulate(source.samples for source in self._sources))
        self._starts = [0, *self._ends][: len(self._ends)]
        self.rate = rate
        self._rooms: dict[int, Samples] = {}
        self._shift = lru_cache(maxsize=None)(self._find_shift)
        self._join = lru_cache(maxsize=4)(self._mix_join)

    @property
    def samples(self) -> int:
        """How long it is."""
        return self._ends[-1] if self._ends else 0

    @property
    def joins(self) -> tuple[int, ...]:
        """Samples around which one piece goes over into the next. Reads a little of the sound around each."""
        return tuple(end + self._shift(number) for number, end in enumerate(self._ends[:-1]))

    def chunks(self) -> Iterator[bytes]:
        """All of the sound, a second at a time, as 16-bit mono."""
        for start in range(0, self.samples, self.rate):
            yield self.read(start, self.rate)

    def read(self, start: int, count: int) -> bytes:
        """Sound from this sample on, as 16-bit mono; less than was asked for at the end."""
        start, end = max(0, start), min(start + count, self.samples)
        if start >= end:
            return b""
        found = np.zeros(end - start, np.float32)
        reach = round(REACH * self.rate) + self._longest_fade
        first = max(0, bisect_right(self._ends, start - reach))
        for number in range(first, len(self._sources)):
            if self._starts[number] - reach > end:
                break
            self._put_body(number, start, found)
            if number + 1 < len(self._sources):
                fade = self._fade(number)
                at = self._ends[number] + self._shift(number) - fade
                if at < end and at + 2 * fade > start:
                    _put(found, at - start, self._join(number))
        self._fade_ends(start, found)
        return np.clip(np.rint(found), -32_768, 32_767).astype("<i2").tobytes()

    # ---- pieces -----------------------------------------------------------------------------------------------------

    @property
    def _longest_fade(self) -> int:
        return max(1, round(HALF_FADE * self.rate))

    def _fade(self, join: int) -> int:
        """Half of the crossfade behind this piece (samples); short pieces have short ones."""
        shorter = min(self._sources[join].samples, self._sources[join + 1].samples)
        return min(self._longest_fade, shorter // 4)

    def _put_body(self, number: int, start: int, found: Samples) -> None:
        """What of a piece is heard as it is."""
        begin = self._starts[number]
        at = begin + (self._shift(number - 1) + self._fade(number - 1) if number else 0)
        end = self._ends[number]
        if number + 1 < len(self._sources):
            end += self._shift(number) - self._fade(number)
        at, end = max(at, start), min(end, start + len(found))
        if at < end:
            _put(found, at - start, self._sound(number, at - begin, end - begin, 0))

    def _mix_join(self, join: int) -> Samples:
        fade = self._fade(join)
        if not fade:
            return np.zeros(0, np.float32)
        shift = self._shift(join)
        out_at = self._sources[join].samples + shift
        going = self._sound(join, out_at - fade, out_at + fade, fade)
        coming = self._sound(join + 1, shift - fade, shift + fade, fade)
        rising = _rising(2 * fade)
        return (going * (1 - rising) + coming * rising).astype(np.float32)

    def _sound(self, number: int, start: int, end: int, fade: int) -> Samples:
        """Samples of a piece, counted from its start, also from before and behind it.

        Beyond the ends of its take the room is heard, which the take goes over into within *fade* samples.
        """
        source = self._sources[number]
        if isinstance(source, Gap):
            return self._room(self._room_beside(number), start, end)
        take = self._takes[source.take]
        start, end = start + source.span.start, end + source.span.start
        first, last = max(0, start), min(end, take.samples)
        inside = np.zeros(0, np.float32)
        if first < last:
            inside = np.frombuffer(self._shelf.read_sound(take.id, first, last - first), "<i2").astype(np.float32)
        if start >= 0 and end <= take.samples:
            return inside
        found = self._room(take.id, start, end).copy()
        weight = np.zeros(end - start, np.float32)
        weight[first - start : first - start + len(inside)] = 1.0
        at = np.arange(start, end)
        if start < 0:
            weight *= _risen(at, 0, fade)
        if end > take.samples:
            weight *= 1 - _risen(at, take.samples - fade, fade)
        found *= 1 - weight
        found[first - start : first - start + len(inside)] += (
            inside * weight[first - start : first - start + len(inside)]
        )
        return found

    def _fade_ends(self, start: int, found: Samples) -> None:
        """The talk begins and ends from nothing."""
        fade = min(self._longest_fade, self.samples // 4)
        if not fade:
            return
        at = np.arange(start, start + len(found))
        if start < fade:
            found *= _risen(at, 0, fade)
        if start + len(found) > self.samples - fade:
            found *= 1 - _risen(at, self.samples - fade, fade)

    # ---- joins ------------------------------------------------------------------------------------------------------

    def _find_shift(self, join: int) -> int:
        """By how much the join behind this piece is moved (samples), so that it falls into the quietest place."""
        going, coming = self._sources[join], self._sources[join + 1]
        fade = self._fade(join)
        reach = min(round(REACH * self.rate), min(going.samples, coming.samples) // 4)
        earliest, latest = -reach, reach
        if isinstance(going, Piece):
            latest = min(latest, self._takes[going.take].samples - going.span.end - fade)
        if isinstance(coming, Piece):
            earliest = max(earliest, fade - coming.span.start)
        if earliest >= latest or not earliest <= 0 <= latest or not fade:
            return 0
        loud = np.zeros(latest - earliest + 2 * fade, np.float64)
        if isinstance(going, Piece):
            loud += np.abs(self._sound(join, going.samples + earliest - fade, going.samples + latest + fade, 0))
        if isinstance(coming, Piece):
            loud += np.abs(self._sound(join + 1, earliest - fade, latest + fade, 0))
        energy = np.concatenate(([0.0], np.cumsum(loud**2)))
        places = np.arange(0, latest - earliest, max(1, round(_STEP * self.rate)))
        # The further away, the quieter it has to be: half a decibel for each of some sixty steps.
        cost = (energy[places + 2 * fade] - energy[places] + 1.0) * (1 + 0.1 * np.abs(places + earliest) / reach)
        best = int(places[np.argmin(cost)])
        near = loud[best + fade : best + fade + max(1, round(_STEP * self.rate))]
        return earliest + best + int(np.argmin(near))

    # ---- rooms ------------------------------------------------------------------------------------------------------

    def _room_beside(self, gap: int) -> int | None:
        """The take whose room is heard in a gap: the one before it, else the one behind."""
        before = (source.take for source in reversed(self._sources[:gap]) if isinstance(source, Piece))
        behind = (source.take for source in self._sources[gap:] if isinstance(source, Piece))
        return next(before, next(behind, None))

    def _room(self, take: int | None, start: int, end: int) -> Samples:
        """The sound of a take's room for these samples; silence where it has none."""
        if take is None:
            return np.zeros(end - start, np.float32)
        if take not in self._rooms:
            self._rooms[take] = self._listen_to_room(self._takes[take])
        room = self._rooms[take]
        return room[np.arange(start, end) % len(room)]

    def _listen_to_room(self, take: Take) -> Samples:
        span = take.room_tone or quietest(self._shelf.sound_chunks(take.id), take.rate)
        if span is None:
            return np.zeros(1, np.float32)
        sound = np.frombuffer(self._shelf.read_sound(take.id, span.start, span.samples), "<i2").astype(np.float32)
        return loop(sound, round(_OVERLAP * take.rate)) if len(sound) else np.zeros(1, np.float32)


def _put(found: Samples, at: int, sound: Samples) -> None:
    """Lay sound over samples, as far as both reach. at: where its first sample belongs, which may lie outside"""
    first, last = max(0, at), min(len(found), at + len(sound))
    if first < last:
        found[first:last] = sound[first - at : last - at]


def _rising(count: int) -> Samples:
    """From nothing to all, smoothly at both ends; backwards it is what is missing to one."""
    return _risen(np.arange(count), 0, count)


def _risen(at: NDArray[np.int_], start: int, length: int) -> Samples:
    """How far the rise that begins at *start* has come at each of these samples."""
    share = np.clip((at - start + 0.5) / max(1, length), 0.0, 1.0)
    return np.asarray(0.5 - 0.5 * np.cos(np.pi * share), np.float32)
