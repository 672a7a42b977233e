"""Chapters of the talk: where a viewer may want to begin, from the Timeline; in the language of the script."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from studyboard.delivery.title import known
from studyboard.model.positions import Positions
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.notation.labels import line_label, move_label
from studyboard.notation.openings import opening_of
from studyboard.timing.clock import clock
from studyboard.timing.timeline import Happening, Stretch, Timeline
from studyboard.translation import in_language, tr

SHORTEST: Final = 10.0
"""The least length of a chapter (s): common practice of those who publish videos."""


_NEW_GLYPH: Final = 146
"""The glyph for a move that was never played before: not in the PGN standard, common practice."""


@dataclass(frozen=True, slots=True)
class Chapter:
    """A part of the talk (s from its start), and what it is called."""

    start: float
    end: float
    title: str


@dataclass(frozen=True, slots=True)
class _Mark:
    """A place where a chapter could begin; of two that are too close the one with the higher weight stays."""

    at: float
    weight: int
    title: str


_RETURN, _FIRST_MOVE, _THINK, _SIDE_LINE, _NEW_MOVE, _FINISH, _START = range(7)


def chapters(study: Study, positions: Positions, timeline: Timeline) -> tuple[Chapter, ...]:
    """The chapters of a talk, in order and without gaps: the first at 0:00, none shorter than SHORTEST.

    They begin with the opening, at the side-lines, at the returns from them, at the think pauses, at the first move
    that has the glyph for a new one, and where the game is decided; where two would lie too close together, the one
    that says more stays. A talk that is shorter than two chapters has one.
    """
    if not timeline.stretches:
        return ()
    chosen: list[_Mark] = []
    with in_language(study.language):
        candidates = _candidates(study, positions, timeline)
    for mark in candidates:
        if timeline.seconds - mark.at < SHORTEST and mark.at > 0:
            continue
        while chosen and mark.at - chosen[-1].at < SHORTEST and chosen[-1].weight < mark.weight:
            chosen.pop()
        if not chosen or mark.at - chosen[-1].at >= SHORTEST:
            chosen.append(mark)
    ends = [*(mark.at for mark in chosen[1:]), timeline.seconds]
    return tuple(Chapter(mark.at, end, mark.title) for mark, end in zip(chosen, ends, strict=True))


def chapter_lines(found: tuple[Chapter, ...]) -> str:
    """The chapters as lines of text, ``0:00 The opening``, as descriptions of videos have them."""
    return "".join(f"{clock(int(chapter.start))} {chapter.title}\n" for chapter in found)


def _candidates(study: Study, positions: Positions, timeline: Timeline) -> list[_Mark]:
    main = list(study.main_line())
    last = main[-1]
    found = [_Mark(0.0, _START, _opening_name(study, positions) or tr("Introduction"))]
    before: Stretch | None = None
    played = False
    new: int | None = None
    told = {study.root}
    for stretch in timeline.stretches:
        start = stretch.start
        if isinstance(stretch.key, Part):
            before = stretch
            continue
        lane = study.line_start(stretch.node)
        was = study.line_start(before.node) if before is not None else study.root
        if lane != was and lane not in told:
            found.append(_Mark(start, _SIDE_LINE, tr("Side-line: {line}", line=line_label(positions, lane))))
            told.add(lane)
        elif lane != was and lane == study.root:
            found.append(_Mark(start, _RETURN, tr("The game again: {move}", move=move_label(positions, stretch.node))))
        elif not played and study.nodes[stretch.node].move is not None and start > 0:
            found.append(_Mark(start, _FIRST_MOVE, tr("The first moves")))
        if study.nodes[stretch.node].move is not None:
            played = True
        if new is None and lane == study.root:
            shown = (event.node for event in stretch.events if event.what is Happening.MOVE)
            new = next((node for node in shown if _NEW_GLYPH in study.nodes[node].nags), None)
            if new is not None:
                found.append(_Mark(start, _NEW_MOVE, tr("The new move: {move}", move=move_label(positions, new))))
        if stretch.think > 0:
            white = positions.board(stretch.node).turn
            asked = tr("Find the move: White to move") if white else tr("Find the move: Black to move")
            found.append(_Mark(start, _THINK, asked))
        if stretch.node == last and last != study.root and lane == study.root:
            found.append(_Mark(start, _FINISH, tr("The finish: {move}", move=move_label(positions, last))))
        before = stretch
    return found


def _opening_name(study: Study, positions: Positions) -> str:
    """The name of the opening without its code, empty where it has none."""
    if name := known(study.headers, "Opening"):
        return name
    found = opening_of(study, positions)
    return found[0].name if found is not None else ""
