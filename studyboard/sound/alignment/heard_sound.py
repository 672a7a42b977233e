"""Sound in the form in which it is listened to."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from studyboard.model.takes import Take
from studyboard.sound.alignment.pieces import RATE
from studyboard.sound.errors import require
from studyboard.sound.sound_file import mono, nothing_read, opened
from studyboard.store.sound import TakeSound


def sound_of_file(path: Path) -> NDArray[np.int16]:
    """The first sound of a file, its channels mixed, as 16-bit samples at 16 kHz.

    What cannot be read of it is passed over. Raises SoundUnavailableError without PyAV, SoundFileError where there is
    no such file or no sound in it.
    """
    with opened(path) as (container, stream):
        sound = b"".join(mono(container, stream, RATE))
    if not sound:
        raise nothing_read(path)
    return np.frombuffer(sound, np.int16)


def sound_of_take(shelf: TakeSound, take: Take) -> NDArray[np.int16]:
    """The sound of a take as 16-bit samples at 16 kHz. Raises SoundUnavailableError without soxr, StudyFileError."""
    require("soxr")
    import soxr  # type: ignore[import-untyped]

    stream = soxr.ResampleStream(take.rate, RATE, 1, dtype="int16")
    blocks = [stream.resample_chunk(np.frombuffer(pcm, "<i2")) for pcm in shelf.sound_chunks(take.id)]
    blocks.append(stream.resample_chunk(np.zeros(0, np.int16), last=True))
    return np.concatenate(blocks)
