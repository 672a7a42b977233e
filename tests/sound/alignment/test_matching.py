"""Words that were heard are put beside those of the script."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from studyboard.sound.alignment.matching import matches

SCRIPT = [
    "the",
    "knight",
    "goes",
    "to",
    "f",
    "five",
    "and",
    "then",
    "the",
    "rook",
    "takes",
    "on",
    "d",
    "eight",
    "with",
    "check",
]


def test_what_is_read_as_written_matches_word_by_word() -> None:
    assert matches(SCRIPT, SCRIPT) == [(place, place) for place in range(len(SCRIPT))]


def test_a_wrong_word_is_left_out_between_right_ones() -> None:
    heard = [*SCRIPT[:4], "d", *SCRIPT[5:]]
    assert (4, 4) not in matches(SCRIPT, heard)
    assert len(matches(SCRIPT, heard)) == len(SCRIPT) - 1


def test_skipped_words_have_no_partner_and_those_after_them_have_theirs() -> None:
    heard = SCRIPT[:4] + SCRIPT[9:]
    found = matches(SCRIPT, heard)
    assert (15, 10) in found
    assert not [a for a, _ in found if 4 <= a < 8]


def test_a_word_that_agrees_by_chance_is_not_taken() -> None:
    assert matches(SCRIPT, ["so", "far", "with", "no", "idea", "at", "all"]) == []


@given(st.lists(st.sampled_from("abcd"), max_size=30), st.lists(st.sampled_from("abcd"), max_size=30))
def test_pairs_rise_and_agree(script: list[str], heard: list[str]) -> None:
    found = matches(script, heard)
    assert all(script[a] == heard[b] for a, b in found)
    assert all(one[0] < two[0] and one[1] < two[1] for one, two in pairwise(found))
