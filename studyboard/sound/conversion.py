"""From what a microphone delivers to the form in which sound is kept."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING, Any

from studyboard.sound.errors import require
from studyboard.sound.pcm import FULL_SCALE, LOWEST, RATE

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


class SampleKind(StrEnum):
    """How a microphone writes a sample down, in the byte order of the machine."""

    UINT8 = "uint8"
    INT16 = "int16"
    INT32 = "int32"
    FLOAT = "float32"


@dataclass(frozen=True, slots=True)
class DeviceFormat:
    """What a microphone delivers.

    kind: of its samples; rate: frames a second (Hz); channels: samples in a frame
    """

    kind: SampleKind = SampleKind.INT16
    rate: int = RATE
    channels: int = 1

    @property
    def frame_bytes(self) -> int:
        """Bytes of one frame."""
        return {SampleKind.UINT8: 1, SampleKind.INT16: 2}.get(self.kind, 4) * self.channels

    @property
    def as_kept(self) -> bool:
        """True where nothing needs to be converted."""
        return self == DeviceFormat()


class Converter:
    """Converts one stream of blocks: the channels are averaged, the rate is converted, the sum is rounded and limited.

    State: what the rate conversion has not given out yet.
    """

    def __init__(self, form: DeviceFormat) -> None:
        """A converter from this form. Raises SoundUnavailableError where a package for the conversion is missing."""
        self._form = form
        self._resampler: Any = None
        if form.as_kept:
            return
        require("numpy")
        if form.rate != RATE:
            require("soxr")
            import soxr  # type: ignore[import-untyped]

            self._resampler = soxr.ResampleStream(form.rate, RATE, 1, dtype="float32", quality="HQ")

    def convert(self, block: bytes) -> bytes:
        """The next samples of 16-bit mono sound at 48 kHz; a few milliseconds of them can still be kept back."""
        if self._form.as_kept:
            return block
        mono = self._mono(block)
        if self._resampler is not None:
            mono = self._resampler.resample_chunk(mono)
        return _rounded(mono)

    def flush(self) -> bytes:
        """The samples that were kept back; the stream is over."""
        if self._resampler is None:
            return b""
        import numpy as np

        return _rounded(self._resampler.resample_chunk(np.zeros(0, np.float32), last=True))

    def _mono(self, block: bytes) -> NDArray[np.float32]:
        import numpy as np

        samples = np.frombuffer(block, dtype=self._form.kind.value)
        match self._form.kind:
            case SampleKind.UINT8:
                scaled = (samples.astype(np.float32) - 128.0) / 128.0
            case SampleKind.INT16:
                scaled = samples.astype(np.float32) / 32_768.0
            case SampleKind.INT32:
                scaled = (samples / 2_147_483_648.0).astype(np.float32)
            case SampleKind.FLOAT:
                scaled = np.nan_to_num(samples.astype(np.float32))
        if self._form.channels > 1:
            scaled = scaled.reshape(-1, self._form.channels).mean(axis=1, dtype=np.float32)
        return scaled


def _rounded(mono: NDArray[np.float32]) -> bytes:
    import numpy as np

    limited: NDArray[np.int16] = np.clip(np.rint(mono * 32_768.0), LOWEST, FULL_SCALE).astype("<i2")
    return limited.tobytes()
