"""Opening the database of a study file, to work on it or only to read it."""

from __future__ import annotations

import os
import sqlite3
import tempfile
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path

from studyboard.store.beside import copy_database, placed
from studyboard.store.connection import check_schema, connect, connect_to_read, explained, is_logged, shm, wal
from studyboard.store.errors import ReadOnlyStudyError
from studyboard.store.schema import VERSION
from studyboard.store.upgrade import upgrade
from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class Database:
    """The open database of a study file.

    study: the file; path: the database, which is another file where a copy of an older one is read
    mode: how it was connected to (see connect); connection: what reads and writes it
    scratch: the folder of the copy, if there is one
    """

    study: Path
    path: Path
    mode: str
    connection: sqlite3.Connection
    scratch: tempfile.TemporaryDirectory[str] | None = None

    def connect_again(self) -> sqlite3.Connection:
        """One more connection, to be closed by the caller. Raises a StudyFileError."""
        with explained(self.study):
            return connect(self.path, self.mode)

    def settle_moved(self) -> None:
        """Bring all that is stored into the file itself, wherever it was moved to while it was open.

        SQLite leaves the log behind at the old place, and by itself would not look for the file any more.
        """
        with suppress(sqlite3.Error):
            self.connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()

    def close(self) -> None:
        """Close the connection and delete the copy."""
        self.connection.close()
        if not os.path.exists(self.path) and not is_logged(self.path):
            # The file was moved or deleted; then SQLite leaves what was beside it, although there is nothing in it.
            with suppress(OSError):
                wal(self.path).unlink(missing_ok=True)
                shm(self.path).unlink(missing_ok=True)
        if self.scratch is not None:
            self.scratch.cleanup()


def open_to_work(path: Path) -> Database:
    """The database, upgraded where its schema is an earlier one; the caller holds the lock of the file.

    Before that, a copy of the file as it was is put beside it. Raises a StudyFileError.
    """
    if not os.access(path, os.W_OK):
        raise ReadOnlyStudyError(
            tr("“{name}” can only be read. Open it to be read only, or copy it and work on the copy.", name=path.name)
        )
    with explained(path):
        connection = connect(path, "rw")
    try:
        version = check_schema(connection, path)
        with explained(path):
            connection.execute("PRAGMA journal_mode = WAL")
            connection.execute("PRAGMA journal_size_limit = 16777216")
            if version < VERSION:
                with placed(_before_upgrade(path, version), overwrite=False) as copy:
                    copy_database(connection, copy)
                upgrade(connection, version)
    except BaseException:
        connection.close()
        raise
    return Database(path, path, "rw", connection)


def open_to_look(path: Path) -> Database:
    """The database to be read only, beside somebody who works on it or where nothing can be written.

    A file of an earlier schema is left as it is: a copy of it is upgraded and read. Raises a StudyFileError.
    """
    connection, mode = connect_to_read(path)
    try:
        version = check_schema(connection, path)
        if version == VERSION:
            return Database(path, path, mode, connection)
        return _upgraded_copy(path, connection, version)
    except BaseException:
        connection.close()
        raise


def _upgraded_copy(path: Path, source: sqlite3.Connection, version: int) -> Database:
    scratch = tempfile.TemporaryDirectory(prefix="studyboard-")
    try:
        database = Path(scratch.name) / path.name
        with explained(path):
            with closing(connect(database, "rwc")) as copy:
                copy_database(source, copy)
                upgrade(copy, version)
            connection = connect(database, "look")
        source.close()
        return Database(path, database, "look", connection, scratch)
    except BaseException:
        scratch.cleanup()
        raise


def _before_upgrade(path: Path, version: int) -> Path:
    """A name beside the file that is still free."""
    name = f"{path.stem}.before-upgrade-v{version}"
    free = path.with_name(f"{name}{path.suffix}")
    number = 1
    while free.exists():
        number += 1
        free = path.with_name(f"{name}-{number}{path.suffix}")
    return free
