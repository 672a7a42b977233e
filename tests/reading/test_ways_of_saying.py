"""Who attacks and guards what, said in every form: held against the attackers that python-chess names."""

import random

import pytest

from studyboard.reading.read_through import judge
from tests.reading.ways_of_saying import VERBS, random_position, sentences

#: The share of false statements that must be queried; the others may be left to the author.
_FOUND = 0.95


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.third)
def test_what_is_false_is_queried_and_what_is_true_is_not(verb):
    rng = random.Random(verb.third)
    queried: list[str] = []
    missed: list[str] = []
    false = 0
    for _ in range(4):
        board = random_position(rng)
        for said in sentences(board, verb, rng):
            found = bool(judge(board, said.text, deep=False).queries)
            false += not said.true
            if found == said.true:
                (queried if said.true else missed).append(f"{said.text} ({board.fen()})")
    assert queried == []
    assert false > 60
    assert len(missed) <= (1 - _FOUND) * false, "\n".join(missed)
