"""Sound that was recorded elsewhere becomes a take: of a sound file, or of a telephone's video."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from os import SEEK_END
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

from studyboard.model.errors import StudyboardError
from studyboard.model.takes import Events, Replaced, SoundTime, Take, TakeEvent
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.sound.sound_file import mono, nothing_read, opened
from studyboard.translation import tr

if TYPE_CHECKING:
    import av

#: Endings that a window offers; whatever else the library reads is taken too.
ENDINGS = (
    "wav", "flac", "m4a", "mp3", "ogg", "oga", "opus", "aac", "aif", "aiff", "wma", "mp4", "mov", "m4v", "mkv", "webm",
)  # fmt: skip

#: How much is stored at once (samples).
_CHUNK = RATE
#: What coders put before and behind the sound (s), with some to spare.
_CODERS_OWN = 0.15
#: Formats that do not say how long their sound is, so that a reader guesses.
_GUESSED = frozenset(("mp3", "aac"))


class ImportCancelledError(StudyboardError):
    """The import was stopped; nothing of it is in the study."""


class TakeShelf(Protocol):
    """Where the sound of takes goes; the sound of a study file is one. All methods may raise a StudyboardError."""

    def begin_take(
        self, name: str, rate: int, started: str, *, origin: str = "", replaces: Replaced | None = None
    ) -> int:
        """Make room for a take; return its id."""

    def append_sound(self, take: int, pcm: bytes, events: Sequence[TakeEvent] = ()) -> None:
        """Add 16-bit mono sound to it, and what the board shows meanwhile."""

    def finish_take(self, take: int) -> Take:
        """The take, complete."""

    def abandon_take(self, take: int) -> None:
        """Forget a take that was begun, and its sound."""


@dataclass(frozen=True, slots=True)
class Imported:
    """A take made from a file, to be put into the study with PutTake.

    remark: what could not be read of the file, in a sentence; empty where all of it could
    """

    take: Take
    remark: str


def import_sound(
    path: Path,
    shelf: TakeShelf,
    name: str = "",
    *,
    replaces: Replaced | None = None,
    events: Callable[[SoundTime], Events] | None = None,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Imported:
    """Read the first sound of a file into a new take: 48 kHz, its channels mixed to one.

    name: what the take is to be called; the name of the file where it is empty
    replaces: what it is heard in place of, where it is a pickup
    events: what the board shows during it, told how long it is; what that raises ends the import
    progress: called with the part that is done (0.0 to 1.0), where the file says how long it is
    Raises SoundUnavailableError without PyAV; SoundFileError where there is no such file, or no sound in it that can
    be read; ImportCancelledError; StudyFileError where the study takes no more. Whatever is raised, nothing is left
    in the study. A file that is damaged gives what can be read of it.
    """
    take: int | None = None
    read = 0
    try:
        with opened(path) as (container, stream):
            length = _length(container, stream)
            damage = _Damage(promised=_promised(path, container, stream))
            for pcm in _by_the_second(mono(container, stream, RATE, damage.note)):
                if cancelled is not None and cancelled():
                    raise ImportCancelledError(tr("The import was stopped; nothing of it was kept."))
                if take is None:
                    started = _started(path, container)
                    take = shelf.begin_take(name or path.stem, RATE, started, origin=path.name, replaces=replaces)
                shelf.append_sound(take, pcm)
                read += len(pcm) // SAMPLE_BYTES
                if progress is not None and length:
                    progress(min(1.0, read / (length * RATE)))
        if take is None:
            raise nothing_read(path)
        if events is not None:
            shelf.append_sound(take, b"", events(SoundTime(read, RATE)))
        finished = shelf.finish_take(take)
    except BaseException:
        if take is not None:
            # On a full disk even that may fail; then the beginning is among the takes when the study is opened again.
            with suppress(StudyboardError):
                shelf.abandon_take(take)
        raise
    if progress is not None:
        progress(1.0)
    return Imported(finished, damage.sentence(path.name, read / RATE))


@dataclass(slots=True)
class _Damage:
    """What is wrong with a file.

    promised: how long it says that its sound is (s), 0.0 where it does not
    pieces: how many could not be read; reason: why the last one could not
    """

    promised: float
    pieces: int = 0
    reason: str = ""

    def note(self, reason: str) -> None:
        """One more piece could not be read."""
        self.pieces += 1
        self.reason = reason

    def sentence(self, name: str, seconds: float) -> str:
        """That in words; empty where all is well. seconds: how much could be read"""
        short = self.promised - seconds > _CODERS_OWN
        if not self.pieces and not short:
            return ""
        if short:
            return tr(
                "“{name}” is damaged: {seconds:.1f} of its {length:.1f} seconds could be read, and are kept.",
                name=name,
                seconds=seconds,
                length=self.promised,
            )
        return tr(
            "“{name}” is damaged: pieces of it could not be read ({reason}); the rest, {seconds:.1f} seconds, is kept.",
            name=name,
            reason=self.reason,
            seconds=seconds,
        )


def _length(container: av.container.InputContainer, stream: Any) -> float:
    """How long the file says its sound is (s); 0.0 where it does not."""
    if stream.duration is not None and stream.time_base is not None:
        return float(stream.duration * stream.time_base)
    return float(container.duration / 1_000_000) if container.duration else 0.0


def _promised(path: Path, container: av.container.InputContainer, stream: Any) -> float:
    """How long the file promises its sound to be (s), whatever there is of it; 0.0 where it does not say."""
    if container.format.name in _GUESSED:
        return 0.0
    length = _length(container, stream)
    with path.open("rb") as file:
        head = file.read(12)
        size = file.seek(0, SEEK_END)
    # The reader believes the size of the file more than what a WAV says of itself in its first bytes, which are the
    # letters RIFF and how much follows; programs that cannot go back write the largest number there is.
    if head[:4] == b"RIFF" and head[8:] == b"WAVE":
        follows = int.from_bytes(head[4:8], "little") + 8
        if size < follows < 1 << 32 and follows - 8 != 0xFFFF_FFFF:
            return length * follows / size
    return length


def _by_the_second(pieces: Iterable[bytes]) -> Iterator[bytes]:
    """The same sound in pieces of as many samples as are stored at once, or a few more."""
    waiting = bytearray()
    for pcm in pieces:
        waiting += pcm
        if len(waiting) >= _CHUNK * SAMPLE_BYTES:
            yield bytes(waiting)
            waiting.clear()
    if waiting:
        yield bytes(waiting)


def _started(path: Path, container: av.container.InputContainer) -> str:
    """When the file says that it was recorded, else when it was written last."""
    try:
        return datetime.fromisoformat(container.metadata["creation_time"]).astimezone().isoformat(timespec="seconds")
    except (KeyError, ValueError):
        return datetime.fromtimestamp(path.stat().st_mtime).astimezone().isoformat(timespec="seconds")
