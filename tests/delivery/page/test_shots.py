"""The steps of a page, from the timeline."""

from __future__ import annotations

from itertools import pairwise

from studyboard.delivery.page.shots import ShotKind, shots
from studyboard.model.edits import ChangeNode, apply
from studyboard.model.marks import MarkKind
from studyboard.model.script import SILENT, Cue, SpokenLine
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.timing.plan import plan
from studyboard.timing.recorded import recorded
from studyboard.timing.timeline import BoardEvent, Happening, Source, Stretch, Timeline

RATE = 48_000


def told(author) -> list[str]:
    names = {0: "start"} | {node: author.study.nodes[node].move.uci() for node in author.study.nodes if node}
    return [f"{shot.kind} {names[shot.node]}" for shot in shots(plan(author.study))]


def test_every_board_of_the_talk_is_a_step_in_its_order(author):
    assert told(author)[:9] == [
        "card start",
        "move e2e4",
        "move e7e5",
        "move g1f3",
        "move b8c6",
        "move f1c4",
        "move c6d4",
        "think c6d4",
        "move f3e5",
    ]


def test_the_side_line_is_gone_through_and_left(author):
    steps = told(author)
    at = steps.index("move e1g1")
    assert steps[at - 1] == "back c6d4"
    assert "back f3e5" in steps[at:]


def test_steps_never_go_back_in_time(author, example):
    for study in (author.study, example):
        assert all(one.at <= other.at for one, other in pairwise(shots(plan(study))))


def test_after_each_think_pause_another_part_begins(author):
    steps = shots(plan(author.study))
    asked = next(number for number, shot in enumerate(steps) if shot.kind is ShotKind.THINK)
    assert {shot.part for shot in steps[: asked + 1]} == {0}
    assert {shot.part for shot in steps[asked + 1 :]} == {1}


def test_marks_appear_at_their_word_and_stay_while_the_board_does(author, mark):
    node = author.play(0, "d4")[0]
    threat = mark(MarkKind.THREAT, "d4 d5")
    author.put(node, marks=(threat, mark(MarkKind.TARGET, "d5")), think=4.0)
    line = SpokenLine("One two three four.", (Cue(2, mark=1),))
    apply(author.study, ChangeNode(node, "spoken", line))
    steps = [shot for shot in shots(plan(author.study)) if shot.node == node and shot.marks]
    assert [shot.kind for shot in steps] == [ShotKind.MOVE, ShotKind.THINK]
    (first, second) = steps[0].marks
    assert (first[1], second[1]) == (0, 1)
    assert first[0] < second[0]
    assert steps[1].marks == steps[0].marks


def test_a_beat_that_shows_nothing_is_a_step_all_the_same():
    stretch = Stretch(3, 0.0, 1.0, 2.0, 0.0, 3, 0, SILENT, (), ())
    (shot,) = shots(Timeline(Source.RECORDED, 3, (stretch,)))
    assert (shot.kind, shot.node, shot.at) == (ShotKind.CARD, 3, 0.0)


def test_a_talk_that_begins_with_a_move_opens_on_the_start_position():
    stretch = Stretch(1, 0.0, 1.0, 2.0, 0.0, 1, 0, SILENT, (), (BoardEvent(0.0, Happening.MOVE, 1),))
    steps = shots(Timeline(Source.PLANNED, 0, (stretch,)))
    assert [(shot.kind, shot.node, shot.at) for shot in steps] == [(ShotKind.CARD, 0, 0.0), (ShotKind.MOVE, 1, 0.0)]


def test_returns_at_one_moment_are_one():
    events = (
        BoardEvent(0.0, Happening.BACK, 2),
        BoardEvent(0.0, Happening.BACK, 1),
        BoardEvent(0.8, Happening.MOVE, 5),
    )
    stretch = Stretch(5, 0.0, 1.0, 2.0, 0.0, 5, 0, SILENT, (), events)
    assert [(shot.kind, shot.node) for shot in shots(Timeline(Source.PLANNED, 1, (stretch,)))] == [
        (ShotKind.BACK, 1),
        (ShotKind.MOVE, 5),
    ]


def test_a_take_is_gone_through_as_it_was_spoken(example):
    """The same boards as planned, at the moments that were stamped: half as fast again, and everything once."""
    planned = [shot for shot in shots(plan(example)) if shot.kind is not ShotKind.THINK]
    keys = [stretch.key for stretch in plan(example).stretches]
    stamped = tuple(
        TakeEvent(SoundTime(round(shot.at * 1.5 * RATE), RATE), shot.node, keys[shot.stretch]) for shot in planned
    )
    length = round(plan(example).seconds * 1.5 * RATE)
    take = Take(1, "Take 1", RATE, length, "2025-03-04T20:00:00+00:00", stamped)
    steps = [shot for shot in shots(recorded(example, take)) if shot.kind is not ShotKind.THINK]
    assert [(shot.node, shot.stretch) for shot in steps] == [(shot.node, shot.stretch) for shot in planned]
    assert all(abs(one.at - 1.5 * other.at) < 0.001 for one, other in zip(steps, planned, strict=True))
    assert {shot.part for shot in steps} == {shot.part for shot in planned}
