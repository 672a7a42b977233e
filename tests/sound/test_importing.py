"""Sound from elsewhere becomes a take, whatever file it comes in, and says what is wrong with it."""

from __future__ import annotations

import math
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from studyboard.model.edits import PutTake
from studyboard.model.takes import Replaced, Span
from studyboard.sound.alignment.heard_sound import sound_of_file
from studyboard.sound.errors import SoundFileError
from studyboard.sound.importing import ImportCancelledError, import_sound
from studyboard.store.study_file import StudyFile

av = pytest.importorskip("av")

RATE = 48_000
#: Ending, coder, rate, channels.
FORMS = [
    ("wav", "pcm_s16le", 44_100, 2),
    ("wav", "pcm_f32le", 96_000, 1),
    ("flac", "flac", 44_100, 2),
    ("m4a", "aac", 48_000, 1),
    ("mp3", "libmp3lame", 44_100, 2),
    ("ogg", "libopus", 48_000, 1),
    ("mp4", "aac", 48_000, 2),
    ("mov", "aac", 44_100, 1),
]


def write(path: Path, coder: str, rate: int, channels: int, seconds: float = 3.0, *, picture: bool = False) -> Path:
    """A tone of 440 Hz at -12 dBFS in both channels; with a grey picture where it is to be a video."""
    layout = "mono" if channels == 1 else "stereo"
    wave = 0.25 * np.sin(2 * math.pi * 440 * np.arange(round(seconds * rate)) / rate)
    with av.open(str(path), "w") as container:
        film = container.add_stream("libx264", rate=25) if picture else None
        stream = container.add_stream(coder, rate=rate)
        stream.layout = layout
        if film is not None:
            film.width, film.height, film.pix_fmt = 64, 64, "yuv420p"
            for _ in range(round(25 * seconds)):
                grey = av.VideoFrame.from_ndarray(np.full((64, 64, 3), 90, np.uint8), format="rgb24")
                container.mux(film.encode(grey))
            container.mux(film.encode())
        frame = av.AudioFrame.from_ndarray(
            np.repeat(wave.astype(np.float32)[None], channels, axis=0), format="fltp", layout=layout
        )
        frame.rate = rate
        fit = av.AudioResampler(format=stream.format, layout=layout, rate=rate, frame_size=stream.frame_size or 0)
        for ready in (*fit.resample(frame), *fit.resample(None)):
            ready.pts = None
            container.mux(stream.encode(ready))
        container.mux(stream.encode())
    return path


@pytest.fixture
def file(tmp_path):
    with StudyFile.create(tmp_path / "talk.studyboard") as file:
        yield file


def heard(file: StudyFile, take: int) -> np.ndarray:
    return np.frombuffer(file.sound.read_sound(take), "<i2").astype(float)


@pytest.mark.parametrize(("ending", "coder", "rate", "channels"), FORMS)
def test_a_file_of_any_usual_form_is_heard_as_it_was(file, tmp_path, ending, coder, rate, channels):
    sound = write(tmp_path / f"evening.{ending}", coder, rate, channels, picture=ending in ("mp4", "mov"))
    told: list[float] = []
    imported = import_sound(sound, file.sound, progress=told.append)
    assert imported.remark == ""
    take = imported.take
    assert (take.name, take.origin, take.rate, take.complete) == ("evening", sound.name, RATE, True)
    # Coders put up to some 2,100 samples of their own before or behind the sound (from memory).
    assert take.samples == pytest.approx(3 * RATE, abs=0.06 * RATE)
    middle = heard(file, take.id)[RATE : 2 * RATE]
    spectrum = np.abs(np.fft.rfft(middle * np.hanning(len(middle))))
    assert int(np.argmax(spectrum)) == 440
    assert 20 * math.log10(np.abs(middle).max() / 32_768) == pytest.approx(-12, abs=1.0)
    assert told == sorted(told)
    assert told[-1] == 1.0


def test_a_voice_in_one_channel_alone_is_heard(file, tmp_path):
    sound = tmp_path / "left.wav"
    wave = np.rint(8_000 * np.sin(np.arange(RATE) / 20)).astype("<i2")
    both = np.stack((wave, np.zeros_like(wave)), axis=1)
    import soundfile

    soundfile.write(sound, both, RATE, subtype="PCM_16")
    take = import_sound(sound, file.sound).take
    assert np.abs(heard(file, take.id)).max() > 3_000


