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


def test_rules_and_only_moves_are_told():
    drawn = chess.Board("7k/8/6K1/8/8/8/8/5R2 b - - 100 90")
    assert "Fifty moves without a capture or a pawn move: either side may claim a draw." in words(drawn)
    assert "Black has one legal move: Rxg8." in words(chess.Board("r5Qk/6pp/7N/8/8/8/6PP/6K1 b - - 0 1"))


def test_kings_are_told_only_while_a_queen_can_attack_them():
    with_queen = chess.Board("6k1/5p2/8/8/3Q4/8/8/6K1 w - - 0 1")
    assert any("king on g8" in told for told in words(with_queen))
    with_queen.remove_piece_at(chess.D4)
    assert not any("king on" in told for told in words(with_queen))
