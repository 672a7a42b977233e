"""Clicking through the talk against the clock."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from studyboard.model.edits import apply
from studyboard.model.script import Part
from studyboard.timing.run_through import RunThrough

Names = Callable[[str], int]


@pytest.fixture
def run(author, gambit: Names, watch) -> RunThrough:
    """A rehearsal of the gambit that has not begun."""
    return RunThrough(author.study, watch)


def _walk(run: RunThrough) -> list[int | None]:
    shown = []
    while run.advance():
        shown.append(run.node)
    return shown


def test_one_key_leads_through_the_whole_talk_and_its_returns(run: RunThrough, gambit: Names) -> None:
    names = ("e4", "e5", "Nf3", "e5", "f4", "exf4", "Nf3", "Nc6")
    assert _walk(run) == [gambit(name) for name in names]
    assert run.finished
    assert run.next_stop is None
    assert not run.advance()


def test_returns_that_follow_each_other_take_one_press(author, watch) -> None:
    e4 = author.play("e2e4")
    e5 = author.play("e7e5", after=e4)
    c5 = author.play("c7c5", after=e4)
    knight = author.play("g1f3", after=c5)
    pawn = author.play("c2c3", after=c5)
    nf3 = author.play("g1f3", after=e5)
    for node in (e4, e5, c5, knight, pawn, nf3):
        author.say(node, "A line.")
    run = RunThrough(author.study, watch)
    # From the deepest side-line the talk goes home at once, not by way of the line in between.
    assert _walk(run) == [e4, e5, e4, c5, knight, c5, pawn, e5, nf3]


def test_the_clock_gives_each_beat_its_seconds(run: RunThrough, gambit: Names, watch) -> None:
    watch.wait(50)
    run.advance()
    watch.wait(4)
    run.advance()
    watch.wait(2.5)
    assert run.beat_key == gambit("e5")
    assert (run.beat_seconds(0), run.beat_seconds(1)) == (4.0, 2.5)
    assert run.elapsed == 6.5


def test_the_return_belongs_to_the_beat_that_it_leads_to(run: RunThrough, gambit: Names, watch) -> None:
    for _ in range(4):
        run.advance()
        watch.wait(1)
    assert run.node == gambit("e5")
    assert run.beat_key == gambit("f4")
    run.advance()
    watch.wait(1)
    assert run.beat_seconds(run.beat) == 2.0


def test_only_the_last_stop_of_a_beat_leads_to_the_next_one(run: RunThrough) -> None:
    stops = []
    while run.advance():
        assert run.stop is not None
        stops.append((run.stop.beat, run.stop.last_of_beat))
    assert stops == [(0, True), (1, True), (2, True), (3, False), (3, True), (4, True), (5, False), (5, True)]


def test_one_can_wander_off_and_come_back_with_one_key(run: RunThrough, gambit: Names, watch) -> None:
    run.advance()
    run.wander(gambit("exf4"))
    assert run.wandering
    assert run.node == gambit("exf4")
    assert run.beat_key is None
    watch.wait(3)
    assert run.come_back() == gambit("e4")
    assert not run.wandering
    assert run.beat_key == gambit("e4")
    assert run.beat_seconds(0) == 3.0


def test_going_on_from_a_detour_goes_on_with_the_talk(run: RunThrough, gambit: Names) -> None:
    run.advance()
    run.wander(gambit("exf4"))
    run.advance()
    assert run.node == gambit("e5")
    assert not run.wandering


def test_finding_the_way_back_by_hand_ends_the_detour(run: RunThrough, gambit: Names) -> None:
    run.advance()
    run.wander(gambit("f4"))
    run.wander(gambit("e4"))
    assert not run.wandering


def test_a_pause_stops_the_clock(run: RunThrough, watch) -> None:
    run.advance()
    watch.wait(2)
    run.pause()
    watch.wait(60)
    assert not run.running
    assert run.elapsed == 2.0
    run.resume()
    watch.wait(1)
    assert run.elapsed == 3.0


def test_going_back_gives_the_time_to_the_earlier_beat_again(run: RunThrough, gambit: Names, watch) -> None:
    run.advance()
    watch.wait(1)
    run.advance()
    watch.wait(2)
    assert run.retreat()
    assert run.node == gambit("e4")
    watch.wait(4)
    assert (run.beat_seconds(0), run.beat_seconds(1)) == (5.0, 2.0)
    assert not run.retreat()


def test_one_can_jump_to_another_beat(run: RunThrough, gambit: Names) -> None:
    assert run.jump(3)
    assert run.node == gambit("e5")
    assert run.beat_key == gambit("f4")
    assert not run.jump(99)
    assert run.beat == 3


def test_a_talk_on_time_is_neither_late_nor_early(run: RunThrough, watch) -> None:
    run.advance()
    for number, seconds in enumerate(run.planned):
        while run.beat != number:
            run.advance()
        watch.wait(seconds)
        assert run.late == pytest.approx(0.0)


def test_the_desk_says_how_late_the_talk_is(run: RunThrough, watch) -> None:
    run.advance()
    watch.wait(run.planned[0] - 1)
    assert run.late == pytest.approx(0.0)
    watch.wait(4)
    assert run.late == pytest.approx(3.0)
    run.advance()
    assert run.late == pytest.approx(3.0)


def test_beats_told_too_fast_make_the_talk_early_those_left_out_do_not(run: RunThrough, watch) -> None:
    run.jump(2)
    run.resume()
    watch.wait(run.planned[2] - 1)
    run.advance()
    assert run.late == pytest.approx(-1.0)


def test_the_seconds_of_a_rehearsal_are_kept_by_an_edit(author, run: RunThrough, gambit: Names, watch) -> None:
    assert run.keep() is None
    run.advance()
    watch.wait(3.456)
    run.advance()
    watch.wait(1)
    edit = run.keep()
    assert edit is not None
    apply(author.study, edit)
    assert author.study.rehearsed == {gambit("e4"): 3.46, gambit("e5"): 1.0}


def test_greeting_and_thanks_are_stops_too(author, gambit: Names, watch) -> None:
    author.say_part(Part.GREETING, "Good evening.")
    author.say_part(Part.THANKS, "Thank you.")
    run = RunThrough(author.study, watch)
    assert run.node is None
    run.advance()
    assert (run.node, run.beat_key) == (author.study.root, Part.GREETING)
    while run.advance():
        pass
    assert (run.node, run.beat_key) == (gambit("Nc6"), Part.THANKS)


def test_there_is_nothing_to_rehearse_in_an_empty_study(author, watch) -> None:
    run = RunThrough(author.study, watch)
    assert not run.advance()
    assert run.node is None
    assert run.elapsed == run.late == run.planned_so_far == 0.0
    assert run.keep() is None
