"""Who attacks and guards what, told as a presenter would check it on the board."""

import chess

from studyboard.board.relations import (
    Sight,
    attack_words,
    attackers,
    attackers_with_support,
    can_capture,
    defenders,
    view,
)

DOUBLED = "3r2k1/3r4/8/3p4/8/8/3R4/3R2K1 w - - 0 1"


def squares(names):
    return tuple(chess.parse_square(name) for name in names.split())


def test_the_rook_behind_counts_only_with_support():
    board = chess.Board(DOUBLED)
    assert attackers(board, chess.WHITE, chess.D5) == squares("d2")
    assert attackers_with_support(board, chess.WHITE, chess.D5) == squares("d2 d1")
    assert defenders(board, chess.D5) == squares("d7")


def test_a_view_can_be_direct_backed_blocked_or_none():
    board = chess.Board(DOUBLED)
    assert view(board, chess.D2, chess.D5).sight is Sight.DIRECT
    assert view(board, chess.D1, chess.D5).sight is Sight.THROUGH
    assert view(board, chess.D2, chess.D8).sight is Sight.BLOCKED
    assert view(board, chess.D2, chess.D8).between == squares("d5 d7")
    assert view(board, chess.D2, chess.E4).sight is Sight.NEVER


def test_a_knight_between_blocks_a_bishop():
    board = chess.Board("6k1/8/8/3p4/2N5/1B6/8/6K1 w - - 0 1")
    assert view(board, chess.B3, chess.D5).sight is Sight.BLOCKED


def test_a_pinned_piece_cannot_take_off_its_line():
    board = chess.Board("4r1k1/8/8/3p4/8/2p1N3/8/4K3 w - - 0 1")
    assert not can_capture(board, chess.E3, chess.D5)
    assert attackers(board, chess.WHITE, chess.D5) == squares("e3")


def test_the_words_name_both_sides():
    words = attack_words(chess.Board(DOUBLED), chess.D5)
    assert words == "The pawn on d5 is attacked by the rook on d2 and guarded by the rook on d7."


def test_a_bishop_behind_its_pawn_takes_part():
    board = chess.Board("6k1/8/8/3p4/4P3/5B2/8/6K1 w - - 0 1")
    assert attackers_with_support(board, chess.WHITE, chess.D5) == squares("e4 f3")
    assert attackers_with_support(board, chess.WHITE, chess.E5) == ()


def test_a_pinned_attacker_is_told_as_pinned():
    board = chess.Board("4r1k1/8/8/3p4/8/4N3/8/4K3 w - - 0 1")
    assert attack_words(board, chess.D5) == (
        "The pawn on d5 is attacked by the knight on e3 (which is pinned to its king) and not guarded."
    )
