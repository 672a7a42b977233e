"""The sound of takes, stored a second at a time while it is recorded."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from studyboard.model.takes import Take, TakeEvent
from studyboard.store.connection import explained, transaction
from studyboard.store.errors import SoundMissingError, StudyClosedError
from studyboard.store.rows import read_events, write_events
from studyboard.translation import tr

#: One sample is a signed 16-bit number, least significant byte first; one channel.
SAMPLE_BYTES = 2


class TakeSound:
    """The sound in one study file.

    State: a connection of its own, so that one thread may record while another edits; calls from several threads
    wait for each other. Every method raises StudyFileError where the file cannot be read or written.
    """

    __slots__ = ("_connection", "_path", "_turn", "recording")

    def __init__(self, connection: sqlite3.Connection, path: Path) -> None:
        self._connection: sqlite3.Connection | None = connection
        self._path = path
        self._turn = threading.Lock()
        #: The take that is being recorded through this object, None between recordings.
        self.recording: int | None = None

    def begin_take(self, name: str, rate: int, started: str) -> int:
        """Make room for a take and return its id.

        name: what the presenter calls it; rate: samples a second (Hz); started: ISO 8601 with its offset
        """
        with self._connected() as connection, transaction(connection):
            setting = connection.execute("SELECT value FROM setting WHERE name = 'next take'").fetchone()
            used = connection.execute(
                "SELECT max(coalesce((SELECT max(take) FROM recording), 0), coalesce((SELECT max(take) FROM sound), 0))"
            ).fetchone()[0]
            take = max(1 if setting is None else int(setting[0]), int(used) + 1)
            connection.execute("INSERT INTO recording VALUES (?, ?, ?, ?, 0)", (take, name, rate, started))
        self.recording = take
        return take

    def append_sound(self, take: int, pcm: bytes, events: Sequence[TakeEvent] = ()) -> None:
        """Store what was recorded since the last call, about a second: all of it is safe when this returns.

        pcm: samples as signed 16-bit numbers, least significant byte first, one channel
        events: what the board showed meanwhile
        """
        if len(pcm) % SAMPLE_BYTES:
            raise ValueError("Half of a sample cannot be stored.")
        with self._connected() as connection, transaction(connection):
            if pcm:
                start = _length(connection, take)
                row = (take, start, len(pcm) // SAMPLE_BYTES, pcm)
                connection.execute("INSERT INTO sound VALUES (?, ?, ?, ?)", row)
            if events:
                first = connection.execute("SELECT count(*) FROM take_event WHERE take = ?", (take,)).fetchone()[0]
                write_events(connection, take, first, events)

    def finish_take(self, take: int) -> Take:
        """The take that was begun, complete: to be put into the study with PutTake."""
        with self._connected() as connection:
            with transaction(connection):
                row = connection.execute("SELECT name, rate, started FROM recording WHERE take = ?", (take,)).fetchone()
                if row is None:
                    raise SoundMissingError(tr("Take {take} was never begun, or is in the study already.", take=take))
                connection.execute("UPDATE recording SET finished = 1 WHERE take = ?", (take,))
            finished = _recorded(connection, take, *row, complete=True)
        self.recording = None
        return finished

    def length(self, take: int) -> int:
        """How long the stored sound of a take is (samples); 0 where there is none."""
        with self._connected() as connection:
            return _length(connection, take)

    def read_sound(self, take: int, start: int = 0, count: int | None = None) -> bytes:
        """Samples of a take as stored, fewer where it ends before.

        start: first sample; count: how many samples, None for all that follow. Raises SoundMissingError.
        """
        end = None if count is None else start + count
        found: list[bytes] = []
        for first, pcm in self._chunks(take, start, end):
            until = len(pcm) if end is None else (end - first) * SAMPLE_BYTES
            found.append(pcm[max(0, start - first) * SAMPLE_BYTES : until])
        return b"".join(found)

    def sound_chunks(self, take: int) -> Iterator[bytes]:
        """The sound of a take, piece by piece as it was recorded. Raises SoundMissingError."""
        for _, pcm in self._chunks(take, 0, None):
            yield pcm

    def purge_discarded(self) -> int:
        """Delete for good the sound of takes that are discarded or no longer in the study: the bytes that it took.

        What is just being recorded stays.
        """
        with self._connected() as connection:
            with transaction(connection):
                unwanted = "take NOT IN (SELECT id FROM take WHERE kept) AND take NOT IN (SELECT take FROM recording)"
                size = connection.execute(f"SELECT coalesce(sum(samples), 0) FROM sound WHERE {unwanted}").fetchone()[0]
                connection.execute(f"DELETE FROM sound WHERE {unwanted}")
            # As a script, because every freed page is a step of this statement and `execute` makes only the first.
            connection.executescript("PRAGMA incremental_vacuum")
        return int(size) * SAMPLE_BYTES

    def close(self) -> None:
        """Give the connection back. Does nothing the second time."""
        with self._turn:
            connection, self._connection = self._connection, None
            self.recording = None
            if connection is not None:
                connection.close()

    @property
    def closed(self) -> bool:
        """True once it was closed, or its file was."""
        return self._connection is None

    def _chunks(self, take: int, start: int, end: int | None) -> Iterator[tuple[int, bytes]]:
        """Pieces of a take that hold samples from *start* to *end*, each with its first sample.

        Each is fetched by itself: one long read would keep the log from being cleared while somebody records.
        """
        with self._connected() as connection:
            if not _length(connection, take):
                raise SoundMissingError(
                    tr(
                        "The sound of take {take} is not in “{name}”: it was never recorded, or purged.",
                        take=take,
                        name=self._path.name,
                    )
                )
            row = connection.execute(
                "SELECT max(start) FROM sound WHERE take = ? AND start <= ?", (take, max(0, start))
            ).fetchone()
        at = int(row[0] or 0)
        while end is None or at < end:
            with self._connected() as connection:
                row = connection.execute(
                    "SELECT samples, pcm FROM sound WHERE take = ? AND start = ?", (take, at)
                ).fetchone()
            if row is None:
                return
            yield at, bytes(row[1])
            at += row[0]

    @contextmanager
    def _connected(self) -> Iterator[sqlite3.Connection]:
        with self._turn:
            if self._connection is None:
                raise StudyClosedError(tr("“{name}” has been closed.", name=self._path.name))
            with explained(self._path):
                yield self._connection


def recover(connection: sqlite3.Connection) -> tuple[Take, ...]:
    """Takes whose recording was cut off, now among the takes of the study. Raises sqlite3.Error.

    A take that was finished, but not yet put into the study, is complete; any other ends with its last stored second.
    """
    found: list[Take] = []
    if connection.execute("SELECT NOT EXISTS (SELECT * FROM recording)").fetchone()[0]:
        return ()
    with transaction(connection):
        rows = connection.execute("SELECT take, name, rate, started, finished FROM recording ORDER BY take").fetchall()
        for number, name, rate, started, finished in rows:
            take = _recorded(connection, number, name, rate, started, complete=bool(finished))
            if take.samples:
                connection.execute(
                    "INSERT OR REPLACE INTO take VALUES (?, ?, ?, ?, ?, 1, ?)",
                    (number, name, rate, take.samples, started, finished),
                )
                connection.execute(
                    "INSERT INTO setting VALUES ('next take', ?)"
                    " ON CONFLICT (name) DO UPDATE SET value = max(value, excluded.value)",
                    (number + 1,),
                )
                found.append(take)
            else:
                connection.execute("DELETE FROM take_event WHERE take = ?", (number,))
        connection.execute("DELETE FROM recording")
    return tuple(found)


def _recorded(connection: sqlite3.Connection, take: int, name: str, rate: int, started: str, *, complete: bool) -> Take:
    return Take(take, name, rate, _length(connection, take), started, read_events(connection, take), complete=complete)


def _length(connection: sqlite3.Connection, take: int) -> int:
    row = connection.execute(
        "SELECT start + samples FROM sound WHERE take = ? ORDER BY start DESC LIMIT 1", (take,)
    ).fetchone()
    return 0 if row is None else int(row[0])
