"""Who of the players is “he” and who is “she”, from the talk alone."""

import chess
import pytest

from studyboard.reading.mentions import Players
from studyboard.reading.pronouns import with_pronouns
from studyboard.reading.read_through import read_through

PLAYERS = Players({"ines": chess.WHITE, "thorley": chess.WHITE, "ruben": chess.BLACK})


def test_a_talk_of_a_man_and_a_woman_tells_who_is_who():
    lines = ["Ines takes, and she smiles. Ruben is not amused. He takes back.", "Ruben castles; he had to."]
    assert with_pronouns(PLAYERS, lines).pronouns == {"he": chess.BLACK, "she": chess.WHITE}


def test_titles_and_the_moves_at_the_words_tell_it_too():
    assert with_pronouns(PLAYERS, ["Miss Thorley sat down.", "Mr Ruben was late."]).pronouns["she"] is chess.WHITE
    acting = [("She", chess.WHITE), ("his", chess.BLACK), ("he", chess.BLACK)]
    assert with_pronouns(PLAYERS, [], acting).pronouns == {"he": chess.BLACK, "she": chess.WHITE}


@pytest.mark.parametrize(
    "lines",
    [
        ["Ines takes, and Ruben takes back. He is fast, and she is faster."],  # not said of whom
        ["Ines waits, as he does.", "Ruben takes, and he smiles, and he was right."],  # two men, it seems
        ["Ruben moves, and he moves fast, and he is right."],  # of the other nothing is known
    ],
)
def test_where_it_is_not_clear_nobody_is_meant(lines):
    assert not with_pronouns(PLAYERS, lines).pronouns


def test_what_she_may_do_is_held_against_her_king(told):
    headers = '[White "Ines"]\n[Black "Ruben"]'
    study = told(
        "1. e4 e5 2. Ke2 Ke7",
        ("", "Ines has the white men, and she likes adventures. Ruben does not: he is careful."),
        ("e4", "Ines begins as she always does."),
        ("e4 e5 Ke2 Ke7", "From now on she can castle on neither side. She can still castle short, says the book."),
        headers=headers,
    )
    assert [query.quote for query in read_through(study).queries] == ["She can still castle short"]
