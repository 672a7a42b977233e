"""What one may ask of a position, checked against positions that can be counted by hand."""

from __future__ import annotations

import chess
import pytest

from studyboard.board.on_demand import Answer, Aspect, move_answers, square_answers

#: White: king g1, queen d1, knights f3 and c3; Black: king g8, bishop b4, pawn e5.
KNIGHTS = "6k1/8/8/4p3/1b6/2N2N2/8/3Q2K1 w - - 0 1"


def of(answers: tuple[Answer, ...], aspect: Aspect) -> Answer:
    (found,) = [answer for answer in answers if answer.aspect is aspect]
    return found


def names(answer: Answer) -> set[str]:
    return {chess.square_name(square) for square in answer.squares}


def test_a_piece_attacks_covers_and_guards_what_it_reaches() -> None:
    answers = square_answers(chess.Board(KNIGHTS), chess.F3)
    assert answers[0] == Answer(Aspect.SUBJECT, "White's knight on f3.", (chess.F3,))
    assert names(of(answers, Aspect.ATTACKS)) == {"e5", "e1", "d2", "h2", "d4", "h4", "g5"}
    assert of(answers, Aspect.ATTACKS).words.startswith("It attacks the pawn on e5, and covers e1, d2, ")
    assert of(answers, Aspect.GUARDS) == Answer(Aspect.GUARDS, "It guards the king on g1.", (chess.G1,))


def test_who_attacks_and_who_guards_a_piece() -> None:
    answers = square_answers(chess.Board(KNIGHTS), chess.C3)
    assert of(answers, Aspect.ATTACKED_BY) == Answer(
        Aspect.ATTACKED_BY, "It is attacked by the bishop on b4.", (chess.B4,)
    )
    assert of(answers, Aspect.GUARDED_BY) == Answer(Aspect.GUARDED_BY, "It is not guarded.", ())


def test_safe_squares_leave_out_those_where_it_is_lost() -> None:
    # The knight on e4 is free to go to g5, c5 and the rest, but the pawn on e7 takes on d6 and f6.
    board = chess.Board("6k1/4p3/8/8/4N3/8/8/6K1 w - - 0 1")
    safe = of(square_answers(board, chess.E4), Aspect.SAFE)
    assert names(safe) == {"c3", "c5", "d2", "f2", "g3", "g5"}
    assert safe.words == "It can safely go to d2, f2, c3, g3, c5 and g5."


def test_a_pin_is_told_with_the_piece() -> None:
    board = chess.Board("4k3/8/8/8/1b6/2N5/8/4K3 w - - 0 1")
    assert square_answers(board, chess.C3)[0].words == "White's knight on c3, which is pinned to its king."


def test_of_an_empty_square_both_sides_are_told() -> None:
    answers = square_answers(chess.Board(KNIGHTS), chess.D5)
    assert [answer.words for answer in answers] == [
        "d5 is empty.",
        "White covers it with the knight on c3 and the queen on d1.",
        "Black does not cover it.",
    ]
    assert names(of(answers, Aspect.GUARDED_BY)) == {"c3", "d1"}


def test_what_a_move_covers_and_gives_up() -> None:
    board = chess.Board("6k1/8/8/8/8/5N2/8/6K1 w - - 0 1")
    answers = move_answers(board, chess.Move.from_uci("f3g5"))
    assert answers[0].words == "White's knight has gone from f3 to g5."
    assert names(of(answers, Aspect.COVERED)) == {"e4", "e6", "f3", "f7", "h3", "h7"}
    assert names(of(answers, Aspect.GIVEN_UP)) == {"d2", "d4", "e1", "e5", "g1", "h4"}


def test_a_line_that_opens_is_told_with_its_end() -> None:
    answers = move_answers(chess.Board(), chess.Move.from_uci("e2e4"))
    opened = of(answers, Aspect.OPENED)
    assert set(opened.lines) == {(chess.F1, chess.A6), (chess.D1, chess.H5)}
    assert opened.words == (
        "Lines have opened: the queen on d1 sees as far as h5 and the bishop on f1 sees as far as a6."
    )


def test_what_hangs_only_since_the_move() -> None:
    # The bishop takes on h5 and leaves the knight that it guarded.
    board = chess.Board("3r2k1/8/8/7p/8/3N4/4B3/6K1 w - - 0 1")
    answers = move_answers(board, chess.Move.from_uci("e2h5"))
    assert names(of(answers, Aspect.HANGS)) == {"d3"}


def test_castling_and_passing_are_told_as_such() -> None:
    board = chess.Board("4k3/8/8/8/8/8/8/4K2R w K - 0 1")
    castled = move_answers(board, chess.Move.from_uci("e1g1"))
    assert castled[0] == Answer(Aspect.SUBJECT, "White has castled kingside.", (chess.G1, chess.E1))
    assert "f8" in names(of(castled, Aspect.COVERED))
    assert move_answers(board, chess.Move.null())[0].words.startswith("White has passed")


@pytest.mark.parametrize(
    "fen", [chess.STARTING_FEN, KNIGHTS, "r1bqk2r/ppp2ppp/2n2n2/2bpp1N1/2B1P3/3P4/PPP2PPP/RNBQK2R w KQkq - 0 6"]
)
def test_attacked_squares_are_those_of_plain_counting(fen: str) -> None:
    board = chess.Board(fen)
    for square, piece in board.piece_map().items():
        answers = square_answers(board, square)
        reached = {at for at in chess.SQUARES if square in board.attackers(piece.color, at)}
        told = {*of(answers, Aspect.ATTACKS).squares, *of(answers, Aspect.GUARDS).squares}
        assert told == reached
