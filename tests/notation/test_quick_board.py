"""The quick board agrees with python-chess on every move of every position that comes up."""

from __future__ import annotations

import random

import chess
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.notation.quick_board import QuickBoard, move_between
from studyboard.notation.rules_board import RulesBoard, candidates, reading_board
from studyboard.notation.written_move import readings

STARTS = [
    chess.STARTING_FEN,
    # Castling on both sides with rooks that can be taken on their corners; promotions; en passant with pins.
    "r3k2r/pppq1ppp/8/4n3/4N3/8/PPPQ1PPP/R3K2R w KQkq - 0 1",
    "n1n5/PPPk4/8/8/8/8/4Kppp/5N1N b - - 0 1",
    "8/8/8/1k2Pp1R/2b5/8/8/4K3 w - f6 0 2",
    "4k3/8/8/r2pP2K/8/8/8/8 w - d6 0 2",
    "4r1k1/8/8/8/1b6/2N1B3/3Q4/4K2R w K - 0 1",
    "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
    "Q6Q/8/8/8/2k5/8/8/Q3K2Q w - - 0 1",
]


def words(chance: random.Random, board: chess.Board) -> list[str]:
    """Moves as they may be written here, and some that cannot be played."""
    found = ["O-O", "O-O-O", "--"]
    for move in board.legal_moves:
        san = board.san(move)
        found += [san, san.replace("x", ""), board.lan(move), move.uci(), san.rstrip("+#")]
    pieces, files, ranks = ["", *"NBRQK"], ["", "", *"abcdefgh"], ["", "", *"12345678"]
    for _ in range(12):
        target = chance.choice(chess.SQUARE_NAMES)
        found.append(chance.choice(pieces) + chance.choice(files) + chance.choice(ranks) + target)
    return found


@settings(max_examples=40)
@given(st.sampled_from(STARTS), st.integers(0, 1 << 32))
def test_written_moves_are_found_and_played_as_the_rules_have_it(fen, seed):
    chance = random.Random(seed)
    board = chess.Board(fen)
    quick = QuickBoard(board)
    for _ in range(15):
        for word in words(chance, board):
            for written in readings(word):
                legal = candidates(board, written)
                assert quick.find(written) == (legal[0] if len(legal) == 1 else None), (board.fen(), word)
        moves = list(board.legal_moves)
        if not moves:
            break
        move = chance.choice(moves)
        if chance.random() < 0.05 and not board.is_check():
            move = chess.Move.null()
        before, undo = quick.as_board(), quick.play(move)
        assert quick.before(undo).as_board() == before
        board.push(move)
        after = quick.as_board()
        assert after.board_fen() == board.board_fen()
        assert (after.turn, after.castling_rights) == (board.turn, board.clean_castling_rights())
        assert set(after.legal_moves) == set(board.legal_moves)


@given(st.sampled_from(STARTS), st.integers(0, 1 << 32))
def test_every_move_that_python_chess_writes_is_found_by_it(fen, seed):
    chance = random.Random(seed)
    board = chess.Board(fen)
    for _ in range(25):
        quick = QuickBoard(board)
        moves = list(board.legal_moves)
        for move in moves:
            (first, *_) = readings(board.san(move))
            assert quick.find(first) == move
        if not moves:
            break
        board.push(chance.choice(moves))


def test_playing_on_a_copy_leaves_the_board_as_it_was():
    quick = QuickBoard(chess.Board())
    copy = quick.copy()
    copy.play(chess.Move.from_uci("e2e4"))
    assert quick.as_board().board_fen() == chess.STARTING_BOARD_FEN


@pytest.mark.parametrize(
    ("fen", "chess960"),
    [
        ("bqnrkrnb/pppppppp/8/8/8/8/PPPPPPPP/BQNRKRNB w FDfd - 0 1", True),
        ("8/8/8/8/8/8/8/8 w - - 0 1", False),
        ("4k3/8/8/8/8/8/8/4K2K w - - 0 1", False),
        ("3kK3/8/8/8/8/8/8/8 w - - 0 1", False),
    ],
)
def test_positions_of_other_rules_go_to_the_slower_board(fen, chess960):
    assert isinstance(reading_board(chess.Board(fen, chess960=chess960)), RulesBoard)


def test_ordinary_positions_go_to_the_quick_board():
    assert all(isinstance(reading_board(chess.Board(fen)), QuickBoard) for fen in STARTS)


def test_equal_moves_are_one_object():
    assert move_between(12, 28) is move_between(12, 28)
    assert move_between(52, 60, chess.QUEEN) == chess.Move.from_uci("e7e8q")
