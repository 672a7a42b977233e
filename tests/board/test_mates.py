"""Mates are found in the fewest moves, with a line, and the search can be watched and stopped."""

import chess
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.board.mates import checking_moves, mate_in, mate_words, mates_at_once, mating_moves
from studyboard.board.work import WorkCancelledError

BACK_RANK = "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"
LADDER = "7k/8/8/8/8/1R6/R7/6K1 w - - 0 1"


def test_a_back_rank_mate_is_mate_in_one():
    assert [move.uci() for move in mates_at_once(chess.Board(BACK_RANK))] == ["a1a8"]
    assert mate_in(chess.Board(BACK_RANK), 3).moves == 1


def test_two_rooks_mate_in_two_and_not_in_one():
    board = chess.Board(LADDER)
    assert mate_in(board, 1) is None
    mate = mate_in(board, 2)
    assert mate.moves == 2
    for move in mate.line:
        assert board.is_legal(move)
        board.push(move)
    assert board.is_checkmate()


def test_a_quiet_key_is_found_only_by_the_complete_search():
    board = chess.Board("kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1")
    assert mate_in(board, 2, checks_only=True) is None
    assert mate_in(board, 2) is not None


def test_checks_alone_run_deep():
    board = chess.Board("r6k/6pp/7N/8/2Q5/8/6PP/6K1 w - - 0 1")
    assert mate_in(board, 6, checks_only=True).moves == 2


def test_every_mating_first_move_is_listed():
    board = chess.Board("7k/8/8/8/8/8/R7/1R4K1 w - - 0 1")
    assert "b1b7" in {move.uci() for move in mating_moves(board, 2)}
    assert "a2a7" in {move.uci() for move in mating_moves(board, 2)}


def test_stalemate_is_no_mate():
    assert mate_in(chess.Board("7k/5Q2/8/8/8/8/8/6K1 b - - 0 1"), 2) is None


def test_the_board_is_left_as_it_was():
    board = chess.Board(LADDER)
    mate_in(board, 2)
    assert board.fen() == LADDER
    assert not board.move_stack


def test_progress_runs_to_the_end_when_there_is_no_mate():
    shares = []
    assert mate_in(chess.Board(), 2, progress=shares.append) is None
    assert shares == sorted(shares)
    assert shares[-1] == 1.0


def test_progress_ends_with_one_when_a_mate_is_found_early():
    shares = []
    assert mate_in(chess.Board(BACK_RANK), 4, progress=shares.append).moves == 1
    assert shares == [1.0]


def test_a_mate_is_told_with_its_line():
    board = chess.Board("r6k/6pp/7N/8/2Q5/8/6PP/6K1 w - - 0 1")
    assert mate_words(board, mate_in(board, 2)) == "White mates in two moves: 1. Qg8+ Rxg8 2. Nf7#."


def test_a_long_search_stops_soon_after_it_is_told_to():
    board = chess.Board("2r2rk1/1bqnbppp/p2ppn2/1p6/3NPP2/P1NBB3/1PP1Q1PP/4RR1K w - - 0 15")
    asked = iter([False, False, True])
    with pytest.raises(WorkCancelledError):
        mate_in(board, 6, cancelled=lambda: next(asked))


def test_the_search_stops_when_nobody_wants_it():
    board = chess.Board("2r2rk1/1bqnbppp/p2ppn2/1p6/3NPP2/P1NBB3/1PP1Q1PP/4RR1K w - - 0 15")
    with pytest.raises(WorkCancelledError):
        mate_in(board, 3, cancelled=lambda: True)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(0, 200), min_size=0, max_size=70))
def test_checking_moves_are_the_legal_moves_that_give_check(choices):
    board = chess.Board()
    for choice in choices:
        moves = list(board.legal_moves)
        if not moves:
            break
        board.push(moves[choice % len(moves)])
    assert set(checking_moves(board)) == {move for move in board.legal_moves if board.gives_check(move)}
