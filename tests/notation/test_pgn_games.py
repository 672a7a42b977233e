"""The chooser lists the games that the reader reads, without reading their moves."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.errors import StudyboardError
from studyboard.notation import pgn_games
from studyboard.notation.pgn_games import index_games, iter_index
from studyboard.notation.pgn_reader import read_game_at, read_games

ROUND = """\
[Event "Riverside Evening"]
[White "Aino Salo"]
[Black "Teo Marsh"]
[ECO "C50"]
[Result "1-0"]

1. e4 e5 {a comment
[White "not a tag"] inside; } 2. Nf3 ; and { here
1-0

[Event "Riverside Evening"]
[White "Iris Bell"]
[FEN "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"]

1. e4 *
"""


@pytest.fixture
def path(tmp_path):
    file = tmp_path / "round.pgn"
    file.write_text(ROUND, encoding="utf-8")
    return file


def test_every_game_is_listed_with_its_tags_and_place(path):
    first, second = index_games(path)
    assert (first.number, first.line, first.column, first.offset) == (1, 1, 1, 0)
    assert (second.number, second.line, second.column) == (2, 11, 1)
    assert first.headers["ECO"] == "C50"
    assert second.headers == {
        "Event": "Riverside Evening", "White": "Iris Bell", "FEN": "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1",
    }  # fmt: skip
    assert ROUND.encode()[second.offset : second.offset + second.length].startswith(b"[Event")


def test_one_game_is_read_as_it_would_be_among_all_of_them(path):
    for entry, game in zip(index_games(path), read_games(path), strict=True):
        alone = read_game_at(path, entry)
        assert (alone.number, alone.problems) == (game.number, game.problems)
        assert alone.study.nodes == game.study.nodes
        assert alone.study.headers == game.study.headers


def test_problems_of_one_game_name_lines_of_the_whole_file(tmp_path):
    path = tmp_path / "two.pgn"
    path.write_text('[White "A"]\n\n1. e4 *\n\n[White "B"]\n\n1. e4\ne9 *\n', encoding="utf-8")
    (problem,) = read_game_at(path, index_games(path)[1]).problems
    assert (problem.line, problem.column, problem.game_number) == (8, 1, 2)


def test_a_file_that_became_shorter_is_noticed(path):
    second = index_games(path)[1]
    path.write_text("1. e4 *\n", encoding="utf-8")
    with pytest.raises(StudyboardError, match="has changed"):
        read_game_at(path, second)


def test_progress_is_told_up_to_the_end(path):
    told: list[tuple[int, int]] = []
    index_games(path, lambda done, total: told.append((done, total)))
    assert told[-1] == (len(ROUND), len(ROUND))
    assert [done for done, _ in told] == sorted(done for done, _ in told)


def test_the_first_game_of_a_long_file_comes_before_the_last_is_looked_for(path):
    games = iter_index(path)
    assert next(games).number == 1


def test_a_big_file_is_mapped_and_gives_the_same_games(path, monkeypatch):
    in_memory = index_games(path)
    monkeypatch.setattr(pgn_games, "_IN_MEMORY", 10)
    assert index_games(path) == in_memory
    assert [game.study.nodes for game in read_games(path)] == [game.study.nodes for game in read_games(ROUND)]


@pytest.mark.parametrize(
    ("text", "games"),
    [
        ("", 0),
        ("\n\n", 0),
        ("1. e4 e5 1-0", 1),
        ("1. e4 e5 1-0\n\n1. d4 d5 0-1", 2),
        ("1. e4 1-0 1. d4 0-1 e4 *", 3),
        ("1. e4 e5\n\n1. d4 d5", 2),
        ("1. e4 e5\n\n2. Nf3 Nc6", 1),
        ("{Before}\n\n1. e4 e5", 1),
        ("1. e4 (1. d4 1-0 d5) e5 1-0", 1),
        ("1. e4 {1-0 e5\n\n1. d4} e5 1-0", 1),
        ("1. e4 ; 1-0 e5\ne5 1-0", 1),
        ("1. e4\n% 1-0 e5\ne5 1-0", 1),
        ("1. e4 1-0 {He resigned}", 1),
        ("1. e4 1-0\n\n\n", 1),
        ('[White "A"]\n\n[Black "B"]\n\n1. e4 *', 1),
        ('[White "A"]\n[Black "B"]\n\n[White "C"]\n[Black "D"]\n', 2),
        ('[White "A"]\n\n1. e4 {lost brace\n\n[White "B"]\n\n1. d4 {x} *', 2),
        ('[White "A"]\n\n1. e4 {lost brace\n\n[White "B"]\n\n1. d4 *', 2),
        ('[White "A"]\n\n1. e4 {see\n[White "B"]\nthere} *', 1),
        ('[White "A"]\n\n1. e4 *\n\ufeff[White "B"]\n\n1. d4 *', 2),
        ('[White "A"]\n1. e4 *\n[White "B"]\n1. d4 *', 2),
        ('[White "A"]\n\n1. e4 *\n\n  [White "B"]\n\n1. d4 *', 2),
        ("Just some words\nabout nothing", 1),
        ("% nothing but an escape", 1),
    ],
)
def test_games_are_told_apart(text, games, tmp_path):
    assert len(list(read_games(text))) == games
    path = tmp_path / "games.pgn"
    path.write_text(text, encoding="utf-8")
    assert len(index_games(path)) == games


def test_a_comment_that_lost_its_brace_does_not_swallow_the_next_game():
    first, second = read_games('[White "A"]\n\n1. e4 {lost brace\n\n[White "B"]\n\n1. d4 {x} *')
    assert first.study.nodes[1].note == "lost brace"
    assert [(problem.line, problem.column) for problem in first.problems] == [(3, 7)]
    assert second.study.headers["White"] == "B"
    assert second.study.nodes[1].note == "x"


def test_a_broken_tag_is_listed_as_far_as_it_can_be_read(tmp_path):
    path = tmp_path / "bad.pgn"
    path.write_text('[White "O"Neil"]\n[Black "B]\n[Round 3]\n\n*', encoding="latin-1")
    assert index_games(path)[0].headers == {"White": 'O"Neil', "Black": "B", "Round": "3"}


def test_a_list_of_games_in_utf_16_can_be_read_from(tmp_path):
    path = tmp_path / "wide.pgn"
    path.write_text(ROUND, encoding="utf-16")
    assert [entry.headers["White"] for entry in index_games(path)] == ["Aino Salo", "Iris Bell"]
    assert read_game_at(path, index_games(path)[1]).study.headers["White"] == "Iris Bell"


def test_a_missing_file_is_named(tmp_path):
    with pytest.raises(StudyboardError, match=r"gone\.pgn cannot be read"):
        index_games(tmp_path / "gone.pgn")
    with pytest.raises(StudyboardError, match="cannot be read"):
        index_games(tmp_path)


_PIECES = [
    "e4",
    "{",
    "}",
    "(",
    ")",
    ";",
    "\n",
    "\n\n",
    '[White "A"]\n',
    "\n%",
    "1.",
    "1-0",
    "*",
    " ",
    "x",
    '[Black "B" \n',
]


@given(st.lists(st.sampled_from(_PIECES), max_size=40).map("".join))
def test_the_pieces_of_a_file_cover_it_in_order(text):
    data = text.encode()
    spans = [(start, end) for _, _, _, start, _, end in pgn_games._spans(data)]
    at = 0
    for start, end in spans:
        assert not data[at:start].strip()
        assert start < end
        at = end
    assert not data[at:].strip()
