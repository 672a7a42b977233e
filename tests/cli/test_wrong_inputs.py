"""Every verb on what it cannot use: exit status 2, one line that says why, and nothing left behind."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

READERS = [("timing",), ("pgn",), ("deliver", "--to", "out"), ("new", "made.studyboard", "--game")]


def _words(verb: tuple[str, ...], path: Path, folder: Path) -> list[object]:
    """The verb on this file, with its other files inside the folder."""
    name, *rest = verb
    placed: list[object] = [folder / word if word in ("out", "made.studyboard") else word for word in rest]
    return [name, *placed, path] if name in ("new",) else [name, path, *placed]


@pytest.fixture(params=READERS, ids=[verb[0] for verb in READERS])
def refuse(request: pytest.FixtureRequest, refused, tmp_path: Path):
    """Lets one verb refuse a file; what was in the folder before is all that may be in it afterwards."""

    def run(path: Path) -> str:
        before = sorted(tmp_path.rglob("*"))
        line = refused(*_words(request.param, path, tmp_path))
        assert sorted(tmp_path.rglob("*")) == before
        return line

    return run


def test_a_file_that_is_not_there(refuse, tmp_path: Path) -> None:
    assert "nowhere.pgn" in refuse(tmp_path / "nowhere.pgn")


def test_a_study_that_is_not_there(refuse, tmp_path: Path) -> None:
    assert "nowhere.studyboard" in refuse(tmp_path / "nowhere.studyboard")


def test_a_folder(refuse, tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    assert "folder" in refuse(tmp_path / "folder")


def test_an_empty_file(refuse, tmp_path: Path) -> None:
    path = tmp_path / "empty.pgn"
    path.touch()
    assert "no game" in refuse(path)


def test_bytes_that_mean_nothing(refuse, tmp_path: Path) -> None:
    path = tmp_path / "picture.pgn"
    path.write_bytes(bytes(number * 7919 % 256 for number in range(20_000)))
    assert "picture.pgn" in refuse(path)


def test_text_that_is_no_game(refuse, tmp_path: Path) -> None:
    path = tmp_path / "letter.pgn"
    path.write_text("Dear members,\nthe next meeting is on Thursday.\n", encoding="utf-8")
    assert "no game" in refuse(path)


def test_a_link_that_leads_to_itself(refuse, tmp_path: Path) -> None:
    path = tmp_path / "loop.pgn"
    path.symlink_to(path)
    assert "loop.pgn" in refuse(path)


STUDY_READERS = [verb for verb in READERS if verb[0] != "new"]


@pytest.fixture(params=STUDY_READERS, ids=[verb[0] for verb in STUDY_READERS])
def refuse_study(request: pytest.FixtureRequest, refused, tmp_path: Path):
    """Lets one verb that opens studies refuse a file."""

    def run(path: Path) -> str:
        line = refused(*_words(request.param, path, tmp_path))
        assert not (tmp_path / "out").exists()
        return line

    return run


def test_a_study_by_name_that_is_none(refuse_study, tmp_path: Path) -> None:
    path = tmp_path / "letter.studyboard"
    path.write_text("Dear members", encoding="utf-8")
    assert "not a study" in refuse_study(path)


def test_a_database_of_something_else(refuse_study, tmp_path: Path) -> None:
    path = tmp_path / "members.db"
    with sqlite3.connect(path) as database:
        database.execute("CREATE TABLE member (name TEXT)")
    database.close()
    assert "not a study" in refuse_study(path)


def test_a_study_of_a_later_version(refuse_study, study: Path) -> None:
    database = sqlite3.connect(study)
    database.execute("PRAGMA user_version = 9999")
    database.close()
    assert "later version" in refuse_study(study)


def test_a_study_cut_short(refuse_study, study: Path) -> None:
    study.write_bytes(study.read_bytes()[:5000])
    assert study.name in refuse_study(study)


def test_a_new_study_in_a_folder_that_does_not_exist(refused, game: Path, tmp_path: Path) -> None:
    assert "folder" in refused("new", tmp_path / "nowhere" / "made.studyboard", "--game", game)


def test_a_new_study_where_a_folder_stands(refused, game: Path, tmp_path: Path) -> None:
    (tmp_path / "made.studyboard").mkdir()
    refused("new", tmp_path / "made.studyboard", "--game", game)


def test_a_delivery_into_a_file(refused, study: Path, game: Path) -> None:
    assert game.name in refused("deliver", study, "--to", game, "--game")


@pytest.mark.skipif(not Path("/sys/kernel").exists(), reason="needs a folder in which even root may make no file")
@pytest.mark.parametrize("words", [("new", "/sys/made.studyboard", "--game"), ("deliver", "--to", "/sys/out")])
def test_a_folder_in_which_nothing_may_be_made(refused, game: Path, words: tuple[str, ...]) -> None:
    assert "/sys" in refused(*words, game)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_a_disk_that_is_full_is_an_error_with_one_line(start, study: Path) -> None:
    process = start("pgn", study, stdout="/dev/full")
    _, errors = process.communicate()
    assert process.returncode == 2
    assert b"No space left" in errors
    assert b"Traceback" not in errors


def test_a_verb_without_what_it_needs_says_how_it_is_used(say) -> None:
    for words in (("new",), ("deliver", "x.studyboard"), ("timing",), ("new", "x", "--number", "many")):
        answer = say(*words)
        assert answer.status == 2
        assert "usage:" in answer.err
        assert "Traceback" not in answer.err


def test_a_new_study_of_nothing(refused, tmp_path: Path) -> None:
    assert "--game, --fen" in refused("new", tmp_path / "made.studyboard")
    assert list(tmp_path.iterdir()) == []


def test_a_game_and_a_position_at_once_are_refused(say, game: Path) -> None:
    answer = say("new", "x.studyboard", "--game", game, "--fen", "8/8/8/8/8/8/8/8 w - - 0 1")
    assert answer.status == 2
    assert "not allowed with" in answer.err


def test_a_folder_without_a_name(say, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # As `--to "$OUT"` is where OUT is not set: nothing may be strewn over the folder that the shell stands in.
    path = tmp_path / "game.pgn"
    path.write_text("1. e4 e5 *\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    answer = say("deliver", path, "--to", "", "--game")
    assert answer.status == 2
    assert "no folder is named" in answer.err
    assert list(tmp_path.iterdir()) == [path]


def test_a_game_that_the_file_does_not_hold(refused, tmp_path: Path) -> None:
    path = tmp_path / "game.pgn"
    path.write_text("1. e4 e5 *\n", encoding="utf-8")
    assert "holds 1 game; there is no number 9" in refused("timing", path, "--number", 9)
