"""Reading the sound of a file that was made elsewhere: a sound file, or a video."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

from studyboard.sound.errors import SoundFileError, require
from studyboard.translation import tr

if TYPE_CHECKING:
    import av

#: So many pieces that cannot be read, one after the other, and the rest of the file is given up.
_PATIENCE = 200


@contextmanager
def opened(path: Path) -> Iterator[tuple[av.container.InputContainer, Any]]:
    """A file and its first sound, open until the block ends.

    Raises SoundUnavailableError without PyAV, SoundFileError where there is no such file, or no sound in it.
    """
    require("av")
    import av

    if not path.exists():
        raise SoundFileError(tr("There is no file “{path}”. Check its name.", path=path))
    try:
        container = av.open(str(path), metadata_errors="replace")
    except (av.error.FFmpegError, OSError, ValueError) as reason:
        raise SoundFileError(
            tr("“{name}” cannot be read as sound or video: {reason}.", name=path.name, reason=_why(reason))
        ) from reason
    with closing(container):
        stream = next(iter(container.streams.audio), None)
        if stream is None:
            raise SoundFileError(
                tr(
                    "There is no sound in “{name}”. Choose a sound file, or a video that was made with sound.",
                    name=path.name,
                )
            )
        yield container, stream


def mono(
    container: av.container.InputContainer, stream: Any, rate: int, unread: Callable[[str], None] = lambda _: None
) -> Iterator[bytes]:
    """The sound of an opened file as 16-bit samples at this rate (Hz), its channels mixed, piece by piece.

    unread: told why, for each piece that cannot be read and is passed over
    """
    import av

    resampler = av.AudioResampler(format="s16", layout="mono", rate=rate)
    in_a_row = 0
    packets = container.demux(stream)
    while in_a_row < _PATIENCE:
        try:
            frames = next(packets).decode()
            for frame in frames:
                frame.pts = None
            heard = [mixed.to_ndarray().tobytes() for frame in frames for mixed in resampler.resample(frame)]
        except StopIteration:
            break
        except (av.error.FFmpegError, OSError, ValueError) as reason:
            unread(_why(reason))
            in_a_row += 1
            continue
        in_a_row = 0 if frames else in_a_row
        yield from heard
    with suppress(av.error.FFmpegError, ValueError):
        yield from [mixed.to_ndarray().tobytes() for mixed in resampler.resample(None)]


def nothing_read(path: Path) -> SoundFileError:
    """What is to be raised where no sample could be read."""
    return SoundFileError(tr("No sound could be read from “{name}”: it is empty or damaged.", name=path.name))


def _why(reason: Exception) -> str:
    return str(getattr(reason, "strerror", None) or reason)
