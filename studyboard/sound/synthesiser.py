"""A speech synthesiser of the system, found when it is wanted: none is shipped, and nothing needs one."""

from __future__ import annotations

import io
import shutil
import subprocess
import sys
import tempfile
import wave
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from studyboard.model.errors import StudyboardError
from studyboard.sound.conversion import Converter, DeviceFormat
from studyboard.translation import tr

#: Words a minute between which synthesisers can be understood, more or less.
SLOWEST, FASTEST = 80, 400
#: How long one line may take to be spoken (s).
_PATIENCE = 30.0
_USUAL = 175.0
#: Windows' own, through PowerShell: text from standard input, sound into the named file. Never run by the tests.
_SAPI = (
    "Add-Type -AssemblyName System.Speech; $s = New-Object System.Speech.Synthesis.SpeechSynthesizer; "
    "$text = New-Object System.IO.StreamReader([Console]::OpenStandardInput(), [System.Text.Encoding]::UTF8); "
    "$s.Rate = {rate}; $s.SetOutputToWaveFile('{path}'); $s.Speak($text.ReadToEnd()); $s.Dispose()"
)


class SynthesiserError(StudyboardError):
    """There is no synthesiser, or it did not speak."""


class Kind(StrEnum):
    """Which one it is, by how it is spoken to."""

    ESPEAK = "espeak"
    SAY = "say"
    SAPI = "sapi"


@dataclass(frozen=True, slots=True)
class Synthesiser:
    """A program that speaks. name: what it is called; command: where it lies"""

    kind: Kind
    name: str
    command: str

    def say(self, text: str, language: str, words_per_minute: float) -> bytes:
        """What it says, as 16-bit mono sound at 48 kHz without the silence at its ends.

        Raises SynthesiserError where it fails or takes too long, SoundUnavailableError where soxr is missing.
        """
        rate = round(min(FASTEST, max(SLOWEST, words_per_minute)))
        try:
            sound = self._spoken(text, language, rate)
        except (OSError, subprocess.SubprocessError, wave.Error, EOFError) as reason:
            raise SynthesiserError(
                tr("The speech synthesiser {name} did not speak: {reason}.", name=self.name, reason=_why(reason))
            ) from reason
        return _trimmed(sound)

    def _spoken(self, text: str, language: str, rate: int) -> bytes:
        said = text.encode("utf-8")
        if self.kind is Kind.ESPEAK:
            command = [self.command, "-v", language, "-s", str(rate), "--stdin", "--stdout"]
            return _converted(_run(command, said))
        with tempfile.TemporaryDirectory(prefix="studyboard-") as folder:
            path = Path(folder) / "said.wav"
            if self.kind is Kind.SAY:
                form = ["--file-format=WAVE", "--data-format=LEI16@22050"]
                _run([self.command, "-r", str(rate), "-o", str(path), *form, "-f", "-"], said)
            else:
                steps = round(min(10, max(-10, 10 * (rate / _USUAL - 1))))
                quoted = str(path).replace("'", "''")
                _run([self.command, "-NoProfile", "-Command", _SAPI.format(rate=steps, path=quoted)], said)
            return _converted(path.read_bytes())


def find_synthesiser() -> Synthesiser | None:
    """The synthesiser of this system; None where there is none."""
    for name in ("espeak-ng", "espeak"):
        command = shutil.which(name)
        if command is not None:
            return Synthesiser(Kind.ESPEAK, name, command)
    command = shutil.which("say") if sys.platform == "darwin" else None
    if command is not None:
        return Synthesiser(Kind.SAY, "say", command)
    command = shutil.which("powershell") if sys.platform == "win32" else None
    return None if command is None else Synthesiser(Kind.SAPI, "Windows", command)


def require_synthesiser() -> Synthesiser:
    """The same. Raises SynthesiserError, which says what to install, where there is none."""
    found = find_synthesiser()
    if found is None:
        raise SynthesiserError(
            tr("No speech synthesiser was found, so there is no scratch voice. On Debian: apt install espeak-ng")
        )
    return found


def _run(command: list[str], said: bytes) -> bytes:
    return subprocess.run(command, input=said, capture_output=True, timeout=_PATIENCE, check=True).stdout


def _why(reason: Exception) -> str:
    """What the program itself said of it, if anything, instead of how it was called."""
    if isinstance(reason, subprocess.TimeoutExpired):
        return tr("it took longer than {seconds} s", seconds=round(_PATIENCE))
    if isinstance(reason, subprocess.CalledProcessError):
        complaints = reason.stderr.decode(errors="replace").strip().splitlines()
        return complaints[-1].rstrip(".") if complaints else tr("exit status {status}", status=reason.returncode)
    return str(reason)


def _converted(content: bytes) -> bytes:
    with wave.open(io.BytesIO(content)) as sound:
        # The sizes in a header that went through a pipe are not true, so the frames are read to their end.
        frames = sound.readframes(sound.getnframes())
        form = DeviceFormat(rate=sound.getframerate(), channels=sound.getnchannels())
    frames = frames[: len(frames) // form.frame_bytes * form.frame_bytes]
    converter = Converter(form)
    return converter.convert(frames) + converter.flush()


def _trimmed(pcm: bytes) -> bytes:
    import numpy as np

    samples = np.frombuffer(pcm, "<i2")
    loud = np.flatnonzero(np.abs(samples.astype(np.int32)) > 150)
    return samples[loud[0] : loud[-1] + 1].tobytes() if len(loud) else b""
