"""A microphone that delivers another form of sound is heard as well."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest
from PySide6.QtMultimedia import QAudioFormat
from pytestqt.qtbot import QtBot

from studyboard.model.errors import StudyboardError
from studyboard.sound.conversion import DeviceFormat, SampleKind
from studyboard.sound.devices import input_device, inputs
from studyboard.sound.microphone import Microphone, capture_format, device_format
from studyboard.sound.pcm import RATE
from tests.sound.virtual_microphone import SoundServer

PATIENCE = 15_000


def form(kind: QAudioFormat.SampleFormat, rate: int, channels: int) -> QAudioFormat:
    wanted = QAudioFormat()
    wanted.setSampleFormat(kind)
    wanted.setSampleRate(rate)
    wanted.setChannelCount(channels)
    return wanted


@pytest.fixture
def hum(sound_server: SoundServer, qtbot: QtBot) -> Iterator[str]:
    module = sound_server.plug_in_hum("hum", 1_000)
    qtbot.waitUntil(lambda: "hum" in {device.id for device in inputs()}, timeout=PATIENCE)
    yield "hum"
    sound_server.unplug(module)


@pytest.mark.parametrize(
    "delivered",
    [
        form(QAudioFormat.SampleFormat.Float, 44_100, 2),
        form(QAudioFormat.SampleFormat.Int32, 96_000, 1),
        form(QAudioFormat.SampleFormat.UInt8, 16_000, 1),
    ],
    ids=["float stereo 44.1 kHz", "32 bits 96 kHz", "8 bits 16 kHz"],
)
def test_a_hum_keeps_its_pitch_and_its_level_in_whatever_form_it_arrives(
    delivered: QAudioFormat, hum: str, qtbot: QtBot
) -> None:
    blocks: list[bytes] = []
    frames: list[int] = []

    def hear(opening: int, pcm: bytes, count: int, now: float) -> None:
        assert opening == 3
        blocks.append(pcm)
        frames.append(count)

    microphone = Microphone(hear)
    microphone.open(input_device(hum), delivered, 3)
    qtbot.waitUntil(lambda: sum(map(len, blocks)) > 3 * RATE, timeout=PATIENCE)
    microphone.close()

    sound = np.frombuffer(b"".join(blocks), "<i2").astype(float)
    assert len(sound) == pytest.approx(sum(frames) * RATE / delivered.sampleRate(), abs=RATE / 20)
    spectrum = np.abs(np.fft.rfft(sound[:RATE] * np.hanning(RATE)))
    assert int(spectrum.argmax()) == 1_000, "hertz, for a second has as many lines"
    middle = sound[RATE // 20 : RATE]
    assert np.sqrt((middle**2).mean()) == pytest.approx(16_384 / np.sqrt(2), rel=0.01)


def test_the_form_in_which_sound_is_kept_is_asked_for_first(sound_server: SoundServer, qapp: object) -> None:
    assert device_format(capture_format(input_device())) == DeviceFormat(SampleKind.INT16, RATE, 1)


def test_a_form_that_is_not_known_is_told() -> None:
    with pytest.raises(StudyboardError, match="Choose another microphone"):
        device_format(QAudioFormat())
