"""Sound in the form in which it is listened to."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from studyboard.model.takes import Take
from studyboard.sound.alignment.pieces import RATE
from studyboard.sound.errors import SoundFileError, require
from studyboard.store.sound import TakeSound
from studyboard.translation import tr


def sound_of_file(path: Path) -> NDArray[np.int16]:
    """The first sound of a file, its channels mixed, as 16-bit samples at 16 kHz.

    What cannot be read of it is passed over. Raises SoundUnavailableError without PyAV, SoundFileError where there is
    no such file or no sound in it.
    """
    require("av")
    import av

    if not path.exists():
        raise SoundFileError(tr("There is no file “{path}”. Check its name.", path=path))
    blocks: list[NDArray[np.int16]] = []
    try:
        with av.open(str(path), metadata_errors="replace") as container:
            stream = next(iter(container.streams.audio), None)
            if stream is None:
                raise SoundFileError(tr("There is no sound in “{name}”.", name=path.name))
            resampler = av.AudioResampler(format="s16", layout="mono", rate=RATE)
            for packet in container.demux(stream):
                try:
                    frames = packet.decode()
                except av.error.InvalidDataError:
                    continue
                for frame in frames:
                    frame.pts = None
                    blocks += [block.to_ndarray()[0] for block in resampler.resample(frame)]
            blocks += [block.to_ndarray()[0] for block in resampler.resample(None)]
    except (av.error.FFmpegError, OSError, ValueError) as reason:
        why = getattr(reason, "strerror", None) or reason
        raise SoundFileError(
            tr("“{name}” cannot be read as sound or video: {reason}.", name=path.name, reason=why)
        ) from reason
    if not blocks:
        raise SoundFileError(tr("No sound could be read from “{name}”: it is empty or damaged.", name=path.name))
    return np.concatenate(blocks)


def sound_of_take(shelf: TakeSound, take: Take) -> NDArray[np.int16]:
    """The sound of a take as 16-bit samples at 16 kHz. Raises SoundUnavailableError without soxr, StudyFileError."""
    require("soxr")
    import soxr  # type: ignore[import-untyped]

    stream = soxr.ResampleStream(take.rate, RATE, 1, dtype="int16")
    blocks = [stream.resample_chunk(np.frombuffer(pcm, "<i2")) for pcm in shelf.sound_chunks(take.id)]
    blocks.append(stream.resample_chunk(np.zeros(0, np.int16), last=True))
    return np.concatenate(blocks)
