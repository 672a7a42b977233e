"""Moves that leave something to be taken make less sense than those that do not."""

from __future__ import annotations

import chess

from studyboard.notation.narration.sense import senselessness


def test_a_queen_that_steps_in_front_of_a_pawn_makes_no_sense() -> None:
    board = chess.Board("4k3/8/3p4/8/8/8/4Q3/4K3 w - - 0 1")
    assert senselessness(board, chess.Move.from_uci("e2e5"), 0) == 1.0
    assert senselessness(board, chess.Move.from_uci("e2e4"), 0) == 0.0


def test_a_fair_exchange_makes_sense() -> None:
    board = chess.Board("4k3/2p5/3n4/8/4N3/8/8/4K3 w - - 0 1")
    assert senselessness(board, chess.Move.from_uci("e4d6"), 0) == 0.0


def test_one_expects_that_a_piece_is_taken_back() -> None:
    board = chess.Board("4k3/8/8/3p4/4n3/3P4/8/4K3 w - - 0 1")
    assert senselessness(board, chess.Move.from_uci("e1d1"), chess.KNIGHT) > 0
    assert senselessness(board, chess.Move.from_uci("d3e4"), chess.KNIGHT) == 0.0
