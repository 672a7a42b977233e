"""Where nodes stand in the lanes."""

from __future__ import annotations

from dataclasses import replace

import chess
from hypothesis import given
from hypothesis import strategies as st

from studyboard.desk.lane_layout import lay_out, unfolded_for
from studyboard.model.edits import AddMove, ChangeNode, RemoveBranch, apply
from studyboard.model.node import Node
from studyboard.model.positions import Positions
from studyboard.model.script import Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games

GAME = "1. e4 e5 (1... c5 2. Nf3 (2. Nc3 Nc6) 2... d6) (1... e6 2. d4) 2. Nf3 Nc6 3. Bc4 (3. Bb5 a6) 3... Bc5 *"


def study_of(moves: str) -> Study:
    return next(read_games(moves)).study


def find(study: Study, *sans: str) -> int:
    positions = Positions(study)
    node = study.root
    for san in sans:
        node = next(child for child in study.nodes[node].children if positions.san(child) == san)
    return node


def test_a_side_line_is_level_with_the_move_that_it_replaces() -> None:
    study = study_of(GAME)
    cells = lay_out(study).cells
    assert cells[find(study, "e4", "c5")][1] == cells[find(study, "e4", "e5")][1]
    assert cells[find(study, "e4", "c5", "Nc3")][1] == cells[find(study, "e4", "e5", "Nf3")][1]


def test_the_main_line_is_in_the_first_lane_and_side_lines_are_to_its_right_in_their_order() -> None:
    study = study_of(GAME)
    cells = lay_out(study).cells
    assert {cells[node][0] for node in study.main_line()} == {0}
    sicilian, nested, french = find(study, "e4", "c5"), find(study, "e4", "c5", "Nc3"), find(study, "e4", "e6")
    assert 0 < cells[sicilian][0] < cells[french][0]
    assert cells[sicilian][0] < cells[nested][0]


def test_side_lines_that_do_not_meet_share_a_lane() -> None:
    study = study_of("1. e4 e5 (1... c5) 2. Nf3 Nc6 3. Bc4 (3. Bb5 a6) *")
    layout = lay_out(study)
    assert layout.lanes == 2
    assert layout.cells[find(study, "e4", "c5")][0] == layout.cells[find(study, "e4", "e5", "Nf3", "Nc6", "Bb5")][0]


def test_greeting_stands_above_the_start_and_the_end_of_the_talk_below_the_last_main_move() -> None:
    study = study_of(GAME)
    layout = lay_out(study)
    *_, last = study.main_line()
    assert layout.parts[Part.GREETING] == 0
    assert layout.cells[study.root] == (0, 1)
    assert layout.parts[Part.CLOSING] == layout.cells[last][1] + 1
    assert layout.parts[Part.THANKS] == layout.cells[last][1] + 2


def test_a_folded_side_line_is_gone_with_all_that_leaves_it() -> None:
    study = study_of(GAME)
    sicilian, french = find(study, "e4", "c5"), find(study, "e4", "e6")
    layout = lay_out(study, {sicilian})
    assert not set(layout.cells) & {node.id for node in study.branch(sicilian)}
    branching = layout.branchings[find(study, "e4")]
    assert (branching.shown, branching.folded) == ((french,), (sicilian,))
    assert layout.cells[french][0] == 1, "the lane of the folded one is free"


def test_a_node_is_shown_again_by_unfolding_only_what_hides_it() -> None:
    study = study_of(GAME)
    sicilian, nested = find(study, "e4", "c5"), find(study, "e4", "c5", "Nc3")
    french = find(study, "e4", "e6")
    assert unfolded_for(study, {sicilian, nested, french}, nested) == {french}


def test_an_edit_of_words_leaves_the_layout_as_it_is_and_a_move_does_not() -> None:
    study = study_of(GAME)
    layout = lay_out(study)
    tip = find(study, "e4", "c5")
    _, changed = apply(study, ChangeNode(tip, "spoken", SpokenLine("Sharp.")))
    assert layout.still_fits(study, changed.nodes)
    _, changed = apply(study, AddMove(tip, chess.Move.from_uci("d2d4"), study.next_id))
    assert not layout.still_fits(study, changed.nodes)
    layout = lay_out(study)
    _, changed = apply(study, RemoveBranch(tip))
    assert not layout.still_fits(study, changed.nodes)


def test_an_edit_behind_a_folded_side_line_moves_no_row() -> None:
    study = study_of(GAME)
    sicilian = find(study, "e4", "c5")
    layout = lay_out(study, {sicilian})
    _, changed = apply(study, RemoveBranch(find(study, "e4", "c5", "Nc3")))
    assert layout.still_fits(study, changed.nodes)


def test_three_thousand_side_lines_inside_each_other_are_laid_out() -> None:
    layout = lay_out(tree([(2 * at, 2 * at) for at in range(3000)]))
    assert layout.lanes == 3001
    assert max(row for _, row in layout.cells.values()) == 3001


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


@given(studies())
def test_no_two_nodes_share_a_place_and_each_is_in_the_row_of_its_half_move(study: Study) -> None:
    layout = lay_out(study)
    assert set(layout.cells) == set(study.nodes)
    assert len(set(layout.cells.values())) == len(study.nodes)
    assert all(row == study.ply(node) + 1 for node, (_, row) in layout.cells.items())


@given(studies())
def test_a_line_stays_in_its_lane_right_of_the_one_that_it_leaves(study: Study) -> None:
    layout = lay_out(study)
    for line in layout.lines.values():
        assert {layout.cells[node][0] for node in line.nodes} == {line.lane}
        if line.branch is not None:
            assert line.lane > layout.cells[line.branch][0]


@given(studies())
def test_no_rail_crosses_a_move_or_another_rail(study: Study) -> None:
    layout = lay_out(study)
    cells = set(layout.cells.values()) | {(0, row) for row in layout.parts.values()}
    rails = {(line.lane, row) for line in layout.lines.values() for row in range(line.row, line.last_row + 1)}
    across: set[tuple[int, int]] = set()
    for branching in layout.branchings.values():
        crossed = {(lane, branching.row) for lane in range(branching.lane + 1, branching.reach + 1)}
        assert not crossed & cells
        assert not crossed & rails
        assert not crossed & across
        across |= crossed


@given(studies(), st.integers(0, 70), st.integers(0, 20))
def test_what_is_found_at_a_place_is_what_stands_there(study: Study, row: int, height: int) -> None:
    layout = lay_out(study)
    standing = {cell: node for node, cell in layout.cells.items()}
    for lane in range(layout.lanes):
        assert layout.node_at(lane, row) == standing.get((lane, row))
        seen = {
            line.nodes[at - line.row]
            for line in layout.lines_between(lane, row, row + height)
            for at in range(max(row, line.row), min(row + height, line.last_row) + 1)
        }
        assert seen == {node for cell, node in standing.items() if cell[0] == lane and row <= cell[1] <= row + height}
