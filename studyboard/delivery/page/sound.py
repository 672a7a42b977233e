"""The voice of a page: AAC, which every browser plays."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Final

import numpy as np

from studyboard.delivery.video.encoder import load_av
from studyboard.delivery.video.narration import Narration

#: What the name of its file has behind that of the study.
SOUND: Final = ".m4a"

_BITS: Final = 96_000


def write_sound(
    narration: Narration, path: Path, seconds: float, progress: Callable[[float], None] = lambda _: None
) -> None:
    """Write the narration as an MPEG-4 file, second 0 of which is its own. Memory does not grow with its length.

    seconds: how long it is about, for the progress (0.0 to 1.0)

    Raises DeliveryError where the library is missing that writes it.
    """
    av = load_av()
    with av.open(str(path), "w", format="mp4", options={"movflags": "+faststart"}) as container:
        stream = container.add_stream("aac", rate=narration.rate, layout="stereo")
        stream.bit_rate = _BITS
        at = 0
        for pcm in narration.chunks():
            samples = np.frombuffer(pcm, "<i2")
            if not samples.size:
                continue
            # The same in both channels: loudness was brought to its target as it is heard so.
            frame = av.AudioFrame.from_ndarray(samples.repeat(2).reshape(1, -1), format="s16", layout="stereo")
            frame.sample_rate, frame.pts, frame.time_base = narration.rate, at, Fraction(1, narration.rate)
            at += samples.size
            container.mux(stream.encode(frame))
            progress(min(1.0, at / narration.rate / seconds) if seconds > 0 else 0.0)
        container.mux(stream.encode(None))
