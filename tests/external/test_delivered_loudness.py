"""What a meter reads in a delivered sound file is what was aimed at: pyloudnorm after ITU-R BS.1770-4, file by PyAV."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import pytest

from studyboard.delivery.page.sound import write_sound
from studyboard.sound.loudness import measure

RATE = 48_000


@dataclass
class Tone:
    """Eight seconds of 1 kHz: low enough for the coder to leave it as it is."""

    rate: int = RATE

    def chunks(self) -> Iterator[bytes]:
        """All of it at once."""
        sound = 4000 * np.sin(np.arange(8 * RATE) * 2 * np.pi * 1000 / RATE)
        yield np.rint(sound).astype("<i2").tobytes()


def test_the_file_is_as_loud_as_the_narration_was_measured(tmp_path: Path) -> None:
    av, pyloudnorm = pytest.importorskip("av"), pytest.importorskip("pyloudnorm")
    path = tmp_path / "talk.m4a"
    write_sound(Tone(), path, 8.0)
    with av.open(str(path)) as container:
        frames = [frame.to_ndarray().T for frame in container.decode(audio=0)]
    read = pyloudnorm.Meter(RATE).integrated_loudness(np.concatenate(frames))
    assert read == pytest.approx(measure(Tone().chunks()).integrated, abs=0.2)
