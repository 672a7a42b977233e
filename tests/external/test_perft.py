"""Counts of moves: OEIS A048987, “Number of possible chess games at the end of the n-th ply”: 20, 400, 8902, 197281."""

from __future__ import annotations

import chess
import pytest

from studyboard.notation.quick_board import QuickBoard
from studyboard.notation.written_move import readings

A048987 = {1: 20, 2: 400, 3: 8_902, 4: 197_281}

#: Castling, promotions, en passant and pins at once: 48, 2039, 97862 moves after 1, 2, 3 plies. From memory; the
#: position is common practice in testing move generators.
CROWDED = "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1"


def count_by_writing(board: chess.Board, quick: QuickBoard, depth: int) -> int:
    """Leaves of the tree of games, each move written in SAN, found again by the reader's own board and played there."""
    found = 0
    for move in board.legal_moves:
        (written, *_) = readings(board.san(move))
        assert quick.find(written) == move
        if depth == 1:
            found += 1
            continue
        after = quick.copy()
        after.play(move)
        board.push(move)
        found += count_by_writing(board, after, depth - 1)
        board.pop()
    return found


@pytest.mark.parametrize(("depth", "games"), A048987.items())
def test_games_from_the_start_position(depth, games):
    board = chess.Board()
    assert count_by_writing(board, QuickBoard(board), depth) == games


@pytest.mark.parametrize(("depth", "games"), [(1, 48), (2, 2_039)])
def test_games_from_a_position_with_every_special_move(depth, games):
    board = chess.Board(CROWDED)
    assert count_by_writing(board, QuickBoard(board), depth) == games


def test_the_reader_finds_no_move_that_the_rules_do_not_know():
    board = chess.Board(CROWDED)
    quick = QuickBoard(board)
    squares = chess.SQUARE_NAMES
    written = [f"{origin}{to}" for origin in squares for to in squares]
    found = {quick.find(reading) for word in written for reading in readings(word)} - {None}
    assert found == set(board.legal_moves)
    assert len(found) == 48
