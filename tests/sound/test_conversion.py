"""Whatever a microphone delivers, what is kept sounds the same."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.sound.conversion import Converter, DeviceFormat, SampleKind
from studyboard.sound.pcm import RATE

SCALES = {
    SampleKind.UINT8: lambda wave: np.rint(wave * 127 + 128).astype(np.uint8),
    SampleKind.INT16: lambda wave: np.rint(wave * 32_767).astype(np.int16),
    SampleKind.INT32: lambda wave: np.rint(wave * 2_147_483_000).astype(np.int32),
    SampleKind.FLOAT: lambda wave: wave.astype(np.float32),
}


def tone(seconds: float, rate: int, hertz: float = 1_000.0, peak: float = 0.5) -> np.ndarray:
    return peak * np.sin(2 * np.pi * hertz * np.arange(round(seconds * rate)) / rate)


def delivered(wave: np.ndarray, form: DeviceFormat) -> bytes:
    frames = np.repeat(wave[:, np.newaxis], form.channels, axis=1)
    return SCALES[form.kind](frames).tobytes()


def converted(block: bytes, form: DeviceFormat, sizes: list[int] | None = None) -> np.ndarray:
    converter = Converter(form)
    kept, at = b"", 0
    for size in sizes or []:
        kept += converter.convert(block[at * form.frame_bytes : (at + size) * form.frame_bytes])
        at += size
    kept += converter.convert(block[at * form.frame_bytes :]) + converter.flush()
    return np.frombuffer(kept, "<i2")


def test_sound_that_is_right_already_is_not_touched() -> None:
    assert DeviceFormat().as_kept
    assert Converter(DeviceFormat()).convert(b"\x01\x02\x03\x04") == b"\x01\x02\x03\x04"
    assert Converter(DeviceFormat()).flush() == b""


@pytest.mark.parametrize("kind", SampleKind)
@pytest.mark.parametrize("channels", [1, 2, 6])
@pytest.mark.parametrize("rate", [8_000, 16_000, 44_100, 48_000, 96_000])
def test_a_tone_keeps_its_pitch_level_length_and_place(kind: SampleKind, channels: int, rate: int) -> None:
    form = DeviceFormat(kind, rate, channels)
    kept = converted(delivered(tone(1.0, rate), form), form)
    assert len(kept) == pytest.approx(RATE, abs=2)
    wanted = tone(len(kept) / RATE, RATE)[: len(kept)] * 32_767
    middle = slice(RATE // 20, -RATE // 20)
    # The step of 8 bits is 256 of the 16-bit steps; the rest is what rounding and the filter leave.
    allowed = 300 if kind is SampleKind.UINT8 else 4
    assert np.abs(kept[middle] - wanted[middle]).max() < allowed


def test_the_channels_are_averaged() -> None:
    form = DeviceFormat(SampleKind.INT16, RATE, 2)
    frames = np.array([[1_000, 3_000], [-2_000, 0], [32_767, 32_767]], np.int16)
    assert converted(frames.tobytes(), form).tolist() == [2_000, -1_000, 32_767]


def test_sound_beyond_full_scale_is_limited_and_does_not_wrap_round() -> None:
    form = DeviceFormat(SampleKind.FLOAT)
    block = np.array([1.5, -1.5, 1.0, -1.0, np.nan], np.float32).tobytes()
    assert converted(block, form).tolist() == [32_767, -32_768, 32_767, -32_768, 0]


@given(st.lists(st.integers(1, 2_000), max_size=12))
def test_it_does_not_matter_in_which_blocks_sound_arrives(sizes: list[int]) -> None:
    form = DeviceFormat(SampleKind.INT16, 44_100, 1)
    block = delivered(tone(0.5, 44_100), form)
    assert np.abs(converted(block, form, sizes).astype(int) - converted(block, form)).max() <= 1
