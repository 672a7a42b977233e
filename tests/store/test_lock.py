"""One window at a time works on a study, whatever became of the last one."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

from studyboard.store.errors import ReadOnlyStudyError, StudyInUseError
from studyboard.store.lock import StudyLock
from studyboard.store.study_file import StudyFile

HOLDING = """
import sys
from studyboard.store.study_file import StudyFile
file = StudyFile.open(sys.argv[1])
print("open", flush=True)
sys.stdin.read()
"""


@pytest.fixture
def other_process(path):
    """Another process that has the study open, until its standard input is closed or it is killed."""
    StudyFile.create(path).close()
    process = subprocess.Popen(
        [sys.executable, "-c", HOLDING, str(path)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    assert process.stdout.readline() == "open\n"
    yield process
    process.kill()
    process.communicate()


def test_the_message_names_the_process_that_has_the_study(path, other_process):
    with pytest.raises(StudyInUseError, match=rf"another window of Studyboard \(process {other_process.pid}\)"):
        StudyFile.open(path)
    with pytest.raises(StudyInUseError, match=f"process {other_process.pid}"):
        StudyFile.open(path)


def test_a_study_that_another_process_has_can_be_read(path, other_process):
    with StudyFile.open(path, read_only=True) as file:
        assert len(file.study.nodes) == 1


def test_a_process_that_was_killed_keeps_nobody_out(path, other_process):
    other_process.kill()
    other_process.wait()
    assert path.with_name(f".{path.name}.lock").exists()
    with StudyFile.open(path):
        pass
    assert os.listdir(path.parent) == [path.name]


def test_a_lock_file_with_rubbish_in_it_keeps_nobody_out(path):
    StudyFile.create(path).close()
    path.with_name(f".{path.name}.lock").write_bytes(b"\xff\xfe")
    with StudyFile.open(path):
        pass


def test_a_holder_that_is_not_known_is_not_named(path):
    lock = StudyLock(path)
    lock.path.write_bytes(b"")
    with pytest.raises(StudyInUseError, match="is already open\\. "):
        StudyLock(path)
    lock.release()


def test_a_holder_on_another_computer_is_named_by_it(path):
    lock = StudyLock(path)
    lock.path.write_bytes(b"\0" + b"41 attic\n")
    with pytest.raises(StudyInUseError, match="on the computer attic"):
        StudyLock(path)
    lock.release()


def test_letting_go_twice_does_not_take_the_lock_from_the_next_one(path):
    first = StudyLock(path)
    first.release()
    second = StudyLock(path)
    first.release()
    assert second.path.exists()
    with pytest.raises(StudyInUseError):
        StudyLock(path)
    second.release()


def test_a_study_that_is_only_read_takes_no_lock(path):
    StudyFile.create(path).close()
    with StudyFile.open(path, read_only=True):
        assert not path.with_name(f".{path.name}.lock").exists()
        with StudyFile.open(path):
            pass


def test_a_name_that_is_too_long_for_the_disk_is_refused_with_a_sentence(tmp_path):
    with pytest.raises(ReadOnlyStudyError, match="too long"):
        StudyFile.create(tmp_path / ("x" * 250 + ".studyboard"))
