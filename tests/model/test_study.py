"""The study answers for its tree without changing it."""

from __future__ import annotations

import chess
import pytest

from studyboard.model.edits import ChangeNode, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.positions import Positions
from studyboard.model.study import Changed, Study, start_board


def names(study, nodes):
    positions = Positions(study)
    return [positions.san(node) for node in nodes]


def test_a_new_study_has_a_start_position_and_the_seven_tags():
    study = Study()
    assert list(study.nodes) == [study.root]
    assert list(study.headers) == ["Event", "Site", "Date", "Round", "White", "Black", "Result"]


def test_lines_and_paths_are_followed(study, node_of):
    assert names(study, study.main_line()) == ["", "e4", "e5", "Nf3", "Nc6", "Bb5"]
    assert names(study, study.main_line(node_of("c5"))) == ["c5", "Nf3", "d6"]
    assert names(study, study.path(node_of("d5"))) == ["", "e4", "c5", "c3", "d5"]
    assert study.ply(node_of("d5")) == 4
    assert study.ply(study.root) == 0
    assert names(study, (node.id for node in study.branch(node_of("c5")))) == ["c5", "Nf3", "d6", "c3", "d5"]


def test_a_side_line_begins_where_a_move_replaces_another(study, node_of):
    assert [study.begins_side_line(node_of(san)) for san in ("e4", "e5", "c5", "d6", "c3")] == [
        False, False, True, False, True,
    ]  # fmt: skip
    assert not study.begins_side_line(study.root)
    assert study.line_start(node_of("d6")) == node_of("c5")
    assert study.line_start(node_of("Bb5")) == study.root
    assert study.on_main_line(node_of("Bb5"))
    assert not study.on_main_line(node_of("d5"))


def test_a_snapshot_stays_as_it_was(study, node_of):
    before = study.snapshot()
    apply(study, ChangeNode(node_of("e4"), "note", "later"))
    assert before.nodes[node_of("e4")].note == ""
    assert before.next_id == study.next_id


@pytest.mark.parametrize(
    ("headers", "fen"),
    [
        ({}, chess.STARTING_FEN),
        ({"FEN": ""}, chess.STARTING_FEN),
        ({"FEN": " 4k3/8/8/8/8/8/8/4K3 b - - 0 9 "}, "4k3/8/8/8/8/8/8/4K3 b - - 0 9"),
        ({"FEN": "4k3/8/8/8/8/8/8/4K3"}, "4k3/8/8/8/8/8/8/4K3 w - - 0 1"),
    ],
)
def test_the_start_position_comes_from_the_fen_tag(headers, fen):
    assert start_board(headers).fen() == fen


def test_the_variant_tag_may_say_chess960():
    assert start_board({"Variant": "Chess960"}).chess960
    assert start_board({"Variant": "fischerandom"}).chess960
    assert not start_board({"Variant": "Standard"}).chess960


def test_a_fen_tag_that_is_no_position_is_refused_in_a_sentence():
    with pytest.raises(EditRefusedError, match=r"The FEN tag holds no position .*A position looks like"):
        Study({"FEN": "hello"})


def test_what_two_edits_have_touched_can_be_added_up():
    first, second = Changed(nodes={1}), Changed(nodes={2}, headers=True)
    assert not Changed()
    first.add(second)
    assert (first.nodes, first.headers, first.settings) == ({1, 2}, True, False)
    assert first
