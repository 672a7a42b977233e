"""Connections to the database inside a study file."""

from __future__ import annotations

import errno
import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from studyboard.store.errors import (
    DamagedStudyError,
    NewerStudyError,
    NotAStudyError,
    ReadOnlyStudyError,
    StudyFileError,
    StudyInUseError,
    StudyMissingError,
    StudyNotStoredError,
)
from studyboard.store.schema import APPLICATION_ID, VERSION
from studyboard.translation import tr

#: How long one writer waits for the other (s): a second of sound and an edit are each stored in far less.
PATIENCE = 20.0

#: SQLite's file format (sqlite.org/fileformat2.html, from memory), section 1.3: the first 16 bytes of the header, its
#: length, and in it the page size at 16, the number of pages at 28 and the application id at 68.
_MAGIC = b"SQLite format 3\0"
_HEADER = 100


def wal(path: Path) -> Path:
    """Where SQLite keeps what is committed but not yet in the file itself."""
    return path.with_name(path.name + "-wal")


def shm(path: Path) -> Path:
    """Where SQLite keeps the index of the write-ahead log."""
    return path.with_name(path.name + "-shm")


def is_logged(path: Path) -> bool:
    """Is there anything in the log? An empty one means that whoever made it got no further."""
    try:
        return wal(path).stat().st_size > 0
    except OSError:
        return False


def check_file(path: Path) -> None:
    """Raises a StudyFileError where this can be no study, before SQLite touches it."""
    name = path.name
    if os.path.isdir(path):
        raise NotAStudyError(tr("“{name}” is a folder. Choose a .studyboard file inside it.", name=name))
    try:
        with path.open("rb") as file:
            head = file.read(_HEADER)
            size = file.seek(0, os.SEEK_END)
    except FileNotFoundError:
        raise StudyMissingError(
            tr("There is no file “{path}”. Check the name, or look where it was moved to.", path=path)
        ) from None
    except OSError as reason:
        raise StudyFileError(
            tr("“{name}” cannot be read: {reason}.", name=name, reason=reason.strerror or reason)
        ) from reason
    if size == 0 and not is_logged(path):
        raise NotAStudyError(
            tr("“{name}” is empty: nothing was ever stored in it, or copying it failed. Copy it again.", name=name)
        )
    if not head.startswith(_MAGIC[: len(head)]):
        raise NotAStudyError(
            tr(
                "“{name}” is not a study. If it holds games in PGN, import it; a study has the ending .studyboard.",
                name=name,
            )
        )
    page_size = int.from_bytes(head[16:18], "big")
    pages = int.from_bytes(head[28:32], "big")
    expected = (65_536 if page_size == 1 else page_size) * pages
    if size < max(expected, _HEADER) and not is_logged(path):
        raise DamagedStudyError(
            tr(
                "“{name}” has been cut short: {size:,} of {expected:,} bytes are there. Copy it again, "
                "or open a back-up.",
                name=name,
                size=size,
                expected=expected,
            )
        )
    if len(head) == _HEADER and int.from_bytes(head[68:72], "big") != APPLICATION_ID:
        raise NotAStudyError(tr("“{name}” is the database of another program, not a study.", name=name))


def check_schema(connection: sqlite3.Connection, path: Path) -> int:
    """The version of the file's schema. Raises a StudyFileError where this program does not know it."""
    with explained(path):
        version = int(connection.execute("PRAGMA user_version").fetchone()[0])
    if version > VERSION:
        raise NewerStudyError(
            tr(
                "“{name}” was written by a later version of Studyboard (its schema is {version}, this "
                "program knows up to {VERSION}). Update Studyboard to open it; the file was not touched.",
                name=path.name,
                version=version,
                VERSION=VERSION,
            )
        )
    if version < 1:
        raise DamagedStudyError(tr("“{name}” does not say which schema it has. Open a back-up of it.", name=path.name))
    return version


def connect(path: Path, mode: str = "rw") -> sqlite3.Connection:
    """A connection whose transactions are begun by hand and survive a power cut.

    Threads may share it if they take turns.

    mode: "rw" to work on the file, "rwc" to make it, "look" to read it as a guest of those who write, "ro" to read it
    where nothing can be written, "immutable" where nothing can be written by anybody. Raises sqlite3.Error.
    """
    query = {"rwc": "mode=rwc", "ro": "mode=ro", "immutable": "mode=ro&immutable=1"}.get(mode, "mode=rw")
    connection = sqlite3.connect(
        f"{path.resolve().as_uri()}?{query}",
        uri=True,
        timeout=PATIENCE,
        isolation_level=None,
        check_same_thread=False,
    )
    try:
        connection.execute("PRAGMA trusted_schema = OFF")
        connection.execute("PRAGMA synchronous = FULL")
        if mode not in ("rw", "rwc"):
            connection.execute("PRAGMA query_only = ON")
    except BaseException:
        connection.close()
        raise
    return connection


