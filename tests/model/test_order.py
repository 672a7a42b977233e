"""The order in which a study is told, as somebody in front of the board sees it."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import chess
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.beats import beats
from studyboard.model.edits import ChangeLine, ChangeNode, add_move, apply
from studyboard.model.node import Place, Telling
from studyboard.model.order import VisitKind, running_order
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.study import Study


def set_telling(study, node, place, anchor=None):
    apply(study, ChangeNode(node, "telling", Telling(place, anchor)))


def test_the_main_move_comes_first_then_its_side_lines_then_back(study, told):
    assert told(running_order(study)) == (
        "e4 e5 [e4] c5 Nf3 [c5] c3 d5 [Nf3] d6 [e4] e6 [e5] Nf3 [e5] f4 exf4 [Nf3] Nc6 Bb5"
    )


def test_a_side_line_can_be_told_before_the_main_move(study, node_of, told):
    set_telling(study, node_of("f4"), Place.BEFORE)
    assert told(running_order(study)).endswith("[e5] f4 exf4 [e5] Nf3 Nc6 Bb5")


def test_a_hidden_side_line_is_not_told_and_neither_is_what_hangs_on_it(study, node_of, told):
    set_telling(study, node_of("c5"), Place.HIDDEN)
    assert told(running_order(study)) == "e4 e5 [e4] e6 [e5] Nf3 [e5] f4 exf4 [Nf3] Nc6 Bb5"


def test_a_side_line_can_wait_until_a_later_move(study, node_of, told):
    set_telling(study, node_of("f4"), Place.MOVED, node_of("Bb5"))
    assert told(running_order(study)).endswith("[e5] Nf3 Nc6 Bb5 [e5] f4 exf4 [Bb5]")


def test_a_side_line_moved_to_a_hidden_node_is_told_in_its_usual_place(study, node_of, told):
    set_telling(study, node_of("f4"), Place.MOVED, node_of("d5"))
    set_telling(study, node_of("c3"), Place.HIDDEN)
    assert "[e5] Nf3 [e5] f4 exf4 [Nf3]" in told(running_order(study))


def test_a_side_line_moved_into_itself_is_told_in_its_usual_place(study, node_of, told):
    before = told(running_order(study))
    set_telling(study, node_of("f4"), Place.MOVED, node_of("exf4"))
    assert told(running_order(study)) == before


def test_two_side_lines_moved_into_each_other_are_both_told(study, node_of, told):
    set_telling(study, node_of("c5"), Place.MOVED, node_of("exf4"))
    set_telling(study, node_of("f4"), Place.MOVED, node_of("c5"))
    words = told(running_order(study)).split()
    assert words.count("c5") == words.count("f4") == 1


def test_greeting_opens_and_closing_and_thanks_end_the_talk(study, told):
    for part in Part:
        apply(study, ChangeLine(part, FreeLine(SpokenLine(f"The {part}."))))
    words = told(running_order(study)).split()
    assert words[:2] == ["greeting", "e4"]
    assert words[-3:] == ["Bb5", "closing", "thanks"]


def test_the_start_position_is_told_only_where_something_is_said_or_drawn_there(study, told):
    apply(study, ChangeNode(study.root, "spoken", SpokenLine("Look at the start position.")))
    assert told(running_order(study)).startswith("Start e4")


def test_an_empty_study_with_a_greeting_has_one_visit():
    study = Study()
    apply(study, ChangeLine(Part.GREETING, FreeLine(SpokenLine("Hello."))))
    (visit,) = running_order(study)
    assert (visit.node, visit.kind, visit.part) == (study.root, VisitKind.LINE, Part.GREETING)


@st.composite
def told_studies(draw):
    """Studies of up to thirty nodes, with side-lines told anywhere."""
    study = Study()
    boards = {study.root: chess.Board()}
    for choice in draw(st.lists(st.integers(0, 1 << 20), max_size=30)):
        parent = list(study.nodes)[-1 - choice % min(4, len(study.nodes))]
        taken = {study.nodes[child].move for child in study.nodes[parent].children}
        free = [move for move in boards[parent].legal_moves if move not in taken]
        if free:
            edit = add_move(study, parent, free[choice % len(free)])
            apply(study, edit)
            boards[edit.node] = boards[parent].copy(stack=False)
            boards[edit.node].push(edit.move)
    for node in list(study.nodes):
        place = draw(st.sampled_from([*Place, Place.AFTER, Place.AFTER]))
        anchor = draw(st.sampled_from(sorted(study.nodes))) if place is Place.MOVED else None
        study.nodes[node] = replace(study.nodes[node], telling=Telling(place, anchor))
    return study


@given(told_studies())
def test_every_move_is_told_from_the_position_in_which_it_is_played(study):
    order = running_order(study)
    at = study.root
    for visit in order:
        if visit.kind is VisitKind.TELL and visit.node != study.root:
            assert study.nodes[visit.node].parent == at
        at = visit.node


@given(told_studies())
def test_every_move_is_told_once_unless_it_hangs_on_a_hidden_one(study):
    hidden: set[int] = set()
    rescued: set[int] = set()
    for node in study.branch(study.root):
        if node.parent in hidden or (node.id != study.root and node.telling.place is Place.HIDDEN):
            hidden.add(node.id)
        if node.parent in rescued or (study.begins_side_line(node.id) and node.telling.place is Place.MOVED):
            rescued.add(node.id)
    told = [visit.node for visit in running_order(study) if visit.kind is VisitKind.TELL]
    assert len(told) == len(set(told))
    assert set(told) >= study.nodes.keys() - hidden - {study.root}
    # A side-line inside a hidden one is told where its author has moved it to.
    assert not set(told) & hidden - rescued


@given(told_studies())
def test_the_board_never_goes_back_twice_in_a_row_to_where_it_stands(study):
    for first, second in pairwise(running_order(study)):
        assert not (second.kind is VisitKind.BACK and first.node == second.node)


@given(told_studies())
def test_the_beats_hold_every_visit_once_in_order(study):
    order = running_order(study)
    cut = beats(study, order)
    assert [visit for beat in cut for visit in beat.visits] == list(order)
    assert len({beat.key for beat in cut}) == len(cut)


def test_three_thousand_nested_side_lines_are_told_without_recursion():
    study = Study()
    move, other = chess.Move.from_uci("g1f3"), chess.Move.from_uci("b1c3")
    at = study.root
    for number in range(3_000):
        for played in (move, other):
            edit = add_move(study, at, played if number % 2 == 0 else chess.Move(played.to_square, played.from_square))
            apply(study, edit)
        at = edit.node
    assert len([visit for visit in running_order(study) if visit.kind is VisitKind.TELL]) == 6_000


def test_a_side_line_of_the_first_move_is_not_lost_when_moved_to_a_start_position_that_is_never_told():
    study = Study()
    for uci in ("e2e4", "d2d4"):
        apply(study, add_move(study, study.root, chess.Move.from_uci(uci)))
    set_telling(study, 2, Place.MOVED, study.root)
    assert [visit.node for visit in running_order(study) if visit.kind is VisitKind.TELL] == [1, 2]
