"""All takes of one beat, as a list of them shows them."""

from __future__ import annotations

import pytest

from studyboard.model.beat_takes import beat_takes, beats_of
from studyboard.model.edits import PutTake, apply
from studyboard.model.study import Study
from studyboard.model.take_edits import ChooseTake, discard
from studyboard.model.takes import Replaced, Span
from tests.model.test_assembly import put, spoken_study


@pytest.fixture
def study() -> Study:
    """Beats 1 to 4 in the first take, 2 and 3 in the second, a pickup in the second."""
    made = spoken_study()
    put(made, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    put(made, 2, 5, (0, 2), (2.5, 3))
    put(made, 3, 1, replaces=Replaced(2, Span(50, 100)))
    return made


def listed(study: Study, beat: int) -> list[tuple[int, int, int, bool]]:
    return [(one.take.id, one.span.start, one.span.end, one.heard) for one in beat_takes(study, beat)]


def test_the_newest_comes_first_and_its_pickups_behind_it(study):
    assert listed(study, 2) == [(2, 0, 250, True), (3, 0, 100, True), (1, 300, 500, False)]
    assert listed(study, 3) == [(2, 250, 500, True), (1, 500, 700, False)]
    assert listed(study, 4) == [(1, 700, 1000, True)]


def test_another_choice_and_discarded_takes_stay_in_sight(study):
    apply(study, ChooseTake(2, 1))
    assert listed(study, 2) == [(2, 0, 250, False), (3, 0, 100, False), (1, 300, 500, True)]
    apply(study, discard(study.takes[1]))
    assert listed(study, 2) == [(2, 0, 250, True), (3, 0, 100, True), (1, 300, 500, False)]


def test_a_take_without_a_beat_stands_last_everywhere(study):
    put(study, 4, 2)
    assert [one.take.id for one in beat_takes(study, 4)] == [1, 4]
    assert [one.is_loose for one in beat_takes(study, 4)] == [False, True]


def test_a_take_tells_its_beats_in_their_order(study):
    assert beats_of(study.takes[1]) == (1, 2, 3, 4)
    assert beats_of(study.takes[3]) == ()
    apply(study, PutTake(study.takes[3]))
    assert listed(study, 1) == [(1, 0, 300, True)]
