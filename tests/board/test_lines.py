"""Pins to a dearer piece, skewers, batteries and discovered attacks stand where a player would point at them."""

import chess

from studyboard.board.lines import (
    Lined,
    batteries,
    battery_words,
    discoveries,
    discovery_words,
    relative_pin_words,
    relative_pins,
    skewer_words,
    skewers,
    uncovered,
)


def test_a_knight_is_pinned_to_the_queen():
    board = chess.Board("rnbqkb1r/ppp1pppp/5n2/3p2B1/3P4/8/PPP1PPPP/RN1QKBNR w KQkq - 0 3")
    board.remove_piece_at(chess.E7)
    pins = relative_pins(board)
    assert pins == (Lined(chess.G5, chess.F6, chess.D8),)
    assert relative_pin_words(board, pins[0]) == ("The knight on f6 is pinned to the queen on d8 by the bishop on g5.")


def test_a_pawn_on_the_file_of_its_queen_is_not_pinned_by_a_rook():
    board = chess.Board("3q2k1/8/8/3p4/8/8/8/3R2K1 w - - 0 1")
    assert relative_pins(board) == ()


def test_a_bishop_skewers_king_and_rook():
    board = chess.Board("7r/6k1/8/8/8/8/8/B5K1 b - - 0 1")
    board.set_piece_at(chess.H8, chess.Piece(chess.ROOK, chess.BLACK))
    found = skewers(board)
    assert found == (Lined(chess.A1, chess.G7, chess.H8),)
    assert skewer_words(board, found[0]) == "The bishop on a1 skewers the king on g7 and the rook on h8 behind it."


def test_queen_behind_bishop_is_a_battery_and_a_rook_behind_a_bishop_is_none():
    board = chess.Board("6k1/8/8/8/8/3B4/2Q5/3R2K1 w - - 0 1")
    found = batteries(board)
    assert [(battery.front, battery.back) for battery in found] == [(chess.D3, chess.C2)]
    assert chess.H7 in found[0].aims
    assert battery_words(board, found[0]) == "The queen on c2 and the bishop on d3 stand on one line."


def test_a_knight_in_front_of_its_rook_can_uncover_an_attack_on_the_queen():
    board = chess.Board("3q2k1/8/8/8/3N4/8/8/3R2K1 w - - 0 1")
    assert discoveries(board, chess.WHITE) == (Lined(chess.D1, chess.D4, chess.D8),)
    assert uncovered(board, chess.Move.from_uci("d4f5")) == (Lined(chess.D1, chess.D4, chess.D8),)
    assert uncovered(board, chess.Move.from_uci("d1c1")) == ()
    assert discovery_words(board, Lined(chess.D1, chess.D4, chess.D8)) == (
        "When the knight on d4 leaves, the rook on d1 attacks the queen on d8."
    )


def test_a_queen_that_takes_along_her_rooks_file_uncovers_nothing():
    board = chess.Board("3r2k1/8/8/3q4/8/8/3N4/6K1 b - - 0 1")
    assert uncovered(board, chess.Move.from_uci("d5d2")) == ()


def test_taking_in_passing_uncovers_what_stood_behind_the_pawn():
    board = chess.Board("6k1/8/8/R2pP2q/8/8/8/6K1 w - d6 0 1")
    assert uncovered(board, chess.Move.from_uci("e5d6")) == (Lined(chess.A5, chess.D5, chess.H5),)


def test_a_king_that_can_step_beside_its_rook_and_guard_it_is_not_skewered_by_a_rook():
    guarded = chess.Board("8/8/8/8/8/8/2K5/R2kr3 b - - 0 1")
    assert skewers(guarded) == ()
    far = chess.Board("8/8/8/8/8/8/2K5/R2k2r1 b - - 0 1")
    assert skewers(far) == (Lined(chess.A1, chess.D1, chess.G1),)
