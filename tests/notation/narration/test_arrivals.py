"""Which of the readings that come to a word are taken."""

import chess

from studyboard.notation.narration.arrivals import Arrivals
from studyboard.notation.narration.costs import COSTS, Width
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.readings import NO_LINES, Line, Reading, line_key

_WIDTH = Width(most=8, far=4, near=2.0, whatever=8, alike_near=8)
_START = Place(0, None, None, chess.Board())


def _reading(place: int, cost: float) -> Reading:
    tip = Place(place, _START, None, None)
    return Reading(cost, (Line(_START, tip, line_key(NO_LINES, tip)),), None, 0)


def _offer(arrivals: Arrivals, reading: Reading) -> bool:
    taken = arrivals.take(reading.lines[-1].key, reading.cost)
    if taken:
        arrivals.add(reading)
    return taken


def test_of_readings_with_the_same_places_the_cheapest_stays():
    arrivals = Arrivals(_WIDTH)
    assert [_offer(arrivals, _reading(1, cost)) for cost in (3.0, 2.0, 2.0, 2.5)] == [True, True, False, False]
    assert [reading.cost for reading in arrivals.readings.values()] == [2.0]


def test_a_side_line_to_the_same_position_is_another_place():
    around = _reading(1, 0.0).lines[0]
    tip = Place(2, around.tip, None, None)
    assert line_key(around.key, tip) != line_key(NO_LINES, tip)


def test_while_few_have_come_what_costs_much_more_is_taken_too():
    arrivals = Arrivals(_WIDTH)
    assert _offer(arrivals, _reading(1, 1.0))
    assert _offer(arrivals, _reading(2, 1.0 + COSTS.worst))
    assert not _offer(arrivals, _reading(3, 1.1 + COSTS.worst))


def test_once_many_are_near_the_cheapest_nothing_further_is_taken():
    arrivals = Arrivals(_WIDTH)
    for place in range(1, 20):
        _offer(arrivals, _reading(place, 1.0 + place / 100))
    assert not _offer(arrivals, _reading(30, 3.5))
    assert _offer(arrivals, _reading(31, 2.9))


def test_a_phrase_is_not_taken_at_more_than_was_expected():
    arrivals = Arrivals(_WIDTH)
    arrivals.expect(5.0)
    assert not _offer(arrivals, _reading(1, 5.1))
    arrivals.expect(6.0)
    assert _offer(arrivals, _reading(1, 5.1))


def test_those_of_another_word_join_where_they_are_cheaper():
    here, there = Arrivals(_WIDTH), Arrivals(_WIDTH)
    for place, cost in ((1, 1.0), (2, 3.0)):
        _offer(here, _reading(place, cost))
    for place, cost in ((1, 2.0), (2, 2.0), (3, 2.0)):
        _offer(there, _reading(place, cost))
    here.join(there)
    assert sorted((reading.lines[0].tip.number, reading.cost) for reading in here.readings.values()) == [
        (1, 1.0),
        (2, 2.0),
        (3, 2.0),
    ]
