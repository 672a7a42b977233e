"""Storing a take while it is being recorded, second by second."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from enum import Enum, auto
from queue import SimpleQueue
from typing import Protocol, TypeAlias

from PySide6.QtCore import QObject, QThread, Signal

from studyboard.model.errors import StudyboardError
from studyboard.model.script import BeatKey
from studyboard.model.takes import Replaced, SoundTime, Take, TakeEvent
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.translation import tr

#: How much sound is stored at once (samples): a crash loses this, what was just arriving and what was just being
#: stored, which together must stay below the second that a presenter was promised to lose at most.
CHUNK = RATE * 3 // 4


class SoundSink(Protocol):
    """Where the sound of takes goes; a study file's sound writer is one. Every call is one transaction.

    Used in another thread than the one that made it. All methods may raise a StudyboardError, OSError or sqlite3.Error.
    """

    def get_ready(self) -> None:
        """Whatever takes long the first time; called before there is any sound."""

    def begin_take(self, name: str, rate: int, started: str, *, replaces: Replaced | None = None) -> int:
        """Make room for a take; return its id."""

    def append_sound(self, take: int, pcm: bytes, events: Sequence[TakeEvent] = ()) -> None:
        """Add 16-bit mono sound to the take, and what the board showed meanwhile."""

    def finish_take(self, take: int) -> Take:
        """The take, complete."""

    def close(self) -> None:
        """Let go of the file."""


@dataclass(frozen=True, slots=True)
class _Stamp:
    samples: int
    node: int
    beat: BeatKey | None


class _Order(Enum):
    FLUSH = auto()
    FINISH = auto()


_Item: TypeAlias = "bytes | _Stamp | _Order"


class TakeWriter(QThread):
    """One take on its way into the study file.

    The take is begun with the first sound, so that a recording without any leaves nothing behind. Sound and stamps
    may be handed over from any thread and never wait for the disk.

    State: the sound and the stamps that are not stored yet. A stamp is stored together with the sound that it
    belongs to, never before.

    stored: the length of what is safely on the disk (samples)
    written: the take has ended, and `take` and `failure` say how; carries this writer
    """

    stored = Signal(int)
    written = Signal(object)

    def __init__(
        self, sink: SoundSink, name: str, parent: QObject | None = None, replaces: Replaced | None = None
    ) -> None:
        """A take that is to be called *name*; the sink is closed when it has ended.

        replaces: what it is heard in place of, where it is a pickup
        """
        super().__init__(parent)
        self._sink = sink
        self._name = name
        self._replaces = replaces
        #: The take that has ended; None before, and where there was no sound or the take could not be finished.
        self.take: Take | None = None
        #: Why the take ended with less than all of its sound, in a sentence.
        self.failure: str | None = None
        self._items: SimpleQueue[_Item] = SimpleQueue()
        self._id: int | None = None
        self._samples = 0
        self._unstored = bytearray()
        self._stamps: list[_Stamp] = []

    def hear(self, pcm: bytes) -> None:
        """The next sound of the take."""
        self._items.put(pcm)

    def stamp(self, samples: int, node: int, beat: BeatKey | None) -> None:
        """From this sample of the take on, the board shows this node; never before the stamp that was made last."""
        self._items.put(_Stamp(samples, node, beat))

    def flush(self) -> None:
        """Store what has been heard, however little: there is a pause."""
        self._items.put(_Order.FLUSH)

    def finish(self) -> None:
        """The take is over. Called a second time, nothing happens."""
        self._items.put(_Order.FINISH)

    def run(self) -> None:
        """Store until the take is over; started by start()."""
        try:
            self._sink.get_ready()
            self._store_until_over()
            self.take = self._finish()
        except (StudyboardError, OSError, sqlite3.Error) as reason:
            try:
                self.take = self._finish()
            except (StudyboardError, OSError, sqlite3.Error):
                self.failure = f"{_why(reason)} {self._kept_later()}"
            else:
                self.failure = f"{_why(reason)} {self._kept()}"
        finally:
            with suppress(StudyboardError, OSError, sqlite3.Error):
                self._sink.close()
        self.written.emit(self)

    def _store_until_over(self) -> None:
        while True:
            item = self._items.get()
            if isinstance(item, bytes):
                self._unstored += item
                while len(self._unstored) >= CHUNK * SAMPLE_BYTES:
                    self._store(CHUNK * SAMPLE_BYTES)
            elif isinstance(item, _Stamp):
                self._stamps.append(item)
            else:
                if self._unstored:
                    self._store(len(self._unstored))
                if item is _Order.FINISH:
                    self._store_late_stamps()
                    return

    def _store(self, size: int) -> None:
        if self._id is None:
            started = datetime.now().astimezone().isoformat(timespec="milliseconds")
            self._id = self._sink.begin_take(self._name, RATE, started, replaces=self._replaces)
        end = self._samples + size // SAMPLE_BYTES
        due = [stamp for stamp in self._stamps if stamp.samples < end]
        self._sink.append_sound(self._id, bytes(self._unstored[:size]), _events(due))
        del self._unstored[:size]
        del self._stamps[: len(due)]
        self._samples = end
        self.stored.emit(end)

    def _store_late_stamps(self) -> None:
        """What was stamped after the last sound that could be kept happens at its end."""
        if self._id is not None and self._stamps:
            late = [_Stamp(self._samples, stamp.node, stamp.beat) for stamp in self._stamps]
            self._sink.append_sound(self._id, b"", _events(late))
            self._stamps.clear()

    def _finish(self) -> Take | None:
        return None if self._id is None else self._sink.finish_take(self._id)

    def _kept(self) -> str:
        if not self._samples:
            return tr("Nothing of this take could be kept.")
        return tr("The take ends here; its first {seconds:.1f} seconds are kept.", seconds=self._samples / RATE)

    def _kept_later(self) -> str:
        if not self._samples:
            return self._kept()
        return tr(
            "The take ends here; its first {seconds:.1f} seconds are stored and will be among the "
            "takes when the study is opened again.",
            seconds=self._samples / RATE,
        )


def _events(stamps: list[_Stamp]) -> tuple[TakeEvent, ...]:
    return tuple(TakeEvent(SoundTime(stamp.samples, RATE), stamp.node, stamp.beat) for stamp in stamps)


def _why(reason: Exception) -> str:
    return (
        str(reason)
        if isinstance(reason, StudyboardError)
        else tr("The sound could not be stored: {reason}.", reason=reason)
    )
