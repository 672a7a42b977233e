import chess
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.board.exchange import PIECE_VALUES
from studyboard.board.facts import FactKind, costly_pins, facts, hanging, pins


def words(fen: str, kind: FactKind) -> list[str]:
    return [fact.words for fact in facts(chess.Board(fen)) if fact.kind is kind]


@st.composite
def positions(draw: st.DrawFn) -> chess.Board:
    """Positions reached from the start by up to eighty random legal moves."""
    board = chess.Board()
    for choice in draw(st.lists(st.integers(0, 10_000), min_size=10, max_size=80)):
        moves = list(board.legal_moves)
        if not moves:
            break
        board.push(moves[choice % len(moves)])
    return board


def test_a_rook_that_nothing_protects_hangs():
    fen = "r1bq1rk1/5ppp/p1pb4/1p1nR3/8/1BP5/PP3PPP/RNBQ2K1 w - - 0 15"
    assert "The rook on e5 hangs: the bishop on d6 takes it and nothing protects it." in words(fen, FactKind.HANGS)


def test_a_protected_rook_attacked_by_a_bishop_is_lost_for_less():
    fen = "4k3/8/3b4/4R3/3P4/8/8/4K3 w - - 0 1"
    assert words(fen, FactKind.HANGS) == [
        "The bishop on d6 can take the rook on e5 with profit: White loses 2 points although it is protected."
    ]


def test_a_protected_piece_attacked_by_its_like_does_not_hang():
    assert words("4k3/2p5/3n4/8/4N3/3P4/8/4K3 b - - 0 1", FactKind.HANGS) == []


def test_a_protector_that_is_pinned_protects_nothing():
    fen = "4k3/8/5n2/8/1b2P3/2N5/1P6/4K3 b - - 0 1"
    assert words(fen, FactKind.PINNED) == ["The knight on c3 is pinned to its king by the bishop on b4."]
    assert words(fen, FactKind.HANGS) == ["The pawn on e4 hangs: the knight on f6 takes it and nothing protects it."]


def test_a_pin_names_the_pinner_and_not_the_piece_behind_it():
    fen = "4r2k/4q3/8/8/8/8/4N3/4K3 w - - 0 1"
    assert words(fen, FactKind.PINNED) == ["The knight on e2 is pinned to its king by the queen on e7."]


def after(moves: str) -> str:
    """The position after these moves from the start, as FEN."""
    board = chess.Board()
    for san in moves.split():
        board.push_san(san)
    return board.fen()


def test_a_knight_before_its_queen_is_told_to_be_pinned():
    fen = after("d4 d5 c4 e6 Nc3 Nf6 Bg5")
    assert words(fen, FactKind.PINNED) == ["The knight on f6 is pinned to the queen on d8 by the bishop on g5."]
    (pinned,) = [fact for fact in facts(chess.Board(fen)) if fact.kind is FactKind.PINNED]
    assert pinned.squares == (chess.F6, chess.G5, chess.D8)
    assert words(after("d4 d5 c4 e6 Nc3 Nf6 Bg5 Be7"), FactKind.PINNED) == []


@pytest.mark.parametrize(
    ("fen", "why"),
    [
        ("3rr1k1/8/8/4n3/8/8/8/4RRK1 w - - 0 1", "the rook behind is guarded, and a rook takes it"),
        ("4q1k1/8/8/4r3/8/8/8/4R1K1 b - - 0 1", "the rook in front can take the one that pins it"),
        ("4n1k1/8/8/4n3/8/8/8/4R1K1 w - - 0 1", "what stands behind is worth no more"),
        ("3q2k1/4n3/5n2/6B1/8/8/8/6K1 w - - 0 1", "two pieces stand before the queen"),
        ("3q2k1/8/4Nn2/6B1/8/8/8/6K1 w - - 0 1", "the queen can be taken as it is"),
    ],
)
def test_a_piece_that_may_leave_its_line_at_no_price_is_not_told_to_be_pinned(fen, why):
    assert words(fen, FactKind.PINNED) == [], why


