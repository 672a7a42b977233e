"""The talk as it was recorded."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from studyboard.model.edits import PutTake, RemoveBranch
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.script import BeatKey, Part
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.timing.recorded import kept_takes, recorded, recorded_seconds, talk
from studyboard.timing.timeline import Happening, Source

RATE = 48_000
Names = Callable[[str], int]


def _take(number: int, seconds: float, *events: tuple[float, int, BeatKey | None]) -> Take:
    stamped = tuple(TakeEvent(SoundTime(round(at * RATE), RATE), node, beat) for at, node, beat in events)
    return Take(number, f"Take {number}", RATE, round(seconds * RATE), "2025-03-04T20:00:00+00:00", stamped)


@pytest.fixture
def take(gambit: Names) -> Take:
    """The gambit told in 20 s, at other speeds than planned, with a return at 15 s."""
    e4, e5, nf3, nc6, f4, exf4 = (gambit(name) for name in ("e4", "e5", "Nf3", "Nc6", "f4", "exf4"))
    return _take(
        1,
        20.0,
        (0.4, e4, e4),
        (3.0, e5, e5),
        (5.0, nf3, nf3),
        (8.0, e5, f4),
        (8.5, f4, f4),
        (13.0, exf4, exf4),
        (15.0, nf3, nc6),
        (16.0, nc6, nc6),
    )


def test_each_beat_is_as_long_as_it_took(author, gambit: Names, take: Take) -> None:
    timeline = recorded(author.study, take)
    assert timeline.source is Source.RECORDED
    assert timeline.seconds == 20.0
    assert [(stretch.key, stretch.start, stretch.end) for stretch in timeline.stretches] == [
        (gambit("e4"), 0.0, 3.0),
        (gambit("e5"), 3.0, 5.0),
        (gambit("Nf3"), 5.0, 8.0),
        (gambit("f4"), 8.0, 13.0),
        (gambit("exf4"), 13.0, 15.0),
        (gambit("Nc6"), 15.0, 20.0),
    ]


def test_the_board_moves_and_steps_back_when_it_did_in_the_take(author, gambit: Names, take: Take) -> None:
    events = recorded(author.study, take).events
    assert [(event.at, event.what, event.node) for event in events] == [
        (0.4, Happening.MOVE, gambit("e4")),
        (3.0, Happening.MOVE, gambit("e5")),
        (5.0, Happening.MOVE, gambit("Nf3")),
        (8.0, Happening.BACK, gambit("e5")),
        (8.5, Happening.MOVE, gambit("f4")),
        (13.0, Happening.MOVE, gambit("exf4")),
        (15.0, Happening.BACK, gambit("Nf3")),
        (16.0, Happening.MOVE, gambit("Nc6")),
    ]


def test_words_are_spread_over_the_seconds_of_their_beat(author, gambit: Names, take: Take) -> None:
    timeline = recorded(author.study, take)
    for stretch in timeline.stretches:
        assert [word.text for word in stretch.words] == stretch.spoken.text.split()
        assert all(stretch.start <= word.at <= word.until <= stretch.end + 1e-9 for word in stretch.words)


def test_a_mark_does_not_appear_before_its_move_was_played(author, gambit: Names, take: Take) -> None:
    author.change(gambit("Nc6"), marks=(Mark(MarkKind.GUARD, (42, 36)),))
    mark = next(event for event in recorded(author.study, take).events if event.what is Happening.MARK)
    assert mark.at >= 16.0


def test_what_was_done_off_the_running_order_belongs_to_the_beat_before(author, gambit: Names) -> None:
    e4, e5, f4 = gambit("e4"), gambit("e5"), gambit("f4")
    take = _take(1, 9.0, (0.0, e4, e4), (2.0, e5, e5), (4.0, f4, None), (6.0, e5, e5))
    timeline = recorded(author.study, take)
    assert [(stretch.key, stretch.end) for stretch in timeline.stretches] == [(e4, 2.0), (e5, 9.0)]
    assert [event.node for event in timeline.stretches[1].events] == [e5, f4, e5]
    assert timeline.events[-1].what is Happening.BACK


def test_the_closing_shows_the_board_as_it_stands(author, gambit: Names) -> None:
    author.say_part(Part.CLOSING, "That was it.")
    nc6 = gambit("Nc6")
    timeline = recorded(author.study, _take(1, 5.0, (0.0, nc6, nc6), (3.0, nc6, Part.CLOSING)))
    assert [event.what for event in timeline.stretches[-1].events] == [Happening.CARD]


def test_time_is_kept_when_a_beat_has_been_deleted_since(author, gambit: Names, take: Take) -> None:
    author.edit(RemoveBranch(gambit("f4")))
    timeline = recorded(author.study, take)
    assert timeline.seconds == 20.0
    assert [(stretch.key, stretch.end) for stretch in timeline.stretches][-2:] == [
        (gambit("Nf3"), 15.0),
        (gambit("Nc6"), 20.0),
    ]


def test_a_beat_deleted_at_the_start_of_the_take_gives_its_time_to_the_first_that_is_left(author) -> None:
    e4 = author.play("e2e4")
    author.say(e4, "Gone.")
    d4 = author.play("d2d4", after=author.study.root)
    author.say(d4, "Still here.")
    take = _take(1, 6.0, (0.0, e4, e4), (2.0, d4, d4))
    author.edit(RemoveBranch(e4))
    timeline = recorded(author.study, take)
    assert [(stretch.key, stretch.start, stretch.end) for stretch in timeline.stretches] == [(d4, 0.0, 6.0)]


def test_the_seconds_of_a_beat_are_those_of_the_latest_kept_take_that_tells_it(
    author, gambit: Names, take: Take
) -> None:
    e4, e5 = gambit("e4"), gambit("e5")
    again = _take(2, 7.0, (0.0, e4, e4), (4.5, e5, e5))
    discarded = replace(_take(3, 99.0, (0.0, e4, e4)), kept=False)
    for one in (again, take, discarded):
        author.edit(PutTake(one))
    assert [one.id for one in kept_takes(author.study)] == [1, 2]
    seconds = recorded_seconds(author.study)
    assert seconds[e4] == 4.5
    assert seconds[e5] == 2.5
    assert seconds[gambit("Nc6")] == 5.0


def test_a_beat_that_was_told_twice_in_a_take_counts_as_it_was_told_last(author, gambit: Names) -> None:
    e4, e5 = gambit("e4"), gambit("e5")
    author.edit(PutTake(_take(1, 12.0, (0.0, e4, e4), (4.0, e5, e5), (6.0, e4, e4), (9.0, e5, e5))))
    assert recorded_seconds(author.study) == {e4: 3.0, e5: 3.0}


def test_a_telling_that_was_broken_off_does_not_count(author, gambit: Names) -> None:
    """The presenter looked back for half a second."""
    e4, e5 = gambit("e4"), gambit("e5")
    author.edit(PutTake(_take(1, 10.0, (0.0, e4, e4), (4.0, e5, e5), (6.0, e4, e4), (6.5, e5, e5))))
    assert recorded_seconds(author.study) == {e4: 4.0, e5: 3.5}


def test_deliveries_put_the_talk_together_from_takes_that_tell_every_line(author, gambit: Names, take: Take) -> None:
    assert talk(author.study).source is Source.PLANNED
    author.edit(PutTake(take))
    assert talk(author.study).source is Source.RECORDED
    assert talk(author.study).seconds == 20.0
    author.edit(PutTake(_take(2, 4.0, (0.0, gambit("e4"), gambit("e4")))))
    timeline = talk(author.study)
    assert timeline.seconds == 21.0, "one beat was told anew, a second longer"
    assert [stretch.end for stretch in timeline.stretches] == [4.0, 6.0, 9.0, 14.0, 16.0, 21.0]
    assert [(event.at, event.node) for event in timeline.events][1:3] == [(4.0, gambit("e5")), (6.0, gambit("Nf3"))]
    author.edit(PutTake(replace(take, kept=False)))
    assert talk(author.study).source is Source.PLANNED


def test_a_take_in_which_nothing_happened_is_an_empty_talk(author, gambit: Names) -> None:
    assert recorded(author.study, _take(1, 3.0)).stretches == ()
