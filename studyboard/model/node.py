"""One position of a study, as a value."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import chess

from studyboard.model.marks import Mark
from studyboard.model.script import SILENT, SpokenLine


class Place(StrEnum):
    """When a side-line is told, seen from the main move that it replaces."""

    AFTER = "after"
    BEFORE = "before"
    HIDDEN = "hidden"
    MOVED = "moved"


@dataclass(frozen=True, slots=True)
class Telling:
    """Where in the running order a side-line is told.

    place: before or after the main move, not at all, or moved
    anchor: for a moved one, the id of the node after which it is told; None otherwise
    """

    place: Place = Place.AFTER
    anchor: int | None = None

    def __post_init__(self) -> None:
        if (self.place is Place.MOVED) != (self.anchor is not None):
            raise ValueError("A side-line that is moved needs the node after which it is told, and only then.")


AFTER = Telling()


@dataclass(frozen=True, slots=True)
class Node:
    """One position of the tree and everything that the author keeps there.

    id: stable for the life of the study, never used again
    parent: id of the node before, None at the root
    move: the move that leads here, None at the root; chess.Move.null() passes the turn
    children: ids; the first is the main move, the others begin side-lines
    spoken: what is said here
    note_before, note: text for print, before and after the move
    marks: what is drawn on the board here
    nags: numeric annotation glyphs of the PGN standard (0-255)
    intended: how long this beat should take (s), None where the estimate decides
    locked: fitting the talk to its slot leaves the intended length as it is
    think: silence after the line in which the viewer is asked to find the next move (s), 0.0 for none
    telling: when this side-line is told; matters only where the node begins one, but a hidden main move and all
        after it are not told either
    name: what the author calls this side-line
    """

    id: int
    parent: int | None
    move: chess.Move | None
    children: tuple[int, ...] = ()
    spoken: SpokenLine = SILENT
    note_before: str = ""
    note: str = ""
    marks: tuple[Mark, ...] = ()
    nags: tuple[int, ...] = ()
    intended: float | None = None
    think: float = 0.0
    telling: Telling = AFTER
    name: str = ""
    locked: bool = False
