"""What rehearsals teach: which beats run over, where the presenter begins anew, how the pace drifts."""

from __future__ import annotations

import pytest

from studyboard.model.rehearsals import AddRehearsal, BeatTold, DropRehearsal, Rehearsal
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.timing.pace_fit import fit_pace
from studyboard.timing.plan import plan
from studyboard.timing.rehearsal_log import Told, beat_histories, drift, rehearsal_log, rehearsed_lines
from studyboard.timing.run_through import RunThrough

LINE = "She takes the centre with both pawns, and nobody in the room is surprised by that."


@pytest.fixture
def talk(author):
    """Nine beats of about the same length."""
    node = None
    for move in ("e2e4", "e7e5", "g1f3", "b8c6", "f1b5", "a7a6", "b5a4", "g8f6", "e1g1"):
        node = author.play(move, after=node)
        author.say(node, LINE)
    return author


def told_like(study, day, share):
    """A rehearsal in which each beat takes its planned seconds times what `share` says of its number."""
    rows = [
        BeatTold(one.key, one.seconds * share(number), one.seconds) for number, one in enumerate(plan(study).stretches)
    ]
    return Rehearsal(f"2030-05-{day:02}T20:00:00+02:00", tuple(rows))


def test_a_rehearsal_by_the_key_is_logged_with_its_seconds_and_its_restarts(talk, watch):
    run = RunThrough(talk.study, watch)
    for seconds in (4.0, 5.0, 6.0):
        run.advance()
        watch.wait(seconds)
    run.retreat()
    watch.wait(3.0)
    run.advance()
    watch.wait(2.0)
    run.pause()
    logged = run.rehearsal("2030-05-17T20:00:00+02:00")
    assert [(one.seconds, one.restarts) for one in logged.told] == [(4.0, 0), (8.0, 1), (8.0, 0)]
    assert logged.seconds == 20.0
    assert [one.planned for one in logged.told] == [pytest.approx(s, abs=0.01) for s in run.planned[:3]]


def test_whoever_only_tries_the_key_has_not_rehearsed(talk, watch):
    run = RunThrough(talk.study, watch)
    assert run.rehearsal("2030-05-17") is None
    run.advance()
    watch.wait(60)
    assert run.rehearsal("2030-05-17") is None, "one beat is no rehearsal"
    run = RunThrough(talk.study, watch)
    run.advance()
    run.advance()
    watch.wait(1)
    assert run.rehearsal("2030-05-17") is None, "a second is none either"


def test_a_beat_that_runs_over_again_and_again_is_told_and_one_bad_day_is_not(talk):
    for day in (1, 2, 3):
        talk.edit(AddRehearsal(told_like(talk.study, day, lambda n: 1.5 if n == 2 else 1.02)))
    rows = beat_histories(talk.study, rehearsal_log(talk.study))
    assert [row.off for row in rows] == [number == 2 for number in range(9)]
    assert rows[2].over == pytest.approx(0.5 * rows[2].planned)
    talk.edit(AddRehearsal(told_like(talk.study, 4, lambda n: 3.0 if n == 5 else 1.0)))
    rows = beat_histories(talk.study, rehearsal_log(talk.study))
    assert not rows[5].off
    assert len(rows[5].seconds) == 4


def test_a_beat_that_gets_longer_each_time_has_a_trend(talk):
    for day in (1, 2, 3, 4):
        talk.edit(AddRehearsal(told_like(talk.study, day, lambda n, day=day: 1 + 0.1 * day if n == 0 else 1.0)))
    rows = beat_histories(talk.study, rehearsal_log(talk.study))
    assert rows[0].trend == pytest.approx(0.1 * rows[0].planned)
    assert rows[1].trend == pytest.approx(0.0, abs=1e-9)


def test_a_talk_that_gets_faster_drifts_and_a_steady_one_does_not(talk):
    steady = drift(told_like(talk.study, 1, lambda n: 1.1))
    assert steady.share == pytest.approx(0.0, abs=1e-9)
    assert not steady.matters
    hurried = drift(told_like(talk.study, 1, lambda n: 1.2 - 0.05 * n))
    assert hurried.parts == pytest.approx((1.15, 1.0, 0.85), abs=0.01)
    assert hurried.share == pytest.approx(0.85 / 1.15 - 1, abs=0.01)
    assert hurried.matters
    assert drift(Told("2030", ())) is None


def test_takes_stand_in_the_log_too_with_what_was_told_twice(talk):
    events = [(0, 1), (5, 2), (9, 3), (15, 2), (19, 3)]
    take = Take(
        1,
        "Take 1",
        48_000,
        24 * 48_000,
        "2030-05-09T20:00:00+02:00",
        tuple(TakeEvent(SoundTime(at * 48_000, 48_000), node, node) for at, node in events),
    )
    talk.study.takes[1] = take
    talk.edit(AddRehearsal(told_like(talk.study, 17, lambda n: 1.0)))
    log = rehearsal_log(talk.study)
    assert [one.take for one in log] == [1, None]
    assert {one.beat: (one.seconds, one.restarts) for one in log[0].told} == {1: (5, 0), 2: (8, 1), 3: (11, 1)}


def test_beats_that_were_only_spread_over_a_sound_do_not_stand_in_the_log(talk):
    events = tuple(TakeEvent(SoundTime(at * 48_000, 48_000), node, node) for at, node in ((0, 1), (5, 2)))
    talk.study.takes[1] = Take(1, "", 48_000, 480_000, "2030-05-09T20:00:00+02:00", events, origin="telephone.wav")
    assert rehearsal_log(talk.study) == ()


def test_a_pace_is_learnt_from_rehearsals_without_what_was_begun_anew(talk):
    for day in (1, 2):
        talk.edit(AddRehearsal(told_like(talk.study, day, lambda n: 1.25)))
    before = talk.study.pace
    slower = fit_pace(rehearsed_lines(talk.study, rehearsal_log(talk.study))).pace
    assert slower.syllables_per_second < before.syllables_per_second
    rows = tuple(BeatTold(one.key, one.seconds, one.seconds, 1) for one in plan(talk.study).stretches)
    stumbled = (Told("2030-05-09", rows),)
    assert rehearsed_lines(talk.study, stumbled) == ()


def test_a_rehearsal_can_be_taken_out_of_the_log(talk):
    first, second = (told_like(talk.study, day, lambda n: 1.0) for day in (2, 1))
    talk.edit(AddRehearsal(first))
    talk.edit(AddRehearsal(second))
    assert talk.study.rehearsals == (second, first), "in the order of time"
    talk.edit(DropRehearsal(second.at))
    assert talk.study.rehearsals == (first,)
