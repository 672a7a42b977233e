"""What is in the picture at each frame of a video, from the Timeline alone."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final, TypeVar

from studyboard.delivery.caption_lines import Caption
from studyboard.model.script import Part
from studyboard.picture.motion import RETURN, SLIDE, eased
from studyboard.timing.timeline import Happening, Stretch, Timeline

FADE: Final = 0.16
"""How long a mark takes to come up (s)."""

DISSOLVE: Final = 0.5
"""How long a card takes to give way to the board, or the board to a card (s)."""

TITLE: Final = 3.0
"""How long the title stands at least where a greeting is long enough (s)."""

NOTICE: Final = 1.6
"""How long the picture says that the talk is back on the line before (s)."""


class Card(StrEnum):
    """A picture without the board."""

    TITLE = "title"
    CLOSING = "closing"


@dataclass(frozen=True, slots=True)
class Picture:
    """What one frame shows; equal pictures are painted once.

    step: how many steps the board has made; which moves were told follows from it
    node: what is on the board
    came_from: the node before, while the pieces are on their way
    progress: how far they have come (0 to 1)
    marks: indices of the node's marks that have appeared
    fresh: of these, the ones that are coming up, and how far they have (0 to 1)
    think: whole seconds that are left to find the move; None outside think pauses
    asked: seconds of the whole think pause
    returned: the board has just come back from a side-line
    caption: the lines that stand in the picture
    card: what covers the board, and how much of it (0 to 1)
    """

    step: int
    node: int
    came_from: int | None = None
    progress: float = 1.0
    marks: tuple[int, ...] = ()
    fresh: tuple[int, ...] = ()
    freshness: float = 1.0
    think: int | None = None
    asked: int = 0
    returned: bool = False
    caption: tuple[str, ...] = ()
    card: Card | None = None
    cover: float = 0.0


@dataclass(frozen=True, slots=True)
class _Step:
    """The board showing a node from a frame on; its marks, by the frame in which they appear."""

    frame: int
    node: int
    what: Happening
    marks: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class _Span:
    """Something that stands from one frame to another."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class _CardSpan(_Span):
    card: Card


@dataclass(frozen=True, slots=True)
class _CaptionSpan(_Span):
    lines: tuple[str, ...]


_SpanT = TypeVar("_SpanT", bound=_Span)