def test_a_pickup_and_a_name_are_kept_with_the_take(file, tmp_path):
    sound = write(tmp_path / "word.wav", "pcm_s16le", RATE, 1, 0.4)
    imported = import_sound(sound, file.sound, "One word", replaces=Replaced(1, Span(5, 500)))
    file.keep(PutTake(imported.take))
    assert file.study.takes[imported.take.id].replaces == Replaced(1, Span(5, 500))
    assert file.study.takes[imported.take.id].name == "One word"


def test_a_video_without_sound_a_text_and_nothing_are_refused_with_a_sentence(file, tmp_path):
    silent = tmp_path / "silent.mp4"
    with av.open(str(silent), "w") as container:
        film = container.add_stream("libx264", rate=25)
        film.width, film.height, film.pix_fmt = 64, 64, "yuv420p"
        for _ in range(5):
            container.mux(film.encode(av.VideoFrame.from_ndarray(np.zeros((64, 64, 3), np.uint8), format="rgb24")))
        container.mux(film.encode())
    with pytest.raises(SoundFileError, match=r"There is no sound in “silent\.mp4”"):
        import_sound(silent, file.sound)
    text = tmp_path / "notes.mp3"
    text.write_text("This is no sound at all. " * 40)
    with pytest.raises(SoundFileError, match=r"“notes.mp3” cannot be read|No sound could be read"):
        import_sound(text, file.sound)
    (tmp_path / "empty.wav").write_bytes(b"")
    with pytest.raises(SoundFileError, match="cannot be read"):
        import_sound(tmp_path / "empty.wav", file.sound)
    with pytest.raises(SoundFileError, match="There is no file"):
        import_sound(tmp_path / "gone.wav", file.sound)
    file.close()
    with StudyFile.open(tmp_path / "talk.studyboard") as again:
        assert again.study.takes == {}


@pytest.mark.parametrize(("ending", "coder"), [("wav", "pcm_s16le"), ("flac", "flac"), ("mp3", "libmp3lame")])
def test_of_a_file_that_breaks_off_the_beginning_is_kept_and_told(file, tmp_path, ending, coder):
    whole = write(tmp_path / f"whole.{ending}", coder, RATE, 1, 6.0)
    short = tmp_path / f"short.{ending}"
    short.write_bytes(whole.read_bytes()[: whole.stat().st_size // 2])
    imported = import_sound(short, file.sound)
    assert 1.5 * RATE < imported.take.samples < 4.5 * RATE
    if ending != "mp3":  # an MP3 file says nowhere how long it is
        assert "short" in imported.remark
        assert "could be read, and are kept" in imported.remark


def test_pieces_that_are_damaged_are_passed_over_and_told(file, tmp_path):
    whole = bytearray(write(tmp_path / "whole.flac", "flac", RATE, 1, 6.0).read_bytes())
    third = len(whole) // 3
    whole[third : third + 3_000] = bytes(3_000)
    damaged = tmp_path / "damaged.flac"
    damaged.write_bytes(whole)
    imported = import_sound(damaged, file.sound)
    assert "is damaged" in imported.remark
    assert imported.take.samples > 3 * RATE
    # What listens for words in the file hears as much of it, at 16,000 samples a second.
    assert len(sound_of_file(damaged)) == pytest.approx(imported.take.samples / 3, abs=2)


def test_an_import_that_is_stopped_leaves_nothing(file, tmp_path):
    sound = write(tmp_path / "long.wav", "pcm_s16le", RATE, 1, 8.0)
    told: list[float] = []
    with pytest.raises(ImportCancelledError, match="nothing of it was kept"):
        import_sound(sound, file.sound, progress=told.append, cancelled=lambda: len(told) >= 3)
    assert 0 < told[-1] < 1
    file.close()
    with StudyFile.open(tmp_path / "talk.studyboard") as again:
        assert (again.recovered, again.study.takes) == ((), {})
        assert again.sound.length(1) == 0


def test_an_import_that_was_killed_is_found_again(tmp_path):
    path = tmp_path / "talk.studyboard"
    StudyFile.create(path).close()
    sound = write(tmp_path / "evening.wav", "pcm_s16le", RATE, 1, 6.0)
    program = """
import os, signal, sys
from pathlib import Path
from studyboard.sound.importing import import_sound
from studyboard.store.study_file import StudyFile
with StudyFile.open(sys.argv[1]) as file:
    import_sound(Path(sys.argv[2]), file.sound, progress=lambda share: share > 0.5 and os.kill(os.getpid(), 9))
"""
    subprocess.run([sys.executable, "-c", program, str(path), str(sound)], check=False)
    with StudyFile.open(path) as file:
        (take,) = file.recovered
        assert (take.origin, take.complete) == ("evening.wav", False)
        assert take.samples >= 3 * RATE
