"""Playing the signals that a delay is measured by, and hearing them with the microphone that is measured."""

from __future__ import annotations

import statistics
import time
from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QObject, QTimer, Signal

from studyboard.model.takes import Take
from studyboard.sound.latency import LONGEST, Delay, delay, train
from studyboard.sound.passing_sound import PassingSound
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.sound.player import Player
from studyboard.sound.pulse_server import PulseServer
from studyboard.sound.recorder import Recorder, RecorderState
from studyboard.sound.tapping import tapped_delay
from studyboard.translation import tr

#: Silence before the first signal (s), so that the microphone's own noise of beginning is over.
_SETTLE = 0.5
#: So many times a key is pressed beside the microphone.
TAPS = 8
#: After so many positions of the player the server is asked how much sound it holds.
_ASK = 20
#: What is told so near to the middle of a signal says when it was heard (samples).
_AROUND = RATE // 6


class Way(StrEnum):
    """How the sound gets from the output to the microphone."""

    AIR = "air"
    CABLE = "cable"
    TAP = "tap"

    @property
    def level(self) -> float:
        """Peak of the signals (dBFS): heard across a desk, but no danger for inputs and ears at usual settings."""
        return -30.0 if self is Way.CABLE else -18.0


@dataclass(frozen=True, slots=True)
class Trial:
    """What was heard of the signals.

    pcm: 16-bit mono sound at 48 kHz
    played: the samples of it that were heard at the moments at which the signals left the loudspeaker, or at which the
        key went down
    tapped: True where it was a key
    """

    pcm: bytes
    played: tuple[int, ...]
    tapped: bool = False

    def delay(self) -> Delay | None:
        """How late the microphone is; None where the signals were not heard. Raises what `delay` raises."""
        import numpy as np

        if self.tapped:
            return tapped_delay(np.frombuffer(self.pcm, "<i2"), self.played)
        return delay(np.frombuffer(self.pcm, "<i2"), self.played)


class _Shelf:
    """Sound that a Player reads, from the memory."""

    def __init__(self, pcm: bytes) -> None:
        self._pcm = pcm

    def read_sound(self, take: int, start: int, count: int) -> bytes:
        return self._pcm[start * SAMPLE_BYTES : (start + count) * SAMPLE_BYTES]


class Loopback(QObject):
    """One measurement after another with one microphone and the system's loudspeaker.

    What the system keeps of the sound before it leaves the loudspeaker is taken out as far as the system tells it;
    the way through the air, 3 ms a metre, is not.

    State: the open microphone and the playing signals.

    progress: the share that is done (0.0 to 1.0)
    level: peak and RMS of the microphone (dBFS)
    heard: the signals are over; carries the Trial
    failed: carries a sentence
    """

    progress = Signal(float)
    level = Signal(float, float)
    heard = Signal(object)
    failed = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        """Needs a QCoreApplication. Raises SoundUnavailableError where Qt cannot hear."""
        super().__init__(parent)
        self._sound = PassingSound()
        self._recorder = Recorder(lambda: self._sound, parent=self)
        self._recorder.running.connect(self._settle)
        self._recorder.level.connect(self.level)
        self._recorder.failed.connect(self._fail)
        self._recorder.stopped.connect(self._tell)
        self._player: Player | None = None
        self._starts: tuple[int, ...] = ()
        self._tapping = False
        self._tapped: list[int] = []
        self._pcm = b""
        self._noted: list[tuple[int, float]] = []
        self._server = PulseServer()
        self._under_way: list[float] = []
        self._played: tuple[int, ...] | None = None
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.timeout.connect(self._play)

    @property
    def running(self) -> bool:
        """True from `measure` until `heard` or `failed`."""
        return self._recorder.state is not RecorderState.CLOSED

    def measure(self, device: str | None, way: Way) -> None:
        """Begin; nothing happens while it runs. Raises NoMicrophoneError, SoundUnavailableError."""
        if self.running:
            return
        self._tapping = way is Way.TAP
        self._tapped.clear()
        self._pcm, self._starts = train(way.level)
        self._played = None
        self._noted.clear()
        self._under_way.clear()
        self._recorder.start("", device)

    def tap(self) -> None:
        """The key went down, now; the last one of them ends the measurement."""
        if not self._tapping or not self.running or self._played is not None or not self._recorder.samples:
            return
        self._tapped.append(self._recorder.sample_at())
        self.progress.emit(len(self._tapped) / TAPS)
        if len(self._tapped) == TAPS:
            self._played = tuple(self._tapped)
            QTimer.singleShot(round(LONGEST * 1000), self, self._recorder.stop)

    def stop(self) -> None:
        """Break off: nothing more is played or heard, and nothing is told."""
        self._played = None
        self._end()

    def _settle(self) -> None:
        if not self._tapping:
            self._pause.start(round(_SETTLE * 1000))

    def _play(self) -> None:
        player = Player(_Shelf(self._pcm), self)
        player.position.connect(self._note)
        player.finished.connect(self._finish)
        player.silent.connect(self._fail)
        player.failed.connect(self._fail)
        self._player = player
        player.load(Take(1, "", RATE, len(self._pcm) // SAMPLE_BYTES, ""))
        player.play()

    def _note(self, sample: int) -> None:
        if not sample:
            return
        self._noted.append((sample, time.monotonic() - sample / RATE))
        if len(self._noted) % _ASK == 0:
            under_way = self._server.playing_latency()
            if under_way is not None:
                self._under_way.append(under_way)
        self.progress.emit(sample / (len(self._pcm) // SAMPLE_BYTES))

    def _finish(self) -> None:
        self._close_player()
        if not self._noted:
            self._fail(tr("The loudspeaker did not play the signals."))
            return
        under_way = statistics.median(self._under_way) if self._under_way else 0.0
        self._played = tuple(
            self._recorder.sample_at(self._zero(start) + under_way + start / RATE) for start in self._starts
        )
        # What is still under way from the microphone belongs to it.
        QTimer.singleShot(round(LONGEST * 500), self, self._recorder.stop)

    def _zero(self, start: int) -> float:
        """When sample 0 would have been heard, by what was told around this one (s, time.monotonic()).

        Where the loudspeaker had to wait for a busy machine, what follows is later than what was before. The system
        counts what is heard in steps, so a prompt word of it is nearest to the truth; not the promptest one, which is
        sometimes ahead.
        """
        near = sorted(zero for sample, zero in self._noted if abs(sample - start - _AROUND) <= 2 * _AROUND)
        return near[len(near) // 10] if near else min(zero for _, zero in self._noted)

    def _tell(self, take: object) -> None:
        played, self._played = self._played, None
        if played is not None and take is not None:
            self.heard.emit(Trial(self._sound.pcm, played, self._tapping))

    def _fail(self, sentence: str) -> None:
        self._played = None
        self._end()
        self.failed.emit(sentence)

    def _end(self) -> None:
        self._pause.stop()
        self._close_player()
        self._recorder.close()

    def _close_player(self) -> None:
        player, self._player = self._player, None
        if player is not None:
            player.eject()
            player.deleteLater()
        self._server.close()