class PictureTrack:
    """The pictures of a whole talk.

    rate: frames a second
    frames: how many frames the video has
    steps: the nodes that come on the board, in order; the first is there from the beginning
    """

    def __init__(
        self,
        timeline: Timeline,
        rate: int,
        *,
        captions: Sequence[Caption] = (),
        still_moves: bool = False,
        cards: Collection[Card] = frozenset(Card),
    ) -> None:
        """cards: those that are shown; the board stays in place of the others"""
        self.rate = rate
        self.frames = max(1, round(timeline.seconds * rate))
        self._slide = 0 if still_moves else round(SLIDE * rate)
        self._return = 0 if still_moves else round(RETURN * rate)
        self._fade = 0 if still_moves else round(FADE * rate)
        self._dissolve = max(1, round(DISSOLVE * rate))
        self._notice = round(NOTICE * rate)
        self._steps = _steps(timeline, rate)
        self._thinks = _thinks(timeline, rate)
        self._cards = [one for one in _cards(timeline, rate, self.frames) if one.card in cards]
        self._captions = [
            _CaptionSpan(self._frame(caption.start / 1000), self._frame(caption.end / 1000), caption.lines)
            for caption in captions
        ]
        self.steps = tuple(step.node for step in self._steps)

    def at(self, frame: int) -> Picture:
        """What this frame shows. O(log of the number of steps)."""
        place = max(0, bisect_right(self._steps, frame, key=lambda step: step.frame) - 1)
        step = self._steps[place]
        before = self._steps[place - 1] if place else None
        age = frame - step.frame
        came_from, progress = None, 1.0
        if before is not None and before.node != step.node:
            lasts = self._slide if step.what is Happening.MOVE else self._return
            if age < lasts:
                came_from, progress = before.node, eased((age + 1) / (lasts + 1))
        shown = tuple(mark for when, mark in step.marks if when <= frame)
        fresh = tuple(mark for when, mark in step.marks if when <= frame < when + self._fade)
        newest = max((when for when, mark in step.marks if mark in fresh), default=0)
        think = _span_at(self._thinks, frame)
        card = _span_at(self._cards, frame)
        caption = _span_at(self._captions, frame)
        return Picture(
            step=place,
            node=step.node,
            came_from=came_from,
            progress=round(progress, 4),
            marks=shown,
            fresh=fresh,
            freshness=round((frame - newest + 1) / (self._fade + 1), 3) if fresh else 1.0,
            think=None if think is None else -((frame - think.end) // self.rate),
            asked=0 if think is None else -((think.start - think.end) // self.rate),
            returned=step.what is Happening.BACK and age < self._notice,
            caption=() if caption is None else caption.lines,
            card=None if card is None else card.card,
            cover=0.0 if card is None else self._cover(card, frame),
        )

    def changes(self) -> Iterator[tuple[int, Picture]]:
        """The frames whose picture differs from the one before, with their pictures; frame 0 is the first."""
        before: Picture | None = None
        for frame in self._interesting():
            picture = self.at(frame)
            if picture != before:
                yield frame, picture
                before = picture

    def _frame(self, seconds: float) -> int:
        return round(seconds * self.rate)

    def _cover(self, span: _CardSpan, frame: int) -> float:
        """A title dissolves at its end, a closing card at its beginning."""
        if span.card is Card.TITLE:
            return round(min(1.0, (span.end - frame) / (self._dissolve + 1)), 3)
        return round(min(1.0, (frame - span.start + 1) / (self._dissolve + 1)), 3)

    def _interesting(self) -> list[int]:
        frames = {0}
        for step in self._steps:
            frames.update(range(step.frame, step.frame + max(self._slide, self._return) + 1))
            frames.add(step.frame + self._notice)
            for when, _ in step.marks:
                frames.update(range(when, when + self._fade + 1))
        for span in self._thinks:
            frames.update((span.start, span.end, *range(span.end, span.start, -self.rate)))
        for card in self._cards:
            frames.update(range(card.start, card.start + self._dissolve + 2))
            frames.update(range(card.end - self._dissolve - 2, card.end + 1))
        for caption in self._captions:
            frames.update((caption.start, caption.end))
        return sorted(frame for frame in frames if 0 <= frame < self.frames)


def _steps(timeline: Timeline, rate: int) -> list[_Step]:
    """The nodes in the order in which they come on the board, each with the marks that appear on it."""
    found: list[tuple[int, int, Happening, list[tuple[int, int]]]] = [(0, timeline.opening_node, Happening.CARD, [])]
    for event in timeline.events:
        frame = round(event.at * rate)
        if event.what is Happening.MARK and event.mark is not None:
            if event.node == found[-1][1]:
                found[-1][3].append((frame, event.mark))
        elif event.what in (Happening.MOVE, Happening.BACK, Happening.CARD) and event.node != found[-1][1]:
            if frame <= found[-1][0] and len(found) > 1 and found[-1][2] is Happening.BACK:
                # What follows a return in the same frame belongs to it: the board goes straight there, as a return.
                found.pop()
                if event.node != found[-1][1]:
                    found.append((frame, event.node, Happening.BACK, []))
            else:
                found.append((frame, event.node, event.what, []))
    return [_Step(frame, node, what, tuple(marks)) for frame, node, what, marks in found]


def _thinks(timeline: Timeline, rate: int) -> list[_Span]:
    found = []
    for stretch in timeline.stretches:
        if stretch.think <= 0:
            continue
        begins = [event.at for event in stretch.events if event.what is Happening.THINK]
        if begins:
            start = round(begins[-1] * rate)
            end = min(round((begins[-1] + stretch.think) * rate), round(stretch.end * rate))
            if end > start:
                found.append(_Span(start, end))
    return found


def _cards(timeline: Timeline, rate: int, frames: int) -> list[_CardSpan]:
    """A title while the audience is greeted, a closing card while it is thanked; the board waits for neither."""
    found = []
    first = timeline.stretches[0] if timeline.stretches else None
    if first is not None and first.key == Part.GREETING:
        until = max(first.end - DISSOLVE, min(first.end, TITLE))
        found.append(_CardSpan(0, round(until * rate), Card.TITLE))
    last = _last_words(timeline.stretches)
    if last is not None:
        found.append(_CardSpan(round(last.start * rate), frames, Card.CLOSING))
    return found


def _last_words(stretches: Sequence[Stretch]) -> Stretch | None:
    """The thanks, else the closing words, if the talk ends with them."""
    if not stretches or stretches[-1].key not in (Part.CLOSING, Part.THANKS):
        return None
    return stretches[-1]


def _span_at(spans: Sequence[_SpanT], frame: int) -> _SpanT | None:
    place = bisect_right(spans, frame, key=lambda span: span.start) - 1
    return spans[place] if place >= 0 and frame < spans[place].end else None
