"""Files larger than a day's work: 2,000 games, and a game with 3,000 variations inside each other."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import chess.pgn
import pytest

from studyboard.model.edits import ChangeNode
from studyboard.model.script import SpokenLine
from studyboard.store.study_file import StudyFile


@pytest.fixture
def deep_study(say: Callable, deep_game: Path, tmp_path: Path) -> Path:
    """The deep game as a study."""
    path = tmp_path / "deep.studyboard"
    assert say("new", path, "--game", deep_game).status == 0
    return path


def test_one_of_two_thousand_games_becomes_a_study(say: Callable, many_games: Path, tmp_path: Path) -> None:
    path = tmp_path / "one.studyboard"
    assert say("new", path, "--game", many_games, "--number", 1777).status == 0
    with StudyFile.open(path, read_only=True) as file:
        assert file.study.headers["White"] == "White 1777"


def test_two_thousand_games_are_listed_in_one_line_of_reasonable_length(refused, many_games: Path) -> None:
    line = refused("new", "none.studyboard", "--game", many_games)
    assert "2000 games" in line
    assert len(line) < 500 + len(str(many_games))


def test_the_last_of_two_thousand_games_is_printed_and_timed(say: Callable, many_games: Path) -> None:
    assert '[White "White 2000"]' in say("pgn", many_games, "--number", 2000).out
    report = json.loads(say("timing", many_games, "--number", 2000, "--json").out)
    assert 30 <= len(report["beats"]) <= 120


def test_three_thousand_nested_variations_all_become_side_lines(say: Callable, deep_study: Path) -> None:
    with StudyFile.open(deep_study, read_only=True) as file:
        study = file.study
        assert len(study.nodes) == 6001
        assert sum(study.begins_side_line(child) for node in study.nodes.values() for child in node.children) == 3000


def test_three_thousand_nested_variations_are_written_again(say: Callable, deep_study: Path, deep_game: Path) -> None:
    printed = say("pgn", deep_study).out
    assert printed.count("(") == printed.count(")") == 3000
    assert printed == say("pgn", deep_game).out
    tokens = printed.partition("\n\n")[2].replace("(", " ").replace(")", " ").split()
    moves = [token for token in tokens if token[0] == "N"]
    assert len(moves) == 6000
    assert all(len(line) < 80 for line in printed.partition("\n\n")[2].splitlines())


def test_the_innermost_variation_is_the_line_that_was_played(say: Callable, deep_study: Path) -> None:
    with StudyFile.open(deep_study, read_only=True) as file:
        study = file.study
        deepest = max(study.nodes)
        board = chess.Board()
        for node in study.path(deepest)[1:]:
            move = study.nodes[node].move
            assert move is not None
            assert board.is_legal(move)
            board.push(move)
            board.clear_stack()


def test_three_thousand_nested_variations_are_timed(say: Callable, deep_study: Path) -> None:
    answer = say("timing", deep_study, "--json")
    assert answer.status == 0
    report = json.loads(answer.out)
    assert len(report["beats"]) == 6000
    assert report["total"] > 6000


def test_three_thousand_nested_variations_are_delivered(say: Callable, deep_study: Path, tmp_path: Path) -> None:
    with StudyFile.open(deep_study) as file:
        innermost = max(file.study.nodes)
        file.do(ChangeNode(innermost, "spoken", SpokenLine("This is where it ends.")))
    answer = say("deliver", deep_study, "--to", tmp_path / "out", "--sheet", "--captions", "--game")
    assert (answer.status, answer.err) == (0, "")
    assert {path.suffix for path in (tmp_path / "out").iterdir()} == {".pdf", ".vtt", ".srt", ".pgn", ".json"}
