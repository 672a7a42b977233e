"""Seconds along the ruler."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.desk.ruler_scale import RulerScale, Run, fitting, in_view, runs, tick_step, ticks


@pytest.mark.parametrize(
    ("per_second", "step"),
    [(100.0, 1), (40.0, 2), (20.0, 5), (8.0, 10), (5.0, 15), (2.5, 30), (1.0, 120), (0.01, 7200)],
)
def test_labels_come_at_steps_that_one_counts_in(per_second: float, step: int) -> None:
    assert tick_step(per_second, 64.0) == step


@given(st.floats(0.01, 200.0), st.floats(20.0, 200.0))
def test_labels_are_never_closer_than_asked_for(per_second: float, least: float) -> None:
    assert tick_step(per_second, least) * per_second >= least * 0.999


def test_ticks_begin_at_the_first_one_in_view() -> None:
    assert list(ticks(RulerScale(12.0, 10.0, 200.0), 5)) == [15, 20, 25, 30]


def test_the_whole_talk_fits_and_second_and_px_agree() -> None:
    scale = fitting(250.0, 1000.0, 20.0)
    assert scale.x(0.0) == 20.0
    assert scale.x(250.0) == 1020.0
    assert scale.seconds(scale.x(123.4)) == pytest.approx(123.4)


def test_a_scale_shows_nothing_outside_the_talk() -> None:
    talk = 100.0
    assert RulerScale(-30.0, 20.0, 1000.0).within(talk).start == 0.0
    assert RulerScale(90.0, 20.0, 1000.0).within(talk).end == pytest.approx(talk)
    assert RulerScale(0.0, 1.0, 1000.0).within(talk).per_second == 10.0


def test_only_beats_in_view_are_looked_at() -> None:
    starts = [0.0, 10.0, 20.0, 30.0, 40.0]
    scale = RulerScale(0.0, 10.0, 500.0)
    assert list(in_view(starts, scale, 150.0, 310.0)) == [1, 2, 3]
    assert list(in_view(starts, scale, -50.0, 50.0)) == [0]


def test_narrow_neighbours_are_drawn_as_one_and_wide_ones_alone() -> None:
    blocks = [(0, 0.0, 1.0), (1, 1.0, 2.0), (2, 2.0, 20.0), (3, 20.0, 21.0), (7, 60.0, 61.0)]
    assert list(runs(blocks, 3.0)) == [
        Run(0, 1, 0.0, 2.0),
        Run(2, 2, 2.0, 20.0),
        Run(3, 3, 20.0, 21.0),
        Run(7, 7, 60.0, 61.0),
    ]


@given(st.lists(st.floats(0.01, 20.0), min_size=1, max_size=60), st.floats(0.5, 5.0))
def test_every_block_is_in_exactly_one_run(widths: list[float], least: float) -> None:
    blocks, at = [], 0.0
    for index, width in enumerate(widths):
        blocks.append((index, at, at + width))
        at += width
    covered = [index for run in runs(blocks, least) for index in range(run.first, run.last + 1)]
    assert covered == list(range(len(widths)))
