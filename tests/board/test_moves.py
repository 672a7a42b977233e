import chess
from hypothesis import given
from hypothesis import strategies as st

from studyboard.board.moves import (
    Slide,
    can_move,
    captured_square,
    landing_square,
    legal_targets,
    moves_between,
    rearrangement_between,
    rearrangement_of,
)

CASTLING = "r3k2r/pppppppp/8/8/8/8/PPPPPPPP/R3K2R w KQkq - 0 1"


def squares(names: str) -> frozenset[int]:
    return frozenset(chess.parse_square(name) for name in names.split())


@st.composite
def positions(draw: st.DrawFn) -> chess.Board:
    """Positions reached from the start by up to sixty random legal moves."""
    board = chess.Board()
    for choice in draw(st.lists(st.integers(0, 10_000), max_size=60)):
        moves = list(board.legal_moves)
        if not moves:
            break
        board.push(moves[choice % len(moves)])
    return board


def test_a_knight_in_its_corner_has_two_targets():
    assert legal_targets(chess.Board(), chess.G1) == squares("f3 h3")


def test_a_pinned_piece_stays_on_its_line():
    board = chess.Board("4r2k/8/8/8/8/8/4R3/4K3 w - - 0 1")
    assert legal_targets(board, chess.E2) == squares("e3 e4 e5 e6 e7 e8")


def test_the_other_sides_pieces_have_no_targets():
    assert not can_move(chess.Board(), chess.E7)
    assert legal_targets(chess.Board(), chess.E7) == frozenset()


def test_castling_is_shown_where_the_king_lands():
    assert squares("g1 c1") <= legal_targets(chess.Board(CASTLING), chess.E1)


def test_a_king_put_on_its_rook_castles_too():
    board = chess.Board(CASTLING)
    assert moves_between(board, chess.E1, chess.H1) == (chess.Move.from_uci("e1g1"),)
    assert moves_between(board, chess.E1, chess.G1) == (chess.Move.from_uci("e1g1"),)


def test_castling_from_a_shuffled_start_lands_on_the_usual_squares():
    board = chess.Board("1k5r/8/8/8/8/8/8/1K3R2 w F - 0 1", chess960=True)
    (move,) = moves_between(board, chess.B1, chess.G1)
    assert landing_square(board, move) == chess.G1
    assert {(s.origin, s.destination) for s in rearrangement_of(board, move).slides} == {
        (chess.B1, chess.G1),
        (chess.F1, chess.F1),
    }


def test_a_pawn_that_promotes_has_four_moves_queen_first():
    board = chess.Board("8/4P3/8/8/8/k7/8/K7 w - - 0 1")
    assert [move.uci() for move in moves_between(board, chess.E7, chess.E8)] == ["e7e8q", "e7e8r", "e7e8b", "e7e8n"]


def test_en_passant_takes_the_pawn_beside():
    board = chess.Board("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1")
    move = chess.Move.from_uci("e5d6")
    assert captured_square(board, move) == chess.D5
    assert rearrangement_of(board, move).gone == (chess.D5,)


def test_castling_moves_king_and_rook():
    slides = rearrangement_of(chess.Board(CASTLING), chess.Move.from_uci("e1c1")).slides
    assert slides == (
        Slide(chess.Piece.from_symbol("K"), chess.E1, chess.C1),
        Slide(chess.Piece.from_symbol("R"), chess.A1, chess.D1),
    )


def test_passing_the_turn_moves_nothing():
    assert not rearrangement_of(chess.Board(), chess.Move.null())


def test_a_pawn_comes_from_its_own_file_rather_than_from_beside():
    before = chess.Board("4k3/8/8/8/8/8/2P5/4K3 w - - 0 1")
    after = chess.Board("4k3/8/8/8/8/2P5/3P4/4K3 w - - 0 1")
    change = rearrangement_between(before, after)
    assert [(slide.origin, slide.destination) for slide in change.slides] == [(chess.C2, chess.C3)]
    assert change.come == (chess.D2,)


@given(positions(), positions())
def test_a_rearrangement_leads_from_one_position_to_the_other(before, after):
    change = rearrangement_between(before, after)
    pieces = before.piece_map()
    for slide in change.slides:
        assert pieces.pop(slide.origin) == slide.piece
    for square in change.gone:
        pieces.pop(square)
    for slide in change.slides:
        pieces[slide.destination] = slide.piece
    for square in change.come:
        pieces[square] = after.piece_map()[square]
    assert pieces == after.piece_map()


@given(positions())
def test_targets_and_moves_agree_with_the_rules(board):
    seen = set()
    for square in chess.SQUARES:
        for target in legal_targets(board, square):
            moves = moves_between(board, square, target)
            assert moves
            seen.update(moves)
    assert seen == set(board.legal_moves)
