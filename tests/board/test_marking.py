from dataclasses import replace

import chess
import pytest

from studyboard.board.marking import (
    change_kind,
    clear_marks,
    copy_marks,
    drawn_mark,
    kinds_for,
    move_stop,
    number_mark,
    number_marks,
    remove_mark,
    stop_at,
    toggle_mark,
)
from studyboard.model.edits import Edit, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Node
from studyboard.model.script import Cue, SpokenLine
from studyboard.model.study import Study

THREAT = Mark(MarkKind.THREAT, (chess.D8, chess.H4))
TARGET = Mark(MarkKind.TARGET, (chess.E5,))


def node(*marks: Mark, spoken: SpokenLine | None = None) -> Node:
    return Node(0, None, None, marks=marks, spoken=spoken or SpokenLine())


def after(start: Node, edit: Edit) -> Node:
    study = Study()
    study.nodes[0] = start
    inverse, _ = apply(study, edit)
    result = study.nodes[0]
    apply(study, inverse)
    assert study.nodes[0] == start
    return result


def test_a_line_needs_two_squares_and_a_square_mark_is_where_the_drawing_ends():
    assert drawn_mark(MarkKind.THREAT, chess.D8, chess.H4) == THREAT
    assert drawn_mark(MarkKind.GUARD, chess.D8, chess.D8) is None
    assert drawn_mark(MarkKind.ROUTE, chess.D8, None) is None
    assert drawn_mark(MarkKind.TARGET, chess.E5, None) == TARGET
    assert drawn_mark(MarkKind.TARGET, chess.A1, chess.E5) == TARGET


def test_the_same_mark_again_wipes_it_away():
    drawn = after(node(TARGET), toggle_mark(node(TARGET), THREAT))
    assert drawn.marks == (TARGET, THREAT)
    assert after(drawn, toggle_mark(drawn, TARGET)).marks == (THREAT,)


def test_a_route_goes_on_from_its_end_and_gives_up_its_last_leg():
    short = node(Mark(MarkKind.ROUTE, (chess.B1, chess.C3)))
    leg = Mark(MarkKind.ROUTE, (chess.C3, chess.D5))
    longer = after(short, toggle_mark(short, leg))
    assert longer.marks == (Mark(MarkKind.ROUTE, (chess.B1, chess.C3, chess.D5)),)
    assert after(longer, toggle_mark(longer, leg)) == short
    assert after(short, toggle_mark(short, short.marks[0])).marks == ()


def test_a_route_from_elsewhere_is_another_route():
    first = node(Mark(MarkKind.ROUTE, (chess.B1, chess.C3)))
    other = Mark(MarkKind.ROUTE, (chess.G1, chess.F3))
    assert after(first, toggle_mark(first, other)).marks == (*first.marks, other)


def test_cues_follow_their_marks_when_one_goes():
    line = SpokenLine("first this then that", (Cue(0, mark=0), Cue(1, node=7), Cue(3, mark=1)))
    left = after(node(THREAT, TARGET, spoken=line), remove_mark(node(THREAT, TARGET, spoken=line), 0))
    assert left.marks == (TARGET,)
    assert left.spoken.cues == (Cue(1, node=7), Cue(3, mark=0))


def test_wiping_all_marks_leaves_the_cues_of_moves():
    line = SpokenLine("first this then that", (Cue(0, mark=0), Cue(1, node=7)))
    start = node(THREAT, spoken=line)
    left = after(start, clear_marks(start))
    assert left.marks == ()
    assert left.spoken.cues == (Cue(1, node=7),)


def test_a_new_mark_goes_on_from_the_highest_number():
    first = after(node(TARGET), toggle_mark(node(TARGET), THREAT, numbered=True))
    assert [mark.number for mark in first.marks] == [None, 1]
    second = after(first, toggle_mark(first, Mark(MarkKind.KEY_SQUARE, (chess.D4,)), numbered=True))
    assert [mark.number for mark in second.marks] == [None, 1, 2]


def test_a_numbered_mark_drawn_again_is_wiped_and_the_numbers_close_up():
    start = node(replace(THREAT, number=1), replace(TARGET, number=2))
    assert after(start, toggle_mark(start, THREAT)).marks == (replace(TARGET, number=1),)


