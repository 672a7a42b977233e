"""Pictures and sound into an MP4 file: H.264 and AAC, by the libraries of FFmpeg."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from pathlib import Path
from types import ModuleType, TracebackType
from typing import TYPE_CHECKING, Any, Final

import numpy as np

from studyboard.delivery.chapters import Chapter
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.video.narration import Narration
from studyboard.delivery.video.options import VideoOptions
from studyboard.translation import tr

if TYPE_CHECKING:
    # Sound is encoded here for the page too, which needs no cairo.
    from studyboard.picture.raster import Canvas

_BT709: Final = 1
_STUDIO_RANGE: Final = 1
_SOUND_BITS: Final = 128_000
_KEY_FRAME: Final = 5
"""At most so far from one picture that can be jumped to to the next (s)."""

#: Pictures of a board hardly change: what x264 would look for in the frames around is not there, and looking for it
#: is what takes its time.
_X264: Final = "bframes=0:rc-lookahead=0:sync-lookahead=0:mbtree=0:scenecut=0:weightp=0:subme=0:me=dia"


class Encoder:
    """Writes one file.

    State: the file, the last picture as it was converted, and how far picture and sound have come.
    """

    def __init__(
        self,
        path: Path,
        options: VideoOptions,
        narration: Narration | None,
        chapters: Sequence[Chapter] = (),
        tags: dict[str, str] | None = None,
    ) -> None:
        """Raises DeliveryError, which names the package, where the video library is missing."""
        av = load_av()
        self._av = av
        self._options = options
        width, height = options.size
        self._container = av.open(str(path), "w", format="mp4", options={"movflags": "+faststart"})
        self._video = self._container.add_stream("libx264", rate=options.rate)
        self._video.width, self._video.height = width, height
        self._video.pix_fmt = "yuv420p"
        context = self._video.codec_context
        context.time_base = Fraction(1, options.rate)
        context.gop_size = options.rate * _KEY_FRAME
        context.color_primaries = context.color_trc = context.colorspace = _BT709
        context.color_range = _STUDIO_RANGE
        context.thread_type = "AUTO"
        self._video.options = {"preset": "superfast", "crf": "18", "x264-params": _X264}
        self._audio = None
        self._samples: Iterator[bytes] | None = None
        self._rate = 0
        self._sound_at = 0
        if narration is not None:
            self._rate = narration.rate
            self._audio = self._container.add_stream("aac", rate=narration.rate, layout="stereo")
            self._audio.bit_rate = _SOUND_BITS
            self._samples = narration.chunks()
        self._container.metadata.update(tags or {})
        if chapters:
            self._container.set_chapters(
                [
                    {
                        "id": number,
                        "start": round(chapter.start * 1000),
                        "end": round(chapter.end * 1000),
                        "time_base": Fraction(1, 1000),
                        "metadata": {"title": chapter.title},
                    }
                    for number, chapter in enumerate(chapters)
                ]
            )
        self._frame: Any = None

    def __enter__(self) -> Encoder:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, problem: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._container.close()

    def show(self, canvas: Canvas, first: int, until: int) -> None:
        """Show a picture from one frame up to another, which has the next picture."""
        pixels = np.frombuffer(canvas.bgra(), np.uint8).reshape(canvas.height, -1)[:, : 4 * canvas.width]
        frame = self._av.VideoFrame.from_ndarray(pixels.reshape(canvas.height, canvas.width, 4), format="bgra")
        self._frame = frame.reformat(
            format="yuv420p", dst_colorspace="ITU709", src_color_range="JPEG", dst_color_range="MPEG"
        )
        self._frame.colorspace, self._frame.color_range = _BT709, _STUDIO_RANGE
        self.go_on(first, until)

    def go_on(self, first: int, until: int) -> None:
        """Go on showing the last picture from one frame up to another."""
        # Without the frames between, one a second stays, so that every player can jump and none thinks it stopped.
        every = 1 if self._options.constant else self._options.rate
        for number in range(first, until, every):
            self._put(number)

    def finish(self, frames: int) -> None:
        """Write what is left: the last frame where only changes are written, and the end of the sound."""
        if not self._options.constant and self._frame is not None:
            self._put(frames - 1)
        for packet in self._video.encode():
            self._container.mux(packet)
        if self._audio is not None:
            self._sound_until(float("inf"))
            for packet in self._audio.encode(None):
                self._container.mux(packet)

    def _put(self, number: int) -> None:
        if self._frame.pts is not None and number <= self._frame.pts:
            return
        self._frame.pts = number
        self._frame.time_base = Fraction(1, self._options.rate)
        for packet in self._video.encode(self._frame):
            self._container.mux(packet)
        self._sound_until(number / self._options.rate + 1)

    def _sound_until(self, seconds: float) -> None:
        """Write the sound up to this second, so that it lies beside its pictures in the file."""
        while self._audio is not None and self._samples is not None and self._sound_at < seconds * self._rate:
            pcm = next(self._samples, None)
            if pcm is None:
                self._samples = None
                return
            if not pcm:
                continue
            frame = sound_frame(self._av, pcm, self._rate, self._sound_at)
            self._sound_at += frame.samples
            for packet in self._audio.encode(frame):
                self._container.mux(packet)


def sound_frame(av: ModuleType, pcm: bytes, rate: int, at: int) -> Any:
    """A piece of a narration for an encoder; *at* is its first sample, *rate* how many there are a second."""
    # The same in both channels: loudness was brought to its target as it is heard so.
    samples = np.frombuffer(pcm, "<i2").repeat(2).reshape(1, -1)
    frame = av.AudioFrame.from_ndarray(samples, format="s16", layout="stereo")
    frame.sample_rate, frame.pts, frame.time_base = rate, at, Fraction(1, rate)
    return frame


def load_av() -> ModuleType:
    """The video library. Raises DeliveryError, which names the package, where it is missing."""
    try:
        import av
    except ImportError as reason:
        raise DeliveryError(
            tr("A video needs PyAV, which is missing here. Install it with “pip install 'studyboard[media]'”.")
        ) from reason
    return av
