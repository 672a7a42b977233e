"""Stops in the middle of moves, as machines set them, do not cut the moves in two."""

from studyboard.notation.narration.lexicon import lexicon
from studyboard.notation.narration.reading import read_narration
from studyboard.notation.narration.stray_stops import without_stray_stops
from studyboard.notation.narration.tokens import Break, tokens_of
from studyboard.notation.narration.units import units_of


def stops(text: str) -> int:
    """How many stops are left."""
    tokens = tokens_of(text)
    found = without_stray_stops(tokens, units_of(tokens, lexicon("en")))
    return sum(token.broken == Break.SENTENCE for token in found)


def test_a_transcript_with_stops_in_its_moves_is_read_over_them() -> None:
    text = "So e4. E5 and knight. F3. Knight. C6 and bishop. B5 a6. Bishop takes. C6 and d takes. C6."
    assert read_narration(text).main_line == ("e4", "e5", "Nf3", "Nc6", "Bb5", "a6", "Bxc6", "dxc6")


def test_only_the_stops_inside_moves_go() -> None:
    assert stops("Knight. F3. Knight. C6. Bishop. B5. A6.") == 3


def test_one_sentence_that_ends_with_a_piece_keeps_its_stop() -> None:
    assert stops("He wants to trade my bishop. D6 is the answer. I like it. It stops him.") == 3


def test_a_question_is_no_slip() -> None:
    assert stops("The knight? F3. The bishop? B5. The rook? E1. The queen? E2.") == 7
