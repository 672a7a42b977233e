"""Files that cannot be opened say what they are and what to do."""

from __future__ import annotations

import sqlite3

import pytest

from studyboard.store.connection import snapshot, transaction
from studyboard.store.errors import (
    DamagedStudyError,
    NewerStudyError,
    NotAStudyError,
    StudyFileError,
    StudyMissingError,
)
from studyboard.store.schema import APPLICATION_ID, VERSION
from studyboard.store.study_file import StudyFile

BOTH = pytest.mark.parametrize("read_only", [False, True])


def sentence(path, kind, read_only):
    """What the user is told when the file cannot be opened; the folder must be as it was."""
    before = sorted((file.name, file.is_file() and file.read_bytes()) for file in path.parent.iterdir())
    with pytest.raises(StudyFileError) as caught:
        StudyFile.open(path, read_only=read_only)
    assert sorted((file.name, file.is_file() and file.read_bytes()) for file in path.parent.iterdir()) == before
    assert type(caught.value) is kind
    return str(caught.value)


@BOTH
def test_a_file_that_is_not_there(path, read_only):
    assert "no file" in sentence(path, StudyMissingError, read_only)


@BOTH
def test_a_folder(path, read_only):
    path.mkdir()
    assert "is a folder" in sentence(path, NotAStudyError, read_only)


@BOTH
def test_an_empty_file(path, read_only):
    path.touch()
    assert "is empty" in sentence(path, NotAStudyError, read_only)


@BOTH
def test_a_game_in_pgn(path, read_only):
    path.write_text('[Event "Club evening"]\n\n1. e4 e5 *\n', encoding="utf-8")
    assert "PGN" in sentence(path, NotAStudyError, read_only)


@BOTH
def test_a_few_bytes_of_something(path, read_only):
    path.write_bytes(b"\xff\x00\x13")
    assert "is not a study" in sentence(path, NotAStudyError, read_only)


@BOTH
def test_the_database_of_another_program_is_left_alone(path, read_only):
    connection = sqlite3.connect(path)
    connection.execute("CREATE TABLE recipe (name TEXT)")
    connection.commit()
    connection.close()
    assert "another program" in sentence(path, NotAStudyError, read_only)


@BOTH
@pytest.mark.parametrize("part", [0.02, 0.3, 0.99])
def test_a_file_that_was_cut_short(path, study, part, read_only):
    StudyFile.create(path, study).close()
    whole = path.read_bytes()
    path.write_bytes(whole[: int(len(whole) * part)])
    assert "cut short" in sentence(path, DamagedStudyError, read_only)


@BOTH
def test_a_file_with_its_first_bytes_alone(path, study, read_only):
    StudyFile.create(path, study).close()
    path.write_bytes(path.read_bytes()[:9])
    assert "cut short" in sentence(path, DamagedStudyError, read_only)


@BOTH
def test_a_file_with_rubbish_in_the_middle(path, study, read_only):
    StudyFile.create(path, study).close()
    whole = bytearray(path.read_bytes())
    whole[4096:] = b"\x7f" * (len(whole) - 4096)
    path.write_bytes(whole)
    assert "damaged" in sentence(path, DamagedStudyError, read_only)


@BOTH
def test_a_file_of_a_later_version_is_left_alone(path, study, read_only):
    StudyFile.create(path, study).close()
    connection = sqlite3.connect(path)
    connection.execute(f"PRAGMA user_version = {VERSION + 1}")
    connection.execute("PRAGMA journal_mode = DELETE")
    connection.close()
    assert "Update Studyboard" in sentence(path, NewerStudyError, read_only)


@BOTH
def test_a_file_that_does_not_say_its_version(path, study, read_only):
    StudyFile.create(path, study).close()
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA user_version = 0")
    connection.execute("PRAGMA journal_mode = DELETE")
    connection.close()
    assert "schema" in sentence(path, DamagedStudyError, read_only)


def test_a_file_can_be_told_from_other_databases_by_its_header(path, study):
    # Section 1.3 of SQLite's file format (sqlite.org/fileformat2.html, from memory): application id at byte 68,
    # user version at 60, both big-endian; the two format numbers at 18 are 2 for write-ahead logging.
    StudyFile.create(path, study).close()
    head = path.read_bytes()[:100]
    assert head[:16] == b"SQLite format 3\0"
    assert int.from_bytes(head[68:72], "big") == APPLICATION_ID
    assert int.from_bytes(head[60:64], "big") == VERSION
    assert head[18:20] == b"\2\2"


def test_a_name_with_odd_characters_is_no_hindrance(tmp_path, study, content):
    path = tmp_path / "round 3? 50% #1 &c; 'a' “é”.studyboard"
    StudyFile.create(path, study).close()
    with StudyFile.open(path) as file, file.save_as(tmp_path / "copy%20of?.studyboard") as copy:
        assert content(copy.study) == content(study)


def test_a_transaction_that_fails_leaves_nothing(tmp_path):
    connection = sqlite3.connect(tmp_path / "a.db", isolation_level=None)
    connection.execute("CREATE TABLE word (text TEXT)")

    def half_done():
        with transaction(connection):
            connection.execute("INSERT INTO word VALUES ('rook')")
            connection.execute("INSERT INTO nowhere VALUES ('rook')")

    with pytest.raises(sqlite3.OperationalError, match="nowhere"):
        half_done()
    with transaction(connection):
        connection.execute("INSERT INTO word VALUES ('knight')")
    assert connection.execute("SELECT text FROM word").fetchall() == [("knight",)]
    connection.close()


def test_a_snapshot_does_not_see_what_is_written_meanwhile(tmp_path):
    writer = sqlite3.connect(tmp_path / "a.db", isolation_level=None)
    writer.execute("PRAGMA journal_mode = WAL")
    writer.execute("CREATE TABLE word (text TEXT)")
    reader = sqlite3.connect(tmp_path / "a.db", isolation_level=None)
    with snapshot(reader):
        assert reader.execute("SELECT count(*) FROM word").fetchone() == (0,)
        writer.execute("INSERT INTO word VALUES ('rook')")
        assert reader.execute("SELECT count(*) FROM word").fetchone() == (0,)
    assert reader.execute("SELECT count(*) FROM word").fetchone() == (1,)
    reader.close()
    writer.close()
