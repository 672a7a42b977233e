"""A position is told in words that can be followed by ear."""

from __future__ import annotations

import chess
import pytest

from studyboard.model.marks import Mark, MarkKind
from studyboard.picture.describe import describe_board, describe_marks, describe_square


def test_the_first_position():
    assert describe_board(chess.Board()) == (
        "White: king e1, queen d1, rooks a1 and h1, bishops c1 and f1, knights b1 and g1, "
        "pawns a2, b2, c2, d2, e2, f2, g2 and h2. "
        "Black: king e8, queen d8, rooks a8 and h8, bishops c8 and f8, knights b8 and g8, "
        "pawns a7, b7, c7, d7, e7, f7, g7 and h7. White to move."
    )


@pytest.mark.parametrize(
    ("fen", "ending"),
    [
        ("6k1/8/8/8/8/8/8/4R1K1 b - - 0 1", "Black to move."),
        ("4k3/8/8/8/8/8/8/4R1K1 b - - 0 1", "Black to move, in check."),
        ("4R1k1/5ppp/8/8/8/8/8/6K1 b - - 0 1", "Black is checkmated."),
        ("7k/5Q2/6K1/8/8/8/8/8 b - - 0 1", "Black to move is stalemated."),
    ],
)
def test_whose_move_it_is_or_how_it_ended(fen, ending):
    assert describe_board(chess.Board(fen)).endswith(ending)


def test_the_last_move_is_named():
    board = chess.Board()
    move = board.push_san("e4")
    assert describe_board(board, last_move=move).endswith("Black to move. Last move from e2 to e4.")


def test_an_empty_side_is_said_to_be_empty():
    assert describe_board(chess.Board(None)) == "White: no pieces. Black: no pieces. White to move."


def test_one_square():
    board = chess.Board()
    assert describe_square(board, chess.D8) == "black queen on d8"
    assert describe_square(board, chess.E4) == "e4, empty"


def test_every_kind_of_mark_is_said():
    marks = [
        Mark(MarkKind.THREAT, (chess.D8, chess.H4)),
        Mark(MarkKind.TARGET, (chess.E5,)),
        Mark(MarkKind.ROUTE, (chess.B1, chess.D2, chess.F3)),
        Mark(MarkKind.KEY_SQUARE, (chess.C5,)),
        Mark(MarkKind.GUARD, (chess.C6, chess.D5)),
    ]
    assert describe_marks(marks) == (
        "Threat from d8 to h4. Target on e5. Route b1, d2 to f3. Key square c5. c6 guards d5."
    )
    assert describe_marks([]) == ""
