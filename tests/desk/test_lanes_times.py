"""How long beats and side-lines take, as the lanes show it."""

from __future__ import annotations

from dataclasses import replace

import chess
import pytest

from studyboard.desk.lanes_times import LaneTimes, side_line_seconds
from studyboard.model.node import Node, Place, Telling
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.timing.planner import Planner


def study_of(moves: str) -> Study:
    study = next(read_games(moves)).study
    for node in list(study.nodes.values()):
        if node.parent is not None:
            study.nodes[node.id] = replace(node, intended=3.0)
    return study


def side_lines(study: Study) -> list[int]:
    return [child for node in study.nodes.values() for child in node.children[1:]]


def test_a_side_line_takes_as_long_as_its_moves_and_all_that_leaves_it() -> None:
    study = study_of("1. e4 e5 (1... c5 2. Nf3 (2. Nc3 Nc6 3. f4) 2... d6) 2. Nf3 *")
    times = LaneTimes(study, Planner().plan(study))
    assert sorted(times.side_lines.values()) == pytest.approx([9.0, 18.0])


def test_a_side_line_that_is_not_told_takes_no_time() -> None:
    study = study_of("1. e4 e5 (1... c5 2. Nf3) 2. Nf3 *")
    (start,) = side_lines(study)
    study.nodes[start] = replace(study.nodes[start], telling=Telling(Place.HIDDEN))
    times = LaneTimes(study, Planner().plan(study))
    assert times.side_lines == {start: 0.0}
    assert times.time_of(start) is None


def test_a_row_has_the_estimate_and_the_intended_seconds_of_its_beat() -> None:
    study = study_of("1. e4 e5 *")
    *_, last = study.main_line()
    time = LaneTimes(study, Planner().plan(study)).time_of(last)
    assert time is not None
    assert time.intended == time.planned == 3.0
    assert time.estimated == pytest.approx(study.pace.move_time)


def test_three_thousand_side_lines_inside_each_other_are_added_up() -> None:
    study = Study()
    nodes = {0: Node(0, None, None, (1, 2))}
    for node in range(1, 6001, 2):
        nodes[node] = Node(node, max(0, node - 1), chess.Move.null())
        after = (node + 2, node + 3) if node < 5999 else ()
        nodes[node + 1] = Node(node + 1, max(0, node - 1), chess.Move.null(), after)
    study.nodes = nodes
    totals = side_line_seconds(study, dict.fromkeys(nodes, 1.0))
    assert totals[2] == 5999.0
    assert totals[6000] == 1.0
