"""Typed text as it is set in print."""

from __future__ import annotations

import pytest

from studyboard.delivery.typography import ends_sentence, figured, typeset


@pytest.mark.parametrize(
    ("written", "printed"),
    [
        ("After Nf3 and Qxe5+ it is over.", "After ♘f3 and ♕xe5+ it is over."),
        ("Rad1 or R1d2, then Nb1xd2.", "♖ad1 or ♖1d2, then ♘b1xd2."),
        ("King Bishop Ne Ka9 B2B Nf30", "King Bishop Ne Ka9 B2B Nf30"),
    ],
)
def test_only_moves_get_figurines(written, printed):
    assert figured(written) == printed


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("It's White's move.", "It’s White’s move."),
        ('She said "take it" and smiled.', "She said “take it” and smiled."),
        ("the 'bad' bishop ('really')", "the ‘bad’ bishop (‘really’)"),
        ("the pawns' march", "the pawns’ march"),
        ("well - perhaps -- not", "well – perhaps – not"),
        ("20...Rg6 and so on...", "20…♖g6 and so on…"),
        ("a check-up of O-O-O", "a check-up of O-O-O"),
    ],
)
def test_signs_are_set_as_a_printer_would(typed, printed):
    assert typeset(typed) == printed


def test_german_quotation_marks():
    assert typeset('Er sagte "Nf3" und zog.', "de_DE") == "Er sagte „♘f3“ und zog."
    assert typeset('He said "Nf3".', "en_GB") == "He said “♘f3”."


@pytest.mark.parametrize("text", ['He said: "Now!"', "(So it is.)", "Er sagt: „Jetzt!“", "»Jetzt!«", "And …"])
def test_a_sentence_ends_before_its_closing_marks(text):
    assert ends_sentence(typeset(text))
    assert not ends_sentence(f"{text} and")
