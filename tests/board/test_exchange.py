import chess
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.board.exchange import PIECE_VALUES, best_exchange, exchange_after

#: Common practice.
VALUES = {1: 1, 2: 3, 3: 3, 4: 5, 5: 9}


def referee(board: chess.Board, square: chess.Square) -> int:
    """What the side to move wins on *square*: every order of legal captures is played out, without any shortcut."""
    best = 0
    for move in list(board.legal_moves):
        taken = move.to_square
        if board.is_en_passant(move):
            taken = chess.square(chess.square_file(move.to_square), chess.square_rank(move.from_square))
        if taken != square or not board.is_capture(move):
            continue
        won = VALUES[board.piece_type_at(taken)]
        if move.promotion:
            won += VALUES[move.promotion] - 1
        board.push(move)
        best = max(best, won - referee(board, move.to_square))
        board.pop()
    return best


@st.composite
def crowded(draw: st.DrawFn) -> chess.Board:
    """Positions with many pieces that bear on one square, whoever is to move; legal for both sides."""
    board = chess.Board(None)
    target = draw(st.sampled_from(chess.SQUARES))
    free = draw(st.permutations([square for square in chess.SQUARES if square != target]))
    kings, others = free[:2], free[2:]
    board.set_piece_at(kings[0], chess.Piece(chess.KING, chess.WHITE))
    board.set_piece_at(kings[1], chess.Piece(chess.KING, chess.BLACK))
    kinds = st.sampled_from((chess.PAWN, chess.KNIGHT, chess.BISHOP, chess.ROOK, chess.QUEEN))
    victim = draw(kinds)
    if victim != chess.PAWN or 0 < chess.square_rank(target) < 7:
        board.set_piece_at(target, chess.Piece(victim, chess.BLACK))
    for square in others[: draw(st.integers(2, 9))]:
        kind = draw(kinds)
        if kind == chess.PAWN and not 0 < chess.square_rank(square) < 7:
            continue
        board.set_piece_at(square, chess.Piece(kind, draw(st.booleans())))
    board.turn = chess.WHITE
    return board


def gain(fen: str, square: str) -> int:
    return best_exchange(chess.Board(fen), chess.parse_square(square)).gain


@pytest.mark.parametrize(
    ("fen", "square", "expected", "why"),
    [
        ("4k3/8/8/3p4/8/8/3R4/4K3 w - - 0 1", "d5", 1, "a pawn that nothing protects"),
        ("4k3/8/4p3/3p4/8/8/3R4/4K3 w - - 0 1", "d5", 0, "a rook does not take a protected pawn"),
        ("3rk3/8/8/3p4/8/8/3R4/3RK3 w - - 0 1", "d5", 1, "the second rook joins in through the first"),
        ("3rk3/3r4/8/3p4/8/8/3R4/3RK3 w - - 0 1", "d5", 0, "but not against two rooks behind each other"),
        ("4k3/2p5/3r4/8/5B2/8/8/4K3 w - - 0 1", "d6", 2, "a bishop takes a protected rook"),
        ("3qk3/8/2p5/3n4/4P3/8/8/3QK3 w - - 0 1", "d5", 2, "a pawn takes a protected knight"),
        ("4k3/8/8/3p4/8/8/1b1R4/4K3 w - - 0 1", "d5", 1, "a bishop beside the file changes nothing"),
        ("4k3/1p6/5b2/8/8/8/1R6/K7 w - - 0 1", "b7", 0, "the rook is pinned and may not take"),
        ("4k3/1p6/5p2/8/8/8/1R6/K7 w - - 0 1", "b7", 1, "the same without the pin"),
        ("1n2k3/P7/8/8/8/8/8/4K3 w - - 0 1", "b8", 11, "a pawn takes a knight and becomes a queen"),
        ("1n2k3/P2r4/1b6/8/8/8/8/4K3 w - - 0 1", "b8", 11, "and nothing takes it back"),
        ("1nr1k3/P7/8/8/8/8/8/4K3 w - - 0 1", "b8", 2, "taken back, so it may as well be the knight that is won"),
        ("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "d5", 1, "en passant"),
        ("4k3/2p5/8/3pP3/8/8/8/4K3 w - d6 0 1", "d5", 0, "en passant, taken back"),
    ],
)
def test_what_captures_on_one_square_win(fen, square, expected, why):
    assert gain(fen, square) == expected, why


def test_the_captures_are_told_in_their_order():
    board = chess.Board("3rk3/8/8/3p4/8/8/3R4/3RK3 w - - 0 1")
    first, *_ = best_exchange(board, chess.D5).moves
    assert first.uci() == "d2d5"


def test_nobody_has_to_begin():
    assert best_exchange(chess.Board(), chess.E4).gain == 0
    assert best_exchange(chess.Board(), chess.E2).moves == ()


def test_a_move_into_an_attack_loses_what_it_costs():
    board = chess.Board("4k3/8/4p3/8/8/8/8/3QK3 w - - 0 1")
    assert exchange_after(board, chess.Move.from_uci("d1d5")) == -9
    assert exchange_after(board, chess.Move.from_uci("d1d4")) == 0


def test_the_board_is_left_as_it_was():
    board = chess.Board("3rk3/8/8/3p4/8/8/3R4/3RK3 w - - 0 1")
    fen = board.fen()
    best_exchange(board, chess.D5)
    assert board.fen() == fen


def test_piece_values_are_the_common_ones():
    assert {kind: PIECE_VALUES[kind] for kind in VALUES} == VALUES


@settings(max_examples=400, deadline=None)
@given(crowded())
def test_exchanges_agree_with_every_order_of_captures_played_out(board):
    if not board.is_valid():
        return
    for square in chess.SquareSet(board.occupied_co[chess.BLACK] & ~board.kings):
        exchange = best_exchange(board, square)
        assert exchange.gain == referee(board.copy(), square)
        played = board.copy()
        for move in exchange.moves:
            assert move in played.legal_moves
            played.push(move)
