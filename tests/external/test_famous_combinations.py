"""Mates, traps and double attacks of published games and textbooks come out as everybody knows them.

The games and traps are from memory; that they are legal, and that the mates are the shortest and have one first move,
the program shows.
"""

import chess
import pytest

from studyboard.board.facts import hanging, pins
from studyboard.board.forced_wins import forced_win
from studyboard.board.lines import uncovered
from studyboard.board.mates import mate_in, mate_words, mating_moves
from studyboard.board.tactics import forks, trapped, trapped_words


def after(moves):
    board = chess.Board()
    for san in moves.split():
        board.push_san(san)
    return board


OPERA = (
    "e4 e5 Nf3 d6 d4 Bg4 dxe5 Bxf3 Qxf3 dxe5 Bc4 Nf6 Qb3 Qe7 Nc3 c6 Bg5 b5 Nxb5 cxb5 Bxb5+ Nbd7 O-O-O Rd8 Rxd7 Rxd7 Rd1"
)
IMMORTAL = (
    "e4 e5 f4 exf4 Bc4 Qh4+ Kf1 b5 Bxb5 Nf6 Nf3 Qh6 d3 Nh5 Nh4 Qg5 Nf5 c6 g4 Nf6 Rg1 cxb5 h4 Qg6 h5 Qg5 Qf3 Ng8 Bxf4 "
    "Qf6 Nc3 Bc5 Nd5 Qxb2 Bd6 Bxg1 e5 Qxa1+ Ke2 Na6"
)
EVERGREEN = (
    "e4 e5 Nf3 Nc6 Bc4 Bc5 b4 Bxb4 c3 Ba5 d4 exd4 O-O d3 Qb3 Qf6 e5 Qg6 Re1 Nge7 Ba3 b5 Qxb5 Rb8 Qa4 Bb6 Nbd2 Bb7 Ne4 "
    "Qf5 Bxd3 Qh5 Nf6+ gxf6 exf6 Rg8 Rad1 Qxf3 Rxe7+ Nxe7"
)
VIENNA_1910 = "e4 c6 d4 d5 Nc3 dxe4 Nxe4 Nf6 Qd3 e5 dxe5 Qa5+ Bd2 Qxe5 O-O-O Nxe4"
LONDON_1912 = "d4 e6 Nf3 f5 Nc3 Nf6 Bg5 Be7 Bxf6 Bxf6 e4 fxe4 Nxe4 b6 Ne5 O-O Bd3 Bb7 Qh5 Qe7"
NEW_YORK_1956 = (
    "Nf3 Nf6 c4 g6 Nc3 Bg7 d4 O-O Bf4 d5 Qb3 dxc4 Qxc4 c6 e4 Nbd7 Rd1 Nb6 Qc5 Bg4 Bg5 Na4 Qa3 Nxc3 bxc3 Nxe4 Bxe7 Qb6 "
    "Bc4 Nxc3 Bc5 Rfe8+ Kf1 Be6 Bxb6 Bxc4+ Kg1"
)
NEW_YORK_1956_END = (
    f"{NEW_YORK_1956} Ne2+ Kf1 Nxd4+ Kg1 Ne2+ Kf1 Nc3+ Kg1 axb6 Qb4 Ra4 Qxb6 Nxd1 h3 Rxa2 Kh2 Nxf2 Re1 Rxe1 Qd8+ Bf8 "
    "Nxe1 Bd5 Nf3 Ne4 Qb8 b5 h4 h5 Ne5 Kg7 Kg1 Bc5+ Kf1 Ng3+ Ke1"
)


@pytest.mark.parametrize(
    ("game", "moves", "mate"),
    [
        # Morphy against the Duke of Brunswick and Count Isouard, Paris 1858.
        (f"{OPERA} Qe6 Bxd7+ Nxd7", 2, "16. Qb8+ Nxb8 17. Rd8#"),
        # Anderssen against Kieseritzky, London 1851.
        (IMMORTAL, 3, "21. Nxg7+ Kd8 22. Qf6+"),
        # Réti against Tartakower, Vienna 1910.
        (VIENNA_1910, 3, "9. Qd8+ Kxd8 10. Bg5+"),
    ],
)
def test_the_mate_is_the_only_one_and_as_short_as_it_was_played(game, moves, mate):
    board = after(game)
    found = mate_in(board, moves)
    assert found.moves == moves
    assert mate in mate_words(board, found)
    assert len(mating_moves(board, moves)) == 1


