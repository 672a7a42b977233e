"""How unlikely moves are at first sight."""

import chess

from studyboard.notation.narration.sense import best_gain, unlikelihood


def _unlikely(fen: str, move: str) -> float:
    board = chess.Board(fen)
    return unlikelihood(board, chess.Move.from_uci(move), best_gain(board))


def test_a_queen_left_to_be_taken_is_less_likely_than_a_pawn_left_to_be_taken() -> None:
    fen = "4k3/3p4/8/8/8/8/4Q1N1/4K3 w - - 0 1"
    assert _unlikely(fen, "e2e6") > _unlikely(fen, "g2e3") == 0.0
    assert _unlikely("4k3/3p1p2/8/4P3/8/8/8/4K3 w - - 0 1", "e5e6") < _unlikely(fen, "e2e6")


def test_a_piece_that_could_be_taken_for_nothing_is_missed_by_another_move() -> None:
    fen = "4k3/8/8/3n4/4P3/8/8/R3K3 w - - 0 1"
    assert _unlikely(fen, "e4d5") == 0.0
    assert _unlikely(fen, "a1a2") > 2.0


def test_what_is_protected_by_the_move_itself_is_not_lost() -> None:
    fen = "4k3/1b6/8/3N4/8/8/8/R5K1 w - - 0 1"
    assert _unlikely(fen, "a1a2") > _unlikely(fen, "a1d1") == 0.0


def test_what_was_left_to_be_taken_and_was_not_is_held_against_no_further_move() -> None:
    board = chess.Board("4k3/1b6/8/3N4/8/8/8/R5K1 w - - 0 1")
    move = chess.Move.from_uci("a1a2")
    assert unlikelihood(board, move, 0, left_before=0) > unlikelihood(board, move, 0, left_before=3) == 0.0


def test_promotion_counts_as_a_gain() -> None:
    fen = "4k3/1P6/8/8/8/3r4/2P5/4K3 w - - 0 1"
    assert _unlikely(fen, "b7b8q") == 0.0


def test_a_knight_from_home_is_likelier_than_one_that_stands_out_already() -> None:
    fen = "rnbqkbnr/pppppppp/8/8/8/2N5/PPPP1PPP/R1BQKBNR w KQkq - 0 1"
    assert _unlikely(fen, "g1e2") == 0.0 < _unlikely(fen, "c3e2")


def test_a_king_does_not_walk_while_there_are_queens() -> None:
    assert _unlikely("3qk3/8/8/8/8/8/8/3QK2R w K - 0 1", "e1f2") > 0
    assert _unlikely("4k3/8/8/8/8/8/8/4K2R w K - 0 1", "e1f2") == 0.0


def test_nothing_can_be_won_from_a_position_without_attacks() -> None:
    assert best_gain(chess.Board()) == 0
    assert best_gain(chess.Board("4k3/8/8/3q4/4P3/8/8/4K3 w - - 0 1")) == 9
    assert best_gain(chess.Board("4k3/8/4p3/3b4/4P3/8/8/4K3 w - - 0 1")) == 2
