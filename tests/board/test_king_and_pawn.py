"""King and pawn against king, from the table: what every book says, and that the table agrees with itself."""

import random

import chess
import pytest

from studyboard.board.king_and_pawn import _table, drawing_moves, ending_result, winning_moves

KNOWN = [
    ("4k3/8/4K3/4P3/8/8/8/8 w - - 0 1", "1-0"),  # the king on the sixth rank before its pawn wins, whoever moves
    ("4k3/8/4K3/4P3/8/8/8/8 b - - 0 1", "1-0"),
    ("4k3/4P3/4K3/8/8/8/8/8 b - - 0 1", "1/2-1/2"),  # stalemate
    ("8/8/8/8/4k3/8/4P3/4K3 w - - 0 1", "1/2-1/2"),
    ("k7/8/K7/P7/8/8/8/8 w - - 0 1", "1/2-1/2"),  # a rook pawn
    ("7k/8/7K/7P/8/8/8/8 b - - 0 1", "1/2-1/2"),
    ("8/8/8/k7/8/8/7P/K7 w - - 0 1", "1-0"),  # out of the square
    ("8/8/8/8/4p3/4k3/8/4K3 b - - 0 1", "0-1"),
    ("8/8/8/8/8/3k4/3r4/K7 w - - 0 1", "0-1"),
    ("8/8/8/8/8/8/1k6/K7 w - - 0 1", None),  # the kings touch
    ("8/8/8/8/8/2k5/8/K7 w - - 0 1", "1/2-1/2"),
    ("8/8/8/8/8/2k5/8/KB6 w - - 0 1", "1/2-1/2"),
    ("8/8/8/8/8/2k5/5pp1/K7 w - - 0 1", None),
]


@pytest.mark.parametrize(("fen", "result"), KNOWN)
def test_endings_of_the_books(fen, result):
    assert ending_result(chess.Board(fen)) == result


def test_the_number_of_won_positions_is_the_published_one():
    """111,282 with the pawn on the files a to d: a figure of programmers' forums, from memory."""
    moves, waits = _table()
    assert sum(won.bit_count() for won in (*moves.values(), *waits.values())) == 111_282


def test_whoever_wins_has_a_move_that_keeps_the_win():
    chance = random.Random(5)
    for _ in range(600):
        board = chess.Board(None)
        board.turn = chance.random() < 0.5
        pawn, white, black = chance.sample(range(8, 56), 3)
        board.set_piece_at(pawn, chess.Piece(chess.PAWN, chance.random() < 0.5))
        board.set_piece_at(white, chess.Piece(chess.KING, chess.WHITE))
        board.set_piece_at(black, chess.Piece(chess.KING, chess.BLACK))
        result = ending_result(board)
        if result is None or board.is_stalemate():
            continue
        mine = "1-0" if board.turn else "0-1"
        assert bool(winning_moves(board)) == (result == mine)
        assert bool(drawing_moves(board)) >= (result == "1/2-1/2")
