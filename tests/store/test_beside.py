"""A file is there whole or not at all, whatever was beside its name before."""

from __future__ import annotations

import os
import shutil

import pytest

from studyboard.model.edits import ChangeNode, ChangeSlot
from studyboard.store.beside import placed
from studyboard.store.connection import shm, wal
from studyboard.store.errors import StudyExistsError
from studyboard.store.study_file import StudyFile


def crash(path):
    """Leave a study as a killed program does: its last edit is in the log, not in the file."""
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", "of the old file"))
        copies = [(shutil.copy(part, f"{part}.kept"), part) for part in (path, wal(path), shm(path))]
    for copy, part in copies:
        os.replace(copy, part)


def test_a_new_file_does_not_take_over_the_log_of_a_deleted_one(path, content, study):
    crash(path)
    path.unlink()
    assert wal(path).exists()
    with StudyFile.create(path, study) as file:
        assert content(file.study) == content(study)
        assert file.history() == []


def test_a_new_file_does_not_take_over_the_log_of_the_one_that_it_replaces(path, content, study):
    crash(path)
    with StudyFile.create(path, study, overwrite=True) as file:
        assert content(file.study) == content(study)
    assert os.listdir(path.parent) == [path.name]


def test_a_new_file_is_not_rolled_back_by_the_journal_of_a_deleted_one(path, content, study):
    path.with_name(f"{path.name}-journal").write_bytes(b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7" + bytes(504))
    with StudyFile.create(path, study) as file:
        assert content(file.study) == content(study)
    assert os.listdir(path.parent) == [path.name]


def test_what_a_killed_program_left_half_written_is_cleared_away(path):
    path.with_name(f".{path.name}.partial").write_bytes(b"half")
    StudyFile.create(path).close()
    assert os.listdir(path.parent) == [path.name]


def test_a_failure_leaves_the_old_file_as_it_was(path, study):
    StudyFile.create(path, study).close()
    before = path.read_bytes()

    def half_done():
        with placed(path, overwrite=True) as connection:
            connection.execute("CREATE TABLE half (x)")
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        half_done()
    assert path.read_bytes() == before
    assert os.listdir(path.parent) == [path.name]


def test_a_folder_is_not_replaced(path):
    path.mkdir()
    with pytest.raises(StudyExistsError):
        StudyFile.create(path, overwrite=True)


def test_a_copy_of_a_study_that_is_open_has_what_is_still_in_the_log(path, tmp_path):
    with StudyFile.create(path) as file:
        file.do(ChangeSlot(60.0))
        assert wal(path).stat().st_size > 0
        with file.save_as(tmp_path / "copy.studyboard") as copy:
            assert copy.study.slot == 60.0
