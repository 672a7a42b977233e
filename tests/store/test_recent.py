"""The studies that were open last come up again, and a broken list never stands in the way."""

from __future__ import annotations

import json
import os

import pytest

from studyboard.store.recent import MOST, STATE_DIR, forget, recent_files, remember, state_dir


@pytest.fixture(autouse=True)
def state(tmp_path, monkeypatch):
    monkeypatch.setenv(STATE_DIR, str(tmp_path / "state"))
    return tmp_path / "state"


@pytest.fixture
def studies(tmp_path):
    files = [tmp_path / f"{number}.studyboard" for number in range(MOST + 5)]
    for file in files:
        file.touch()
    return files


def test_nothing_is_remembered_at_first(state):
    assert recent_files() == []
    assert not state.exists()


def test_the_latest_comes_first_and_each_once(studies):
    for file in (studies[0], studies[1], studies[2], studies[0]):
        remember(file)
    assert recent_files() == [studies[0], studies[2], studies[1]]


def test_twenty_are_remembered(studies):
    for file in studies:
        remember(file)
    assert recent_files() == list(reversed(studies))[:20]


def test_a_file_that_is_gone_is_not_shown_and_shown_again_when_it_is_back(studies):
    remember(studies[0])
    remember(studies[1])
    studies[0].unlink()
    assert recent_files() == [studies[1]]
    remember(studies[2])
    studies[0].touch()
    assert recent_files() == [studies[2], studies[1], studies[0]]


def test_a_file_can_be_forgotten(studies):
    remember(studies[0])
    remember(studies[1])
    forget(studies[0])
    assert recent_files() == [studies[1]]


def test_relative_names_are_kept_as_absolute_ones(studies, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    remember(studies[0].name)
    monkeypatch.chdir("/")
    assert recent_files() == [studies[0]]


@pytest.mark.parametrize(
    "text", ["", "{", "null", '{"a": 1}', '[1, null, {"a": 2}, "", "\\u0000"]', "[" * 100_000, "\xff"]
)
def test_a_broken_list_counts_as_an_empty_one(state, studies, text):
    state.mkdir()
    (state / "recent.json").write_text(text, encoding="latin-1")
    assert recent_files() == []
    remember(studies[0])
    assert recent_files() == [studies[0]]


def test_the_good_part_of_a_list_is_read(state, studies):
    state.mkdir()
    (state / "recent.json").write_text(json.dumps([str(studies[0]), 5, str(studies[1])]))
    assert recent_files() == [studies[0], studies[1]]


def test_nothing_is_left_beside_the_list(state, studies):
    for file in studies:
        remember(file)
    assert os.listdir(state) == ["recent.json"]


def test_a_place_that_cannot_be_written_stops_nothing(state, studies):
    state.write_text("a file where the folder should be")
    remember(studies[0])
    assert recent_files() == []


def test_without_a_folder_of_choice_it_is_the_one_of_the_system(monkeypatch):
    monkeypatch.delenv(STATE_DIR)
    assert "studyboard" in str(state_dir()).lower()
