"""What a move covers and gives up."""

import chess

from studyboard.board.changes import abandoned_words, cover_after, covered


def names(squares):
    return {chess.square_name(square) for square in squares}


def test_a_knight_that_leaves_gives_up_what_only_it_covered():
    board = chess.Board("6k1/8/8/8/8/5N2/8/6K1 w - - 0 1")
    move = chess.Move.from_uci("f3g5")
    cover = cover_after(board, move)
    assert "d4" in names(cover.lost)
    assert "h7" in names(cover.gained)
    assert "h2" in names(cover.lost)
    assert "h2" not in names(cover.abandoned)
    after = board.copy()
    after.push(move)
    assert "no longer covers" in abandoned_words(after, cover)


def test_a_line_that_opens_is_told():
    board = chess.Board("6k1/8/8/8/8/3N4/8/3R2K1 w - - 0 1")
    cover = cover_after(board, chess.Move.from_uci("d3f4"))
    assert {"d4", "d8"} <= names(cover.opened)


def test_covered_squares_are_those_of_all_pieces():
    mask = covered(chess.Board("6k1/8/8/8/8/8/8/R5K1 w - - 0 1"), chess.WHITE)
    assert mask & chess.BB_A8
    assert mask & chess.BB_H2
    assert not mask & chess.BB_C3
