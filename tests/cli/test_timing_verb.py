"""The timing of a study on the terminal and for programs."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from studyboard.model.edits import ChangeLine, ChangeNode, ChangeRehearsed, ChangeSlot, PutTake
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.store.study_file import StudyFile


@pytest.fixture
def talk(study: Path) -> Path:
    """The study with a greeting, two spoken lines, a beat of ten seconds, a take and a rehearsal."""
    with StudyFile.open(study) as file:
        _, e4, e5, *_ = file.study.main_line()
        file.do(ChangeLine(Part.GREETING, FreeLine(SpokenLine("Good evening, everybody."))))
        file.do(ChangeNode(e4, "spoken", SpokenLine("Edda opens with the king's pawn.")))
        file.do(ChangeNode(e5, "spoken", SpokenLine("Torben does the same.")))
        file.do(ChangeNode(e5, "intended", 10.0))
        events = (TakeEvent(SoundTime(0, 1000), e4, e4), TakeEvent(SoundTime(2500, 1000), e5, e5))
        file.do(PutTake(Take(1, "First", 1000, 6000, "2025-02-11T21:00:00+01:00", events)))
        file.do(ChangeRehearsed(((e4, 2.25),)))
    return study


def test_programs_get_every_beat_with_its_seconds(say: Callable, talk: Path) -> None:
    report = json.loads(say("timing", talk, "--json").out)
    assert list(report) == ["slot", "total", "over", "beats"]
    assert report["slot"] is None
    assert report["over"] is None
    for beat in report["beats"]:
        assert list(beat)[:6] == ["node", "san", "text", "intended", "estimated", "recorded"]
    greeting, e4, e5, *_ = report["beats"]
    assert (greeting["node"], greeting["san"], greeting["text"]) == (None, "greeting", "Good evening, everybody.")
    assert (e4["san"], e4["text"]) == ("e4", "Edda opens with the king's pawn.")
    assert (e4["intended"], e4["recorded"], e4["rehearsed"]) == (None, 2.5, 2.25)
    assert (e5["intended"], e5["recorded"], e5["rehearsed"]) == (10.0, 3.5, None)
    assert 1.0 < e4["estimated"] < 4.0


def test_the_total_is_the_sum_of_what_the_plan_counts_with(say: Callable, talk: Path) -> None:
    report = json.loads(say("timing", talk, "--json").out)
    planned = (beat["estimated"] if beat["intended"] is None else beat["intended"] for beat in report["beats"])
    assert report["total"] == pytest.approx(sum(planned), abs=0.1)


def test_a_talk_within_its_slot_is_good_and_one_beyond_it_is_not(say: Callable, talk: Path) -> None:
    total = json.loads(say("timing", talk, "--json").out)["total"]
    for slot, status, words in ((total + 60.0, 0, "1:00 under"), (total - 5.0, 1, "5 s over")):
        with StudyFile.open(talk) as file:
            file.do(ChangeSlot(slot))
        answer = say("timing", talk)
        assert answer.status == status
        assert words in answer.out
        report = say("timing", talk, "--json")
        assert report.status == status
        assert json.loads(report.out)["over"] == pytest.approx(total - slot, abs=0.02)


def test_people_get_a_table_with_moves_seconds_and_lines(say: Callable, talk: Path) -> None:
    out = say("timing", talk).out
    assert "greeting" in out
    row = next(line for line in out.splitlines() if "Torben does" in line)
    assert row.startswith("1... e5")
    assert "10.0" in row
    assert "3.5" in row
    assert "no slot is set" in out


def test_the_table_keeps_its_columns_when_it_goes_into_a_file(call: Callable, talk: Path) -> None:
    answer = call("timing", talk.name, COLUMNS="60")
    assert answer.status == 0
    assert answer.err == ""
    assert "\x1b" not in answer.out
    assert all(len(line) <= 60 for line in answer.out.splitlines())


def test_a_game_is_timed_without_making_a_study_of_it(say: Callable, game: Path, tmp_path: Path) -> None:
    answer = say("timing", game, "--json")
    assert [beat["san"] for beat in json.loads(answer.out)["beats"]][:3] == ["e4", "e5", "Nf3"]
    assert sorted(path.name for path in tmp_path.iterdir()) == ["game.pgn"]


def test_a_study_that_is_open_elsewhere_can_be_timed_meanwhile(say: Callable, talk: Path) -> None:
    with StudyFile.open(talk):
        assert say("timing", talk).status == 0
