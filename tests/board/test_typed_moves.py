"""Moves as people type them: the notation of the game in its spellings, squares, and words."""

from __future__ import annotations

import chess
import pytest
from hypothesis import given

from studyboard.board.typed_moves import MoveNotReadError, read_move
from tests.board.test_moves import CASTLING, positions

KNIGHTS = "4k3/8/8/8/8/5N2/8/1N2K2R w K - 0 1"
PROMOTION = "3r4/4P1k1/8/8/8/8/8/4K3 w - - 0 1"


@given(positions())
def test_every_legal_move_is_read_in_every_spelling(board):
    for move in board.legal_moves:
        san = board.san(move)
        assert read_move(board, san) == move
        assert read_move(board, move.uci()) == move
        assert read_move(board, f"{board.fullmove_number}. {san}") == move
        assert read_move(board, san.replace("O", "0")) == move


@pytest.mark.parametrize(
    ("fen", "typed", "uci"),
    [
        (chess.STARTING_FEN, "nf3", "g1f3"),
        (chess.STARTING_FEN, "12... Nf3!?", "g1f3"),
        (chess.STARTING_FEN, "e2-e4", "e2e4"),
        ("4k3/8/8/8/8/2p5/1B6/4K3 w - - 0 1", "bxc3", "b2c3"),
        ("4k3/8/8/8/8/2p5/1P6/4K2B w - - 0 1", "bxc3", "b2c3"),
        (CASTLING, "0-0-0", "e1c1"),
        (CASTLING, "o-o", "e1g1"),
        ("8/4P3/8/8/8/k7/8/K7 w - - 0 1", "e8N", "e7e8n"),
    ],
)
def test_moves_are_read_as_people_type_them(fen, typed, uci):
    assert read_move(chess.Board(fen), typed).uci() == uci


@pytest.mark.parametrize(
    ("fen", "typed", "reason"),
    [
        (chess.STARTING_FEN, "", "Type a move, such as Nf3 or g1f3."),
        (chess.STARTING_FEN, "hello", "“hello” is not a move. Type one such as Nf3, exd5, O-O or g1f3."),
        (chess.STARTING_FEN, "Nf6", "No white knight can go to f6."),
        (chess.STARTING_FEN, "O-O", "White cannot castle kingside here."),
        (chess.STARTING_FEN, "e7e5", "It is White's move; the piece on e7 is Black's."),
        (chess.STARTING_FEN, "e4e5", "There is no piece on e4."),
        (chess.STARTING_FEN, "g1g3", "The knight on g1 cannot go to g3."),
        ("8/4P3/8/8/8/k7/8/K7 w - - 0 1", "e8", "The pawn promotes on e8: say to what, as in e8=Q."),
        ("8/4P3/8/8/8/k7/8/K7 w - - 0 1", "e7e8", "The pawn promotes on e8: say to what, as in e7e8q."),
        ("8/4P3/8/8/8/k7/8/K7 w - - 0 1", "Qe4", "White has no queen."),
        (
            "4k3/8/8/8/8/2N5/8/K1N5 w - - 0 1",
            "Ne2",
            "More than one knight can go to e2: say from c1 or c3, as in c1e2.",
        ),
        ("4r2k/8/8/8/8/8/4N3/4K3 w - - 0 1", "Nc3", "The knight cannot go to c3: the king would be in check."),
        ("4r2k/8/8/8/8/8/8/N3K3 w - - 0 1", "Nb3", "The knight cannot go to b3: the king is in check."),
        ("4r2k/8/8/8/8/8/4N3/4K3 w - - 0 1", "e2c3", "The knight on e2 cannot go to c3: the king would be in check."),
    ],
)
def test_a_move_that_cannot_be_played_is_refused_with_the_reason(fen, typed, reason):
    with pytest.raises(MoveNotReadError) as refused:
        read_move(chess.Board(fen), typed)
    assert str(refused.value) == reason


@given(positions())
def test_every_legal_move_is_read_in_words(board):
    for move in board.legal_moves:
        if board.is_castling(move):
            words = "castle kingside" if board.is_kingside_castling(move) else "castle queenside"
        else:
            piece = chess.piece_name(board.piece_type_at(move.from_square))
            doing = "takes on" if board.is_capture(move) else "to"
            words = f"{piece} from {chess.square_name(move.from_square)} {doing} {chess.square_name(move.to_square)}"
            if move.promotion:
                words += f" promotes to a {chess.piece_name(move.promotion)}"
        assert read_move(board, words) == move
        assert read_move(board, words.capitalize()) == move


@pytest.mark.parametrize(
    ("fen", "typed", "san"),
    [
        (chess.STARTING_FEN, "knight f3", "Nf3"),
        (chess.STARTING_FEN, "Knight to f 3", "Nf3"),
        (chess.STARTING_FEN, "pawn e4", "e4"),
        (chess.STARTING_FEN, "e2 e4", "e4"),
        (chess.STARTING_FEN, "\u2658f3", "Nf3"),
        (KNIGHTS, "knight b d2", "Nbd2"),
        (KNIGHTS, "castles", "O-O"),
        (KNIGHTS, "short castle", "O-O"),
        (KNIGHTS, "rook f1", "Rf1"),
        (PROMOTION, "e8q", "e8=Q"),
        (PROMOTION, "e takes d8 queen", "exd8=Q"),
        (PROMOTION, "e8 promotes to a rook", "e8=R"),
        (PROMOTION, "pawn takes rook knight", "exd8=N"),
        ("4k3/8/8/3p4/4P1b1/5N2/8/4K3 b - - 0 1", "bishop takes knight", "Bxf3"),
        ("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "pawn takes pawn", "exd6"),
    ],
)
def test_words_of_moves_are_read(fen, typed, san):
    board = chess.Board(fen)
    assert board.san(read_move(board, typed)) == san


@pytest.mark.parametrize(
    ("fen", "typed", "reason", "choices"),
    [
        (
            chess.STARTING_FEN,
            "Nf6",
            "No white knight can go to f6.",
            "The knight on b1 can go to a3 or c3; the knight on g1 to f3 or h3.",
        ),
        (
            chess.STARTING_FEN,
            "knight takes e5",
            "No white knight can take on e5.",
            "The knight on b1 can go to a3 or c3; the knight on g1 to f3 or h3.",
        ),
        (KNIGHTS, "knight d2", "More than one move fits: knight from b1 to d2 or knight from f3 to d2.", ""),
        (KNIGHTS, "Nd2", "More than one knight can go to d2: say from b1 or f3, as in b1d2.", ""),
        (
            KNIGHTS,
            "castle queenside",
            "White cannot castle queenside here.",
            "The king on e1 can go to d1, f1, g1, d2, e2 or f2.",
        ),
        (PROMOTION, "pawn to e8", "The pawn promotes on e8: say to what, as in “e8 queen”.", ""),
        (CASTLING, "castle", "Say to which side: castle kingside, or castle queenside.", ""),
        (chess.STARTING_FEN, "bishop b5", "No white bishop can go to b5.", ""),
    ],
)
def test_what_could_be_played_instead_is_told_in_words(fen, typed, reason, choices):
    with pytest.raises(MoveNotReadError) as refused:
        read_move(chess.Board(fen), typed)
    assert (str(refused.value), refused.value.choices) == (reason, choices)


@pytest.mark.parametrize("typed", ["hello knight", "the", "Sf3", "queenside", "a b c d", "e2 e4 e5 now"])
def test_what_is_no_move_in_words_is_none(typed):
    with pytest.raises(MoveNotReadError):
        read_move(chess.Board(), typed)
