"""How loud a stretch of sound is."""

from __future__ import annotations

import math
from operator import mul

from studyboard.sound.pcm import FULL_SCALE, LOWEST, samples_of

#: The magnitude that is 0 dBFS: that of the lowest code.
_FULL = -LOWEST
#: Level of digital silence (dBFS): below the least that 16 bits can say, which is -90.3.
SILENCE = -120.0
#: Samples in a row at full scale that count as clipping: common practice of level meters.
CLIP_RUN = 3


def peak_dbfs(pcm: bytes) -> float:
    """The largest sample of 16-bit mono sound (dBFS), 0.0 at full scale; SILENCE for silence or nothing."""
    samples = samples_of(pcm)
    return _dbfs(max(max(samples), -min(samples))) if samples else SILENCE


def rms_dbfs(pcm: bytes) -> float:
    """The root mean square of 16-bit mono sound (dBFS); SILENCE for silence or nothing.

    The mathematical convention: a full-scale square wave is 0 dBFS and a full-scale sine -3.01 dBFS, as ITU-R BS.1770
    has it for one channel at 1 kHz. AES17 instead calls the sine's level 0 dB FS and so reads 3.01 dB more.
    """
    samples = samples_of(pcm)
    if not samples:
        return SILENCE
    return _dbfs(math.sqrt(sum(map(mul, samples, samples)) / len(samples)))


def clips(pcm: bytes) -> bool:
    """True where at least CLIP_RUN samples in a row are at full scale, of the same sign or not."""
    samples = samples_of(pcm)
    if not samples or (max(samples) < FULL_SCALE and min(samples) > LOWEST):
        return False
    run = 0
    for sample in samples:
        run = run + 1 if sample >= FULL_SCALE or sample <= LOWEST else 0
        if run == CLIP_RUN:
            return True
    return False


def _dbfs(value: float) -> float:
    return 20 * math.log10(value / _FULL) if value > 0 else SILENCE
