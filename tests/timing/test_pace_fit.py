"""A presenter's pace is learnt from lines with times."""

from __future__ import annotations

import random

import pytest

from studyboard.model.script import Pace
from studyboard.timing.pace_fit import (
    LEAST_LINES,
    TimedLine,
    TooFewLinesError,
    fit_pace,
    held_out,
    line_seconds,
    timed_lines,
)

_PHRASES = (
    "the knight comes to f3",
    "nobody in the hall expected that",
    "and the bishop looks along the long diagonal",
    "which is an unusual way to begin",
    "she thinks for a long time",
    "the pawn on e5 cannot be held",
)


def talk(pace: Pace, lines: int, seed: int, noise: float = 0.03) -> list[TimedLine]:
    """Lines of many lengths, told at this pace by somebody who is not a clock."""
    chance = random.Random(seed)
    told = []
    for _ in range(lines):
        sentences = []
        for _ in range(chance.randint(1, 6)):
            sentences.append(", ".join(chance.choice(_PHRASES) for _ in range(chance.randint(1, 3))) + ".")
        text = " ".join(sentences)
        told.append(TimedLine(text, line_seconds(pace, text) * chance.gauss(1.0, noise)))
    return told


@pytest.mark.parametrize("pace", [Pace(4.1, 0.3, 0.7, 1.2), Pace(5.6, 0.15, 0.35, 0.6), Pace()])
def test_the_pace_of_whoever_spoke_is_found(pace):
    fit = fit_pace(talk(pace, 60, 1))
    assert fit.syllables_per_second == pytest.approx(pace.syllables_per_second, rel=0.05)
    low, high = fit.syllables_range
    assert low < pace.syllables_per_second < high


def test_a_few_lines_leave_it_near_what_was_published_with_a_wide_range():
    slow = Pace(3.6, 0.3, 0.7, 1.2)
    few, many = fit_pace(talk(slow, 4, 2)), fit_pace(talk(slow, 80, 2))
    assert abs(few.syllables_per_second - 3.6) >= abs(many.syllables_per_second - 3.6) - 0.05
    widths = [fit.syllables_range[1] - fit.syllables_range[0] for fit in (few, many)]
    assert widths[0] > 1.5 * widths[1]


def test_a_cough_in_the_middle_changes_little():
    lines = talk(Pace(), 40, 3)
    plain = fit_pace(lines)
    lines[7] = TimedLine(lines[7].text, lines[7].seconds + 45.0)
    lines[20] = TimedLine(lines[20].text, 0.4)
    assert fit_pace(lines).syllables_per_second == pytest.approx(plain.syllables_per_second, rel=0.03)


def test_the_first_half_foretells_the_second_better_than_words_a_minute_do():
    chance = random.Random(4)
    lines = talk(Pace(4.4, 0.35, 0.8, 1.4), 60, 4)
    # Rounded to whole seconds, as in a transcript.
    lines = [TimedLine(line.text, max(1.0, round(line.seconds + chance.uniform(-0.1, 0.1)))) for line in lines]
    found = held_out(lines)
    assert found.lines == 30
    assert found.relative_error < 0.07
    assert found.relative_error < found.constant_rate_error * 2 / 3
    assert abs(found.total_error) < 0.03


def test_too_few_lines_are_refused_in_words():
    with pytest.raises(TooFewLinesError, match=r"4 timed lines at least, and there are 3.*\[m:ss\]"):
        fit_pace(talk(Pace(), LEAST_LINES - 1, 5))


def test_lines_are_read_from_a_transcript_with_times():
    lines = timed_lines("[0:00] Good evening, all.\n[0:04] The pawn goes to e4.\n[0:09] And so on.")
    assert lines == (TimedLine("Good evening, all.", 4.0), TimedLine("The pawn goes to e4.", 5.0))


def test_pauses_are_never_shorter_than_nothing():
    breathless = [TimedLine(line.text, line.seconds * 0.4) for line in talk(Pace(6.0, 0.0, 0.0, 0.0), 30, 6)]
    pace = fit_pace(breathless).pace
    assert min(pace.clause_pause, pace.sentence_pause, pace.paragraph_pause) >= 0.0
