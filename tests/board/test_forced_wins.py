"""Material that is won by force, with the line."""

import chess
import pytest

from studyboard.board.forced_wins import MATE, forced_win, forced_win_words
from studyboard.board.work import WorkCancelledError


def test_a_fork_wins_the_rook():
    board = chess.Board("r3k3/8/8/1N6/8/8/8/4K3 w - - 0 1")
    win = forced_win(board, 2)
    assert win.gain == 5
    assert board.variation_san(list(win.line)).startswith("1. Nc7+")


def test_a_mate_counts_as_mate():
    assert forced_win(chess.Board("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"), 1).gain == MATE


def test_nothing_is_won_in_the_first_position():
    assert forced_win(chess.Board(), 2) is None


def test_it_stops_when_nobody_wants_it():
    board = chess.Board("2r2rk1/1bqnbppp/p2ppn2/1p6/3NPP2/P1NBB3/1PP1Q1PP/4RR1K w - - 0 15")
    with pytest.raises(WorkCancelledError):
        forced_win(board, 3, cancelled=lambda: True)


def test_it_tells_how_far_it_is():
    shares = []
    forced_win(chess.Board("r3k3/8/8/1N6/8/8/8/4K3 w - - 0 1"), 2, progress=shares.append)
    assert shares == sorted(shares)
    assert shares[-1] == 1.0
    assert len(shares) > 2


def test_a_capture_that_is_answered_elsewhere_wins_only_the_difference():
    board = chess.Board("7r/1k6/8/b7/1N6/8/8/6KR w - - 0 1")
    win = forced_win(board, 1)
    assert win.gain == 2
    assert board.san(win.line[0]) == "Rxh8"


def test_the_win_in_words():
    board = chess.Board("r3k3/8/8/1N6/8/8/8/4K3 w - - 0 1")
    assert forced_win_words(board, forced_win(board, 2)).startswith("White wins 5 points by force: 1. Nc7+")
    mate = chess.Board("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1")
    assert forced_win_words(mate, forced_win(mate, 1)) == "White mates by force: 1. Ra8#."
