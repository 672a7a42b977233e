"""Words that the dictionary does not have are read as English spelling is."""

from __future__ import annotations

from pathlib import Path

import pytest

from studyboard.sound.alignment.pronunciations import by_rule, pronunciation

KNOWN = {
    "queen": "K W IY N",
    "side": "S AY D",
    "mate": "M EY T",
    "check": "CH EH K",
    "castle": "K AE S AH L",
    "fork": "F AO R K",
}


@pytest.mark.parametrize(
    ("word", "phones"),
    [
        ("queen", "K W IY N"),
        ("queenside", "K W IY N S AY D"),
        ("checkmated", "CH EH K M EY T AH D"),
        ("castling", "K AE S AH L IH NG"),
        ("forks", "F AO R K S"),
        ("fork's", "F AO R K S"),
        ("imani", "IH M AA N IY"),
        ("gambit", "G AE M B IH T"),
        ("pgn", "P IY JH IY EH N"),
        ("d", "D IY"),
    ],
)
def test_a_word_is_read_from_its_parts_or_its_letters(word: str, phones: str) -> None:
    assert pronunciation(word, KNOWN.get) == phones


def test_the_rules_have_most_consonants_of_the_dictionary_right() -> None:
    """Against the dictionary of the model itself, on every two-hundredth word."""
    pocketsphinx = pytest.importorskip("pocketsphinx")
    path = Path(pocketsphinx.get_model_path()) / "en-us" / "cmudict-en-us.dict"
    lines = [line.split() for line in path.read_text(encoding="utf-8").splitlines()]
    plain = [(word, phones) for word, *phones in lines if word.isalpha() and len(word) > 2][::200]
    wrong = total = 0
    for word, phones in plain:
        expected, read = _consonants(phones), _consonants(by_rule(word).split())
        wrong += _distance(expected, read)
        total += len(expected)
    assert wrong / total < 0.13


def _consonants(phones: list[str]) -> list[str]:
    return [phone for phone in phones if phone[0] not in "AEIOU" and phone != "HH"]


def _distance(one: list[str], other: list[str]) -> int:
    row = list(range(len(other) + 1))
    for a, phone in enumerate(one, 1):
        above, row = row, [a]
        for b, read in enumerate(other, 1):
            row.append(min(row[-1] + 1, above[b] + 1, above[b - 1] + (phone != read)))
    return row[-1]
