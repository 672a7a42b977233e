"""Everything further that a presenter may want to know of a position."""

import chess

from studyboard.board.facts import FactKind
from studyboard.board.further_facts import further_facts


def words(board, *moved):
    return {fact.words for fact in further_facts(board, *moved)}


def test_a_fork_a_pawn_and_castling_are_told_in_words():
    board = chess.Board("r3k3/2N5/8/8/3P4/8/8/4K2R b K - 0 1")
    told = words(board)
    assert "The knight on c7 forks the king on e8 and the rook on a8." in told
    assert "White's pawn on d4 is passed." in told
    assert "White may castle kingside." in told


def test_what_the_last_move_no_longer_covers():
    before = chess.Board("6k1/8/8/8/8/5N2/8/6K1 w - - 0 1")
    move = chess.Move.from_uci("f3g5")
    after = before.copy()
    after.push(move)
    assert any("no longer covers" in told for told in words(after, before, move))
    assert FactKind.COVER not in {fact.kind for fact in further_facts(after)}
