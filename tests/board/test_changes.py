"""What a move covers and gives up."""

import chess

from studyboard.board.changes import abandoned_words, cover_after, covered, covered_words, taken_away_words


def after(board, move):
    played = board.copy()
    played.push(move)
    return played


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


def test_a_pawn_that_stands_in_the_way_of_its_rook_is_told():
    board = chess.Board("6k1/8/8/8/R7/8/6P1/7K w - - 0 1")
    move = chess.Move.from_uci("g2g4")
    assert abandoned_words(after(board, move), cover_after(board, move)) == (
        "White no longer covers f3, h3 and h4: the pawn on g4 has left f3 and h3 and stands in the way of h4."
    )


def test_castling_is_told_as_one_move():
    board = chess.Board("6k1/8/8/8/8/8/8/4K2R w K - 0 1")
    move = chess.Move.from_uci("e1g1")
    cover = cover_after(board, move)
    played = after(board, move)
    assert abandoned_words(played, cover).endswith(": it has castled.")
    assert {"h5", "d1"} - names(cover.abandoned) == {"d1"}
    assert {"f4", "f8"} <= names(cover.opened)
    assert "covers" in covered_words(played, cover)


def test_what_the_other_side_loses_with_a_captured_piece():
    board = chess.Board("6k1/8/8/8/3n4/8/8/3R2K1 w - - 0 1")
    move = chess.Move.from_uci("d1d4")
    assert taken_away_words(after(board, move), cover_after(board, move)) == (
        "Black no longer covers c2, e2, b3, f3, b5, f5, c6 and e6, since White's move."
    )
