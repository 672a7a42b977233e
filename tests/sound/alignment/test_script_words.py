"""The script as it is said, word by word."""

from __future__ import annotations

from studyboard.example import example_study
from studyboard.model.beats import beats
from studyboard.model.order import running_order
from studyboard.model.script import words
from studyboard.sound.alignment.script_words import line_words, script_words, spoken_words


def test_moves_squares_and_numbers_are_words() -> None:
    assert spoken_words("Nf3,") == ("knight", "f", "three")
    assert spoken_words("f5.") == ("f", "five")
    assert spoken_words("15...Bd6") == ("bishop", "d", "six")
    assert spoken_words("27") == ("twenty", "seven")


def test_apostrophes_and_accents_are_plain() -> None:
    assert spoken_words("it’s") == ("it's",)
    assert spoken_words("O'Brien's") == ("o'brien's",)
    assert spoken_words("Kołodziejczyk’s") == ("kolodziejczyk's",)
    assert spoken_words("–") == ()


def test_the_words_of_the_script_are_those_of_its_lines() -> None:
    study = example_study()
    expected = [(beat.key, text) for beat in beats(study, running_order(study)) for text in words(beat.spoken.text)]
    assert [(word.beat, word.text) for word in script_words(study)] == expected


def test_what_the_author_says_of_a_name_is_what_is_listened_for() -> None:
    found = line_words(1, "Well, Anna Kowalczyk's knight waits.", {"Anna Kowalczyk": "Anna ko-VAL-chick"})
    assert [word.said for word in found] == [
        ("well",), ("anna", "ko", "val", "chick"), (), ("knight",), ("waits",)
    ]  # fmt: skip
    assert [word.hinted for word in found] == [False, True, True, False, False]
