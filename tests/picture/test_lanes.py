"""Marks that share a way are drawn side by side."""

from __future__ import annotations

import math

from studyboard.picture.lanes import LANE, lane_shifts


def test_a_line_alone_stays_where_it_is():
    assert lane_shifts([((0.5, 0.5), (4.5, 4.5)), ((0.5, 4.5), (4.5, 0.5))]) == ((0, 0), (0, 0))


def test_there_and_back_run_side_by_side():
    first, second = lane_shifts([((0.5, 0.5), (4.5, 0.5)), ((4.5, 0.5), (0.5, 0.5))])
    assert math.dist(first, second) > LANE * 0.99
    assert first[0] == second[0] == 0


def test_a_line_along_part_of_another_makes_room():
    long, short = lane_shifts([((0.5, 0.5), (7.5, 7.5)), ((2.5, 2.5), (4.5, 4.5))])
    assert math.dist(long, short) > LANE * 0.99


def test_lines_that_only_meet_at_a_square_stay():
    shifts = lane_shifts([((0.5, 0.5), (3.5, 0.5)), ((3.5, 0.5), (6.5, 0.5))])
    assert shifts == ((0, 0), (0, 0))


def test_three_on_one_way_have_three_lanes():
    shifts = lane_shifts([((0.5, 0.5), (0.5, 6.5))] * 3)
    assert sorted(round(x, 6) for x, _ in shifts) == [-LANE, 0, LANE]


def test_a_bent_way_moves_off_both_its_legs():
    bent = ((0.5, 0.5), (0.5, 2.5), (1.5, 2.5))
    first, second = lane_shifts([bent, bent])
    assert abs(first[0] - second[0]) > LANE * 0.99
    assert abs(first[1] - second[1]) > LANE * 0.99