def connect_to_read(path: Path) -> tuple[sqlite3.Connection, str]:
    """A connection that reads, beside a writer or where nothing can be written at all, and the mode that it took.

    Raises a StudyFileError.
    """
    logged = is_logged(path)
    if os.access(path, os.W_OK) and os.access(path.parent, os.W_OK):
        # Where the disk is full this fails, because even a guest needs an index of the log.
        with suppress(sqlite3.OperationalError):
            return _connect_and_try(path, "look"), "look"
    try:
        mode = "ro" if logged else "immutable"
        with explained(path):
            return _connect_and_try(path, mode), mode
    except StudyFileError as reason:
        if not logged or not isinstance(reason.__cause__, sqlite3.OperationalError):
            raise
        raise ReadOnlyStudyError(
            tr(
                "“{name}” was not closed properly, and nothing can be written where it lies. Copy it to "
                "a folder of your own, together with “{beside}”, and open the copy.",
                name=path.name,
                beside=wal(path).name,
            )
        ) from reason


def _connect_and_try(path: Path, mode: str) -> sqlite3.Connection:
    connection = connect(path, mode)
    try:
        connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
    except BaseException:
        connection.close()
        raise
    return connection


@contextmanager
def transaction(connection: sqlite3.Connection) -> Iterator[None]:
    """All that is written inside is stored, or none of it."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        yield
        connection.execute("COMMIT")
    except BaseException:
        # SQLite has rolled back by itself after some errors, and then a second time is an error of its own.
        with suppress(sqlite3.Error):
            connection.execute("ROLLBACK")
        raise


@contextmanager
def snapshot(connection: sqlite3.Connection) -> Iterator[None]:
    """All that is read inside is of one moment, whatever others write meanwhile."""
    connection.execute("BEGIN")
    try:
        yield
    finally:
        with suppress(sqlite3.Error):
            connection.execute("ROLLBACK")


@contextmanager
def explained(path: Path) -> Iterator[None]:
    """Turns errors of the database and the disk into a StudyFileError that says what to do."""
    try:
        yield
    except (sqlite3.Error, OSError, UnicodeEncodeError, OverflowError) as reason:
        raise explanation(path, reason) from reason


def explanation(path: Path, reason: Exception) -> StudyFileError:
    """What an error of the database means for the person at the desk."""
    name = path.name
    if isinstance(reason, OSError) and reason.errno == errno.ENOSPC:
        return _disk_full(name)
    code = getattr(reason, "sqlite_errorcode", None)
    primary = None if code is None else code & 0xFF
    if isinstance(reason, UnicodeEncodeError):
        return StudyNotStoredError(
            tr("This text holds half of a character, which cannot be stored. Delete the character and type it again.")
        )
    if primary == sqlite3.SQLITE_FULL or code == sqlite3.SQLITE_IOERR_SHMSIZE:
        return _disk_full(name)
    if primary in (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM):
        return ReadOnlyStudyError(
            tr(
                "“{name}” can only be read now, so the change was not stored. Save the study under "
                "another name, in a folder of your own.",
                name=name,
            )
        )
    if primary in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
        return StudyInUseError(tr("Another program is holding “{name}”. Close it there and try again.", name=name))
    if primary == sqlite3.SQLITE_NOTADB:
        return NotAStudyError(tr("“{name}” is not a study, or no longer one. Open a back-up of it.", name=name))
    if primary in (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_ERROR):
        return DamagedStudyError(tr("“{name}” is damaged ({reason}). Open a back-up of it.", name=name, reason=reason))
    if primary == sqlite3.SQLITE_CANTOPEN:
        return StudyFileError(
            tr("“{name}” cannot be opened where it lies. Copy it to a folder of your own first.", name=name)
        )
    if primary == sqlite3.SQLITE_IOERR:
        return StudyNotStoredError(
            tr(
                "The disk that holds “{name}” does not answer as it should ({reason}). Save the study "
                "under another name, on another disk.",
                name=name,
                reason=reason,
            )
        )
    if isinstance(reason, OSError):
        return StudyFileError(tr("“{name}” could not be used: {reason}.", name=name, reason=reason.strerror or reason))
    return StudyFileError(tr("“{name}” could not be used: {reason}.", name=name, reason=reason))


def _disk_full(name: str) -> StudyFileError:
    return StudyNotStoredError(
        tr(
            "The disk that holds “{name}” is full, so the change was not stored. Free some space and "
            "try again; everything up to here is safe.",
            name=name,
        )
    )
