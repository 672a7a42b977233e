"""A plan that is made from the one before is the plan that would have been made from nothing."""

from __future__ import annotations

import chess
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.beats import beats
from studyboard.model.edits import ChangeNode, ChangePace, Edit, add_move, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.order import running_order
from studyboard.model.script import BeatKey, Cue, Pace, SpokenLine
from studyboard.model.study import Study
from studyboard.timing.plan import plan
from studyboard.timing.planner import Planner
from studyboard.timing.timeline import Timeline
from tests.model.some_edit import some_edit


def _agree(planner: Planner, study: Study) -> None:
    made = planner.plan(study)
    assert made.beats == beats(study, running_order(study))
    assert made.timeline == plan(study)
    assert [stretch.key for stretch in made.timeline.stretches] == [beat.key for beat in made.beats]


def _some_telling(draw: st.DrawFn, study: Study) -> Edit:
    """Cues, marks and the place of a side-line, which the edits of `some_edit` seldom or never touch."""
    nodes = st.sampled_from(sorted(study.nodes))
    kind = draw(st.integers(0, 2))
    if kind == 0:
        cues = draw(st.lists(st.builds(Cue, st.integers(0, 4), nodes), max_size=3))
        return ChangeNode(draw(nodes), "spoken", SpokenLine("He takes, and then she takes.", tuple(cues)))
    if kind == 1:
        return ChangeNode(draw(nodes), "telling", Telling(Place.MOVED, draw(nodes)))
    return ChangeNode(draw(nodes), "marks", (Mark(MarkKind.TARGET, (draw(st.integers(0, 63)),)),))


@given(st.data())
def test_whatever_is_edited_the_plan_is_the_one_made_from_nothing(data: st.DataObject) -> None:
    study, planner = Study(), Planner()
    for _ in range(data.draw(st.integers(1, 12))):
        for _ in range(data.draw(st.integers(1, 3))):
            make = data.draw(st.sampled_from([some_edit, some_edit, _some_telling]))
            try:
                apply(study, make(data.draw, study))
            except EditRefusedError:
                continue
        # An edit may come before the plan is made to its end.
        left_off = data.draw(st.integers(0, 4))
        for _ in zip(range(left_off), planner.steps(study), strict=False):
            pass
        if left_off < 3:
            _agree(planner, study)
    _agree(planner, study)


def _long_talk(moves: int) -> Study:
    """Two knights that go out and come home again."""
    study = Study()
    node, way = study.root, ("g1f3", "g8f6", "f3g1", "f6g8")
    for number in range(moves):
        edit = add_move(study, node, chess.Move.from_uci(way[number % 4]))
        apply(study, edit)
        node = edit.node
        apply(study, ChangeNode(node, "spoken", SpokenLine(f"Move {number} is told, slowly.")))
    return study


def test_a_long_talk_is_planned_in_pieces_and_comes_out_the_same() -> None:
    study, planner = _long_talk(300), Planner()
    steps = planner.steps(study)
    assert len(list(steps)) > 5
    _agree(planner, study)


def _timed_anew(before: Timeline, after: Timeline) -> list[BeatKey]:
    known = {stretch.key: stretch for stretch in before.stretches}
    return [new.key for new in after.stretches if new.key not in known or known[new.key].said is not new.said]


def test_beats_that_did_not_change_are_not_timed_again() -> None:
    study, planner = _long_talk(60), Planner()
    first = planner.plan(study).timeline
    apply(study, ChangeNode(30, "spoken", SpokenLine("This is a good deal longer than what was said before.")))
    second = planner.plan(study).timeline
    assert _timed_anew(first, second) == [30]
    assert second.stretches[40].start != first.stretches[40].start
    side_line = add_move(study, 20, chess.Move.from_uci("e2e4"))
    apply(study, side_line)
    apply(study, ChangeNode(side_line.node, "spoken", SpokenLine("Another way.")))
    third = planner.plan(study).timeline
    # The beat after the side-line begins with the return out of it.
    assert _timed_anew(second, third) == [side_line.node, 22]
    apply(study, ChangePace(Pace(syllables_per_second=3.0)))
    assert len(_timed_anew(third, planner.plan(study).timeline)) == 61
