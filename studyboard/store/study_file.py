"""A study and the file that it lives in, changed together or not at all."""

from __future__ import annotations

import os
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import TypeAlias

from studyboard.model.codec import UnknownValueError
from studyboard.model.edits import Edit
from studyboard.model.errors import EditRefusedError
from studyboard.model.study import Changed, Study
from studyboard.model.takes import Take
from studyboard.store.beside import check_place, copy_database, placed
from studyboard.store.burst import Burst, begun_by
from studyboard.store.connection import check_file, explained, snapshot, transaction
from studyboard.store.errors import (
    DamagedStudyError,
    ReadOnlyStudyError,
    StudyClosedError,
    StudyExistsError,
    StudyFileError,
    StudyNotStoredError,
)
from studyboard.store.history import History, HistoryEntry
from studyboard.store.lock import StudyLock
from studyboard.store.opening import Database, open_to_look, open_to_work
from studyboard.store.rows import RowsError, everything, read_study, write_changed
from studyboard.store.schema import lay_tables
from studyboard.store.sound import TakeSound, recover
from studyboard.translation import tr

Clock: TypeAlias = Callable[[], datetime]


def _now() -> datetime:
    return datetime.now(UTC)


class StudyFile:
    """One open study file.

    State: the study in memory, which always equals the rows on the disk; a connection to them; and, unless the file
    is only read, the lock that keeps others from changing it. To be used by one thread at a time, but `sound`, what
    `sound_writer` returns and `save_as` may be used while another thread edits.
    """

    def __init__(
        self, database: Database, lock: StudyLock | None, clock: Clock, recovered: tuple[Take, ...] = ()
    ) -> None:
        """Use `create` or `open` instead."""
        self._path = database.study
        self._identity = _identity(self._path)
        self._database = database
        self._connection = database.connection
        self._lock = lock
        self._clock = clock
        self._recovered = recovered
        self._history = History(database.connection)
        self._burst: Burst | None = None
        self._closed = False
        self._study = self._read()
        self._sound = TakeSound(database.connect_again(), self._path)
        self._sounds = [self._sound]

    @classmethod
    def create(
        cls, path: Path | str, study: Study | None = None, *, overwrite: bool = False, clock: Clock = _now
    ) -> StudyFile:
        """A new file that holds a copy of *study*, or an empty study, open to be worked on.

        Raises StudyExistsError where there is such a file already, unless it is to be overwritten; StudyInUseError
        where that one is open; other StudyFileErrors. What was there stays until the new file is complete.
        """
        path = _real(path)
        check_place(path)
        content = Study() if study is None else study
        lock = StudyLock(path)
        try:
            with placed(path, overwrite=overwrite) as connection:
                lay_tables(connection)
                with transaction(connection):
                    write_changed(connection, content, everything(content))
            return cls._work(path, lock, clock)
        except BaseException:
            lock.release()
            raise

    @classmethod
    def open(cls, path: Path | str, *, read_only: bool = False, clock: Clock = _now) -> StudyFile:
        """The file open to be worked on, or only to be read, which goes while another instance works on it.

        A take that was cut off by a crash is repaired and kept; see `recovered`. A file of an earlier schema is
        upgraded, after a copy named `NAME.before-upgrade-vN.studyboard` was put beside it; one that is only read is
        left as it is. Raises StudyFileError in one of its kinds (studyboard.store.errors).
        """
        path = _real(path)
        check_file(path)
        if read_only:
            database = open_to_look(path)
            try:
                return cls(database, None, clock)
            except BaseException:
                database.close()
                raise
        lock = StudyLock(path)
        try:
            return cls._work(path, lock, clock)
        except BaseException:
            lock.release()
            raise

    @classmethod
    def _work(cls, path: Path, lock: StudyLock, clock: Clock) -> StudyFile:
        database = open_to_work(path)
        try:
            with explained(path):
                recovered = recover(database.connection)
            return cls(database, lock, clock, recovered)
        except BaseException:
            database.close()
            raise

    @property
    def path(self) -> Path:
        """Where the file is, links followed."""
        return self._path

    @property
    def study(self) -> Study:
        """The study, to be read; `do` changes it. It is the same object for as long as the file is open."""
        return self._study

    @property
    def read_only(self) -> bool:
        """True where the file was opened to be read only."""
        return self._lock is None

    @property
    def recovered(self) -> tuple[Take, ...]:
        """Takes whose recording had been cut off when the file was opened; they are in the study now."""
        return self._recovered

    @property
    def unfinished(self) -> bool:
        """True while a take is being recorded, or where one was cut off and the file has not been worked on since."""
        with explained(self._path):
            return bool(self._connection.execute("SELECT EXISTS (SELECT * FROM recording)").fetchone()[0])

    @property
    def sound(self) -> TakeSound:
        """The sound of the takes."""
        return self._sound

    def sound_writer(self) -> TakeSound:
        """The sound of the takes over one more connection, for a thread that records. Closed with the file."""
        self._check_open()
        writer = TakeSound(self._database.connect_again(), self._path)
        self._sounds = [sound for sound in self._sounds if not sound.closed] + [writer]
        return writer

    @property
    def can_undo(self) -> bool:
        """Is there an edit to be taken back?"""
        return not self.read_only and self._position() > 0

    @property
    def can_redo(self) -> bool:
        """Is there an edit that was taken back and can be done again?"""
        return not self.read_only and self._position() < self._length()

    @property
    def undo_label(self) -> str | None:
        """What `undo` would take back, in words; None where there is nothing."""
        return self._label(self._position())

    @property
    def redo_label(self) -> str | None:
        """What `redo` would do again, in words; None where there is nothing."""
        return self._label(self._position() + 1)

    def history(self) -> list[HistoryEntry]:
        """Every edit that was ever made and not replaced by another after it was taken back, the oldest first."""
        self._check_open()
        with explained(self._path):
            return self._history.entries()

    def do(self, edit: Edit) -> Changed:
        """Apply an edit and store it: when this returns, it is on the disk.

        Typing that goes on at one place without a rest extends the last entry of the history, so that one undo takes
        the burst back. Raises EditRefusedError where the edit makes no sense and StudyFileError where it cannot be
        stored, with the study as it was.
        """
        now = self._clock()
        burst = None if self._burst is None else self._burst.joined_by(edit, now)

        def note(inverse: Edit) -> None:
            if burst is None:
                self._history.add(edit, inverse, now)
            else:
                self._history.extend(edit, now)

        changed = self._store(edit, note)
        self._burst = begun_by(edit, now) if burst is None else burst
        return changed

    def keep(self, edit: Edit) -> Changed:
        """Apply an edit and store it beside the history: undo passes it by.

        For what has happened and cannot be taken back by wishing: takes, and how long a rehearsal took. Raises as
        `do` does.
        """
        return self._store(edit, lambda _: None)

    def undo(self) -> Changed:
        """Take the last edit back. Raises EditRefusedError where there is none, StudyFileError as `do` does."""
        position = self._position()
        if position == 0:
            raise EditRefusedError(tr("There is nothing to undo."))
        changed = self._store(self._kept_edit(position, inverse=True), lambda _: self._history.move_to(position - 1))
        self._burst = None
        return changed

    def redo(self) -> Changed:
        """Do again what was taken back last. Raises EditRefusedError where there is nothing, StudyFileError."""
        following = self._position() + 1
        if following > self._length():
            raise EditRefusedError(tr("There is nothing to redo."))
        changed = self._store(self._kept_edit(following, inverse=False), lambda _: self._history.move_to(following))
        self._burst = None
        return changed

    def save_as(
        self, path: Path | str, *, overwrite: bool = False, progress: Callable[[float], None] | None = None
    ) -> StudyFile:
        """A complete copy, history and sound included, open to be worked on; this file stays open too.

        progress: called with the part that is copied (0.0 to 1.0); what it raises ends the copying, with nothing left
        behind. Raises StudyExistsError as `create` does, StudyFileError for a copy onto itself, while a take is
        being recorded, or where the copy cannot be written.
        """
        self._check_open()
        path = _real(path)
        check_place(path)
        if path == self._path or _identity(path) == self._identity:
            raise StudyExistsError(
                tr("This is “{name}” already, and every change is in it. Choose another name.", name=path.name)
            )
        if any(sound.recording is not None for sound in self._sounds):
            raise StudyFileError(tr("A take is being recorded into this study. Stop the recording, then save a copy."))
        lock = StudyLock(path)
        try:
            with placed(path, overwrite=overwrite) as copy:
                if self._moved():
                    copy_database(self._connection, copy, progress)
                else:
                    with closing(self._database.connect_again()) as source:
                        copy_database(source, copy, progress)
            return self._work(path, lock, self._clock)
        except BaseException:
            lock.release()
            raise

    def close(self) -> None:
        """Let go of the file. Does nothing the second time."""
        if self._closed:
            return
        self._closed = True
        for sound in self._sounds:
            sound.close()
        if self._lock is not None and self._moved():
            self._database.settle_moved()
        self._database.close()
        if self._lock is not None:
            self._lock.release()

    def __enter__(self) -> StudyFile:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, reason: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def _store(self, edit: Edit, note: Callable[[Edit], None]) -> Changed:
        """Apply an edit and write the rows that it touches in one transaction, or neither.

        note: writes the edit into the history, given its inverse
        """
        self._check_writable()
        study = self._study
        ids = study.next_id, study.next_take
        changed = Changed()
        try:
            inverse = edit.apply(study, changed)
        except EditRefusedError:
            study.next_id, study.next_take = ids
            raise
        except Exception:
            # An edit that breaks in the middle promises nothing about the study; the rows still hold it.
            self._restore()
            raise
        try:
            with explained(self._path), transaction(self._connection):
                write_changed(self._connection, study, changed)
                note(inverse)
        except BaseException:
            self._take_back(inverse)
            study.next_id, study.next_take = ids
            raise
        return changed

    def _take_back(self, inverse: Edit) -> None:
        try:
            inverse.apply(self._study, Changed())
        except Exception:
            self._restore()

    def _restore(self) -> None:
        stored = self._read()
        for name in Study.__slots__:
            setattr(self._study, name, getattr(stored, name))

    def _read(self) -> Study:
        try:
            with explained(self._path), snapshot(self._connection):
                return read_study(self._connection)
        except RowsError as reason:
            raise DamagedStudyError(
                tr("“{name}” is damaged: {reason}. Open a back-up of it.", name=self._path.name, reason=reason)
            ) from reason

    def _kept_edit(self, seq: int, *, inverse: bool) -> Edit:
        try:
            with explained(self._path):
                return self._history.inverse(seq) if inverse else self._history.forward(seq)
        except (UnknownValueError, ValueError, TypeError) as reason:
            raise DamagedStudyError(
                tr(
                    "The history of “{name}” cannot be read here ({reason}); the study itself is whole.",
                    name=self._path.name,
                    reason=reason,
                )
            ) from reason

    def _position(self) -> int:
        self._check_open()
        with explained(self._path):
            return self._history.position

    def _length(self) -> int:
        with explained(self._path):
            return self._history.length

    def _label(self, seq: int) -> str | None:
        with explained(self._path):
            return self._history.label(seq)

    def _moved(self) -> bool:
        return _identity(self._path) != self._identity

    def _check_open(self) -> None:
        if self._closed:
            raise StudyClosedError(tr("“{name}” has been closed.", name=self._path.name))

    def _check_writable(self) -> None:
        self._check_open()
        if self.read_only:
            raise ReadOnlyStudyError(
                tr("“{name}” is open to be read only. Save it under another name to change it.", name=self._path.name)
            )
        # What is written into a file that was deleted or replaced would be gone with the last window.
        if self._moved():
            self._database.settle_moved()
            raise StudyNotStoredError(
                tr(
                    "“{name}” has been moved, replaced or deleted while it was open, so the change was not "
                    "stored. Save the study under another name to go on.",
                    name=self._path.name,
                )
            )


def _real(path: Path | str) -> Path:
    """The file itself, which may be behind a link."""
    return Path(os.path.realpath(path))


def _identity(path: Path) -> tuple[int, int] | None:
    """What the system knows the file by, None where there is none of this name."""
    try:
        status = path.stat()
    except OSError:
        return None
    return status.st_dev, status.st_ino
