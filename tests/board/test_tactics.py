"""Forks, guards with too much to do, and pieces that are lost wherever they go."""

import chess

from studyboard.board.tactics import (
    fork_words,
    forks,
    guard_words,
    overloaded,
    removable,
    safe_squares,
    shut_in,
    trapped,
    trapped_words,
    turned,
)


def test_a_knight_forks_king_and_rook():
    board = chess.Board("r3k3/2N5/8/8/8/8/8/4K3 b - - 0 1")
    found = forks(board, chess.WHITE)
    assert [(fork.by, fork.targets) for fork in found] == [(chess.C7, (chess.E8, chess.A8))]
    assert fork_words(board, found[0]) == "The knight on c7 forks the king on e8 and the rook on a8."


def test_two_guarded_pawns_are_no_fork():
    board = chess.Board("4k3/2p1p3/3p1p2/8/4N3/8/8/4K3 w - - 0 1")
    assert forks(board, chess.WHITE) == ()


def test_a_queen_that_alone_guards_two_pieces_is_overloaded():
    board = chess.Board("r5k1/8/8/3q4/3n4/8/8/R2R2K1 w - - 0 1")
    found = overloaded(board)
    assert [guard.square for guard in found] == [chess.D5]
    assert set(found[0].keeps) == {chess.A8, chess.D4}
    assert guard_words(board, found[0]) == "The queen on d5 alone keeps the knight on d4 and the rook on a8."


def test_a_guard_can_be_taken_off():
    board = chess.Board("6k1/8/5n2/3p4/8/5B2/8/5RK1 w - - 0 1")
    board.set_piece_at(chess.B2, chess.Piece(chess.BISHOP, chess.WHITE))
    assert [(move.uci(), guard.square) for move, guard in removable(board)] == [("b2f6", chess.F6)]


def test_a_bishop_that_took_the_rook_pawn_is_trapped_with_its_proof():
    board = chess.Board("2r3k1/B1p5/1p6/8/8/8/8/4K3 b - - 0 1")
    found = shut_in(board, chess.A7)
    assert found is not None
    assert {chess.square_name(way.move.to_square) for way in found.exits} == {"b6", "b8"}
    assert all(way.capture is not None for way in found.exits)
    assert trapped_words(board, found).startswith("The bishop on a7 is trapped: on b8 the")


def test_only_an_attacked_piece_is_called_trapped():
    quiet = chess.Board("2r3k1/B1p5/1p6/8/8/8/8/4K3 b - - 0 1")
    assert [piece.square for piece in trapped(quiet, chess.WHITE)] == []
    attacked = chess.Board("2r3k1/B1p5/1p6/8/8/8/8/4K3 b - - 0 1")
    attacked.set_piece_at(chess.A8, chess.Piece(chess.ROOK, chess.BLACK))
    assert [piece.square for piece in trapped(attacked, chess.WHITE)] == [chess.A7]


def test_safe_squares_leave_out_those_where_it_is_taken():
    board = chess.Board("6k1/8/1p1p4/8/8/2N5/8/6K1 w - - 0 1")
    names = {chess.square_name(square) for square in safe_squares(board, chess.C3)}
    assert names == {"a2", "a4", "b1", "b5", "d1", "d5", "e2", "e4"}


def test_nobody_can_pass_out_of_check():
    board = chess.Board("4k3/8/8/8/8/8/4r3/4K3 w - - 0 1")
    assert turned(board, chess.BLACK) is None
    assert turned(board, chess.WHITE) is board
