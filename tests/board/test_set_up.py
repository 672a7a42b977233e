"""Positions set up by hand, and what is wrong with them in words, against python-chess's own judgement."""

from __future__ import annotations

import random
from dataclasses import replace

import chess
import pytest

from studyboard.board.set_up import (
    EMPTY,
    SetUp,
    SetUpError,
    board_of,
    fen_of,
    mirrored,
    possible_castling,
    possible_en_passant,
    problems,
    remarks,
    set_up_of,
    swapped,
    with_castling,
    with_move,
    with_piece,
    with_turn,
)

#: Black has just played d7-d5 and White's pawn on e5 may take it in passing.
PASSED = "rnbqkbnr/ppp1pppp/8/3pP3/8/8/PPPP1PPP/RNBQKBNR w KQkq d6 0 3"


@pytest.mark.parametrize("fen", [chess.STARTING_FEN, PASSED, "8/8/8/4k3/8/4K3/8/8 b - - 12 61"])
def test_a_position_is_read_and_written_as_it_was(fen: str) -> None:
    assert fen_of(set_up_of(f"  {fen} ")) == fen
    assert problems(set_up_of(fen)) == ()


def test_missing_fields_have_their_usual_values_and_rights_that_do_not_fit_are_left_out() -> None:
    assert fen_of(set_up_of("4k3/8/8/8/8/8/8/4K3")) == "4k3/8/8/8/8/8/8/4K3 w - - 0 1"
    assert fen_of(set_up_of("4k3/8/8/8/8/8/8/4K2R w KQkq e3 0 1")) == "4k3/8/8/8/8/8/8/4K2R w K - 0 1"


@pytest.mark.parametrize("text", ["", "knight f3", "9/8/8/8/8/8/8/8 w - - 0 1", "8/8/8/8 w - - 0 1"])
def test_a_text_that_is_no_position_says_so(text: str) -> None:
    with pytest.raises(SetUpError, match="position"):
        set_up_of(text)


def test_a_right_to_castle_goes_with_its_king_or_rook_and_does_not_come_back_by_itself() -> None:
    start = SetUp()
    without = with_piece(start, chess.H1, None)
    assert without.castling == "Qkq"
    again = with_piece(without, chess.H1, chess.Piece.from_symbol("R"))
    assert again.castling == "Qkq"
    assert possible_castling(again) == "KQkq"
    assert with_castling(again, "K", True) == start
    assert with_move(start, chess.E8, chess.E6).castling == "KQ"
    assert with_castling(without, "K", True) == without


def test_a_pawn_that_has_passed_is_offered_only_where_it_could_be_taken() -> None:
    passed = set_up_of(PASSED)
    assert possible_en_passant(passed) == (chess.D6,)
    assert possible_en_passant(SetUp()) == ()
    assert with_turn(passed, chess.BLACK).en_passant is None
    assert with_piece(passed, chess.E5, None).en_passant is None


def test_colours_exchanged_twice_and_mirrored_twice_are_the_same_but_for_castling() -> None:
    passed = set_up_of(PASSED)
    assert swapped(swapped(passed)) == passed
    assert fen_of(swapped(passed)) == "rnbqkbnr/pppp1ppp/8/8/3Pp3/8/PPP1PPPP/RNBQKBNR b KQkq d3 0 3"
    turned = mirrored(passed)
    assert turned.castling == ""
    assert turned.en_passant == chess.E6
    assert mirrored(turned) == replace(passed, castling="")


@pytest.mark.parametrize(
    ("fen", "words"),
    [
        ("8/8/8/8/8/8/8/8 w - - 0 1", "The board is empty: put two kings on it to begin with."),
        ("8/8/8/8/8/8/8/4K3 w - - 0 1", "Black has no king."),
        ("k6k/8/8/8/8/8/8/4K3 w - - 0 1", "Black has two kings, on a8 and h8: leave one."),
        ("4k3/pppppppp/7p/8/8/8/8/4K3 w - - 0 1", "Black has nine pawns: eight are the most."),
        ("4k3/8/8/8/QQQQQQQQ/QQQQQQQQ/8/4K3 b - - 0 1", "White has 17 pieces: sixteen are the most."),
        (
            "P3k3/8/8/8/8/8/8/4K2p w - - 0 1",
            "No pawn can stand on the first or the last rank: take it away from h1 and a8.",
        ),
        (
            "4k2R/8/8/8/8/8/8/4K3 w - - 0 1",
            "Black is in check from the rook on h8, and it is White's move: let Black move, or end the check.",
        ),
        (
            "4k2R/8/3N4/1B6/8/8/8/4K3 b - - 0 1",
            "Black is in check from the bishop on b5, the knight on d6 and the rook on h8: "
            "two pieces are the most that one move can let give check.",
        ),
    ],
)
def test_what_is_wrong_is_told_in_words(fen: str, words: str) -> None:
    assert words in problems(set_up_of(fen))


def test_what_ends_the_game_is_remarked_and_allowed() -> None:
    mated = set_up_of("R5k1/5ppp/8/8/8/8/8/6K1 b - - 0 1")
    assert problems(mated) == ()
    assert remarks(mated) == ("Black is checkmated: no move can be played.",)
    assert remarks(set_up_of("4k3/8/8/8/8/8/PPPPPPPP/QQ2K3 w - - 0 1")) == (
        "White has more pieces than its missing pawns can have become; no game leads here.",
    )
    assert remarks(SetUp()) == ()
    assert remarks(EMPTY) == ()


def test_there_is_a_problem_exactly_where_python_chess_sees_one() -> None:
    chance = random.Random(11)
    wrong = 0
    for _ in range(3000):
        board = chess.BaseBoard.empty()
        for piece in "KkKk"[: chance.choice((2, 2, 2, 2, 3, 1))]:
            board.set_piece_at(chance.randrange(64), chess.Piece.from_symbol(piece))
        for _ in range(chance.randrange(12)):
            board.set_piece_at(chance.randrange(64), chess.Piece.from_symbol(chance.choice("QRBNPPqrbnpp")))
        set_up = SetUp(board.board_fen(), chance.random() < 0.5, "")
        assert bool(problems(set_up)) != board_of(set_up).is_valid(), fen_of(set_up)
        wrong += bool(problems(set_up))
    assert 500 < wrong < 2800
