"""Making a study from a talk in words."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from studyboard.store.study_file import StudyFile

TALK = """[0:00] Good evening.
[0:04] White plays e4, Black replies e5. If now knight f3, then knight c6.
[0:15] In the game White went for f4, and e takes f4.
"""


@pytest.fixture
def talk(tmp_path: Path) -> Path:
    path = tmp_path / "talk.txt"
    path.write_text(TALK, encoding="utf-8")
    return path


def test_a_talk_becomes_a_study(say, talk: Path, tmp_path: Path) -> None:
    path = tmp_path / "evening.studyboard"
    answer = say("new", path, "--narration", talk, "--json")
    assert (answer.status, answer.err) == (0, "")
    report = json.loads(answer.out)
    assert report["main_line"] == ["e4", "e5", "f4", "exf4"]
    assert report["side_lines"] == [{"after": ["e4", "e5"], "line": ["Nf3", "Nc6"]}]
    assert [(beat["at"], beat["moves"]) for beat in report["beats"]] == [
        (0.0, []), (4.0, ["e4", "e5"]), (pytest.approx(9.7, abs=2), ["Nf3", "Nc6"]), (15.0, ["f4", "exf4"]),
    ]  # fmt: skip
    assert report["unread"] == []
    with StudyFile.open(path, read_only=True) as file:
        assert len(file.study.nodes) == 7


def test_a_talk_follows_its_game(say, talk: Path, tmp_path: Path) -> None:
    game = tmp_path / "game.pgn"
    game.write_text('[White "Pell, Imani"]\n\n1. e4 e5 2. f4 exf4 3. Bc4 *\n', encoding="utf-8")
    path = tmp_path / "evening.studyboard"
    answer = say("new", path, "--narration", talk, "--game", game, "--json")
    assert json.loads(answer.out)["main_line"] == ["e4", "e5", "f4", "exf4", "Bc4"]
    with StudyFile.open(path, read_only=True) as file:
        assert file.study.headers["White"] == "Pell, Imani"


def test_a_talk_starts_from_a_position(say, tmp_path: Path) -> None:
    talk = tmp_path / "talk.txt"
    talk.write_text("The pawn goes to c8 and becomes a rook.", encoding="utf-8")
    answer = say(
        "new", tmp_path / "s.studyboard", "--narration", talk, "--fen", "8/2P4k/8/8/8/8/8/K7 w - - 0 1", "--json"
    )
    assert json.loads(answer.out)["main_line"] == ["c8=R"]


def test_what_cannot_be_read_is_said(say, tmp_path: Path) -> None:
    talk = tmp_path / "talk.txt"
    talk.write_text("e4, e5. Rook takes h8.", encoding="utf-8")
    answer = say("new", tmp_path / "s.studyboard", "--narration", talk)
    assert answer.status == 1
    assert "Rook takes h8" in answer.out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--narration", "nowhere.txt"), "nowhere.txt cannot be read"),
        (("--narration", "{talk}", "--fen", "8/8/8/8/8/8/8/8 w - - 0 1"), "is no position"),
        (("--narration", "{talk}", "--language", "xx"), "there is no file of its words"),
        (("--narration", "{talk}", "--number", "2"), "--game"),
    ],
)
def test_what_cannot_be_done_is_one_sentence(
    say, talk: Path, tmp_path: Path, words: tuple[str, ...], said: str
) -> None:
    path = tmp_path / "s.studyboard"
    answer = say("new", path, *(word.format(talk=talk) for word in words))
    assert answer.status == 2
    assert said in answer.err
    assert not path.exists()


def test_a_file_that_is_no_text_is_refused(say, tmp_path: Path) -> None:
    talk = tmp_path / "talk.mp3"
    talk.write_bytes(b"ID3\x04\0\0e4, e5.\xff\xfb")
    answer = say("new", tmp_path / "s.studyboard", "--narration", talk)
    assert answer.status == 2
    assert "is no text" in answer.err
    assert not (tmp_path / "s.studyboard").exists()


def test_a_talk_in_sixteen_bits_is_read(say, tmp_path: Path) -> None:
    talk = tmp_path / "talk.txt"
    talk.write_bytes("e4, e5.".encode("utf-16"))
    answer = say("new", tmp_path / "s.studyboard", "--narration", talk, "--json")
    assert json.loads(answer.out)["main_line"] == ["e4", "e5"]


def test_bytes_that_are_no_text_are_read_as_far_as_they_are(say, tmp_path: Path) -> None:
    talk = tmp_path / "talk.txt"
    talk.write_bytes(b"\xef\xbb\xbfe4, \xff\xfe e5.")
    answer = say("new", tmp_path / "s.studyboard", "--narration", talk, "--json")
    assert json.loads(answer.out)["main_line"] == ["e4", "e5"]
