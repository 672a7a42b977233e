"""Material that is won by force, with the line."""

import chess
import pytest

from studyboard.board.forced_wins import MATE, forced_win
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
