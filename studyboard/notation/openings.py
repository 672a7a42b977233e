"""What an opening is called, found by the positions of a game and not by the order of its moves."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final

import chess

from studyboard.model.errors import StudyboardError
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.resources_path import resource

_DEEPEST: Final = 40
"""No position of the table comes later than this half-move of its line; a transposition may take longer."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A named opening position.

    eco: its code in the ECO classification, such as ``"B22"``
    name: opening, then variation, with commas between them
    """

    eco: str
    name: str


def opening_at(board: chess.Board) -> Opening | None:
    """The opening whose position this is, whatever moves led to it; None where it has no name of its own. O(1)."""
    return _table().get(_key(board))


def opening_of(study: Study, positions: Positions) -> tuple[Opening, int] | None:
    """The last named position that the main line passes through, and its node; None where it passes none.

    Games that begin from a set-up position pass one only if they come back to it.
    """
    found: tuple[Opening, int] | None = None
    for ply, node in enumerate(study.main_line()):
        if ply > _DEEPEST:
            break
        if (here := opening_at(positions.board(node))) is not None:
            found = here, node
    return found


@cache
def _table() -> dict[str, Opening]:
    """The openings of ``resources/openings/names.tsv`` by position."""
    path = resource("openings", "names.tsv")
    found: dict[str, Opening] = {}
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        eco, name, text = line.split("\t")
        board = chess.Board()
        for san in text.split():
            try:
                board.push_san(san)
            except ValueError as reason:
                raise StudyboardError(f"{path.name}, line {number}: {san} cannot be played there.") from reason
        found[_key(board)] = Opening(eco, name)
    return found


def _key(board: chess.Board) -> str:
    """The position without its clocks: pieces, turn, castling rights, and a capture in passing where one is legal."""
    return board.epd()