def test_marks_are_numbered_in_the_order_in_which_they_were_drawn_and_once_more_they_are_not():
    start = node(TARGET, THREAT)
    numbered = after(start, number_marks(start))
    assert [mark.number for mark in numbered.marks] == [1, 2]
    assert after(numbered, number_marks(numbered)) == start
    with pytest.raises(EditRefusedError):
        number_marks(node())


def test_one_number_goes_and_the_others_close_up():
    start = node(replace(THREAT, number=1), replace(TARGET, number=2))
    without = after(start, number_mark(start, 0))
    assert without.marks == (THREAT, replace(TARGET, number=1))
    assert after(without, number_mark(without, 0)).marks == (replace(THREAT, number=2), replace(TARGET, number=1))


def test_the_mark_drawn_last_is_taken_hold_of_by_its_end_first():
    marks = (Mark(MarkKind.TARGET, (chess.E5,)), Mark(MarkKind.ROUTE, (chess.E5, chess.D3, chess.E5)))
    assert stop_at(marks, chess.E5) == (1, 2)
    assert stop_at(marks[:1], chess.E5) == (0, 0)
    assert stop_at(marks, chess.A1) is None


def test_one_end_of_a_mark_is_put_elsewhere_and_its_number_and_cue_stay():
    line = SpokenLine("first this", (Cue(0, mark=0),))
    start = node(replace(THREAT, number=1), spoken=line)
    moved = after(start, move_stop(start, 0, 1, chess.G5))
    assert moved.marks == (Mark(MarkKind.THREAT, (chess.D8, chess.G5), 1),)
    assert moved.spoken == line
    with pytest.raises(EditRefusedError, match="to itself"):
        move_stop(start, 0, 1, chess.D8)
    twin = node(THREAT, Mark(MarkKind.THREAT, (chess.D8, chess.G5)))
    with pytest.raises(EditRefusedError, match="same mark"):
        move_stop(twin, 0, 1, chess.G5)


def test_a_mark_gets_another_meaning_where_it_has_squares_enough():
    route = Mark(MarkKind.ROUTE, (chess.B1, chess.C3, chess.D5), 1)
    start = node(route)
    assert after(start, change_kind(start, 0, MarkKind.GUARD)).marks == (Mark(MarkKind.GUARD, (chess.B1, chess.D5), 1),)
    assert after(start, change_kind(start, 0, MarkKind.TARGET)).marks == (Mark(MarkKind.TARGET, (chess.D5,), 1),)
    assert MarkKind.THREAT not in kinds_for(TARGET)
    with pytest.raises(EditRefusedError, match="draw it anew"):
        change_kind(node(TARGET), 0, MarkKind.THREAT)


def test_marks_are_copied_beside_those_that_are_there_and_their_numbers_go_on():
    study = Study()
    study.nodes = {
        0: Node(0, None, None, (1,), marks=(replace(THREAT, number=1), TARGET)),
        1: Node(1, 0, chess.Move.from_uci("e2e4"), (2,), marks=(TARGET, Mark(MarkKind.KEY_SQUARE, (chess.D4,), 1))),
        2: Node(2, 1, chess.Move.from_uci("e7e5")),
    }
    was = dict(study.nodes)
    inverse, changed = apply(study, copy_marks(study, 0, (1, 2)))
    assert study.nodes[1].marks == (*was[1].marks, replace(THREAT, number=2))
    assert study.nodes[2].marks == was[0].marks
    assert changed.nodes == {1, 2}
    with pytest.raises(EditRefusedError, match="already"):
        copy_marks(study, 0, (1, 2))
    apply(study, inverse)
    assert study.nodes == was


def test_nothing_is_copied_from_nothing_or_to_nowhere():
    study = Study()
    with pytest.raises(EditRefusedError, match="no marks"):
        copy_marks(study, 0, ())
    study.nodes[0] = replace(study.nodes[0], marks=(TARGET,))
    with pytest.raises(EditRefusedError, match="no move here"):
        copy_marks(study, 0, ())
