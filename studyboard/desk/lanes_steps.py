"""Where the keys lead from one row of the lanes to another."""

from __future__ import annotations

from studyboard.desk.lane_layout import ENDING, OPENING
from studyboard.model import stepping
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study

#: The rows of the main lane that belong to no move, above the start position and below the last move.
_ABOVE: tuple[Part, ...] = OPENING
_BELOW: tuple[Part, ...] = ENDING


def down(study: Study, at: BeatKey, rows: int = 1) -> BeatKey:
    """That many rows down the same lane; the last one where it ends earlier."""
    for _ in range(rows):
        further = _next_part(study, at, 1) if isinstance(at, Part) else stepping.forward(study, at)
        if further is None and not isinstance(at, Part) and study.on_main_line(at):
            further = _BELOW[0]
        if further is None:
            break
        at = further
    return at


def up(study: Study, at: BeatKey, rows: int = 1) -> BeatKey:
    """That many rows back; out of a side-line to the node that it leaves, from the start position to the greeting."""
    for _ in range(rows):
        before = _next_part(study, at, -1) if isinstance(at, Part) else stepping.back(study, at)
        if before is None and at == study.root:
            before = _ABOVE[-1]
        if before is None:
            break
        at = before
    return at


def right(study: Study, at: BeatKey) -> BeatKey:
    """The next side-line beside this move, else the first that leaves here."""
    if isinstance(at, Part):
        return at
    beside = stepping.next_line(study, at)
    if beside is not None:
        return beside
    children = study.nodes[at].children
    return children[1] if len(children) > 1 else at


def left(study: Study, at: BeatKey) -> BeatKey:
    """The first move of this side-line; from there, the line to the left of it."""
    if isinstance(at, Part):
        return at
    before = stepping.previous_line(study, at)
    return at if before is None else before


def home(study: Study, at: BeatKey) -> BeatKey:
    """The first move of this line; from there, the start position."""
    if isinstance(at, Part):
        return study.root
    start = study.line_start(at)
    return study.root if start == at else start


def end(study: Study, at: BeatKey) -> BeatKey:
    """The last move of this line."""
    return stepping.end_of_line(study, study.root if isinstance(at, Part) else at)


def board_of(study: Study, part: Part) -> int:
    """The node that is on the board while a line that belongs to no move is said."""
    return study.root if part.opens else stepping.end_of_line(study, study.root)


def _next_part(study: Study, part: Part, step: int) -> BeatKey | None:
    parts: tuple[Part, ...] = _ABOVE if part in _ABOVE else _BELOW
    place = parts.index(part) + step
    if 0 <= place < len(parts):
        return parts[place]
    if parts is _ABOVE:
        return study.root if step > 0 else None
    return None if step > 0 else stepping.end_of_line(study, study.root)
