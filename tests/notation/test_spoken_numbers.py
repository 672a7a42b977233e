"""Numbers as they are said."""

from __future__ import annotations

import pytest

from studyboard.notation.spoken import spoken_table
from studyboard.notation.spoken_numbers import decade_words, figures, number_words, ordinal_words

SAY = spoken_table().numbers


@pytest.mark.parametrize(
    ("number", "in_pairs", "counted"),
    [
        (1099, "one thousand and ninety-nine", "one thousand and ninety-nine"),
        (1100, "eleven hundred", "one thousand one hundred"),
        (1984, "nineteen eighty-four", "one thousand nine hundred and eighty-four"),
        (2001, "two thousand and one", "two thousand and one"),
        (2010, "twenty ten", "two thousand and ten"),
        (2405, "twenty-four oh five", "two thousand four hundred and five"),
        (3400, "three thousand four hundred", "three thousand four hundred"),
    ],
)
def test_years_and_ratings_are_said_in_pairs_and_counts_are_not(number, in_pairs, counted):
    assert number_words(number, SAY) == in_pairs
    assert number_words(number, SAY, in_pairs=False) == counted


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (1, "first"), (2, "second"), (3, "third"), (4, "fourth"), (5, "fifth"), (8, "eighth"), (9, "ninth"),
        (12, "twelfth"), (20, "twentieth"), (31, "thirty-first"), (100, "one hundredth"),
        (101, "one hundred and first"),
    ],
)  # fmt: skip
def test_places_in_an_order(number, said):
    assert ordinal_words(number, SAY) == said


@pytest.mark.parametrize(("number", "said"), [(1920, "nineteen twenties"), (90, "nineties"), (10, "tens")])
def test_decades(number, said):
    assert decade_words(number, SAY) == said


def test_figures_one_by_one():
    assert figures("0207", SAY) == "zero two zero seven"
