"""A mark names as many squares as its meaning needs."""

from __future__ import annotations

import pytest

from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.takes import SoundTime


@pytest.mark.parametrize(
    ("kind", "squares"),
    [(MarkKind.THREAT, (0, 63)), (MarkKind.TARGET, (5,)), (MarkKind.ROUTE, (0, 1, 2, 3, 4)), (MarkKind.GUARD, (1, 2))],
)
def test_marks_hold_their_squares(kind, squares):
    assert Mark(kind, squares).squares == squares


@pytest.mark.parametrize(
    ("kind", "squares"),
    [
        (MarkKind.THREAT, (0,)),
        (MarkKind.THREAT, (0, 1, 2)),
        (MarkKind.TARGET, ()),
        (MarkKind.ROUTE, (3,)),
        (MarkKind.KEY_SQUARE, (64,)),
        (MarkKind.GUARD, (-1, 4)),
    ],
)
def test_a_mark_that_cannot_be_drawn_is_refused(kind, squares):
    with pytest.raises(ValueError, match=str(kind)):
        Mark(kind, squares)


def test_numbers_begin_with_one_and_do_not_change_what_is_drawn():
    first = Mark(MarkKind.TARGET, (5,), 1)
    assert first != Mark(MarkKind.TARGET, (5,))
    assert first.draws_as(Mark(MarkKind.TARGET, (5,)))
    assert not first.draws_as(Mark(MarkKind.KEY_SQUARE, (5,), 1))
    with pytest.raises(ValueError, match="begin with 1"):
        Mark(MarkKind.TARGET, (5,), 0)


@pytest.mark.parametrize("arguments", [(Place.MOVED, None), (Place.AFTER, 3)])
def test_only_a_moved_side_line_has_a_node_to_be_told_after(arguments):
    with pytest.raises(ValueError, match="moved"):
        Telling(*arguments)


def test_a_moment_of_sound_is_counted_in_samples():
    assert SoundTime(72_000, 48_000).seconds == 1.5
