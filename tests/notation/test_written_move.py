"""What a written move says, in every spelling in use."""

from __future__ import annotations

import chess
import pytest

from studyboard.notation.pgn_reader import read_games
from studyboard.notation.written_move import ANY_PIECE, CASTLES_LONG, CASTLES_SHORT, PASSES, WrittenMove, readings

E_FILE = bytes(list(chess.SquareSet(chess.BB_FILE_E)))


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("e4", WrittenMove(chess.PAWN, chess.E4)),
        ("Pe4", WrittenMove(chess.PAWN, chess.E4)),
        ("exd5", WrittenMove(chess.PAWN, chess.D5, E_FILE, 4)),
        ("ed5+", WrittenMove(chess.PAWN, chess.D5, E_FILE, 4)),
        ("exd6e.p.", WrittenMove(chess.PAWN, chess.D6, E_FILE, 4)),
        ("Nf3", WrittenMove(chess.KNIGHT, chess.F3)),
        ("Nexd5#", WrittenMove(chess.KNIGHT, chess.D5, E_FILE, 4)),
        ("N3d5", WrittenMove(chess.KNIGHT, chess.D5, bytes(list(chess.SquareSet(chess.BB_RANK_3))))),
        ("Ng1-f3", WrittenMove(chess.KNIGHT, chess.F3, bytes([chess.G1]), 6)),
        ("♞f6", WrittenMove(chess.KNIGHT, chess.F6)),
        ("g1f3", WrittenMove(ANY_PIECE, chess.F3, bytes([chess.G1]), 6)),
        ("e8=Q", WrittenMove(chess.PAWN, chess.E8, promotion=chess.QUEEN)),
        ("e8(N)+", WrittenMove(chess.PAWN, chess.E8, promotion=chess.KNIGHT)),
        ("dxe8/r", WrittenMove(chess.PAWN, chess.E8, bytes(list(chess.SquareSet(chess.BB_FILE_D))), 3, chess.ROOK)),
        ("O-O", WrittenMove(CASTLES_SHORT)),
        ("0-0-0+", WrittenMove(CASTLES_LONG)),
        ("o-o", WrittenMove(CASTLES_SHORT)),
        ("OOO", WrittenMove(CASTLES_LONG)),
        ("--", WrittenMove(PASSES)),
        ("Z0", WrittenMove(PASSES)),
    ],
)
def test_a_spelling_means_what_people_mean_by_it(text, first):
    assert readings(text)[0] == first


def test_a_small_b_is_a_pawn_first_and_a_bishop_after():
    assert [reading.piece for reading in readings("bc4")] == [chess.PAWN, chess.BISHOP]
    assert [reading.piece for reading in readings("Bc4")] == [chess.BISHOP, chess.PAWN]


def test_a_capital_b_is_a_bishop_unless_no_bishop_can_go_there():
    (game,) = read_games("1. b4 a5 2. Bxa5 *")
    assert chess.Move.from_uci("b4a5") in {node.move for node in game.study.nodes.values()}


@pytest.mark.parametrize("text", ["", "e9", "i4", "Nf", "hello", "O-O-O-O", "Xf3", "1-0", "♔", "e8=P", "K", "e44"])
def test_what_is_no_move_means_nothing(text):
    assert readings(text) == ()
