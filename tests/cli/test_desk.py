"""The tour where there is no screen: it says so and delivers the example instead."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from studyboard.store.study_file import StudyFile

NOWHERE = {"DISPLAY": None, "WAYLAND_DISPLAY": None, "QT_QPA_PLATFORM": None}


@pytest.fixture
def answer(call: Callable):
    """What the tour says without a screen."""
    return call("tour", **NOWHERE)


def test_it_says_that_there_is_no_screen_and_delivers_the_example(answer, tmp_path: Path) -> None:
    assert answer.status == 0
    assert answer.err.splitlines()[0].startswith("No screen: neither DISPLAY nor WAYLAND_DISPLAY is set")
    assert {path.suffix for path in (tmp_path / "tour").iterdir()} == {
        ".studyboard",
        ".pdf",
        ".txt",
        ".vtt",
        ".srt",
        ".pgn",
        ".png",
        ".html",
        ".json",
    }


def test_the_study_in_the_tour_opens_and_is_a_talk_of_seven_to_nine_minutes(answer, say: Callable, tmp_path) -> None:
    (path,) = (tmp_path / "tour").glob("*.studyboard")
    with StudyFile.open(path) as file:
        assert len(file.study.nodes) > 40
    timing = say("timing", path)
    assert timing.status == 0
    assert "total 7:" in timing.out or "total 8:" in timing.out


def test_the_tour_can_be_taken_again(answer, call: Callable, tmp_path: Path) -> None:
    before = sorted(path.name for path in (tmp_path / "tour").iterdir())
    again = call("tour", **NOWHERE)
    assert again.status == 0
    assert sorted(path.name for path in (tmp_path / "tour").iterdir()) == before


def test_a_file_in_the_way_of_the_folder_is_said_in_one_line(call: Callable, tmp_path: Path) -> None:
    (tmp_path / "tour").touch()
    answer = call("tour", **NOWHERE)
    assert answer.status == 2
    assert answer.err.splitlines()[-1].startswith("studyboard: tour")
    assert "Traceback" not in answer.err


def test_a_screen_that_does_not_answer_is_no_screen(call: Callable, tmp_path: Path) -> None:
    answer = call("tour", DISPLAY=":7431", WAYLAND_DISPLAY=None, QT_QPA_PLATFORM=None)
    assert answer.status == 0
    assert "no X server answers at DISPLAY=:7431" in answer.err
    assert (tmp_path / "tour").is_dir()
