"""A game that could not all be read: what is good of it is used, and every verb says so."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from studyboard.store.study_file import StudyFile


@pytest.fixture
def odd(tmp_path: Path) -> Path:
    """A game in a PGN file whose third half-move cannot be played."""
    path = tmp_path / "odd.pgn"
    path.write_text('[White "Marlow, Edda"]\n[Black "Quist, Torben"]\n\n1. e4 e5 2. Ke4 Nc6 *\n', encoding="utf-8")
    return path


@pytest.mark.parametrize("verb", [("timing",), ("readthrough",), ("pgn",), ("deliver", "--game", "--to")])
def test_a_game_that_could_not_all_be_read_is_used_and_found_wrong(
    say: Callable, odd: Path, tmp_path: Path, verb: tuple[str, ...]
) -> None:
    name, *rest = verb
    answer = say(name, odd, *rest, *([tmp_path / "out"] if name == "deliver" else []))
    assert answer.status == 1
    assert answer.err.startswith(f"{odd}:4:10: “2. Ke4” is not a legal move here.")
    # The read-through says besides that nothing is spoken in this game.
    assert answer.err.count("\n") == (2 if name == "readthrough" else 1)
    assert answer.out != ""


def test_what_was_kept_of_such_a_game_is_timed_as_usual(say: Callable, odd: Path) -> None:
    answer = say("timing", odd, "--json")
    assert answer.status == 1
    assert [beat["san"] for beat in json.loads(answer.out)["beats"]] == ["e4", "e5"]


def test_the_study_made_of_such_a_game_can_be_read_whole(say: Callable, odd: Path, tmp_path: Path) -> None:
    study = tmp_path / "odd.studyboard"
    assert say("new", study, "--game", odd).status == 1
    with StudyFile.open(study, read_only=True) as file:
        assert len(file.study.nodes) == 3
    assert (say("timing", study).status, say("pgn", study).status) == (0, 0)
