"""The talk as it is planned."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from studyboard.model.edits import ChangePace, ChangeSlot, apply
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.script import Cue, Part
from studyboard.timing.pace import estimate
from studyboard.timing.plan import pace_of, plan
from studyboard.timing.timeline import Happening, Source, Stretch, Timeline

Names = Callable[[str], int]


def _beat(timeline: Timeline, key: object) -> Stretch:
    return next(stretch for stretch in timeline.stretches if stretch.key == key)


def _whole(timeline: Timeline) -> None:
    """What is true of every plan: beats without gaps, words in their beats, events in the order of time."""
    assert timeline.source is Source.PLANNED
    assert not timeline.stretches or timeline.stretches[0].start == 0.0
    for before, after in pairwise(timeline.stretches):
        assert before.end == after.start
    for stretch in timeline.stretches:
        assert stretch.start <= stretch.speech_end <= stretch.end + 1e-9
        for word in stretch.words:
            assert stretch.start - 1e-9 <= word.at <= word.until <= stretch.speech_end + 1e-9
        for event in stretch.events:
            assert stretch.start - 1e-9 <= event.at <= stretch.end + 1e-9
    assert [event.at for event in timeline.events] == sorted(event.at for event in timeline.events)


def test_beats_follow_each_other_without_a_gap_and_words_stay_inside_them(author, gambit: Names) -> None:
    timeline = plan(author.study)
    _whole(timeline)
    assert [stretch.key for stretch in timeline.stretches] == [
        gambit(name) for name in ("e4", "e5", "Nf3", "f4", "exf4", "Nc6")
    ]


def test_the_board_steps_back_when_the_voice_leaves_the_side_line(author, gambit: Names) -> None:
    timeline = plan(author.study)
    after = _beat(timeline, gambit("Nc6"))
    back, move = after.events
    assert (back.what, back.node) == (Happening.BACK, gambit("Nf3"))
    assert back.at == after.start
    assert (move.what, move.node) == (Happening.MOVE, gambit("Nc6"))
    assert move.at == pytest.approx(after.start + author.study.pace.back_time)
    assert after.words[0].at == pytest.approx(move.at)
    assert timeline.node_at(after.start - 0.01) == gambit("exf4")
    assert timeline.node_at(after.start + 0.01) == gambit("Nf3")


def test_a_side_line_is_told_at_the_pace_that_its_presenter_has_there(author, gambit: Names) -> None:
    study = author.study
    usual = plan(study)
    apply(study, ChangePace(replace(study.pace, side_line_rate=0.8)))
    slower = plan(study)
    longer = {
        stretch.key
        for stretch, before in zip(slower.stretches, usual.stretches, strict=True)
        if stretch.spoken and stretch.speech_end - stretch.start > before.speech_end - before.start + 0.01
    }
    aside = {stretch.key for stretch in usual.stretches if stretch.spoken and stretch.depth}
    assert longer == aside != set()
    assert all(pace_of(study, key).syllables_per_second < study.pace.syllables_per_second for key in aside)


def test_a_side_line_that_is_hidden_takes_no_time(author, gambit: Names) -> None:
    before = plan(author.study).seconds
    told = sum(_beat(plan(author.study), gambit(name)).seconds for name in ("f4", "exf4"))
    author.change(gambit("f4"), telling=Telling(Place.HIDDEN))
    timeline = plan(author.study)
    _whole(timeline)
    backs = 2 * author.study.pace.back_time
    assert timeline.seconds == pytest.approx(before - told - backs + author.study.pace.back_time)


def test_a_cue_plays_its_move_at_its_word(author) -> None:
    e4 = author.play("e2e4")
    c5 = author.play("c7c5", after=e4)
    author.say(c5, "After the king's pawn she replied at once.", Cue(3, e4), Cue(5, c5))
    timeline = plan(author.study)
    _whole(timeline)
    (beat,) = timeline.stretches
    words = {word.text: word for word in beat.words}
    assert [(event.node, event.at) for event in beat.events] == [
        (e4, pytest.approx(words["pawn"].at)),
        (c5, pytest.approx(words["replied"].at)),
    ]


def test_a_cue_after_the_last_word_plays_when_the_line_has_been_said(author) -> None:
    e4 = author.play("e2e4")
    author.say(e4, "And now watch.", Cue(3, e4))
    (beat,) = plan(author.study).stretches
    assert beat.events[0].at == pytest.approx(beat.speech_end)


def test_moves_never_run_backwards_even_if_their_cues_do(author) -> None:
    e4 = author.play("e2e4")
    c5 = author.play("c7c5", after=e4)
    author.say(c5, "One two three four five.", Cue(4, e4), Cue(1, c5))
    (beat,) = plan(author.study).stretches
    assert [event.node for event in beat.events] == [e4, c5]
    assert beat.events[0].at <= beat.events[1].at


def test_marks_appear_with_their_move_or_at_their_cue(author) -> None:
    e4 = author.play("e2e4")
    author.change(e4, marks=(Mark(MarkKind.TARGET, (36,)), Mark(MarkKind.KEY_SQUARE, (27,))))
    author.say(e4, "This square is weak, and that one too.", Cue(6, mark=0))
    (beat,) = plan(author.study).stretches
    marks = {event.mark: event.at for event in beat.events if event.what is Happening.MARK}
    assert marks[1] == pytest.approx(beat.events[0].at)
    assert marks[0] == pytest.approx(beat.words[6].at)


def test_silent_moves_are_played_at_the_presenters_rhythm(author) -> None:
    nodes = [author.play("e2e4")]
    for uci in ("e7e5", "g1f3"):
        nodes.append(author.play(uci, after=nodes[-1]))
    timeline = plan(author.study)
    _whole(timeline)
    assert timeline.seconds == pytest.approx(3 * author.study.pace.move_time)
    assert [event.node for event in timeline.events] == nodes


def test_a_think_pause_comes_after_the_words_and_before_the_next_beat(author, gambit: Names) -> None:
    author.change(gambit("Nf3"), think=5.0)
    timeline = plan(author.study)
    _whole(timeline)
    beat = _beat(timeline, gambit("Nf3"))
    think = next(event for event in beat.events if event.what is Happening.THINK)
    assert think.at == pytest.approx(beat.end - 5.0)
    assert think.at >= beat.speech_end
    assert think.node == gambit("Nf3")
    assert beat.think == pytest.approx(5.0)


def test_a_think_pause_at_the_end_of_a_side_line_is_over_before_the_board_steps_back(author) -> None:
    e4 = author.play("e2e4")
    d4 = author.play("d2d4", after=author.study.root)
    author.say(e4, "The usual one.")
    author.say(d4, "The other one. What would you play?")
    author.change(d4, think=4.0)
    timeline = plan(author.study)
    _whole(timeline)
    last = timeline.stretches[-1]
    think, back = last.events[-2:]
    assert (think.what, think.node) == (Happening.THINK, d4)
    assert (back.what, back.node) == (Happening.BACK, e4)
    assert back.at == pytest.approx(think.at + 4.0)
    assert last.end == pytest.approx(back.at + author.study.pace.back_time)


def test_a_line_is_squeezed_into_the_seconds_that_were_set(author, gambit: Names) -> None:
    natural = _beat(plan(author.study), gambit("Nf3"))
    author.change(gambit("Nf3"), intended=natural.seconds / 2)
    timeline = plan(author.study)
    _whole(timeline)
    beat = _beat(timeline, gambit("Nf3"))
    assert beat.seconds == pytest.approx(natural.seconds / 2)
    assert beat.speech_end - beat.start == pytest.approx((natural.speech_end - natural.start) / 2)


def test_seconds_beyond_the_words_are_silence_after_them(author, gambit: Names) -> None:
    natural = _beat(plan(author.study), gambit("Nf3"))
    author.change(gambit("Nf3"), intended=natural.seconds + 20)
    timeline = plan(author.study)
    _whole(timeline)
    beat = _beat(timeline, gambit("Nf3"))
    assert beat.seconds == pytest.approx(natural.seconds + 20)
    assert beat.speech_end - beat.start == pytest.approx(natural.speech_end - natural.start)


def test_a_think_pause_is_kept_whole_when_a_line_is_squeezed(author, gambit: Names) -> None:
    author.change(gambit("Nf3"), think=5.0, intended=6.0)
    beat = _beat(plan(author.study), gambit("Nf3"))
    assert beat.think == pytest.approx(5.0)
    assert beat.seconds == pytest.approx(6.0)


@pytest.mark.parametrize("intended", [0.0, 0.1, 3.0])
def test_a_beat_shorter_than_its_think_pause_leaves_nothing_outside_of_it(author, intended: float) -> None:
    e4 = author.play("e2e4")
    d4 = author.play("d2d4", after=author.study.root)
    author.say(e4, "The usual one.")
    author.say(d4, "The other one.")
    author.change(d4, think=8.0, intended=intended)
    timeline = plan(author.study)
    _whole(timeline)
    assert timeline.stretches[-1].seconds == pytest.approx(intended)
    assert timeline.stretches[-1].think <= intended + 1e-9


def test_greeting_closing_and_thanks_stand_around_the_moves(author, gambit: Names) -> None:
    author.say_part(Part.GREETING, "Good evening, and welcome to the club.")
    author.say_part(Part.CLOSING, "That was the game.")
    author.say_part(Part.THANKS, "Thank you for watching.", intended=9.0)
    timeline = plan(author.study)
    _whole(timeline)
    keys = [stretch.key for stretch in timeline.stretches]
    assert keys[0] is Part.GREETING
    assert keys[-2:] == [Part.CLOSING, Part.THANKS]
    assert timeline.stretches[-1].seconds == pytest.approx(9.0)
    assert timeline.stretches[0].events[0].what is Happening.CARD
    assert timeline.node_at(0.0) == author.study.root
    assert timeline.node_at(timeline.seconds) == gambit("Nc6")


def test_the_length_of_the_talk_is_the_sum_of_lines_returns_and_pauses(author, gambit: Names) -> None:
    study = author.study
    texts = sum(estimate(study.pace, node.spoken.text) for node in study.nodes.values())
    # Away from the main line to tell 2.f4, and home again.
    assert plan(study).seconds == pytest.approx(texts + 2 * study.pace.back_time)


def test_a_slower_pace_makes_a_longer_talk_and_the_slot_changes_nothing(author, gambit: Names) -> None:
    seconds = plan(author.study).seconds
    author.edit(ChangeSlot(1.0))
    assert plan(author.study).seconds == seconds
    author.study.pace = replace(author.study.pace, syllables_per_second=3.0)
    assert plan(author.study).seconds > seconds


def test_an_empty_study_has_an_empty_plan(author) -> None:
    timeline = plan(author.study)
    assert timeline.stretches == ()
    assert timeline.seconds == 0.0


def test_a_line_of_three_thousand_moves_is_planned_too(author) -> None:
    shuffle = ("g1f3", "g8f6", "f3g1", "f6g8")
    node = author.play(*(shuffle[number % 4] for number in range(3000)))
    author.say(node, "At last.")
    timeline = plan(author.study)
    _whole(timeline)
    assert timeline.stretches[-1].key == node
