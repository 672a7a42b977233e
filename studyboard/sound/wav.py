"""Takes as WAV files."""

from __future__ import annotations

import os
import wave
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path

from studyboard.sound.errors import SoundFileError
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.translation import tr


def write_wav(path: Path, chunks: Iterable[bytes], rate: int = RATE) -> None:
    """Write 16-bit mono sound, chunk after chunk, as a WAV file.

    The file is written beside its place and renamed when it is whole. Raises SoundFileError, and leaves what was
    there before, when that fails.
    """
    beside = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        with beside.open("wb") as file, wave.open(file, "wb") as sound:
            sound.setnchannels(1)
            sound.setsampwidth(SAMPLE_BYTES)
            sound.setframerate(rate)
            for chunk in chunks:
                sound.writeframes(chunk)
        os.replace(beside, path)
    except OSError as reason:
        raise SoundFileError(
            tr("{path} could not be written: {reason}.", path=path, reason=reason.strerror or reason)
        ) from reason
    finally:
        with suppress(OSError):
            beside.unlink()
