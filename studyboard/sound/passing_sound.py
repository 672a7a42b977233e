"""Sound that is heard to be measured, and kept nowhere."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from studyboard.model.takes import Replaced, Take, TakeEvent
from studyboard.sound.pcm import count


class PassingSound:
    """A SoundSink that keeps its takes in memory: for a room check, or to measure a delay.

    State: the latest take and its sound.
    """

    def __init__(self) -> None:
        self._pcm = bytearray()
        self._events: list[TakeEvent] = []
        self._take: Take | None = None

    @property
    def pcm(self) -> bytes:
        """The 16-bit mono sound of the latest take."""
        return bytes(self._pcm)

    def get_ready(self) -> None:
        """See SoundSink."""

    def begin_take(self, name: str, rate: int, started: str, *, replaces: Replaced | None = None) -> int:
        """See SoundSink."""
        self._pcm.clear()
        self._events.clear()
        self._take = Take(1, name, rate, 0, started, replaces=replaces)
        return 1

    def append_sound(self, take: int, pcm: bytes, events: Sequence[TakeEvent] = ()) -> None:
        """See SoundSink."""
        self._pcm += pcm
        self._events += events

    def finish_take(self, take: int) -> Take:
        """See SoundSink."""
        begun = self._take
        assert begun is not None
        return replace(begun, samples=count(self.pcm), events=tuple(self._events))

    def close(self) -> None:
        """See SoundSink."""
