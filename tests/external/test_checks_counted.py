"""Checks and mates in the tree of games are as many as published tables of move generation count them.

The tables are those that move generators are checked with, from memory: besides the number of games (OEIS A048987)
they give how many of the last moves are checks, and how many of those are mate.
"""

import chess
import pytest

from studyboard.board.mates import checking_moves, mates_at_once

CROWDED = "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1"
ENDING = "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1"


@pytest.mark.parametrize(
    ("fen", "plies", "checks", "mates"),
    [
        (chess.STARTING_FEN, 3, 12, 0),
        (chess.STARTING_FEN, 4, 469, 8),
        (CROWDED, 2, 3, 0),
        (CROWDED, 3, 993, 1),
        (ENDING, 2, 10, 0),
        (ENDING, 3, 267, 0),
        (ENDING, 4, 1680, 17),
    ],
)
def test_so_many_of_the_last_moves_are_checks_and_mates(fen, plies, checks, mates):
    assert _counted(chess.Board(fen), plies) == (checks, mates)


def _counted(board, plies):
    if plies == 1:
        return len(checking_moves(board)), len(mates_at_once(board))
    checks = mates = 0
    for move in list(board.legal_moves):
        board.push(move)
        further = _counted(board, plies - 1)
        board.pop()
        checks, mates = checks + further[0], mates + further[1]
    return checks, mates
