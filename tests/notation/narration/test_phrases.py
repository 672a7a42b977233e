"""Spoken moves are taken apart into what they demand of the move."""

from math import inf

import chess
import pytest

from studyboard.notation.narration.forms import Form
from studyboard.notation.narration.lexicon import lexicon
from studyboard.notation.narration.phrases import phrases_of
from studyboard.notation.narration.tokens import tokens_of
from studyboard.notation.narration.units import units_of


def forms(text: str) -> set[Form]:
    """What the phrases demand that take in the whole text."""
    words = lexicon("en")
    tokens = tokens_of(text)
    found = phrases_of(tokens, units_of(tokens, words), words)
    return {phrase.form for phrase in found[0] if phrase.end == len(tokens)}


@pytest.mark.parametrize(
    ("text", "form"),
    [
        ("knight to f3", Form(piece=chess.KNIGHT, to=chess.F3)),
        ("knight comes back to f3", Form(piece=chess.KNIGHT, to=chess.F3, back=True)),
        ("night f 3", Form(piece=chess.KNIGHT, to=chess.F3)),
        ("rook f to c1", Form(piece=chess.ROOK, from_file=5, to=chess.C1)),
        ("the f rook to c1"[4:], Form(piece=chess.ROOK, from_file=5, to=chess.C1)),
        ("knight from b1 to d2", Form(piece=chess.KNIGHT, from_square=chess.B1, to=chess.D2)),
        ("knight on f3 takes e5", Form(piece=chess.KNIGHT, from_square=chess.F3, to=chess.E5, capture=True)),
        ("h pawn to h5", Form(piece=chess.PAWN, from_file=7, to=chess.H5)),
        ("c takes d5", Form(piece=chess.PAWN, from_file=2, to=chess.D5, capture=True)),
        ("g takes", Form(piece=chess.PAWN, from_file=6, capture=True)),
        ("be four", Form(to=chess.B4, bare=True)),
        ("h for", Form(to=chess.H4, bare=True)),
        ("knight from b to d2", Form(piece=chess.KNIGHT, from_file=1, to=chess.D2)),
        ("rook from the f file goes to e1", Form(piece=chess.ROOK, from_file=5, to=chess.E1)),
        ("queen steps in front of the king, to e7", Form(piece=chess.QUEEN, to=chess.E7)),
        ("bishop drops in between the rooks on d8", Form(piece=chess.BISHOP, to=chess.D8)),
        ("c6 knight is taken by the bishop", Form(piece=chess.BISHOP, target=chess.KNIGHT, to=chess.C6, capture=True)),
        ("pawn on e5 is eaten by a rook", Form(piece=chess.ROOK, target=chess.PAWN, to=chess.E5, capture=True)),
        (
            "takes on e5 with the knight from c6",
            Form(piece=chess.KNIGHT, from_square=chess.C6, to=chess.E5, capture=True),
        ),
        ("ladies come off", Form(piece=chess.QUEEN, target=chess.QUEEN, capture=True, trades=True)),
        ("we queen with check", Form(piece=chess.PAWN, promotes=True, promotion=chess.QUEEN, check=True)),
        ("pawn moves up to h4", Form(piece=chess.PAWN, to=chess.H4)),
        ("takes the knight on f3", Form(capture=True, target=chess.KNIGHT, to=chess.F3)),
        ("takes back with the rook", Form(piece=chess.ROOK, capture=True, again=True)),
        ("takes on d5 with the e pawn", Form(piece=chess.PAWN, from_file=4, to=chess.D5, capture=True)),
        ("queen takes with check", Form(piece=chess.QUEEN, capture=True, check=True)),
        ("d6 the knight takes", Form(piece=chess.KNIGHT, to=chess.D6, capture=True)),
        ("to d6 goes the knight", Form(piece=chess.KNIGHT, to=chess.D6)),
        ("castles long", Form(castles="long")),
        ("queenside castling", Form(castles="long")),
        ("both sides castle", Form(castles="both")),
        ("c8 equals queen", Form(piece=chess.PAWN, to=chess.C8, promotes=True, promotion=chess.QUEEN)),
        ("pawn promotes on c8 to a rook", Form(piece=chess.PAWN, to=chess.C8, promotes=True, promotion=chess.ROOK)),
        ("knight d6 is checkmate", Form(piece=chess.KNIGHT, to=chess.D6, check=True, mate=True)),
        ("check from h6", Form(to=chess.H6, check=True)),
        ("Nbd7", Form(piece=chess.KNIGHT, from_file=1, to=chess.D7, exact=True)),
        ("exd8=Q", Form(piece=chess.PAWN, from_file=4, to=chess.D8, capture=True, promotion=chess.QUEEN, exact=True)),
        ("O-O-O", Form(castles="long")),
    ],
)
def test_a_spoken_move_demands(text: str, form: Form) -> None:
    assert form in forms(text)


