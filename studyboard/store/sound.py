"""The sound of takes, stored a second at a time while it is recorded."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from studyboard.model.takes import Replaced, Take, TakeEvent
from studyboard.store.connection import explained, transaction
from studyboard.store.errors import SoundMissingError, StudyClosedError
from studyboard.store.rows import read_events, replaced_of, replaced_text, write_events, write_take_row
from studyboard.store.sound_coding import decoded, encoded
from studyboard.translation import tr

#: One sample is a signed 16-bit number, least significant byte first; one channel.
SAMPLE_BYTES = 2

_RECORDING = "name, rate, started, origin, replaces"
#: What a take is said to have that was begun over another connection (Hz): FLAC wants to know, and nobody asks it.
_USUAL_RATE = 48_000


class TakeSound:
    """The sound in one study file.

    State: a connection of its own, so that one thread may record while another edits, and the chunk that was read
    last, because a player asks for much less at a time; calls from several threads wait for each other. Every method
    raises StudyFileError where the file cannot be read or written.
    """

    __slots__ = ("_connection", "_latest", "_path", "_rates", "_turn", "recording")

    def __init__(self, connection: sqlite3.Connection, path: Path) -> None:
        self._connection: sqlite3.Connection | None = connection
        self._path = path
        self._turn = threading.Lock()
        self._rates: dict[int, int] = {}
        self._latest: tuple[int, int, int, bytes] | None = None
        #: The take that is being recorded through this object, None between recordings.
        self.recording: int | None = None

    def get_ready(self) -> None:
        """Load what compresses sound, so that no sound has to wait for that; takes some tenths of a second once."""
        encoded(bytes(SAMPLE_BYTES), _USUAL_RATE)

    def begin_take(
        self, name: str, rate: int, started: str, *, origin: str = "", replaces: Replaced | None = None
    ) -> int:
        """Make room for a take and return its id.

        name: what the presenter calls it; rate: samples a second (Hz); started: ISO 8601 with its offset
        origin, replaces: as a Take has them; a take that is cut off by a crash keeps them
        """
        with self._connected() as connection, transaction(connection):
            setting = connection.execute("SELECT value FROM setting WHERE name = 'next take'").fetchone()
            used = connection.execute(
                "SELECT max(coalesce((SELECT max(take) FROM recording), 0), coalesce((SELECT max(take) FROM sound), 0))"
            ).fetchone()[0]
            take = max(1 if setting is None else int(setting[0]), int(used) + 1)
            row = (take, name, rate, started, origin, replaced_text(replaces))
            connection.execute("INSERT INTO recording VALUES (?, ?, ?, ?, 0, ?, ?)", row)
        self._rates[take] = rate
        self.recording = take
        return take

    def append_sound(self, take: int, pcm: bytes, events: Sequence[TakeEvent] = ()) -> None:
        """Store what was recorded since the last call, about a second: all of it is safe when this returns.

        pcm: samples as signed 16-bit numbers, least significant byte first, one channel
        events: what the board showed meanwhile
        """
        if len(pcm) % SAMPLE_BYTES:
            raise ValueError("Half of a sample cannot be stored.")
        coding, data = encoded(pcm, self._rates.get(take, _USUAL_RATE))
        with self._connected() as connection, transaction(connection):
            if pcm:
                start = _length(connection, take)
                row = (take, start, len(pcm) // SAMPLE_BYTES, data, coding)
                connection.execute("INSERT INTO sound VALUES (?, ?, ?, ?, ?)", row)
            if events:
                first = connection.execute("SELECT count(*) FROM take_event WHERE take = ?", (take,)).fetchone()[0]
                write_events(connection, take, first, events)

    def finish_take(self, take: int) -> Take:
        """The take that was begun, complete: to be put into the study with PutTake."""
        with self._connected() as connection:
            with transaction(connection):
                row = connection.execute(f"SELECT {_RECORDING} FROM recording WHERE take = ?", (take,)).fetchone()
                if row is None:
                    raise SoundMissingError(tr("Take {take} was never begun, or is in the study already.", take=take))
                connection.execute("UPDATE recording SET finished = 1 WHERE take = ?", (take,))
            finished = _recorded(connection, take, *row, complete=True)
        self.recording = None
        return finished

    def abandon_take(self, take: int) -> None:
        """Forget a take that was begun and is not in the study, and its sound. Does nothing where there is none."""
        with self._connected() as connection:
            with transaction(connection):
                begun = connection.execute("DELETE FROM recording WHERE take = ?", (take,)).rowcount
                if begun:
                    connection.execute("DELETE FROM sound WHERE take = ?", (take,))
                    connection.execute("DELETE FROM take_event WHERE take = ?", (take,))
            connection.executescript("PRAGMA incremental_vacuum")
        self.recording = None
        self._latest = None

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
                size = connection.execute(
                    f"SELECT coalesce(sum(length(data)), 0) FROM sound WHERE {unwanted}"
                ).fetchone()[0]
                connection.execute(f"DELETE FROM sound WHERE {unwanted}")
            # As a script, because every freed page is a step of this statement and `execute` makes only the first.
            connection.executescript("PRAGMA incremental_vacuum")
        self._latest = None
        return int(size)

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
            chunk = self._chunk(take, at)
            if chunk is None:
                return
            yield at, chunk[1]
            at += chunk[0]

    def _chunk(self, take: int, at: int) -> tuple[int, bytes] | None:
        """How many samples the chunk has that begins here, and they themselves; None where none does."""
        latest = self._latest
        if latest is not None and latest[:2] == (take, at):
            return latest[2:]
        with self._connected() as connection:
            row = connection.execute(
                "SELECT samples, data, coding FROM sound WHERE take = ? AND start = ?", (take, at)
            ).fetchone()
        if row is None:
            return None
        pcm = decoded(row[2], bytes(row[1]), row[0])
        self._latest = (take, at, row[0], pcm)
        return row[0], pcm

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
        rows = connection.execute(f"SELECT take, finished, {_RECORDING} FROM recording ORDER BY take").fetchall()
        for number, finished, *row in rows:
            take = _recorded(connection, number, *row, complete=bool(finished))
            if take.samples:
                write_take_row(connection, take)
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


def _recorded(
    connection: sqlite3.Connection,
    take: int,
    name: str,
    rate: int,
    started: str,
    origin: str,
    replaces: str,
    *,
    complete: bool,
) -> Take:
    events = read_events(connection, take)
    samples = _length(connection, take)
    return Take(
        take,
        name,
        rate,
        samples,
        started,
        events,
        complete=complete,
        origin=origin,
        replaces=replaced_of(replaces),
    )


def _length(connection: sqlite3.Connection, take: int) -> int:
    row = connection.execute(
        "SELECT start + samples FROM sound WHERE take = ? ORDER BY start DESC LIMIT 1", (take,)
    ).fetchone()
    return 0 if row is None else int(row[0])
