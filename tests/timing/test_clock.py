"""Seconds as a presenter reads them."""

import pytest

from studyboard.timing.clock import clock, over_or_under


@pytest.mark.parametrize(
    ("seconds", "text"),
    [(0, "0:00"), (59.4, "0:59"), (59.6, "1:00"), (245, "4:05"), (3599.6, "1:00:00"), (3725, "1:02:05")],
)
def test_minutes_and_seconds_read_as_on_a_clock(seconds: float, text: str) -> None:
    assert clock(seconds) == text


def test_a_time_before_zero_has_a_minus_sign_unless_it_rounds_to_nothing() -> None:
    assert clock(-5) == "−0:05"
    assert clock(-0.3) == "0:00"


@pytest.mark.parametrize(
    ("over", "words"),
    [(-14.2, "14 s under"), (70, "1:10 over"), (59.6, "1:00 over"), (0.4, "to the second"), (-0.4, "to the second")],
)
def test_the_distance_from_the_slot_is_said_in_words(over: float, words: str) -> None:
    assert over_or_under(over) == words