@pytest.mark.parametrize(
    "text", ["good evening", "a wonderful tournament", "the weather", "see you all next week", "ladies and gentlemen"]
)
def test_other_words_say_no_move(text: str) -> None:
    words = lexicon("en")
    tokens = tokens_of(text)
    assert not any(phrases_of(tokens, units_of(tokens, words), words))


def _cost(text: str, said: str, form: Form) -> float:
    """The least cost of hearing these words of the text as that; infinite where it cannot be."""
    words = lexicon("en")
    tokens = tokens_of(text)
    found = phrases_of(tokens, units_of(tokens, words), words)
    return min(
        (
            phrase.cost
            for here in found
            for phrase in here
            if phrase.form == form and text[tokens[phrase.start].start : tokens[phrase.end - 1].end] == said
        ),
        default=inf,
    )


@pytest.mark.parametrize(
    "text", ["I kick the knight with a6", "Black asks the bishop with a6", "she holds the pawn with a6"]
)
def test_what_is_answered_with_a_square_is_not_what_goes_there(text: str) -> None:
    assert _cost(text, "a6", Form(to=chess.A6, bare=True)) == 0.0


def test_a_piece_behind_words_of_place_is_hardly_what_moves() -> None:
    text = "the queen steps in front of the king, to e7"
    queen = _cost(text, "queen steps in front of the king, to e7", Form(piece=chess.QUEEN, to=chess.E7))
    assert queen < _cost(text, "king, to e7", Form(piece=chess.KING, to=chess.E7)) - 1.0


@pytest.mark.parametrize(
    "text",
    [
        "knight and I have to play c3",
        "pawn, so take",
        "rook or simply d4",
        "for fireworks with d4",
        "e3 and then the bishop",
    ],
)
def test_a_piece_does_not_move_behind_the_word_that_opens_another_clause(text: str) -> None:
    assert forms(text) == set()


def test_a_movement_and_a_check_go_on_behind_such_a_word() -> None:
    assert Form(piece=chess.ROOK, to=chess.H3) in forms("rook swings over and lands on h3")
    assert Form(to=chess.D4, check=True) in forms("goes to d4 and it's check")


def test_a_letter_behind_a_piece_is_its_file() -> None:
    file = _cost("rook d to e1", "rook d to e1", Form(piece=chess.ROOK, from_file=3, to=chess.E1))
    others = Form(piece=chess.ROOK, to=chess.E1), Form(piece=chess.ROOK, from_square=chess.D2, to=chess.E1)
    assert all(file < _cost("rook d to e1", "rook d to e1", other) - 0.5 for other in others)


@pytest.mark.parametrize(
    ("text", "head", "tail"),
    [("knight takes f6", "knight takes", "f6"), ("b takes c3", "b takes", "c3"), ("i take on d5", "i take", "on d5")],
)
def test_a_capture_is_not_cut_from_its_square(text: str, head: str, tail: str) -> None:
    words = lexicon("en")
    tokens = tokens_of(text)
    found = phrases_of(tokens, units_of(tokens, words), words)
    said = {
        part: min(
            phrase.cost
            for here in found
            for phrase in here
            if text[tokens[phrase.start].start : tokens[phrase.end - 1].end] == part
        )
        for part in (text, head, tail)
    }
    assert said[text] < said[head] + said[tail] - 1.5


def test_the_letter_ahead_of_a_capture_is_not_left_out() -> None:
    assert _cost("b takes", "takes", Form(capture=True)) > 1.0


def test_a_phrase_ends_with_its_sentence() -> None:
    assert forms("the knight. f3"[4:]) == set()


def test_leaving_out_the_piece_just_ahead_costs_something() -> None:
    words = lexicon("en")
    tokens = tokens_of("bishop takes e5")
    found = phrases_of(tokens, units_of(tokens, words), words)
    whole = min(phrase.cost for phrase in found[0] if phrase.end == 3)
    cut = min(phrase.cost for phrase in found[1] if phrase.end == 3)
    assert whole < cut
