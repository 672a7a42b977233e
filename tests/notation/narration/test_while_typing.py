"""Moves are found in a line while it is typed."""

import chess

from studyboard.notation.narration.while_typing import MoveInLine, moves_in_line

E4, E5, C5 = chess.Move.from_uci("e2e4"), chess.Move.from_uci("e7e5"), chess.Move.from_uci("c7c5")


def test_words_and_moves_are_found() -> None:
    assert moves_in_line(chess.Board(), "White begins with pawn to e4, of course.") == (
        MoveInLine(3, 5, (), E4, False),
    )


def test_what_is_told_beside_the_known_moves_is_a_side_line() -> None:
    found = moves_in_line(chess.Board(), "White plays e4, and if Black answers e5 the game is open.", known=[E4, C5])
    assert found == (MoveInLine(2, 2, (), E4, False), MoveInLine(7, 7, (E4,), E5, True))


def test_a_line_can_go_on_where_the_tree_ends() -> None:
    found = moves_in_line(chess.Board(), "First e4, then c5.", known=[E4])
    assert [(move.move, move.side_line) for move in found] == [(E4, False), (C5, False)]


def test_half_a_line_says_what_it_says_so_far() -> None:
    line = "White plays knight f3"
    for length in range(len(line)):
        assert len(moves_in_line(chess.Board(), line[:length])) <= 1


def test_a_line_without_a_move_has_none() -> None:
    assert moves_in_line(chess.Board(), "Look at the pawn on e2, it will matter.") == ()
