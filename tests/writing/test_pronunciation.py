"""Words that have a pronunciation are found in a line."""

from __future__ import annotations

from studyboard.writing.pronunciation import Hint, hints_in

HINTS = {"Pell": "PELL", "en prise": "on PREEZ", "prise": "preez", "Nd5": "knight d five"}


def test_words_are_found_whole_in_any_case_and_before_a_possessive_s() -> None:
    text = "Pell, and Pell's rook; not Pellworm. PELL!"
    assert [text[h.start : h.end] for h in hints_in(text, HINTS)] == ["Pell", "Pell", "PELL"]
    assert hints_in(text, HINTS)[0] == Hint(0, 4, "PELL")


def test_the_longest_fits_first() -> None:
    assert [hint.said for hint in hints_in("It is en  prise, a prise.", HINTS)] == ["on PREEZ", "preez"]


def test_without_hints_or_words_there_is_nothing() -> None:
    assert hints_in("Pell", {}) == ()
    assert hints_in("", HINTS) == ()
