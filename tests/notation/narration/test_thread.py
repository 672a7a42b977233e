"""Where a talk is searched again, more widely."""

import chess

from studyboard.notation.narration.arrivals import Arrivals
from studyboard.notation.narration.costs import COSTS, GREAT_WIDTH, USUAL_WIDTH
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.readings import NO_LINES, Line, Reading, line_key
from studyboard.notation.narration.thread import Thread

_WORDS = 1000


def _followed(costs: list[float], thread: Thread) -> tuple[int, int] | None:
    """The word at which the thread is found to be lost, and the word from which it is looked for."""
    arrived = [Arrivals(USUAL_WIDTH) for _ in range(_WORDS + 1)]
    for at, cost in enumerate(costs):
        thread.mark(at, arrived)
        lost_from = thread.lost_from(at, cost)
        if lost_from is not None:
            return at, lost_from
    return None


def test_a_talk_whose_words_fit_evenly_is_not_searched_again():
    cost = COSTS.lost / COSTS.lost_within
    assert _followed([cost * word for word in range(_WORDS)], Thread(_WORDS, can_be_lost=True)) is None


def test_where_the_cost_rises_steeply_the_search_goes_back_and_is_wide_until_there():
    thread = Thread(_WORDS, can_be_lost=True)
    assert thread.width(700) is USUAL_WIDTH
    at, lost_from = _followed([max(0.0, word - 700) for word in range(_WORDS)], thread) or (0, 0)
    assert lost_from < 700 < at < 700 + COSTS.lost_within
    assert thread.width(lost_from) is thread.width(at) is GREAT_WIDTH
    assert thread.width(_WORDS - 1) is USUAL_WIDTH


def test_with_the_game_at_hand_the_thread_is_never_lost():
    assert _followed([float(word) for word in range(_WORDS)], Thread(_WORDS, can_be_lost=False)) is None


def test_the_same_words_are_not_searched_twice_for_one_rise():
    thread = Thread(_WORDS, can_be_lost=True)
    costs = [max(0.0, word - 700) for word in range(_WORDS)]
    at, lost_from = _followed(costs, thread) or (0, 0)
    assert all(thread.lost_from(word, costs[word]) is None for word in range(lost_from, at + 1))


def test_what_had_come_to_a_marked_word_is_there_again():
    start = Place(0, None, None, chess.Board())
    reading = Reading(0.0, (Line(start, start, line_key(NO_LINES, start)),), None, 0)
    arrived = [Arrivals(USUAL_WIDTH) for _ in range(_WORDS + 1)]
    arrived[1].add(reading)
    thread = Thread(_WORDS, can_be_lost=True)
    thread.mark(0, arrived)
    arrived[1], arrived[600] = arrived[600], arrived[1]
    thread.restore(0, arrived)
    assert [len(arrivals.readings) for arrivals in (arrived[0], arrived[1], arrived[600])] == [0, 1, 0]
