"""How long a spoken line takes."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.script import Pace, words
from studyboard.timing.pace import estimate, speak

PACE = Pace()

# A radio report, written for this test; English prose has about one and a half syllables a word (from memory).
BULLETIN = (
    "The county chess championship ended on Sunday evening with a surprise. Before the final round, three players "
    "shared the lead, and most visitors in the crowded library had expected the champion of the previous two years to "
    "win again. Instead, the title goes to a nineteen-year-old student of engineering, who had entered the competition "
    "as number fourteen of the list. She needed a victory with the black pieces, and she won in forty-one moves, after "
    "a quiet opening and a long endgame with rooks. The organisers counted more than a hundred and sixty participants "
    "this year, twenty more than last summer. The youngest was seven, the oldest eighty-eight. Entry remains free for "
    "children, and the council has already promised to support the next event. Visitors followed the games on a large "
    "screen in the reading room, where two coaches explained every decision. The winner said that she would celebrate "
    "with her family, and that on Monday morning there was an examination to be written."
)

CHESS_TALK = [
    "Knight to f3, and Black develops as well with Nc6. Now White plays Bb5, and the pressure on e5 begins.",
    "If he takes on e4, we castle, and after d6 there comes rook e1. The knight must go back to f6, and White wins the "
    "pawn with Nxe5.",
    "So what about 14.Rxd7? The rook takes the defender, Black has to recapture with the king, Kxd7, and now the "
    "queen gives check on g4.",
    "He saw that Qh5+ looks strong, but after g6 the queen has to leave again, and the bishop on c1 is still asleep.",
]


def _words_a_minute(text: str, pace: Pace = PACE) -> float:
    return len(words(text)) * 60 / estimate(pace, text)


def test_running_prose_comes_out_at_the_rate_recommended_for_radio() -> None:
    # 160-180 words a minute: E. Rodero, Text & Talk 32(3), 2012, 391-411.
    assert 160 <= _words_a_minute(BULLETIN) <= 180


@pytest.mark.parametrize("paragraph", CHESS_TALK)
def test_a_paragraph_with_moves_in_it_stays_within_what_fluent_presenters_do(paragraph: str) -> None:
    # Single paragraphs between 140 and 235 words a minute: common practice.
    assert 140 <= _words_a_minute(paragraph) <= 235


def test_an_empty_line_takes_no_time() -> None:
    assert estimate(PACE, "") == estimate(PACE, " \n ") == 0.0


def test_a_move_is_counted_as_it_is_said() -> None:
    assert estimate(PACE, "Nf3") == pytest.approx(estimate(PACE, "knight f three"))
    assert estimate(PACE, "O-O") == pytest.approx(estimate(PACE, "castles"), abs=0.8)
    assert estimate(PACE, "Nf3") > estimate(PACE, "knight")


def test_the_line_is_longer_by_a_pause_for_each_sign() -> None:
    bare = estimate(PACE, "white castles and black resigns")
    assert estimate(PACE, "white castles, and black resigns") == pytest.approx(bare + PACE.clause_pause)
    assert estimate(PACE, "white castles. and black resigns") == pytest.approx(bare + PACE.sentence_pause)
    assert estimate(PACE, "white castles.\n\nand black resigns") == pytest.approx(bare + PACE.paragraph_pause)
    assert estimate(PACE, "white castles – and black resigns") == pytest.approx(bare + PACE.clause_pause)


def test_a_full_stop_inside_quotation_marks_or_brackets_is_a_pause_too() -> None:
    bare = estimate(PACE, "he said no and left")
    assert estimate(PACE, "he said “no.” and left") == pytest.approx(bare + PACE.sentence_pause)
    assert estimate(PACE, "he said (no!) and left") == pytest.approx(bare + PACE.sentence_pause)


def test_the_full_stop_of_a_move_number_is_no_pause_but_the_one_after_a_year_is() -> None:
    slow = replace(PACE, sentence_pause=10.0)
    assert estimate(slow, "12. Nf3 again") < 10
    assert estimate(slow, "12... Nf6 again") < 10
    assert estimate(slow, "That was in 1985. Again") > 10


def test_a_faster_presenter_needs_less_time_for_the_words_but_not_for_the_pauses() -> None:
    fast = replace(PACE, syllables_per_second=2 * PACE.syllables_per_second)
    text = "The bishop leaves, and the knight stays."
    pauses = PACE.clause_pause + PACE.sentence_pause
    assert estimate(fast, text) - pauses == pytest.approx((estimate(PACE, text) - pauses) / 2)


@given(st.text(alphabet="abe Nf3.,;!–\n“”()'", max_size=60))
def test_words_follow_each_other_and_end_within_the_line(text: str) -> None:
    spoken = speak(PACE, text)
    assert len(spoken.words) == len(words(text))
    assert spoken.seconds == pytest.approx(estimate(PACE, text))
    at = 0.0
    for start, end in spoken.words:
        assert at <= start <= end
        at = end
    assert at == spoken.speech_end <= spoken.seconds + 1e-9
