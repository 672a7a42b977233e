"""How the program is called and how it ends."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable
from pathlib import Path

import pytest

from studyboard import __version__
from studyboard.cli import main_desk


def test_help_names_every_verb_and_the_cautions(say: Callable) -> None:
    answer = say("--help")
    assert answer.status == 0
    for verb in ("open", "tour", "new", "timing", "deliver", "pgn", "check-setup"):
        assert verb in answer.out
    assert "finished games" in " ".join(answer.out.split())
    assert "responsibility" in answer.out


@pytest.mark.parametrize("verb", ["open", "tour", "new", "timing", "deliver", "pgn", "check-setup"])
def test_every_verb_explains_itself(say: Callable, verb: str) -> None:
    answer = say(verb, "--help")
    assert answer.status == 0
    assert f"studyboard {verb}" in answer.out


def test_the_version_is_told(say: Callable) -> None:
    assert say("--version").out == f"studyboard {__version__}\n"


def test_a_file_without_a_verb_is_opened_on_the_desk(call: Callable, game: Path) -> None:
    for words in ((game,), ("open", game)):
        answer = call(*words, DISPLAY=None, WAYLAND_DISPLAY=None, QT_QPA_PLATFORM=None)
        assert answer.status == 2
        assert answer.err.startswith("studyboard: The desk cannot be opened: neither DISPLAY")
        assert answer.err.count("\n") == 1


def test_a_double_click_opens_the_desk_on_the_file(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], game: Path
) -> None:
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    for words in ([], [str(game)]):
        monkeypatch.setattr("sys.argv", ["studyboard-desk", *words])
        assert main_desk() == 2
        assert "The desk cannot be opened: neither DISPLAY" in capsys.readouterr().err


def test_nothing_is_wrong_when_the_reader_of_a_pipe_has_gone(start: Callable, many_games: Path) -> None:
    for verb in (("pgn", many_games, "--number", 1), ("timing", many_games, "--number", 1)):
        process = start(*verb)
        process.stdout.close()
        errors = process.stderr.read()
        assert process.wait() == 0
        assert errors == b""


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs a pipe with a name")
def test_stopping_it_by_hand_ends_it_quietly(start: Callable, tmp_path: Path) -> None:
    pipe = tmp_path / "slow.pgn"
    os.mkfifo(pipe)
    process = start("new", tmp_path / "made.studyboard", "--game", pipe)
    with pipe.open("wb"):  # Opens when the program has begun to read, and gives it nothing.
        process.send_signal(signal.SIGINT)
        _, errors = process.communicate(timeout=60)
    assert process.returncode == 130
    assert errors == b"studyboard: stopped; nothing was left half-written\n"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["slow.pgn"]
