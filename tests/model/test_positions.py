"""The position at every node is the one that its moves lead to, however it was looked at before."""

from __future__ import annotations

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model import positions as positions_module
from studyboard.model.edits import ChangeHeaders, RemoveBranch, add_move, apply
from studyboard.model.positions import Positions
from studyboard.model.study import Study

KNIGHTS = [chess.Move.from_uci(uci) for uci in ("g1f3", "g8f6", "f3g1", "f6g8")]


def shuffling(plies: int) -> Study:
    study = Study()
    at = study.root
    for number in range(plies):
        edit = add_move(study, at, KNIGHTS[number % 4])
        apply(study, edit)
        at = edit.node
    return study


def test_a_position_is_what_its_moves_lead_to(study, node_of):
    board = chess.Board()
    for san in ("e4", "e5", "Nf3"):
        board.push_san(san)
    seen = Positions(study).board(study.nodes[node_of("Nc6")].parent)
    assert seen.fen() == board.fen()
    assert seen.move_stack == []


def test_a_node_that_is_not_there_is_a_key_error(study):
    with pytest.raises(KeyError):
        Positions(study).board(999)


@given(st.lists(st.integers(0, 40), max_size=30))
def test_looking_at_nodes_in_any_order_gives_the_same_positions(nodes):
    study = shuffling(40)
    positions = Positions(study)
    for node in nodes:
        fresh = Positions(study).board(node)
        assert positions.board(node) == fresh
        assert positions.board(node).fen() == fresh.fen()


def test_stepping_along_a_line_plays_one_move_a_step_and_none_back(monkeypatch):
    study = shuffling(200)
    positions = Positions(study)
    positions.board(199)
    played: list[chess.Move] = []
    push = chess.Board.push

    def counting(board: chess.Board, move: chess.Move) -> None:
        played.append(move)
        push(board, move)

    monkeypatch.setattr(chess.Board, "push", counting)
    positions.board(200)
    assert len(played) == 1
    for node in range(199, 0, -1):
        positions.board(node)
    assert len(played) == 1


def test_boards_that_were_forgotten_are_made_again(monkeypatch):
    monkeypatch.setattr(positions_module, "_KEPT", 8)
    study = shuffling(100)
    positions = Positions(study)
    assert positions.board(100) == Positions(study).board(100)
    assert positions.board(3) == Positions(study).board(3)


def test_another_start_position_is_noticed():
    study = Study()
    positions = Positions(study)
    assert positions.board(0).board_fen() == chess.STARTING_BOARD_FEN
    fen = "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"
    apply(study, ChangeHeaders((("FEN", fen),)))
    assert positions.board(0).fen() == fen
    apply(study, add_move(study, 0, chess.Move.from_uci("e2e4")))
    assert positions.san(1) == "e4"


def test_a_move_is_named_and_found(study, node_of):
    positions = Positions(study)
    assert positions.san(study.root) == ""
    assert positions.san(node_of("exf4")) == "exf4"
    assert positions.child_by_move(node_of("e4"), chess.Move.from_uci("c7c5")) == node_of("c5")
    assert positions.child_by_move(node_of("e4"), chess.Move.from_uci("a7a6")) is None
    apply(study, RemoveBranch(node_of("c5")))
    assert positions.child_by_move(node_of("e4"), chess.Move.from_uci("c7c5")) is None


def test_three_thousand_moves_deep_is_no_trouble():
    assert Positions(shuffling(3_000)).board(3_000).fullmove_number == 1_501
