"""The talk as the ruler draws it: beats in rows, returns, the slot, and the latest take."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice

from studyboard.desk.lanes_rows import part_name
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.model.takes import Take
from studyboard.notation.labels import move_label
from studyboard.timing.clock import clock
from studyboard.timing.recorded import kept_takes, recorded
from studyboard.timing.timeline import Happening, Stretch, Timeline
from studyboard.translation import tr

#: Side-lines deeper than this are drawn in the deepest row.
DEEPEST = 3
#: As many of the latest takes have a strip above the talk.
MOST_TAKES = 2
_ON_THE_BOARD = frozenset((Happening.MOVE, Happening.CARD))


@dataclass(frozen=True, slots=True)
class Piece:
    """What a take has of one beat.

    start, end: where it lies (s along the ruler)
    over: how much longer than planned it is (s), negative for shorter; None where the beat is not told any more
    """

    key: BeatKey
    start: float
    end: float
    over: float | None


@dataclass(frozen=True, slots=True)
class TakeStrip:
    """A take laid along the ruler.

    name: what the presenter calls it
    start: where it lies (s): its first beat begins where the plan has that beat
    pieces: the beats that it tells
    """

    name: str
    start: float
    pieces: tuple[Piece, ...]

    @property
    def end(self) -> float:
        """Where it ends (s along the ruler)."""
        return self.pieces[-1].end if self.pieces else self.start


class Talk:
    """One planned timeline, indexed for drawing and stepping.

    State: none that changes; made anew with every plan.

    starts: when each beat begins (s)
    rows: the row of each beat, 0 for the main line, then downwards by depth
    backs: how long the board steps back at the beginning of each beat (s)
    locked: which beats keep their length when the talk is fitted to its slot
    takes: the latest kept takes, the newest first
    """

    __slots__ = ("_beats_of", "backs", "locked", "rehearsed", "rows", "slot", "starts", "stretches", "takes")

    def __init__(self, study: Study, timeline: Timeline) -> None:
        nodes = study.nodes
        self.stretches: Sequence[Stretch] = timeline.stretches
        self.starts = [stretch.start for stretch in timeline.stretches]
        self.rows = [row_of(stretch) for stretch in timeline.stretches]
        self.backs = [back_seconds(stretch) for stretch in timeline.stretches]
        self.slot = study.slot
        self.rehearsed = dict(study.rehearsed)
        self.takes = take_strips(study, timeline)
        self.locked = [
            (study.line(key) if isinstance(key, Part) else nodes[key]).locked
            for key in (stretch.key for stretch in timeline.stretches)
        ]
        self._beats_of: dict[int, list[int]] = {}
        beats_of = self._beats_of
        for index, stretch in enumerate(timeline.stretches):
            shown = {event.node: None for event in stretch.shown if event.what in _ON_THE_BOARD}
            if not isinstance(stretch.key, Part):
                shown[stretch.key] = None
            for node in shown:
                told = beats_of.get(node)
                if told is None:
                    beats_of[node] = [index]
                else:
                    told.append(index)

    @property
    def seconds(self) -> float:
        """The length of the talk (s)."""
        return self.stretches[-1].end if self.stretches else 0.0

    @property
    def depth(self) -> int:
        """How many rows of side-lines hang below the main line."""
        return max(self.rows, default=0)

    @property
    def reach(self) -> float:
        """How far there is something to draw (s): talk, slot and take."""
        return max(self.seconds, self.slot or 0.0, *(strip.end for strip in self.takes))

    def beat_of(self, node: int, near: int | None = None) -> int | None:
        """The beat that tells this node: *near* where that one shows it too, else its own, else the first."""
        if near is not None and near < len(self.stretches) and self.stretches[near].node == node:
            return near
        told = self._beats_of.get(node)
        if not told:
            return None
        return next((index for index in told if self.stretches[index].key == node), told[0])

    def beat_with(self, key: BeatKey) -> int | None:
        """The beat with this key, or None where it is not told."""
        return next((index for index, stretch in enumerate(self.stretches) if stretch.key == key), None)


def row_of(stretch: Stretch) -> int:
    """Which row a beat is drawn in: 0 for the main line, then downwards by depth."""
    return min(stretch.depth, DEEPEST)


def back_seconds(stretch: Stretch) -> float:
    """How long the board steps back before the beat's own line or move begins (s)."""
    if not stretch.shown or stretch.shown[0].what is not Happening.BACK:
        return 0.0
    begins = [word.at for word in stretch.said[:1]]
    begins += [event.at for event in stretch.shown if event.what is not Happening.BACK][:1]
    return max(0.0, stretch.since + min(begins) - stretch.start if begins else stretch.seconds)


def take_strips(study: Study, timeline: Timeline) -> tuple[TakeStrip, ...]:
    """The latest kept takes along the ruler, the newest first; those without a beat in them are left out."""
    strips = (_strip(study, take, timeline) for take in reversed(kept_takes(study)))
    return tuple(islice((strip for strip in strips if strip is not None), MOST_TAKES))


def _strip(study: Study, take: Take, timeline: Timeline) -> TakeStrip | None:
    told = recorded(study, take).stretches
    if not told:
        return None
    starts = {stretch.key: stretch.start for stretch in timeline.stretches}
    planned = {stretch.key: stretch.seconds for stretch in timeline.stretches}
    start = starts.get(told[0].key, 0.0)
    shift = start - told[0].start
    pieces = tuple(
        Piece(
            stretch.key,
            stretch.start + shift,
            stretch.end + shift,
            stretch.seconds - planned[stretch.key] if stretch.key in planned else None,
        )
        for stretch in told
    )
    return TakeStrip(take.name or tr("Take {id}", id=take.id), start, pieces)


def slot_text(slot: float) -> str:
    """The label of the slot's line."""
    return tr("slot {length}", length=clock(slot))


def beat_label(positions: Positions, key: BeatKey) -> str:
    """What a block is called: its move, or the part of the talk; empty for a node that was deleted since."""
    if isinstance(key, Part):
        return part_name(key)
    return move_label(positions, key) if key in positions.study.nodes else ""
