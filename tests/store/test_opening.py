"""A file of an earlier schema is brought up to date, and nothing of it is lost on the way."""

from __future__ import annotations

import os
import sqlite3
from pathlib import Path

import pytest

from studyboard.model.edits import ChangeLeft, ChangeNode, ChangePronunciations, ChangeRehearsed
from studyboard.model.left_query import LeftQuery
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.store.errors import StudyFileError
from studyboard.store.schema import VERSION
from studyboard.store.study_file import StudyFile

OLDER = range(1, VERSION)


@pytest.fixture(params=OLDER)
def old_version(request):
    """The number of an earlier schema."""
    return request.param


@pytest.fixture
def before(old_version):
    """The name of the copy that is kept of a file before it is upgraded."""
    return f"evening.before-upgrade-v{old_version}.studyboard"


@pytest.fixture
def old(path, old_version):
    """A file as that version of the program left it."""
    schema = Path(__file__).with_name(f"version_{old_version}.sql").read_text(encoding="utf-8")
    connection = sqlite3.connect(path)
    connection.executescript(schema)
    connection.execute("PRAGMA journal_mode = WAL")
    connection.close()
    return path


def version(path):
    connection = sqlite3.connect(path)
    found = connection.execute("PRAGMA user_version").fetchone()[0]
    connection.close()
    return found


def check_content(file):
    study = file.study
    assert study.headers["White"] == "Ortwin, Hanne"
    assert [node.children for node in study.nodes.values()] == [(1,), (2,), (3, 4), (), ()]
    assert study.nodes[1].spoken.text == "She opens with the king's pawn."
    assert study.nodes[3].note == "The usual move."
    assert study.nodes[4].telling.anchor == 3
    assert study.line(Part.GREETING) == FreeLine(SpokenLine("Good evening."), 2.0, locked=True)
    assert [node.locked for node in study.nodes.values()] == [
        node.intended is not None for node in study.nodes.values()
    ]
    assert study.slot == 540.0
    assert study.pace.syllables_per_second == 5.1
    assert file.sound.read_sound(1) == bytes(range(200))
    assert study.takes[1].events[1].at.samples == 60
    assert (study.nodes[1].name, study.nodes[1].note_before, study.rehearsed) == ("", "", {})


def test_an_older_file_is_upgraded_with_all_that_is_in_it(old):
    with StudyFile.open(old) as file:
        check_content(file)
    assert version(old) == VERSION


def test_what_is_new_can_be_stored_in_an_upgraded_file(old, content):
    with StudyFile.open(old) as file:
        file.do(ChangeNode(4, "name", "The gambit"))
        file.do(ChangeNode(4, "note_before", "Bolder:"))
        file.do(ChangeNode(4, "locked", True))
        file.do(ChangeNode(4, "marks", (Mark(MarkKind.TARGET, (28,), 1), Mark(MarkKind.KEY_SQUARE, (36,)))))
        file.do(ChangePronunciations((("Ortwin", "ORT-veen"),)))
        file.do(ChangeRehearsed(((1, 3.5),)))
        file.do(ChangeLeft((LeftQuery(1, "check", "a check"),)))
        done = content(file.study)
    with StudyFile.open(old) as file:
        assert content(file.study) == done


def test_the_history_of_an_older_file_goes_on(old):
    with StudyFile.open(old) as file:
        assert file.redo_label == "Delete a branch"
        assert file.redo().nodes == {2, 3}
        while file.can_undo:
            file.undo()
        assert len(file.study.nodes) == 1
        while file.can_redo:
            file.redo()
        assert set(file.study.nodes) == {0, 1, 2, 4}


def test_the_file_as_it_was_is_kept_beside_the_upgraded_one(old, old_version, tmp_path, before):
    StudyFile.open(old).close()
    assert sorted(os.listdir(tmp_path)) == sorted([before, old.name])
    assert version(tmp_path / before) == old_version
    StudyFile.open(old).close()
    assert sorted(os.listdir(tmp_path)) == sorted([before, old.name])


def test_an_earlier_copy_is_not_overwritten(old, old_version, tmp_path, before):
    (tmp_path / before).write_text("kept")
    StudyFile.open(old).close()
    assert (tmp_path / before).read_text() == "kept"
    assert version(tmp_path / f"evening.before-upgrade-v{old_version}-2.studyboard") == old_version


def test_an_older_file_that_is_only_read_stays_as_it_is(old, tmp_path):
    before = old.read_bytes()
    with StudyFile.open(old, read_only=True) as file:
        check_content(file)
        with file.save_as(tmp_path / "copy.studyboard") as copy:
            check_content(copy)
    assert old.read_bytes() == before
    assert sorted(os.listdir(tmp_path)) == ["copy.studyboard", old.name]


def test_an_upgrade_that_fails_leaves_the_older_file(old, old_version, monkeypatch):
    before = old.read_bytes()
    steps = {old_version: "ALTER TABLE node ADD COLUMN more TEXT NOT NULL DEFAULT ''; ALTER TABLE nowhere ADD COLUMN x"}
    monkeypatch.setattr("studyboard.store.upgrade.STEPS", steps)
    with pytest.raises(StudyFileError, match="nowhere"):
        StudyFile.open(old)
    monkeypatch.undo()
    assert version(old) == old_version
    assert len(old.read_bytes()) == len(before)
    with StudyFile.open(old) as file:
        check_content(file)


def columns(path):
    connection = sqlite3.connect(path)
    tables = [name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
    found = {
        table: sorted(
            (name, kind, required, default, key)
            for _, name, kind, required, default, key in connection.execute(f"PRAGMA table_info({table})")
        )
        for table in tables
    }
    connection.close()
    return found


def test_an_upgraded_file_has_the_same_tables_as_a_new_one(old, tmp_path):
    StudyFile.open(old).close()
    StudyFile.create(tmp_path / "new.studyboard").close()
    assert columns(old) == columns(tmp_path / "new.studyboard")


def test_a_take_that_was_cut_off_in_an_older_file_is_recovered(old, old_version):
    connection = sqlite3.connect(old)
    begun = "(2, 'cut off', 48000, '2030-05-17T21:40:00+02:00', 0)"
    connection.execute(f"INSERT INTO recording (take, name, rate, started, finished) VALUES {begun}")
    column = "pcm" if old_version < 6 else "data"
    connection.execute(f"INSERT INTO sound (take, start, samples, {column}) VALUES (2, 0, 3, x'010002000300')")
    connection.commit()
    connection.close()
    with StudyFile.open(old) as file:
        assert [take.name for take in file.recovered] == ["cut off"]
