"""The slower board reads the same words by the rules themselves."""

from __future__ import annotations

import random

import chess
import pytest

from studyboard.notation.rules_board import RulesBoard, candidates
from studyboard.notation.written_move import readings


def found(board: chess.Board, word: str) -> list[str]:
    return sorted(move.uci() for move in candidates(board, readings(word)[0]))


@pytest.mark.parametrize("number", [0, 1, 42, 518, 700, 959])
def test_every_move_of_chess960_is_found_from_its_san(number):
    chance = random.Random(number)
    board = chess.Board.from_chess960_pos(number)
    rules = RulesBoard(board.copy())
    for _ in range(60):
        moves = list(board.legal_moves)
        if not moves:
            break
        for move in moves:
            assert rules.find(readings(board.san(move))[0]) == move
        move = chance.choice(moves)
        undo = rules.play(move)
        assert rules.before(undo).as_board() == board
        board.push(move)
        assert rules.as_board() == board


def test_a_move_that_two_pieces_can_make_has_two_candidates_and_none_is_chosen():
    board = chess.Board("4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1")
    assert found(board, "Nd2") == ["b1d2", "f3d2"]
    assert RulesBoard(board).find(readings("Nd2")[0]) is None
    assert found(board, "Nbd2") == ["b1d2"]


def test_a_pinned_piece_is_no_candidate():
    board = chess.Board("4k3/4r3/8/8/8/8/4N3/4K1N1 w - - 0 1")
    assert found(board, "Nf3") == ["g1f3"]
    assert found(board, "Nc3") == []


def test_a_pawn_takes_only_where_its_file_is_written():
    board = chess.Board("4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1")
    assert found(board, "d5") == []
    assert found(board, "exd5") == found(board, "ed5") == ["e4d5"]


def test_nobody_passes_out_of_check():
    assert found(chess.Board(), "--") == ["0000"]
    assert found(chess.Board("4k3/8/8/8/8/8/8/4RK2 b - - 0 1"), "--") == []
