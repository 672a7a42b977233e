"""The form in which sound is kept: 48 kHz, one channel, 16-bit integers, little-endian."""

from __future__ import annotations

import sys
from array import array

#: Samples a second of every take (Hz).
RATE = 48_000
#: Bytes of one sample.
SAMPLE_BYTES = 2
#: The largest and the smallest value of a sample.
FULL_SCALE = 32_767
LOWEST = -32_768


def samples_of(pcm: bytes) -> array[int]:
    """The samples as whole numbers. Raises ValueError for half a sample."""
    samples = array("h", pcm)
    if sys.byteorder == "big":
        samples.byteswap()
    return samples


def pcm_of(samples: array[int]) -> bytes:
    """The bytes of an array of 16-bit samples (type code "h")."""
    if sys.byteorder == "big":
        samples = array("h", samples)
        samples.byteswap()
    return samples.tobytes()


def count(pcm: bytes) -> int:
    """How many samples there are."""
    return len(pcm) // SAMPLE_BYTES
