"""The voice of a page: AAC, which every browser plays."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from studyboard.delivery.video.encoder import load_av, sound_frame
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
            if not pcm:
                continue
            frame = sound_frame(av, pcm, narration.rate, at)
            at += frame.samples
            container.mux(stream.encode(frame))
            progress(min(1.0, at / narration.rate / seconds) if seconds > 0 else 0.0)
        container.mux(stream.encode(None))
