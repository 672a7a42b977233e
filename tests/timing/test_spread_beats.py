"""Beats of a sound that nobody has listened to yet."""

from __future__ import annotations

import pytest

from studyboard.model.errors import StudyboardError
from studyboard.model.script import Part
from studyboard.model.takes import SoundTime, Take
from studyboard.timing.plan import plan
from studyboard.timing.recorded import recorded
from studyboard.timing.spread_beats import spread_beats

RATE = 48_000


def test_beats_have_the_shares_of_the_sound_that_they_have_of_the_plan(author, gambit):
    planned = plan(author.study)
    length = SoundTime(round(2 * planned.seconds * RATE), RATE)
    events = spread_beats(author.study, length)
    take = Take(1, "from elsewhere", RATE, length.samples, "2031-03-04T20:00:00+00:00", events)
    timeline = recorded(author.study, take)
    assert [stretch.key for stretch in timeline.stretches] == [stretch.key for stretch in planned.stretches]
    for stretch, other in zip(timeline.stretches, planned.stretches, strict=True):
        assert stretch.end == pytest.approx(2 * other.end, abs=0.001)


def test_sound_of_some_beats_begins_with_the_board_as_it_was_left(author, gambit):
    events = spread_beats(author.study, SoundTime(10 * RATE, RATE), gambit("f4"), gambit("exf4"))
    assert events[0].at.samples == 0
    assert {event.beat for event in events} == {gambit("f4"), gambit("exf4")}
    assert [event.at.samples for event in events] == sorted(event.at.samples for event in events)
    assert all(0 <= event.at.samples < 10 * RATE for event in events)


def test_beats_that_are_not_told_and_the_wrong_order_are_refused(author, gambit):
    length = SoundTime(RATE, RATE)
    with pytest.raises(StudyboardError, match="comes before the first"):
        spread_beats(author.study, length, gambit("Nc6"), gambit("e4"))
    with pytest.raises(StudyboardError, match="not told"):
        spread_beats(author.study, length, Part.CLOSING)
