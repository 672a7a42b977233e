"""The pace of a presenter, learnt on the command line."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

from studyboard.store.study_file import StudyFile

_LINE = "The knight comes to f3, the bishop follows it to c4, and nobody in the hall has expected anything else."


def test_a_timed_talk_tells_its_pace_and_how_well_it_foretells(say: Callable, tmp_path: Path) -> None:
    talk = tmp_path / "talk.txt"
    talk.write_text("\n".join(f"[{n * 8 // 60}:{n * 8 % 60:02}] {_LINE}" for n in range(13)), encoding="utf-8")
    report = json.loads(say("pace", talk, "--json").out)
    assert report["words_per_minute"] == round(20 * 60 / 8, 1)
    assert report["lines"] == 12
    low, high = report["syllables_per_second_range"]
    assert low < report["syllables_per_second"] < high
    assert report["held_out"]["lines"] == 6
    assert abs(report["held_out"]["total_error"]) < 0.1
    told = say("pace", talk).out
    assert "150 words a minute over 12 lines" in told
    assert "90 % probability" in told


def test_the_pace_can_be_kept_in_a_study(say: Callable, study: Path, tmp_path: Path) -> None:
    talk = tmp_path / "talk.txt"
    talk.write_text("\n".join(f"[0:{n * 6:02}] {_LINE}" for n in range(6)), encoding="utf-8")
    with StudyFile.open(study) as file:
        before = file.study.pace
    assert "kept in" in say("pace", talk, "--keep-in", study).out
    with StudyFile.open(study) as file:
        assert file.study.pace.syllables_per_second > before.syllables_per_second
        assert file.undo_label == "Set the pace"


def test_a_talk_without_times_is_refused_in_one_line(say: Callable, tmp_path: Path) -> None:
    talk = tmp_path / "talk.txt"
    talk.write_text(_LINE, encoding="utf-8")
    said = say("pace", talk)
    assert said.status == 2
    assert said.err.count("\n") == 1
    assert "[m:ss]" in said.err


def test_a_study_without_takes_is_told_to_record_not_to_write_times(say: Callable, study: Path) -> None:
    said = say("pace", study)
    assert said.status == 2
    assert "Record more" in said.err
    assert "[m:ss]" not in said.err
