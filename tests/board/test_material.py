import chess
import pytest

from studyboard.board.material import material_words


def board_of(white: str, black: str) -> chess.Board:
    """A board with these pieces anywhere, besides the kings."""
    board = chess.Board(None)
    board.set_piece_at(chess.E1, chess.Piece.from_symbol("K"))
    board.set_piece_at(chess.E8, chess.Piece.from_symbol("k"))
    free = [square for square in chess.SQUARES if 8 <= square < 56]
    for letter in white.upper():
        board.set_piece_at(free.pop(0), chess.Piece.from_symbol(letter))
    for letter in black.lower():
        board.set_piece_at(free.pop(), chess.Piece.from_symbol(letter))
    return board


@pytest.mark.parametrize(
    ("white", "black", "words"),
    [
        ("", "", "Material is level."),
        ("RNP", "RNP", "Material is level."),
        ("P", "", "White is a pawn up."),
        ("P", "PPP", "Black is two pawns up."),
        ("NP", "", "White is a knight and a pawn up."),
        ("QRP", "RP", "White is a queen up."),
        ("QRBP", "", "White is a queen, a rook, a bishop and a pawn up."),
        ("R", "B", "White is the exchange up."),
        ("N", "R", "Black is the exchange up."),
        ("RP", "N", "White is the exchange and a pawn up."),
        ("R", "NP", "White has the exchange for a pawn."),
        ("BPP", "R", "Black has the exchange for two pawns."),
        ("R", "BN", "White has a rook for a bishop and a knight (5 points to 6)."),
        ("BN", "RP", "Black has a rook and a pawn for a bishop and a knight (6 points to 6)."),
        ("Q", "RR", "White has a queen for two rooks (9 points to 10)."),
        ("N", "PPP", "White has a knight for three pawns (3 points to 3)."),
        ("B", "N", "Material is level: White has a bishop for a knight."),
        ("N", "B", "Material is level: Black has a bishop for a knight."),
        ("BB", "NN", "White has two bishops for two knights (6 points to 6)."),
        ("QQ", "", "White is two queens up."),
    ],
)
def test_material_is_told_as_people_say_it(white, black, words):
    assert material_words(board_of(white, black)) == words


def test_it_is_told_alike_with_colours_exchanged():
    for white, black in [("P", ""), ("R", "BN"), ("RP", "N"), ("B", "N"), ("Q", "RR"), ("N", "PPP"), ("RP", "BN")]:
        told = material_words(board_of(white, black))
        mirrored = material_words(board_of(black, white))
        swapped = told.replace("White", "?").replace("Black", "White").replace("?", "Black")
        assert mirrored == swapped
