"""A broad corpus of ways of saying: its facts hold, what is true is never queried, and most of what is false is."""

import pytest

from studyboard.reading.read_through import judge
from tests.reading.corpus_reader import CORPUS, QUIET, board_of, fact, innocent, phrasings, read

FILES = sorted(CORPUS.glob("*.toml"))
#: The share of false sentences that has to be found in each file; what is reached is printed by phrasings_accuracy.py.
LEAST = 0.75


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_what_the_corpus_says_of_its_positions_is_so(path):
    told = {(one.facts, one.fen, one.moves, one.true): one for one in phrasings(path)}
    assert [one for one in told.values() if fact(one.facts, *board_of(one)) != one.true] == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_what_is_true_is_not_queried_however_it_is_said(path):
    queried = [(one.text, q.quote) for one in phrasings(path) if one.true for q in read(one).queries]
    assert queried == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_most_of_what_is_false_is_queried(path):
    false = [one for one in phrasings(path) if not one.true]
    assert sum(bool(read(one).queries) for one in false) >= LEAST * len(false)


def test_words_of_the_trade_that_say_nothing_of_the_board_are_left_alone():
    assert [(line, query.quote) for line in innocent() for query in judge(QUIET, line).queries] == []
