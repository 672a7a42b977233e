"""Making a study, and its annotated game on standard output."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from pathlib import Path

import chess
import chess.pgn
import pytest

from studyboard.model.edits import ChangeNode
from studyboard.model.script import SpokenLine
from studyboard.store.study_file import StudyFile

ENDGAME = "8/5pk1/6p1/7p/7P/6P1/5PK1/3R4 w - - 0 40"


def test_a_game_becomes_a_study_with_its_side_lines_notes_and_players(say, game: Path, tmp_path: Path) -> None:
    path = tmp_path / "evening.studyboard"
    answer = say("new", path, "--game", game)
    assert (answer.status, answer.err) == (0, "")
    assert answer.out == f"{path}: 9 half-moves, 2 side-lines\n"
    with StudyFile.open(path, read_only=True) as file:
        assert file.study.headers["White"] == "Marlow, Edda"
        first = file.study.nodes[list(file.study.main_line())[1]]
        assert first.note == "The king's pawn."


def test_a_single_move_is_no_plural(say, tmp_path: Path) -> None:
    game = tmp_path / "short.pgn"
    game.write_text("1. e4 (1. d4) *\n", encoding="utf-8")
    path = tmp_path / "short.studyboard"
    assert say("new", path, "--game", game).out == f"{path}: 1 half-move, 1 side-line\n"


def test_the_report_is_there_for_programs_too(say, game: Path, tmp_path: Path) -> None:
    path = tmp_path / "evening.studyboard"
    report = json.loads(say("new", path, "--game", game, "--json").out)
    assert report == {"study": str(path), "half_moves": 9, "side_lines": 2, "nodes": 16, "problems": []}


def test_of_several_games_one_is_chosen_by_its_number(say, games: Path, tmp_path: Path) -> None:
    path = tmp_path / "second.studyboard"
    assert say("new", path, "--game", games, "--number", 2).status == 0
    with StudyFile.open(path, read_only=True) as file:
        assert file.study.headers["White"] == "Cantor"


def test_without_a_number_the_games_are_listed(refused, games: Path, tmp_path: Path) -> None:
    line = refused("new", tmp_path / "none.studyboard", "--game", games)
    assert "3 games" in line
    assert "--number" in line
    for number, players in enumerate(("Ashdown – Brel", "Cantor – Dace", "Eke – Fallow"), 1):
        assert f"{number} {players}" in line
    assert not (tmp_path / "none.studyboard").exists()


@pytest.mark.parametrize("number", [0, 4, -1])
def test_a_number_that_no_game_has_is_refused(refused, games: Path, tmp_path: Path, number: int) -> None:
    assert str(number) in refused("new", tmp_path / "none.studyboard", "--game", games, f"--number={number}")


def test_a_position_becomes_a_study(say, tmp_path: Path) -> None:
    path = tmp_path / "endgame.studyboard"
    assert say("new", path, "--fen", ENDGAME).status == 0
    with StudyFile.open(path, read_only=True) as file:
        assert file.study.headers["FEN"] == ENDGAME
        assert file.study.headers["SetUp"] == "1"


@pytest.mark.parametrize(
    ("fen", "reason"),
    [
        ("rubbish", "holds no position"),
        ("8/8/8/8/8/8/8/8 w - - 0 1", "no white king"),
        ("k7/8/8/8/8/8/8/K6Q b - - 0 1 extra words here", "FEN"),
        ("kQ6/8/8/8/8/8/8/K7 w - - 0 1", "not to move stands in check"),
        ("", "needs a position"),
        ("   ", "needs a position"),
    ],
)
def test_what_is_no_position_is_refused_with_the_reason(refused, tmp_path: Path, fen: str, reason: str) -> None:
    assert reason in refused("new", tmp_path / "none.studyboard", "--fen", fen)
    assert list(tmp_path.iterdir()) == []


def test_a_study_that_is_there_is_never_replaced(refused, study: Path, game: Path) -> None:
    before = study.read_bytes()
    assert study.name in refused("new", study, "--game", game)
    assert study.read_bytes() == before


def test_what_cannot_be_read_is_reported_with_its_place_and_the_rest_is_kept(say, tmp_path: Path) -> None:
    game = tmp_path / "odd.pgn"
    game.write_text('[Event "Evening"]\n\n1. e4 e5 2. Ke4 Nc6 *\n', encoding="utf-8")
    path = tmp_path / "odd.studyboard"
    answer = say("new", path, "--game", game)
    assert answer.status == 1
    assert answer.err.startswith(f"{game}:3:")
    assert "Ke4" in answer.err
    with StudyFile.open(path, read_only=True) as file:
        assert len(list(file.study.main_line())) >= 3
    report = json.loads(say("new", tmp_path / "again.studyboard", "--game", game, "--json").out)
    assert [problem["line"] for problem in report["problems"]] == [3] * len(report["problems"])
    assert report["problems"]


def test_the_annotated_game_reads_as_the_game_it_came_from(say, study: Path, game: Path) -> None:
    answer = say("pgn", study)
    assert answer.status == 0
    printed = chess.pgn.read_game(io.StringIO(answer.out))
    original = chess.pgn.read_game(io.StringIO(game.read_text(encoding="utf-8")))
    assert printed is not None
    assert original is not None
    assert printed.errors == []
    assert dict(printed.headers) == dict(original.headers)
    # Everything but the comments' place in the line is the same tree; python-chess compares by what it prints.
    assert str(printed.accept(chess.pgn.StringExporter(headers=False))) == str(
        original.accept(chess.pgn.StringExporter(headers=False))
    )


def test_a_pgn_file_can_be_named_instead_of_a_study(say, game: Path, games: Path, study: Path) -> None:
    assert say("pgn", game).out == say("pgn", study).out
    assert '[White "Eke"]' in say("pgn", games, "--number", 3).out


def test_spoken_lines_stand_in_the_comments_unless_they_are_left_out(say, study: Path) -> None:
    with StudyFile.open(study) as file:
        node = list(file.study.main_line())[2]
        file.do(ChangeNode(node, "spoken", SpokenLine("Torben answers at once.")))
    assert "{Torben answers at once.}" in say("pgn", study).out.replace("\n", " ")
    assert "Torben answers" not in say("pgn", study, "--no-spoken").out


def test_a_number_with_a_study_makes_no_sense(refused, study: Path) -> None:
    assert "--number" in refused("pgn", study, "--number", 1)


def test_a_number_with_a_position_makes_no_sense(refused, tmp_path: Path) -> None:
    assert "--number" in refused("new", tmp_path / "none.studyboard", "--fen", ENDGAME, "--number", 1)


def test_the_game_is_printed_as_utf_8_wherever_it_goes(call: Callable, tmp_path: Path) -> None:
    game = tmp_path / "names.pgn"
    game.write_text('[White "Žižka, Ødegård"]\n[Black "Ђорђе"]\n\n1. e4 *\n', encoding="utf-8")
    answer = call("pgn", game, PYTHONIOENCODING="ascii", PYTHONUTF8="0", LC_ALL="C")
    assert answer.status == 0
    assert '[White "Žižka, Ødegård"]' in answer.out
    assert '[Black "Ђорђе"]' in answer.out