@pytest.mark.parametrize(
    ("game", "most", "first", "moves"),
    [
        # Anderssen against Dufresne, Berlin 1852: 21.Qxd7+ Kxd7 22.Bf5+ Ke8 23.Bd7+ and 24.Bxe7#.
        (EVERGREEN, 4, "Qxd7+", 4),
        # Ed. Lasker against Thomas, London 1912, took eight moves from 11.Qxh7+; there is a mate in seven.
        (LONDON_1912, 8, "Qxh7+", 7),
        # D. Byrne against Fischer, New York 1956, took five moves from 37...Bb4+; 37...Re2+ mates in four.
        (NEW_YORK_1956_END, 5, "Re2+", 4),
    ],
)
def test_long_mates_are_found_by_checks_alone(game, most, first, moves):
    board = after(game)
    found = mate_in(board, most, checks_only=True)
    assert found.moves == moves
    assert board.san(found.line[0]) == first
    for move in found.line:
        assert board.is_legal(move)
        board.push(move)
    assert board.is_checkmate()


def test_in_the_opera_box_the_rook_is_pinned_and_the_knight_too():
    # After 14.Rd1 the bishop on b5 pins the rook on d7; annotators have said so ever since.
    assert {chess.square_name(pin.square) for pin in pins(after(OPERA))} == {"d7"}


def test_the_windmill_uncovers_the_bishop_with_every_knight_move():
    # D. Byrne against Fischer: 19...Ne2+ 20.Kf1 Nxd4+, check from the bishop on c4.
    board = after(f"{NEW_YORK_1956} Ne2+ Kf1")
    (line,) = [line for line in uncovered(board, board.parse_san("Nxd4")) if line.behind == chess.F1]
    assert (line.by, line.front) == (chess.C4, chess.E2)


def test_the_bishop_of_the_ruy_lopez_is_trapped_behind_its_pawns():
    # The Noah's Ark trap.
    board = after("e4 e5 Nf3 Nc6 Bb5 a6 Ba4 d6 d4 b5 Bb3 Nxd4 Nxd4 exd4 Qxd4 c5 Qd5 Be6 Qc6+ Bd7 Qd5 c4")
    (piece,) = trapped(board, chess.WHITE)
    assert piece.square == chess.B3
    assert "on c4 the pawn on b5 takes it" in trapped_words(board, piece)
    assert "on a4 the pawn on b5 takes it" in trapped_words(board, piece)


def test_the_knight_check_in_the_petroff_wins_the_queen():
    # 3...Nxe4 4.Qe2 Nf6 5.Nc6+: the check is uncovered, and the queen on d8 is attacked.
    board = after("e4 e5 Nf3 Nf6 Nxe5 Nxe4 Qe2 Nf6")
    win = forced_win(board, 1)
    assert board.san(win.line[0]) == "Nc6+"
    assert win.gain >= 6
    assert [line.by for line in uncovered(board, win.line[0])] == [chess.E2]


def test_the_pinned_knight_of_the_queens_gambit_takes_after_all():
    # The Elephant trap: 6.Nxd5 Nxd5 7.Bxd8 Bb4+ 8.Qd2 Bxd2+ 9.Kxd2 Kxd8, a knight for a pawn.
    board = after("d4 d5 c4 e6 Nc3 Nf6 Bg5 Nbd7 cxd5 exd5 Nxd5")
    win = forced_win(board, 3)
    assert board.san(win.line[0]) == "Nxd5"
    assert win.gain == 3


def test_the_fried_liver_knight_forks_queen_and_rook():
    # 1.e4 e5 2.Nf3 Nc6 3.Bc4 Nf6 4.Ng5 d5 5.exd5 Nxd5 6.Nxf7.
    board = after("e4 e5 Nf3 Nc6 Bc4 Nf6 Ng5 d5 exd5 Nxd5 Nxf7")
    (fork,) = forks(board, chess.WHITE)
    assert (fork.by, set(fork.targets)) == (chess.F7, {chess.D8, chess.H8})
    assert fork.taken_by == chess.E8
    assert chess.F7 in {hang.square for hang in hanging(board)}
