"""Written moves, squares and numbers as a presenter says them."""

from __future__ import annotations

import re

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.notation.spoken import describe_move, speak_move, speak_number, speak_text


@pytest.mark.parametrize(
    ("san", "said"),
    [
        ("Nf3", "knight f three"),
        ("exd5", "e takes d five"),
        ("f3", "f three"),
        ("O-O", "castles"),
        ("O-O-O", "castles long"),
        ("O-O-O+", "castles long check"),
        ("Qh7#", "queen h seven mate"),
        ("Qxh7+", "queen takes h seven check"),
        ("Rfc1", "rook f c one"),
        ("R1xc3", "rook one takes c three"),
        ("Qa1xb2", "queen a one takes b two"),
        ("e8=Q", "e eight promotes to a queen"),
        ("dxe8=N+", "d takes e eight promotes to a knight check"),
        ("Bb5!?", "bishop b five"),
        ("Qxf7#!!", "queen takes f seven mate"),
        ("hello", "hello"),
        ("", ""),
    ],
)
def test_a_move_is_said_in_words(san, said):
    assert speak_move(san) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("He plays Nf3, then e5.", "He plays knight f three, then e five."),
        ("15...Bd6 and 16.Qe2!", "bishop d six and queen e two"),
        ("after 15... of course", "after  of course"),
        ("the d-file, the d5-square, e5's fate", "the d-file, the d five-square, e five's fate"),
        ("the a1-h8 diagonal", "the a one-h eight diagonal"),
        ("(Nf3) “Qh7#” [e4]", "(knight f three) “queen h seven mate” [e four]"),
        ("exd6 e.p. at once", "e takes d six en passant at once"),
        ("1-0, or was it 1/2-1/2?", "one nil, or was it draw?"),
        ("in 1850 and 1905", "in eighteen fifty and nineteen oh five"),
        ("in 2000, 2005, 2019", "in two thousand, two thousand and five, twenty nineteen"),
        ("rated 2350, 2400", "rated twenty-three fifty, twenty-four hundred"),
        ("1,850 people", "one thousand eight hundred and fifty people"),
        ("24 moves, 4½ points, ½ more", "twenty-four moves, four and a half points, a half more"),
        ("the 21st, 20th and 12th", "the twenty-first, twentieth and twelfth"),
        ("the 1850s", "the eighteen fifties"),
        ("50% or 7 %", "fifty percent or seven percent"),
        ("+1.5 or -0.25", "plus one point five or minus zero point two five"),
        ("10–15 minutes", "ten to fifteen minutes"),
        ("5-4 at 19:30", "five four at nineteen thirty"),
        ("room 007", "room zero zero seven"),
        ("a 3D set", "a three D set"),
        ("A4 paper and an mp3", "A4 paper and an mp3"),
        ("That was move 10.", "That was move ten."),
        ("A plain sentence; a second one – with a dash.", "A plain sentence; a second one – with a dash."),
    ],
)
def test_a_line_is_said_with_its_moves_and_numbers_in_words(written, said):
    assert speak_text(written) == said


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (0, "zero"), (7, "seven"), (19, "nineteen"), (20, "twenty"), (42, "forty-two"), (100, "one hundred"),
        (101, "one hundred and one"), (999, "nine hundred and ninety-nine"), (1000, "one thousand"),
        (1066, "one thousand and sixty-six"), (3000, "three thousand"), (12_045, "twelve thousand and forty-five"),
        (1_000_000, "one million"), (2_000_003, "two million and three"), (-5, "minus five"),
        (1_000_000_000, "one zero zero zero zero zero zero zero zero zero"),
    ],
)  # fmt: skip
def test_whole_numbers_are_said_in_words(number, said):
    assert speak_number(number) == said


@given(st.integers(0, 10**10))
def test_different_numbers_are_said_differently(number):
    assert speak_number(number) != speak_number(number + 1)


@given(st.text())
def test_any_text_can_be_said_and_no_western_figure_stays_unsaid_between_spaces(text):
    said = speak_text(text)
    assert not re.search(r"(?<!\S)[0-9]+(?!\S)", said)


def test_a_number_of_thousands_of_figures_is_said_figure_by_figure():
    assert speak_text("9" * 5_000).split() == ["nine"] * 5_000


@given(st.integers(0, 1 << 30), st.integers(0, 60))
def test_every_move_of_a_game_is_said_without_figures_or_signs(seed, plies):
    board = chess.Board()
    for number in range(plies):
        moves = list(board.legal_moves)
        if not moves:
            break
        move = moves[(seed >> number % 20) % len(moves)]
        assert re.fullmatch(r"[a-z ]+", speak_move(board.san(move)))
        assert speak_text(board.san(move)) == speak_move(board.san(move))
        board.push(move)


@pytest.mark.parametrize(
    ("fen", "uci", "said"),
    [
        (chess.STARTING_FEN, "g1f3", "white knight from g1 to f3"),
        ("4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1", "e4d5", "white pawn from e4 takes the pawn on d5"),
        ("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "e5d6", "white pawn from e5 takes the pawn in passing, to d6"),
        ("4k3/8/8/8/8/8/8/4K2R w K - 0 1", "e1g1", "white castles kingside"),
        ("r3k3/8/8/8/8/8/8/4K3 b q - 0 1", "e8c8", "black castles queenside"),
        ("8/P6k/8/8/8/8/8/K7 w - - 0 1", "a7a8q", "white pawn from a7 to a8, promotes to a queen"),
        ("1n6/P6k/8/8/8/8/8/K7 w - - 0 1", "a7b8r", "white pawn from a7 takes the knight on b8, promotes to a rook"),
        ("6k1/5ppp/8/8/8/8/8/K2R4 w - - 0 1", "d1d8", "white rook from d1 to d8, checkmate"),
        (chess.STARTING_FEN, "0000", "white passes the turn"),
    ],
)  # fmt: skip
def test_a_screen_reader_is_told_the_whole_move(fen, uci, said):
    assert describe_move(chess.Board(fen), chess.Move.from_uci(uci)) == said
