"""Lines that do not say which move they tell, and questions with more than one answer."""

from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import read_talk
from studyboard.reading.findings import Topic
from studyboard.reading.read_through import read_through


def found(study, toml):
    return read_through(read_talk(toml, study))


def test_a_line_that_names_none_of_three_moves_is_queried():
    study = next(read_games("1. e4 (1. d4) (1. c4) 1... e5 *")).study
    toml = (
        '[[node]]\npath = "e4"\nspoken = "Pawn to e4."\n'
        '[[node]]\npath = "d4"\nspoken = "d4 is the other big one."\n'
        '[[node]]\npath = "c4"\nspoken = "And this is also quite popular these days."\n'
    )
    queries = found(study, toml).queries
    assert [query.kind for query in queries] == [Topic.BRANCH]
    assert "c4" in queries[0].why


def test_two_moves_need_no_names():
    study = next(read_games("1. e4 (1. d4) 1... e5 *")).study
    toml = '[[node]]\npath = "e4"\nspoken = "Pawn to e4."\n[[node]]\npath = "d4"\nspoken = "The other way to begin."\n'
    assert found(study, toml).queries == ()


def test_a_think_pause_with_two_mates_is_queried():
    study = Study({"SetUp": "1", "FEN": "7k/8/8/8/8/8/R7/1R4K1 w - - 0 1"})
    toml = (
        '[[node]]\npath = ""\nspoken = "White to play. Find the mate."\nthink = 5\n'
        '[[node]]\npath = "Ra7"\nspoken = "The rook takes the seventh rank."\n'
    )
    queries = found(study, toml).queries
    assert [query.kind for query in queries] == [Topic.THINK]
    assert "Rb7" in queries[0].why


def test_a_think_pause_with_one_solution_is_confirmed():
    study = Study({"SetUp": "1", "FEN": "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"})
    toml = (
        '[[node]]\npath = ""\nspoken = "White to play and mate at once."\nthink = 5\n'
        '[[node]]\npath = "Ra8#"\nspoken = "Rook a8, mate."\n'
    )
    report = found(study, toml)
    assert report.queries == ()
    assert Topic.THINK in {finding.kind for finding in report.confirmed}
