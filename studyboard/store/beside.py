"""Databases that are written beside their place and then renamed into it, whole or not at all."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from studyboard.store.connection import connect, explained, shm, wal
from studyboard.store.errors import StudyExistsError, StudyMissingError
from studyboard.translation import tr

#: Pages that are copied between two reports of progress: 4 MB.
_STRIDE = 1024


def check_place(path: Path) -> None:
    """Raises StudyMissingError where there is no folder in which this file could be made."""
    if not os.path.isdir(path.parent):
        raise StudyMissingError(
            tr("There is no folder “{parent}”. Make it first, or choose another.", parent=path.parent)
        )


@contextmanager
def placed(path: Path, *, overwrite: bool) -> Iterator[sqlite3.Connection]:
    """An empty database that becomes the file *path* when the block ends well, and is gone when it does not.

    The caller holds the lock of *path*. Raises StudyExistsError where there is such a file and it is not to be
    overwritten, and other StudyFileErrors.
    """
    if os.path.exists(path) and (os.path.isdir(path) or not overwrite):
        raise StudyExistsError(tr("There is a “{name}” in this folder already. Choose another name.", name=path.name))
    beside = path.with_name(f".{path.name}.partial")
    try:
        with explained(path):
            _remove(beside)
            with closing(connect(beside, "rwc")) as connection:
                yield connection
            if path.exists():
                _settle(path)
            # A log without its database, left by somebody who deleted only the one, would be taken for the new one's.
            for leftover in _companions(path):
                leftover.unlink(missing_ok=True)
            os.replace(beside, path)
        _sync_folder(path.parent)
    finally:
        with suppress(OSError):
            _remove(beside)


def copy_database(
    source: sqlite3.Connection, target: sqlite3.Connection, progress: Callable[[float], None] | None = None
) -> None:
    """Copy everything, history and sound included. Raises sqlite3.Error.

    progress: called with the part that is done (0.0 to 1.0); what it raises ends the copying
    """

    def report(_status: int, remaining: int, total: int) -> None:
        if progress is not None:
            progress(1.0 - remaining / max(1, total))

    source.backup(target, pages=_STRIDE, progress=report)


def _remove(path: Path) -> None:
    for file in (path, *_companions(path)):
        file.unlink(missing_ok=True)


def _companions(path: Path) -> tuple[Path, ...]:
    """The files that SQLite keeps beside a database while it is in use, and after a crash."""
    return wal(path), shm(path), path.with_name(path.name + "-journal")


def _settle(path: Path) -> None:
    """Bring what is still in the log into the file, so that the file is whole until the moment it is replaced."""
    with suppress(sqlite3.Error), closing(connect(path)) as connection:
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()


def _sync_folder(folder: Path) -> None:
    """Let the new name survive a power cut, where the system has a way to say so."""
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
