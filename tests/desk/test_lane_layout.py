"""Where nodes stand in the lanes."""

from __future__ import annotations

from collections import Counter
from itertools import combinations

import chess
from hypothesis import given
from hypothesis import strategies as st

from studyboard.desk.lane_layout import LaneLayout, lay_out, unfolded_for
from studyboard.model.edits import AddMove, ChangeNode, RemoveBranch, apply
from studyboard.model.script import Part, SpokenLine
from studyboard.model.study import Study
from tests.desk.lane_studies import find, studies, study_of, tree, tree_of

GAME = "1. e4 e5 (1... c5 2. Nf3 (2. Nc3 Nc6) 2... d6) (1... e6 2. d4) 2. Nf3 Nc6 3. Bc4 (3. Bb5 a6) 3... Bc5 *"


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
def test_a_side_line_is_in_the_nearest_lane_that_is_free(study: Study) -> None:
    layout = lay_out(study)
    for line in layout.lines.values():
        if line.parent is not None:
            for lane in range(layout.lines[line.parent].lane + 1, line.lane):
                assert any(layout.node_at(lane, row) is not None for row in range(line.row, line.last_row + 1))


@given(st.integers(2, 30), st.lists(st.tuples(st.integers(0, 28), st.integers(1, 12)), max_size=20))
def test_there_are_no_more_lanes_than_lines_beside_each_other(plies: int, side_lines: list[tuple[int, int]]) -> None:
    parents = [max(0, node - 1) for node in range(plies + 1)]
    for at, length in side_lines:
        parents.append(at % plies)
        parents += range(len(parents) - 1, len(parents) + length - 2)
    layout = lay_out(tree_of(parents))
    assert layout.lanes == _most_beside_each_other(layout)


@given(studies())
def test_side_lines_inside_each_other_take_more_lanes_only_where_they_stand_behind_others(study: Study) -> None:
    layout = lay_out(study)
    assert layout.lanes >= _most_beside_each_other(layout)
    for line in layout.lines.values():
        if line.parent is not None:
            beside = sum(other.row <= line.row <= other.last_row for other in layout.lines.values())
            assert line.lane <= layout.lines[line.parent].lane + beside


def _most_beside_each_other(layout: LaneLayout) -> int:
    """How many lines the row with most of them has."""
    beside = Counter(row for _, row in layout.cells.values())
    return max(beside.values())


@given(studies())
def test_no_rail_lies_on_another_and_none_crosses_one_where_that_begins(study: Study) -> None:
    layout = lay_out(study)
    for row in range(layout.rows):
        leaving = [branching for branching in layout.branchings_in(row) if branching.shown]
        for left, right in combinations(leaving, 2):
            assert left.lane < right.lane
            if right.lane < left.reach:
                assert left.track > right.track
        assert {branching.track for branching in leaving} == set(range(layout.tracks_below(row)))


@given(studies())
def test_a_rail_that_runs_across_knows_which_others_it_crosses(study: Study) -> None:
    layout = lay_out(study)
    for branching in layout.branchings.values():
        crossed = set()
        for line in layout.lines.values():
            passing = line.row <= branching.row < line.last_row
            from_above = (
                line.branch is not None
                and line.row == branching.row + 1
                and layout.branchings[line.branch].track < branching.track
            )
            if branching.lane < line.lane < branching.reach and (passing or from_above):
                crossed.add(line.lane)
        assert set(layout.crossed_by(branching, range(layout.lanes))) == crossed
        assert set(layout.crossed_by(branching, range(2, 4))) == crossed & {2, 3}


@given(studies())
def test_every_side_line_has_its_heading_above_its_first_move(study: Study) -> None:
    layout = lay_out(study)
    headed = {
        line.start
        for lane in range(layout.lanes)
        for row in range(layout.rows)
        if (line := layout.headed_at(lane, row)) is not None and (line.lane, line.row) == (lane, row + 1)
    }
    assert headed == set(layout.lines) - {study.root}


def test_a_line_may_begin_right_below_another_and_both_are_found() -> None:
    study = study_of("1. e4 e5 (1... c5 2. Nf3) 2. Nf3 Nc6 (2... Nf6) *")
    layout = lay_out(study)
    above, below = find(study, "e4", "c5", "Nf3"), find(study, "e4", "e5", "Nf3", "Nf6")
    lane, row = layout.cells[above]
    assert layout.cells[below] == (lane, row + 1)
    assert layout.node_at(lane, row) == above
    headed = layout.headed_at(lane, row)
    assert headed is not None
    assert headed.start == below
    assert [line.start for line in layout.lines_between(lane, row, row)] == [find(study, "e4", "c5"), below]


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
