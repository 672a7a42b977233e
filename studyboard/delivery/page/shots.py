"""The talk as a page goes through it: one board after the other, from the Timeline."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import StrEnum

from studyboard.timing.timeline import BoardEvent, Happening, Stretch, Timeline


class ShotKind(StrEnum):
    """Why the board is looked at: a move, a return, a line that is said over it, or a question to the reader."""

    MOVE = "move"
    BACK = "back"
    CARD = "card"
    THINK = "think"


@dataclass(frozen=True, slots=True)
class Shot:
    """One step of the talk: what is on the board until the next one.

    at: from when (s from the start of the talk)
    stretch: index of the beat that it belongs to
    marks: the marks that are seen, as (when, index among the node's marks); those of the shot before stay where the
        board stays
    part: how many think pauses lie before it
    """

    at: float
    kind: ShotKind
    node: int
    stretch: int
    marks: tuple[tuple[float, int], ...]
    part: int


@dataclass(slots=True)
class _Draft:
    at: float
    kind: ShotKind
    node: int
    stretch: int
    marks: list[tuple[float, int]] = field(default_factory=list)


_KINDS = {Happening.MOVE: ShotKind.MOVE, Happening.BACK: ShotKind.BACK, Happening.CARD: ShotKind.CARD}


def shots(timeline: Timeline) -> tuple[Shot, ...]:
    """Every step of the talk in order; each beat has one at least. O(number of board events).

    The first is what is on the board before anything happens, so that a page opens on the start position also where
    the talk begins with a move.

    Returns that follow each other at once are one, as the board steps back over all of them together.
    """
    drafts: list[_Draft] = []
    for number, stretch in enumerate(timeline.stretches):
        shown = drafts[-1].node if drafts else timeline.opening_node
        _add(drafts, number, stretch, shown)
    if drafts and drafts[0].node != timeline.opening_node:
        drafts.insert(0, _Draft(0.0, ShotKind.CARD, timeline.opening_node, 0))
    return tuple(_with_parts(drafts))


def _add(drafts: list[_Draft], number: int, stretch: Stretch, shown: int) -> None:
    """The shots of one beat, behind those of the beats before. *shown* is on the board when it begins."""
    first = len(drafts)
    for event in stretch.events:
        if event.what is Happening.MARK:
            _mark(drafts, first, number, event)
        elif event.what is Happening.THINK:
            before = drafts[-1].marks if len(drafts) > first and drafts[-1].node == event.node else []
            drafts.append(_Draft(event.at, ShotKind.THINK, event.node, number, list(before)))
        else:
            kind = _KINDS[event.what]
            last = drafts[-1] if drafts else None
            if kind is _kind_before(last, number) is ShotKind.BACK and last is not None and event.at - last.at < 1e-6:
                drafts.pop()
            stays = kind is ShotKind.CARD and bool(drafts) and drafts[-1].node == event.node
            drafts.append(_Draft(event.at, kind, event.node, number, list(drafts[-1].marks) if stays else []))
    if len(drafts) == first:
        drafts.append(_Draft(stretch.start, ShotKind.CARD, shown, number))


def _kind_before(last: _Draft | None, stretch: int) -> ShotKind | None:
    """The kind of the shot before, where it belongs to the same beat."""
    return last.kind if last is not None and last.stretch == stretch else None


def _mark(drafts: list[_Draft], first: int, number: int, event: BoardEvent) -> None:
    """Let a mark appear on the shot that shows its node."""
    if event.mark is None:
        return
    for draft in reversed(drafts[first:]):
        if draft.node == event.node:
            draft.marks.append((event.at, event.mark))
            return


def _with_parts(drafts: list[_Draft]) -> Iterator[Shot]:
    part, asked = 0, None
    for draft in drafts:
        if asked is not None and draft.stretch != asked:
            part, asked = part + 1, None
        if draft.kind is ShotKind.THINK:
            asked = draft.stretch
        yield Shot(draft.at, draft.kind, draft.node, draft.stretch, tuple(draft.marks), part)
