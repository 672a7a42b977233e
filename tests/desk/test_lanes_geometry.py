"""Widths of lanes and heights of rows."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.desk.lane_layout import lay_out
from studyboard.desk.lanes_geometry import LEFT, TextHeights, lane_geometry, lane_widths
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study
from tests.desk.lane_studies import find, studies, study_of, tree_of

LINE = 14


def test_a_lone_main_line_is_no_wider_than_reads_well() -> None:
    main, _ = lane_widths(1900, 1, LINE)
    assert main < 50 * LINE
    assert lane_widths(600, 1, LINE)[0] <= 600


def test_three_lanes_fit_the_lanes_of_a_small_laptop() -> None:
    main, side = lane_widths(752, 3, LINE)
    assert LEFT + main + 2 * side <= 752


def test_main_lane_and_one_and_a_half_side_lanes_are_read_on_a_small_laptop() -> None:
    main, side = lane_widths(722, 5, LINE)
    assert LEFT + main + 1.5 * side <= 722
    assert main >= 22 * LINE
    assert side >= 16 * LINE


def test_where_not_all_lanes_fit_half_of_the_next_is_seen() -> None:
    width = 752
    main, side = lane_widths(width, 40, LINE)
    beyond = (width - LEFT - main) % side
    assert 0.45 * side <= beyond <= 0.6 * side, "its moves can be read"


def test_in_a_narrow_view_the_edge_of_the_next_lane_is_seen() -> None:
    width = 520
    main, side = lane_widths(width, 40, LINE)
    beyond = (width - LEFT - main) % side
    assert 20 <= beyond <= 48, "its rail, not half a word"


@pytest.mark.parametrize("lanes", [1, 2, 3, 8])
@given(width=st.integers(120, 3000))
def test_the_main_lane_is_never_narrower_than_the_others_where_there_is_room(lanes: int, width: int) -> None:
    main, side = lane_widths(width, lanes, LINE)
    assert main > 0
    assert side >= 14 * LINE
    if width > 700:
        assert main >= side


HEIGHTS = TextHeights(LINE, 15, 13)


@st.composite
def spoken_studies(draw: st.DrawFn) -> Study:
    """Trees with a spoken line at some nodes."""
    study = draw(studies())
    for node in draw(st.sets(st.sampled_from(sorted(study.nodes)))):
        study.nodes[node] = replace(study.nodes[node], spoken=SpokenLine("A word."))
    return study


@given(spoken_studies())
def test_a_heading_stands_between_the_words_above_and_the_move_below(study: Study) -> None:
    layout = lay_out(study)
    geometry = lane_geometry(study, layout, HEIGHTS, 722, layout.lanes)
    for line in layout.lines.values():
        if line.branch is None:
            continue
        heading = geometry.heading(line.lane, line.row)
        assert heading.height >= HEIGHTS.small
        assert heading.bottom <= geometry.cell(line.lane, line.row).top
        above = layout.node_at(line.lane, line.row - 1)
        if above is not None:
            text = HEIGHTS.move + (HEIGHTS.spoken if study.nodes[above].spoken else 0)
            cell = geometry.cell(line.lane, line.row - 1, headed=True)
            assert cell.bottom <= heading.top
            assert cell.height >= text


@given(spoken_studies())
def test_rails_run_across_between_the_texts_of_two_rows(study: Study) -> None:
    layout = lay_out(study)
    geometry = lane_geometry(study, layout, HEIGHTS, 722, layout.lanes)
    for branching in layout.branchings.values():
        y = geometry.track(branching.row, branching.track, layout.tracks_below(branching.row))
        assert y > geometry.cell(0, branching.row).bottom
        assert y < geometry.middle_of(branching.row + 1) - HEIGHTS.move / 2


@pytest.mark.parametrize("lines", [2, 3, 5, 12])
def test_rails_that_run_across_below_each_other_are_told_apart(lines: int) -> None:
    """Side-lines beside each other, from whose first moves others leave: their rails run between the same two rows."""
    parents = [0, 0]
    parents += [0] * lines
    first = list(range(1, lines + 2))
    for node in first:
        parents += [node, node]
    layout = lay_out(tree_of(parents))
    geometry = lane_geometry(tree_of(parents), layout, HEIGHTS, 722, layout.lanes)
    row = layout.cells[1][1]
    tracks = layout.tracks_below(row)
    assert tracks >= 2
    ys = [geometry.track(row, track, tracks) for track in range(tracks)]
    assert all(below - above >= 6 for above, below in pairwise(ys))
    assert geometry.cell(0, row).bottom < ys[0]
    assert ys[-1] < geometry.middle_of(row + 1) - LINE / 2


def test_a_row_is_no_taller_for_a_heading_that_finds_room() -> None:
    study = study_of("1. e4 e5 (1... c5 2. Nf3) 2. Nf3 Nc6 (2... Nf6) *")
    above = find(study, "e4", "c5", "Nf3")
    layout = lay_out(study)
    row = layout.cells[above][1]
    silent = lane_geometry(study, layout, HEIGHTS, 722, 2)
    study.nodes[find(study, "e4", "e5", "Nf3")] = replace(
        study.nodes[find(study, "e4", "e5", "Nf3")], spoken=SpokenLine("Beside it.")
    )
    assert lane_geometry(study, layout, HEIGHTS, 722, 2).tops == silent.tops
    study.nodes[above] = replace(study.nodes[above], spoken=SpokenLine("Above it."))
    crowded = lane_geometry(study, layout, HEIGHTS, 722, 2)
    grown = crowded.tops[row + 1] - crowded.tops[row] - (silent.tops[row + 1] - silent.tops[row])
    assert 0 < grown <= 20
