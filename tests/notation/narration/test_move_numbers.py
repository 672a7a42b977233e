"""A talk can say where a side-line leaves by the number of a move."""

import pytest

from studyboard.notation.narration.lexicon import lexicon
from studyboard.notation.narration.move_numbers import move_numbers
from studyboard.notation.narration.reading import read_narration
from studyboard.notation.narration.tokens import tokens_of
from studyboard.notation.narration.units import units_of


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("on move twelve he could play c5", 12),
        ("back on move twenty-three", 23),
        ("at move number 7", 7),
        ("his move was good", None),
        ("move 4000", None),
    ],
)
def test_the_number_of_a_move_is_found(text: str, number: int | None) -> None:
    words = lexicon("en")
    tokens = tokens_of(text)
    assert set(move_numbers(tokens, units_of(tokens, words), words)) == {number}


def test_a_number_holds_for_its_sentence() -> None:
    words = lexicon("en")
    tokens = tokens_of("Quiet. On move two, c5. Loud.")
    assert move_numbers(tokens, units_of(tokens, words), words) == [None, 2, 2, 2, 2, None]


def test_a_side_line_leaves_at_the_move_that_is_named() -> None:
    text = "e4 e5 knight f3 knight c6 bishop b5 a6 bishop a4 knight f6. On move three Black could have played d6."
    (side_line,) = read_narration(text).side_lines
    assert side_line.after == ("e4", "e5", "Nf3", "Nc6", "Bb5")
    assert side_line.line == ("d6",)
