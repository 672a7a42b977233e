"""A small study in which every kind of side-line occurs, and how to name what happens in it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from studyboard.model.order import Visit, VisitKind
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games

GAME = "1. e4 e5 (1... c5 2. Nf3 (2. c3 d5) 2... d6) (1... e6) 2. Nf3 (2. f4 exf4) 2... Nc6 3. Bb5 *"


@pytest.fixture
def study() -> Study:
    """A main line of five half-moves and four side-lines, one of them inside another."""
    return next(read_games(GAME)).study


@pytest.fixture
def node_of(study: Study) -> Callable[[str], int]:
    """The first node, in the order of reading, whose move is written so."""
    positions = Positions(study)
    sans: dict[str, int] = {}
    for node in study.branch(study.root):
        sans.setdefault(positions.san(node.id), node.id)
    return sans.__getitem__


@pytest.fixture
def told(study: Study) -> Callable[[tuple[Visit, ...]], str]:
    """The visits in one string: moves as they are told, returns in brackets, lines without a move by their part."""
    positions = Positions(study)

    def words(visits: tuple[Visit, ...]) -> str:
        said: list[str] = []
        for visit in visits:
            san = positions.san(visit.node) or "Start"
            if visit.kind is VisitKind.LINE:
                said.append(str(visit.part))
            else:
                said.append(f"[{san}]" if visit.kind is VisitKind.BACK else san)
        return " ".join(said)

    return words
