"""Widths of lanes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.desk.lanes_geometry import LEFT, lane_widths

LINE = 14


def test_a_lone_main_line_is_no_wider_than_reads_well() -> None:
    main, _ = lane_widths(1900, 1, LINE)
    assert main < 50 * LINE
    assert lane_widths(600, 1, LINE)[0] <= 600


def test_three_lanes_fit_the_lanes_of_a_small_laptop() -> None:
    main, side = lane_widths(752, 3, LINE)
    assert LEFT + main + 2 * side <= 752


def test_where_not_all_lanes_fit_the_edge_of_the_next_is_seen() -> None:
    width = 752
    main, side = lane_widths(width, 40, LINE)
    beyond = (width - LEFT - main) % side
    assert 20 <= beyond <= 48, "its rail, not half a word"


@pytest.mark.parametrize("lanes", [1, 2, 3, 8])
@given(width=st.integers(120, 3000))
def test_the_main_lane_is_never_narrower_than_the_others_where_there_is_room(lanes: int, width: int) -> None:
    main, side = lane_widths(width, lanes, LINE)
    assert main > 0
    assert side >= 15 * LINE
    if width > 700:
        assert main >= side
