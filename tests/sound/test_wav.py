"""A take can be handed on as a WAV file."""

from __future__ import annotations

import wave
from collections.abc import Iterator
from pathlib import Path

import pytest

from studyboard.sound.errors import SoundFileError
from studyboard.sound.wav import write_wav


def test_the_file_holds_all_chunks_in_their_order(tmp_path: Path) -> None:
    path = tmp_path / "take.wav"
    write_wav(path, [b"\x01\x00\x02\x00", b"", b"\x03\x00"])
    with wave.open(str(path)) as sound:
        assert (sound.getframerate(), sound.getnchannels(), sound.getsampwidth()) == (48_000, 1, 2)
        assert sound.readframes(10) == b"\x01\x00\x02\x00\x03\x00"
    assert list(tmp_path.iterdir()) == [path]


def test_sound_that_breaks_off_leaves_the_file_that_was_there(tmp_path: Path) -> None:
    path = tmp_path / "take.wav"
    path.write_text("before")

    def broken() -> Iterator[bytes]:
        yield b"\x01\x00"
        raise RuntimeError

    with pytest.raises(RuntimeError):
        write_wav(path, broken())
    assert path.read_text() == "before"
    assert list(tmp_path.iterdir()) == [path]


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(SoundFileError, match="could not be written"):
        write_wav(tmp_path / "nowhere" / "take.wav", [b""])
