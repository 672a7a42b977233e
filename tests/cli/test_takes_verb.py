"""The takes of a study on the command line, and sound from elsewhere brought into it."""

from __future__ import annotations

import json
import wave
from pathlib import Path

import pytest

from studyboard.model.take_edits import discard
from studyboard.store.study_file import StudyFile

pytest.importorskip("av")


@pytest.fixture
def talk(say, tmp_path) -> Path:
    """A study of three moves, none of which is spoken about yet."""
    game = tmp_path / "game.pgn"
    game.write_text('[White "Marlow, Edda"]\n[Black "Quist, Torben"]\n\n1. e4 e5 2. Nf3 *\n')
    path = tmp_path / "talk.studyboard"
    assert say("new", path, "--game", game).status == 0
    return path


@pytest.fixture
def sound(tmp_path) -> Path:
    """Six seconds of next to nothing."""
    path = tmp_path / "telephone.wav"
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(16_000)
        file.writeframes(bytes(range(192)) * 1_000)
    return path


def test_a_sound_tells_all_beats_if_nothing_else_is_said(say, talk, sound):
    answer = say("takes", talk, "--add", sound, "--json")
    assert (answer.status, answer.err) == (0, "")
    report = json.loads(answer.out)
    assert report["added"] == 1
    assert report["takes"][0]["origin"] == "telephone.wav"
    assert [beat["take"] for beat in report["beats"]] == [1, 1, 1]
    assert report["seconds"] == pytest.approx(6.0, abs=0.05)
    with StudyFile.open(talk) as file:
        assert file.sound.length(1) == pytest.approx(6 * 48_000, abs=100)


def test_a_sound_tells_the_beats_that_are_named(say, talk, sound):
    say("takes", talk, "--add", sound)
    answer = say("takes", talk, "--add", sound, "--from", "1...e5", "--name", "again")
    assert "again" in answer.out
    assert "every line is told" in answer.out
    report = json.loads(say("takes", talk, "--json").out)
    assert [beat["take"] for beat in report["beats"]] == [1, 2, 1]
    assert report["beats"][1]["takes"] == [2, 1]
    assert report["beats"][1]["seconds"] == pytest.approx(6.0, abs=0.05)
    say("takes", talk, "--add", sound, "--from", "e4", "--to", "2")
    report = json.loads(say("takes", talk, "--json").out)
    assert [beat["take"] for beat in report["beats"]] == [3, 3, 1]


def test_discarded_sound_is_deleted_for_good_and_the_history_still_works(say, talk, sound):
    say("takes", talk, "--add", sound)
    say("takes", talk, "--add", sound, "--from", "2")
    with StudyFile.open(talk) as file:
        file.do(discard(file.study.takes[1]))
    answer = say("takes", talk, "--purge", "--json")
    assert answer.status == 0
    assert "deleted for good" in answer.err
    assert [beat["take"] for beat in json.loads(answer.out)["beats"]] == [None, 2, None]
    with StudyFile.open(talk) as file:
        assert (file.sound.length(1), file.sound.length(2)) == (0, file.study.takes[2].samples)
        file.undo()
    assert [beat["take"] for beat in json.loads(say("takes", talk, "--json").out)["beats"]] == [None, 2, None]


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (("--from", "9"), "there is no number 9"),
        (("--from", "Qh5"), "No beat is called “Qh5”"),
        (("--from", "3", "--to", "1"), "comes before the first"),
    ],
)
def test_beats_that_are_not_there_are_told_and_nothing_is_added(say, talk, sound, words, sentence):
    answer = say("takes", talk, "--add", sound, *words)
    assert answer.status == 2
    assert sentence in answer.err
    with StudyFile.open(talk) as file:
        assert (file.study.takes, file.recovered) == ({}, ())


def test_a_beat_without_a_sound_makes_no_sense(say, talk):
    answer = say("takes", talk, "--from", "1")
    assert answer.status == 2
    assert "--add" in answer.err


def test_a_file_without_sound_is_told(say, talk, tmp_path):
    text = tmp_path / "notes.txt"
    text.write_text("no sound")
    answer = say("takes", talk, "--add", text)
    assert answer.status == 2
    assert "“notes.txt”" in answer.err


def test_a_damaged_file_gives_what_can_be_read_and_says_so(say, talk, sound):
    sound.write_bytes(sound.read_bytes()[:100_000])
    answer = say("takes", talk, "--add", sound)
    assert answer.status == 1
    assert "could be read, and are kept" in answer.err


def test_takes_are_listed_with_the_number_that_listen_asks_for(say, talk, sound):
    say("takes", talk, "--add", sound)
    told = say("takes", talk, "--add", sound, "--from", "1...e5").out.splitlines()
    assert [line.split()[:2] for line in told[1:3]] == [["1", "telephone"], ["2", "telephone"]]
    (line,) = [line for line in told if "e5" in line]
    assert "telephone (2)" in line
    assert "telephone (1)" in line, "the other one of that name, too"


def test_a_take_that_was_cut_off_is_listed_and_one_that_is_being_recorded_is_announced(say, talk):
    with StudyFile.open(talk) as file:
        take = file.sound.begin_take("Take 1", 48_000, "2031-03-05T20:00:00+00:00")
        file.sound.append_sound(take, bytes(2 * 48_000))
        meanwhile = say("takes", talk)
        assert "being recorded" in meanwhile.err
        assert "Take 1" not in meanwhile.out
    found = say("takes", talk)
    assert "Take 1 was cut off" in found.err
    assert "0:01  cut off" in found.out
    assert say("takes", talk).err == ""


def test_long_names_leave_the_beats_their_room(say, talk, sound):
    name = "The first try of Sunday evening in the sail loft, with the window open"
    for _ in range(2):
        say("takes", talk, "--add", sound, "--name", name)
    told = say("takes", talk).out
    assert all(len(line) <= 80 for line in told.splitlines())
    (beat,) = (line for line in told.splitlines() if "2. Nf3" in line)
    assert "(2)" in beat
    assert "(1)" in beat
