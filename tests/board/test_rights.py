"""Castling with its reasons, kings and their squares, only moves, draws by rule, bishops and their colours."""

import chess

from studyboard.board.rights import (
    bishops_words,
    castling,
    draw_by_rule,
    exposure,
    exposure_words,
    has_bishop_pair,
    king_squares,
    only_move,
    only_move_words,
    opposite_bishops,
)


def test_castling_is_refused_with_its_reason():
    passes = chess.Board("4k2r/8/8/8/8/8/8/4KR2 b k - 0 1")
    state = castling(passes, chess.BLACK, kingside=True)
    assert (state.now, state.right) == (False, True)
    assert "would pass over f8" in state.why
    assert "in between" in castling(chess.Board(), chess.WHITE, kingside=True).why
    assert "no right" in castling(chess.Board("4k2r/8/8/8/8/8/8/4K2R w - - 0 1"), chess.WHITE, kingside=True).why
    assert "in check" in castling(chess.Board("4k3/8/8/8/8/8/4r3/4K2R w K - 0 1"), chess.WHITE, kingside=True).why


def test_castling_is_allowed_on_the_other_sides_turn_too():
    board = chess.Board("4k2r/8/8/8/8/8/8/4K2R b Kk - 0 1")
    assert castling(board, chess.WHITE, kingside=True).now
    assert castling(board, chess.BLACK, kingside=True).now


def test_the_king_in_the_corner_has_no_square():
    assert king_squares(chess.Board("r6k/6pp/7N/8/2Q5/8/6PP/6K1 w - - 0 1"), chess.BLACK) == ()


def test_the_only_move_is_found_and_two_are_none():
    smothered = chess.Board("r5Qk/6pp/7N/8/8/8/6PP/6K1 b - - 0 1")
    assert only_move(smothered) == chess.Move.from_uci("a8g8")
    assert only_move(chess.Board()) is None
    assert only_move(chess.Board("7k/5Q2/6K1/8/8/8/8/8 b - - 0 1")) is None


def test_draws_are_told_with_their_rule():
    assert "stalemated" in draw_by_rule(chess.Board("7k/5Q2/6K1/8/8/8/8/8 b - - 0 1"))
    assert "Neither side can give mate" in draw_by_rule(chess.Board("7k/8/6K1/8/8/8/8/5B2 b - - 0 1"))
    assert "Fifty moves" in draw_by_rule(chess.Board("7k/8/6K1/8/8/8/8/5R2 b - - 100 90"))
    assert "Seventy-five" in draw_by_rule(chess.Board("7k/8/5K2/8/8/8/8/5R2 b - - 150 90"))
    assert draw_by_rule(chess.Board()) is None


def test_a_position_that_came_up_three_times():
    board = chess.Board()
    for _ in range(2):
        for uci in ("g1f3", "g8f6", "f3g1", "f6g8"):
            board.push_uci(uci)
    assert "three times" in draw_by_rule(board)


def test_bishops_of_opposite_colours():
    board = chess.Board("6k1/8/3b4/8/2B5/8/8/6K1 w - - 0 1")
    assert opposite_bishops(board)
    assert bishops_words(board) == "The bishops move on opposite colours."
    assert bishops_words(chess.Board()) is None
    assert has_bishop_pair(chess.Board(), chess.WHITE)
    assert not has_bishop_pair(board, chess.WHITE)


def test_a_king_behind_its_pawns_is_sheltered():
    state = exposure(chess.Board("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"), chess.BLACK)
    assert {chess.square_name(square) for square in state.shelter} == {"f7", "g7", "h7"}
    assert state.open_files == ()


def test_an_open_king_is_told_with_its_files_and_squares():
    board = chess.Board("6k1/5p2/8/8/3Q4/8/8/6K1 w - - 0 1")
    assert exposure_words(board, chess.BLACK) == (
        "Black's king on g8 has no pawn of its own on the g- or h-file, and White attacks g7 and h8 beside it."
    )
    assert exposure_words(chess.Board(), chess.WHITE) is None


def test_the_one_legal_move_is_told():
    assert only_move_words(chess.Board("r5Qk/6pp/7N/8/8/8/6PP/6K1 b - - 0 1")) == "Black has one legal move: Rxg8."


def test_a_kings_squares_are_known_while_the_other_side_is_in_check():
    board = chess.Board("6k1/8/8/8/8/8/5PPP/3r2K1 w - - 0 1")
    assert {chess.square_name(at) for at in king_squares(board, chess.BLACK)} == {"f7", "f8", "g7", "h7", "h8"}
