"""How many syllables a word has."""

import pytest

from studyboard.timing.syllables import by_rule, syllables


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("knight", 1),
        ("queen", 1),
        ("bishop", 2),
        ("castle", 2),
        ("castled", 2),
        ("takes", 1),
        ("passes", 2),
        ("attacked", 2),
        ("defended", 3),
        ("isolated", 4),
        ("combination", 4),
        ("zugzwang", 2),
        ("fianchetto", 4),
        ("idea", 3),
        ("I", 1),
    ],
)
def test_words_of_a_talk_have_the_syllables_that_one_says(word: str, count: int) -> None:
    assert syllables(word) == count


def test_capitals_and_punctuation_around_a_word_change_nothing() -> None:
    assert syllables("“Bishop,”") == syllables("BISHOP") == syllables("bishop") == 2


def test_a_possessive_is_the_word_and_a_hiss() -> None:
    assert syllables("rook's") == 1
    assert syllables("Black’s") == 1
    assert syllables("pass's") == 2


def test_what_has_no_letters_is_not_spoken() -> None:
    assert syllables("") == syllables("–") == syllables("'") == 0


@pytest.mark.parametrize(("name", "count"), [("Tarnhelm", 2), ("Ostavik", 3), ("Müller", 2), ("Šćepan", 2)])
def test_names_that_no_dictionary_has_are_counted_by_their_vowels(name: str, count: int) -> None:
    assert syllables(name) == count


def test_whatever_has_a_letter_takes_at_least_one_syllable() -> None:
    assert by_rule("hmm") == by_rule("tsk") == by_rule("b") == 1
