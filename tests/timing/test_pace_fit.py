"""A presenter's pace is learnt from lines with times."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest

from studyboard.model.script import Pace
from studyboard.timing.pace_fit import LEAST_LINES, TooFewLinesError, fit_pace, held_out, line_seconds, whole_doubt
from studyboard.timing.timed_lines import TimedLine

_PHRASES = (
    "the knight comes to f3",
    "nobody in the hall expected that",
    "and the bishop looks along the long diagonal",
    "which is an unusual way to begin",
    "she thinks for a long time",
    "the pawn on e5 cannot be held",
    "Nxd5, exd5",
    "in 1987 somebody played Qe7+ here",
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
        told.append(TimedLine(text, line_seconds(pace, TimedLine(text, 1.0)) * chance.gauss(1.0, noise)))
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


def test_pauses_are_never_shorter_than_nothing():
    breathless = [TimedLine(line.text, line.seconds * 0.4) for line in talk(Pace(6.0, 0.0, 0.0, 0.0), 30, 6)]
    pace = fit_pace(breathless).pace
    assert min(pace.clause_pause, pace.sentence_pause, pace.paragraph_pause) >= 0.0


def test_times_are_missed_no_more_by_whoever_slows_down_at_moves_than_by_others():
    dwelling = Pace(4.6, 0.3, 0.6, 1.0, move_pause=0.5)
    fit = fit_pace(talk(dwelling, 60, 7))
    assert fit.pace.move_pause == pytest.approx(0.5, abs=0.12)
    assert fit_pace(talk(Pace(), 60, 7)).pace.move_pause < 0.15


def test_slower_side_lines_are_found_in_takes_and_planned_slower():
    pace = Pace(4.6, 0.3, 0.6, 1.0, side_line_rate=0.85)
    chance = random.Random(8)
    lines = []
    for number, line in enumerate(talk(Pace(), 80, 8)):
        line = replace(line, side_line=number % 3 == 0, closes=False)
        lines.append(replace(line, seconds=line_seconds(pace, line) * chance.gauss(1.0, 0.03)))
    fit = fit_pace(lines)
    assert fit.pace.side_line_rate == pytest.approx(0.85, abs=0.03)
    aside = replace(lines[0], side_line=False)
    assert line_seconds(fit.pace, lines[0]) > 1.1 * line_seconds(fit.pace, aside)


def test_a_talk_that_gets_slower_is_told_so_and_an_even_one_is_not():
    lines = talk(Pace(), 60, 9)
    even = fit_pace(lines)
    slower = [replace(line, seconds=line.seconds * (0.92 + 0.16 * n / 60)) for n, line in enumerate(lines)]
    found = fit_pace(slower)
    assert found.drift == pytest.approx(0.16, abs=0.05)
    assert found.drift_range[0] > 0
    assert even.drift_range[0] < 0 < even.drift_range[1]


def test_the_whole_comes_out_in_the_range_that_is_told_nine_times_of_ten():
    inside = 0
    for seed in range(60):
        chance = random.Random(seed)
        pace = Pace(chance.uniform(4.0, 5.8), chance.uniform(0.1, 0.35), chance.uniform(0.3, 0.8), 1.0)
        found = held_out(talk(pace, 24, seed, noise=0.07))
        inside += abs(found.total_error) <= found.total_range
    assert 48 <= inside <= 60


def test_few_lines_make_a_wide_range_and_the_published_pace_the_widest():
    few, many = (fit_pace(talk(Pace(), count, 11)).pace for count in (4, 60))
    seconds = [8.0] * 60
    assert whole_doubt(many, seconds) < whole_doubt(few, seconds) < whole_doubt(Pace(), seconds)


def test_a_talk_without_commas_and_full_stops_is_foretold_too():
    lines = talk(Pace(4.4, 0.3, 0.7, 1.0), 60, 12)
    bare = [replace(line, text=line.text.replace(",", "").replace(".", ""), closes=False) for line in lines]
    bare = [replace(line, unmarked=True) for line in bare]
    found = held_out(bare)
    assert found.relative_error < 0.12
    assert abs(found.total_error) < 0.05
