"""Pawn structure is named as the trade names it."""

import chess

from studyboard.board.pawns import (
    is_backward,
    is_half_open_file,
    is_open_file,
    majority,
    majority_words,
    pawn_structure,
    pawn_words,
)


def test_an_isolated_queens_pawn_makes_two_islands():
    board = chess.Board("6k1/pp3ppp/4p3/8/3P4/8/PP3PPP/6K1 w - - 0 1")
    white = pawn_structure(board, chess.WHITE)
    assert white.isolated == (chess.D4,)
    assert white.islands == 3
    assert pawn_structure(board, chess.BLACK).islands == 2
    assert "White's pawn on d4 is isolated." in pawn_words(board, chess.WHITE)


def test_a_passed_pawn_has_no_enemy_pawn_ahead_or_beside():
    board = chess.Board("6k1/1p3p2/8/P2P4/8/8/5P2/6K1 w - - 0 1")
    assert pawn_structure(board, chess.WHITE).passed == (chess.D5,)


def test_a_pawn_level_with_the_enemy_pawn_has_passed_it():
    board = chess.Board("6k1/8/8/3Pp3/8/8/8/6K1 w - - 0 1")
    assert pawn_structure(board, chess.WHITE).passed == (chess.D5,)
    assert pawn_structure(board, chess.BLACK).passed == (chess.E5,)


def test_doubled_pawns_are_told_by_their_file():
    board = chess.Board("6k1/8/8/8/8/2P5/2P5/6K1 w - - 0 1")
    assert pawn_structure(board, chess.WHITE).doubled == (2,)
    assert "White has doubled pawns on the c-file." in pawn_words(board, chess.WHITE)


def test_a_pawn_that_nothing_can_support_and_a_pawn_holds_back_is_backward():
    board = chess.Board("6k1/8/3p4/2p1p3/2P1P3/8/8/6K1 b - - 0 1")
    assert not is_backward(board, chess.C5)
    assert is_backward(board, chess.D6)


def test_open_and_half_open_files():
    board = chess.Board("6k1/pp3ppp/4p3/8/3P4/8/PP3PPP/6K1 w - - 0 1")
    assert is_open_file(board, 2)
    assert not is_open_file(board, 3)
    assert is_half_open_file(board, 4, chess.WHITE)
    assert not is_half_open_file(board, 4, chess.BLACK)


def test_a_majority_is_counted_on_each_wing():
    board = chess.Board("6k1/pp3ppp/8/8/8/8/PPP2PP1/6K1 w - - 0 1")
    assert majority(board, kingside=False) is chess.WHITE
    assert majority(board, kingside=True) is chess.BLACK
    assert majority(chess.Board(), kingside=True) is None


def test_a_majority_is_told_with_its_numbers():
    board = chess.Board("6k1/pp3ppp/8/8/8/8/PPP5/6K1 w - - 0 1")
    assert majority_words(board) == (
        "White has the majority on the queenside: three pawns to two.",
        "Black has the majority on the kingside: three pawns to none.",
    )
    assert majority_words(chess.Board()) == ()
