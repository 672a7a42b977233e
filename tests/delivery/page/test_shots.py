"""The steps of a page, from the timeline."""

from __future__ import annotations

from itertools import pairwise

from studyboard.delivery.page.shots import ShotKind, shots
from studyboard.model.edits import ChangeNode, apply
from studyboard.model.marks import MarkKind
from studyboard.model.script import SILENT, Cue, SpokenLine
from studyboard.timing.plan import plan
from studyboard.timing.timeline import BoardEvent, Happening, Source, Stretch, Timeline


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


def test_returns_at_one_moment_are_one():
    events = (
        BoardEvent(0.0, Happening.BACK, 2),
        BoardEvent(0.0, Happening.BACK, 1),
        BoardEvent(0.8, Happening.MOVE, 5),
    )
    stretch = Stretch(5, 0.0, 1.0, 2.0, 0.0, 5, 0, SILENT, (), events)
    assert [(shot.kind, shot.node) for shot in shots(Timeline(Source.PLANNED, 3, (stretch,)))] == [
        (ShotKind.BACK, 1),
        (ShotKind.MOVE, 5),
    ]
