"""Trees for tests of the lanes."""

from __future__ import annotations

from dataclasses import replace

import chess
from hypothesis import strategies as st

from studyboard.model.node import Node
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games


def study_of(moves: str) -> Study:
    return next(read_games(moves)).study


def find(study: Study, *sans: str) -> int:
    positions = Positions(study)
    node = study.root
    for san in sans:
        node = next(child for child in study.nodes[node].children if positions.san(child) == san)
    return node


def tree(pairs: list[tuple[int, int]]) -> Study:
    """A study of passes: for each pair, a node after the first and another after the second."""
    parents = [0]
    for pair in pairs:
        parents += [at % len(parents) for at in pair]
    return tree_of(parents)


def tree_of(parents: list[int]) -> Study:
    """A study of passes in which node n comes after parents[n]; the first is the root."""
    children: list[list[int]] = [[] for _ in parents]
    for node, parent in enumerate(parents[1:], 1):
        children[parent].append(node)
    study = Study()
    study.nodes = {
        node: replace(
            Node(node, parent if node else None, chess.Move.null() if node else None), children=tuple(children[node])
        )
        for node, parent in enumerate(parents)
    }
    study.next_id = len(parents)
    return study


@st.composite
def studies(draw: st.DrawFn) -> Study:
    """Trees of up to 60 nodes that go on from the last node more often than not."""
    parents = [0]
    for size in range(1, draw(st.integers(1, 60))):
        parents.append(size - 1 if draw(st.integers(0, 3)) else draw(st.integers(0, size - 1)))
    return tree_of(parents)
