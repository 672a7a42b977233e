"""How the samples of one chunk of sound lie in a study file: as they are, or compressed without loss."""

from __future__ import annotations

import io
from functools import cache
from importlib import import_module
from typing import Any

from studyboard.store.errors import SoundMissingError
from studyboard.translation import tr

#: Samples as signed 16-bit numbers, least significant byte first.
PCM = "pcm"
#: A FLAC file (RFC 9639, from memory) of its own for each chunk, so that a lost one takes no other with it.
FLAC = "flac"

#: libsndfile's scale from fast (0.0) to small (1.0): above this, a chunk gets hardly smaller and takes longer.
_EFFORT = 0.5


def encoded(pcm: bytes, rate: int) -> tuple[str, bytes]:
    """The coding that is the shorter one here, and the samples in it; as they are where nothing can compress them.

    rate: samples a second (Hz)
    """
    soundfile = _soundfile()
    if soundfile is None or not pcm:
        return PCM, pcm
    import numpy as np

    file = io.BytesIO()
    try:
        with soundfile.SoundFile(file, "w", rate, 1, "PCM_16", format="FLAC", compression_level=_EFFORT) as flac:
            flac.write(np.frombuffer(pcm, "<i2"))
    except (soundfile.SoundFileError, ValueError):
        # Sound that cannot be made smaller, for instance because of its rate, is sound all the same.
        return PCM, pcm
    small = file.getvalue()
    return (FLAC, small) if len(small) < len(pcm) else (PCM, pcm)


def decoded(coding: str, data: bytes, samples: int) -> bytes:
    """The samples of one chunk.

    Raises SoundMissingError where they cannot be read: the library is not installed, or the data are damaged.
    """
    if coding == PCM:
        return data
    if coding != FLAC:
        raise SoundMissingError(tr("This sound is stored as “{coding}”, which is unknown here.", coding=coding))
    soundfile = _soundfile()
    if soundfile is None:
        raise SoundMissingError(
            tr(
                "The sound of this study is compressed (FLAC), and what reads it is not installed: pip install "
                "soundfile. The study itself is whole."
            )
        )
    try:
        found, _ = soundfile.read(io.BytesIO(data), dtype="int16")
    except soundfile.SoundFileError as reason:
        raise SoundMissingError(tr("A piece of this sound is damaged ({reason}).", reason=reason)) from reason
    if len(found) != samples:
        raise SoundMissingError(tr("A piece of this sound is damaged ({reason}).", reason=len(found)))
    pcm: bytes = found.astype("<i2", copy=False).tobytes()
    return pcm


@cache
def _soundfile() -> Any:
    """The library, None where it or numpy is not installed."""
    try:
        import_module("numpy")
        return import_module("soundfile")
    except (ImportError, OSError):
        return None