def test_a_piece_that_is_pinned_to_its_king_is_told_once():
    fen = "3q3k/8/5n2/6B1/3B4/8/8/6K1 b - - 0 1"
    assert words(fen, FactKind.PINNED) == ["The knight on f6 is pinned to its king by the bishop on d4."]


def test_two_pieces_on_the_line_are_not_pinned():
    assert words("4r2k/8/8/8/4P3/8/4N3/4K3 w - - 0 1", FactKind.PINNED) == []


def test_a_check_names_who_gives_it():
    assert words("4k3/8/8/8/8/8/8/4R1K1 b - - 0 1", FactKind.CHECK) == ["Black is in check from the rook on e1."]
    double = "4k3/8/3N4/8/8/8/8/4R1K1 b - - 0 1"
    assert words(double, FactKind.CHECK) == ["Black is in double check from the rook on e1 and the knight on d6."]


def test_mate_is_told_instead_of_check():
    fen = "6rk/5Npp/8/8/8/8/6PP/6K1 b - - 0 2"
    assert words(fen, FactKind.END) == ["Black is checkmated."]
    assert words(fen, FactKind.CHECK) == []


@pytest.mark.parametrize(
    ("fen", "said"),
    [
        ("7k/5Q2/6K1/8/8/8/8/8 b - - 0 1", "Black is stalemated: the game is drawn."),
        ("7k/8/6K1/8/8/8/8/7B b - - 0 1", "Neither side can give mate any more: the game is drawn."),
    ],
)
def test_drawn_endings_are_told(fen, said):
    assert words(fen, FactKind.END) == [said]


def test_while_in_check_a_sides_other_pieces_are_not_judged():
    free = chess.Board("4k3/8/8/1b6/N7/8/8/4K3 w - - 0 1")
    checked = chess.Board("4r1k1/8/8/1b6/N7/8/8/4K3 w - - 0 1")
    assert [hang.square for hang in hanging(free)] == [chess.A4]
    assert hanging(checked) == ()


def test_the_start_position_has_only_its_material_to_tell():
    assert [fact.words for fact in facts(chess.Board())] == ["Material is level."]


def test_a_position_without_kings_is_told_without_complaint():
    board = chess.Board(None)
    board.set_piece_at(chess.E5, chess.Piece.from_symbol("R"))
    assert [fact.words for fact in facts(board)] == ["White is a rook up."]


@settings(deadline=None, max_examples=150)
@given(positions())
def test_pins_are_the_pieces_whose_removal_opens_a_check(board):
    expected = set()
    for colour in chess.COLORS:
        king = board.king(colour)
        before = board.attackers_mask(not colour, king)
        for square in chess.SquareSet(board.occupied_co[colour] & ~board.kings):
            without = board.copy()
            without.remove_piece_at(square)
            opened = without.attackers_mask(not colour, king) & ~before
            expected.update((square, by, king) for by in chess.SquareSet(opened))
    assert {(pin.square, pin.by, pin.king) for pin in pins(board)} == expected


@settings(deadline=None, max_examples=150)
@given(positions())
def test_leaving_a_costly_pin_lets_the_pinner_take_something_dearer(board):
    for pin in costly_pins(board):
        front, behind = board.piece_at(pin.front), board.piece_at(pin.behind)
        assert front.color == behind.color != board.color_at(pin.by)
        assert PIECE_VALUES[front.piece_type] < PIECE_VALUES[behind.piece_type] < PIECE_VALUES[chess.KING]
        assert pin.behind not in board.attacks(pin.by)
        board.remove_piece_at(pin.front)
        assert pin.behind in board.attacks(pin.by)
        board.set_piece_at(pin.front, front)


@settings(deadline=None, max_examples=150)
@given(positions())
def test_what_is_told_to_hang_can_be_taken(board):
    for hang in hanging(board):
        taking = board.copy()
        if board.color_at(hang.square) == board.turn:
            taking.push(chess.Move.null())
        captures = [move for move in taking.legal_moves if move.from_square == hang.by and taking.is_capture(move)]
        assert captures
        on_it = [move for move in captures if move.to_square == hang.square]
        if on_it:
            taking.push(on_it[0])
            can_take_back = any(move.to_square == hang.square for move in taking.legal_moves)
            assert hang.protected == can_take_back
