"""Playing into the virtual microphone, and hearing at the same moment what it is given."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import numpy as np
from PySide6.QtCore import QObject, QProcess, QProcessEnvironment, Signal

from tests.sound.spoken import OnsetFinder
from tests.sound.virtual_microphone import SoundServer

_RATE = 48_000


class Tap(QObject):
    """Hears what goes through a sink without the program that is tested, a few milliseconds after it is played.

    onset: a word has just begun
    hearing: sound comes through, though it may be silence
    """

    onset = Signal()
    hearing = Signal()

    def __init__(self, server: SoundServer, sink: str, latency: int = 5) -> None:
        """latency: how long PulseAudio may keep sound back (ms)"""
        super().__init__()
        self.listening = False
        self.onsets = 0
        self._half = b""
        self._finder = OnsetFinder(_RATE)
        self._process = _process(server)
        self._process.readyReadStandardOutput.connect(self._hear)
        form = ["--raw", f"--rate={_RATE}", "--channels=1", "--format=s16le", f"--latency-msec={latency}"]
        self._process.start("parec", [f"--device={sink}.monitor", *form])

    def stop(self) -> None:
        """Hear no more."""
        self._process.readyReadStandardOutput.disconnect(self._hear)
        self._process.kill()
        self._process.waitForFinished()

    def _hear(self) -> None:
        block = self._half + bytes(self._process.readAllStandardOutput().data())
        whole = len(block) // 2 * 2
        self._half = block[whole:]
        for _ in self._finder.find(np.frombuffer(block[:whole], np.int16)):
            self.onsets += 1
            self.onset.emit()
        if whole and not self.listening:
            self.listening = True
            self.hearing.emit()


class Mouth:
    """Plays a file into the virtual microphone.

    State: the playing program.
    """

    def __init__(
        self, server: SoundServer, track: Path, ended: Callable[[], None] | None = None, sink: str = "mouth"
    ) -> None:
        self._process = _process(server)
        if ended is not None:
            self._process.finished.connect(ended)
        self._process.start("paplay", [f"--device={sink}", str(track)])

    @property
    def speaking(self) -> bool:
        """True until all of the file was played."""
        return self._process.state() != QProcess.ProcessState.NotRunning

    def shut(self) -> None:
        """Say no more."""
        self._process.kill()
        self._process.waitForFinished()


def _process(server: SoundServer) -> QProcess:
    environment = QProcessEnvironment.systemEnvironment()
    for name, value in (os.environ | server.environment).items():
        environment.insert(name, value)
    process = QProcess()
    process.setProcessEnvironment(environment)
    process.setProcessChannelMode(QProcess.ProcessChannelMode.ForwardedErrorChannel)
    return process
