"""The timing report."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from studyboard.model.edits import ChangeRehearsed, ChangeSlot, PutTake
from studyboard.model.script import Part
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.timing.pace import estimate
from studyboard.timing.plan import plan
from studyboard.timing.report import timing_report

Names = Callable[[str], int]


def test_every_beat_has_a_row_with_its_move_and_its_words(author, gambit: Names) -> None:
    author.say_part(Part.GREETING, "Good evening.")
    report = timing_report(author.study)
    assert [(row.node, row.san, row.text) for row in report.beats][:2] == [
        (None, "greeting", "Good evening."),
        (gambit("e4"), "e4", "We begin with the king's pawn."),
    ]
    assert [row.san for row in report.beats] == ["greeting", "e4", "e5", "Nf3", "f4", "exf4", "Nc6"]


def test_the_total_is_the_length_of_the_plan(author, gambit: Names) -> None:
    author.change(gambit("e5"), intended=12.0, think=3.0)
    report = timing_report(author.study)
    assert report.total == pytest.approx(plan(author.study).seconds)


def test_what_the_author_insists_on_counts_and_the_estimate_stays_visible(author, gambit: Names) -> None:
    author.change(gambit("e5"), intended=12.0)
    row = next(row for row in timing_report(author.study).beats if row.node == gambit("e5"))
    assert row.intended == row.planned == 12.0
    assert row.estimated == pytest.approx(estimate(author.study.pace, "Black answers in kind."))


def test_over_and_under_are_the_distance_from_the_slot(author, gambit: Names) -> None:
    report = timing_report(author.study)
    assert report.slot is None
    assert report.over is None
    author.edit(ChangeSlot(10.0))
    assert timing_report(author.study).over == pytest.approx(report.total - 10.0)
    author.edit(ChangeSlot(1000.0))
    assert timing_report(author.study).over == pytest.approx(report.total - 1000.0)


def test_recorded_and_rehearsed_seconds_stand_beside_the_planned_ones(author, gambit: Names) -> None:
    e4, e5 = gambit("e4"), gambit("e5")
    events = (TakeEvent(SoundTime(0, 1000), e4, e4), TakeEvent(SoundTime(2500, 1000), e5, e5))
    author.edit(PutTake(Take(1, "First", 1000, 6000, "2025-03-04T20:00:00+00:00", events)))
    author.edit(ChangeRehearsed(((e4, 2.2),)))
    rows = {row.node: row for row in timing_report(author.study).beats}
    assert (rows[e4].recorded, rows[e4].rehearsed) == (2.5, 2.2)
    assert (rows[e5].recorded, rows[e5].rehearsed) == (3.5, None)
    assert rows[gambit("Nf3")].recorded is None


def test_an_empty_study_takes_no_time(author) -> None:
    report = timing_report(author.study)
    assert (report.total, report.beats) == (0, ())
