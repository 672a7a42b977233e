"""Hatching fills a square and no more."""

from __future__ import annotations

import pytest

from studyboard.picture.hatch import hatch_lines


@pytest.mark.parametrize("slope", ["rising", "falling"])
def test_every_line_runs_from_side_to_side_of_its_square(slope):
    lines = hatch_lines(3, 4, count=6, slope=slope)
    assert len(lines) == 11
    for start, end in lines:
        for x, y in (start, end):
            assert 3 <= x <= 4
            assert 4 <= y <= 5
            assert min(abs(x - 3), abs(x - 4), abs(y - 4), abs(y - 5)) < 1e-9
        across, down = end[0] - start[0], end[1] - start[1]
        assert abs(across) == pytest.approx(abs(down))
        assert (across * down < 0) == (slope == "rising")


def test_neighbours_on_a_diagonal_continue_each_other():
    ends = {(round(x, 9), round(y, 9)) for line in hatch_lines(0, 1, count=5) for x, y in line}
    other = {(round(x, 9), round(y, 9)) for line in hatch_lines(1, 1, count=5) for x, y in line}
    assert {(1.0, round(1 + n / 5, 9)) for n in range(1, 5)} <= ends & other
