"""Forks, guards with too much to do, and pieces that are lost wherever they go."""

import chess

from studyboard.board.tactics import (
    fork_words,
    forks,
    guard_words,
    overloaded,
    removable,
    removal_words,
    safe_squares,
    safe_words,
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


def test_a_fork_that_can_be_taken_says_by_whom():
    board = chess.Board("r3k3/2N5/1b6/8/8/8/8/4K3 b - - 0 1")
    (fork,) = forks(board, chess.WHITE)
    assert fork_words(board, fork) == (
        "The knight on c7 forks the king on e8 and the rook on a8, but the bishop on b6 can take it."
    )


def test_a_pinned_piece_forks_nothing():
    free = chess.Board("4k3/2r3r1/8/4N3/8/8/8/4K3 b - - 0 1")
    assert forks(free, chess.WHITE) == ()
    board = chess.Board("4k3/4r3/3q1q2/8/4N3/8/8/4K3 b - - 0 1")
    assert forks(board, chess.WHITE) == ()
    board.remove_piece_at(chess.E7)
    assert [fork.targets for fork in forks(board, chess.WHITE)] == [(chess.D6, chess.F6)]


def test_a_guard_that_another_can_replace_is_not_taken_off():
    # After Bxf6 the queen takes back and guards d5 herself.
    replaced = chess.Board("3q2k1/8/5n2/3p4/8/5B2/1B6/5RK1 w - - 0 1")
    assert removable(replaced) == ()
    # After Bxf6 gxf6 nothing guards d5 any more.
    lost = chess.Board("6k1/6p1/5n2/3p4/8/5B2/1B6/6K1 w - - 0 1")
    (found,) = removable(lost)
    assert removal_words(lost, *found) == "Bxf6 takes the guard of the pawn on d5."


def test_a_pinned_piece_that_is_lost_says_why_it_cannot_go():
    board = chess.Board("4k3/8/5p2/4n3/8/8/4R3/4R1K1 b - - 0 1")
    board.remove_piece_at(chess.F6)
    (piece,) = trapped(board, chess.BLACK)
    assert trapped_words(board, piece) == "The knight on e5 is trapped: it is pinned to its king and has no move."


def test_nothing_is_trapped_while_a_check_has_to_be_answered():
    assert trapped(chess.Board("4k3/8/8/8/1b6/8/p2r4/N3K3 w - - 0 1")) == ()


def test_safe_squares_in_words():
    assert safe_words(chess.Board("6k1/8/1p1p4/8/8/2N5/8/6K1 w - - 0 1"), chess.C3) == (
        "The knight on c3 can safely go to b1, d1, a2, e2, a4, e4, b5 and d5."
    )
    assert safe_words(chess.Board(), chess.A1) == "The rook on a1 has no safe square."


def test_two_guarded_pawns_are_no_fork():
    board = chess.Board("4k3/2p1p3/3p1p2/8/4N3/8/8/4K3 w - - 0 1")
    assert forks(board, chess.WHITE) == ()


def test_a_queen_that_alone_guards_two_pieces_is_overloaded():
    board = chess.Board("r5k1/8/8/3q4/3n4/8/8/R2R2K1 w - - 0 1")
    found = overloaded(board)
    assert [guard.square for guard in found] == [chess.D5]
    assert set(found[0].keeps) == {chess.A8, chess.D4}
    assert guard_words(board, found[0]) == (
        "The queen on d5 guards the knight on d4 and the rook on a8, and both need it."
    )


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
