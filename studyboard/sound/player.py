"""Playing a take back, with the board following."""

from __future__ import annotations

import time
from enum import StrEnum
from typing import TYPE_CHECKING, Protocol

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from studyboard.model.errors import StudyboardError
from studyboard.model.takes import Take
from studyboard.sound.devices import output_device
from studyboard.sound.multimedia import has_stopped
from studyboard.sound.pcm import SAMPLE_BYTES
from studyboard.translation import tr, tr_later

if TYPE_CHECKING:
    from PySide6.QtCore import QIODevice
    from PySide6.QtMultimedia import QAudioSink

#: How much sound is handed to the system in advance (s), so that a busy window does not make it stutter.
_BUFFER = 1.0
#: How often sound is handed over and the position told (ms): twice a frame of video at 30 pictures a second.
_TICK = 16
#: Silence after the take (s), so that its end is not cut off when the loudspeaker is closed.
_TAIL = 0.1

_NO_LOUDSPEAKER = tr_later("No loudspeaker was found: the take is played silently, and the board follows all the same.")


class SoundShelf(Protocol):
    """Where the sound of takes is read; a study file is one."""

    def read_sound(self, take: int, start: int, count: int) -> bytes:
        """16-bit mono sound from this sample on; less than was asked for at the end. May raise a StudyboardError."""


class PlayerState(StrEnum):
    """What a player is doing."""

    EMPTY = "empty"
    PAUSED = "paused"
    PLAYING = "playing"


class Player(QObject):
    """Plays one take at a time.

    State: the take, the sample that is being heard, and the open loudspeaker. Where there is none, the position runs
    on by the computer's clock.

    position: the sample that is being heard now
    state_changed: carries the PlayerState
    finished: the take has been heard to its end
    silent: there is no sound to be heard, though the position runs; carries a sentence
    failed: the sound of the take could not be read; carries a sentence
    """

    position = Signal(int)
    state_changed = Signal(object)
    finished = Signal()
    silent = Signal(str)
    failed = Signal(str)

    def __init__(self, shelf: SoundShelf, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._shelf = shelf
        self._take: Take | None = None
        self._state = PlayerState.EMPTY
        self._from = 0
        self._read_to = 0
        self._at = 0
        self._started = 0.0
        self._sink: QAudioSink | None = None
        self._stream: QIODevice | None = None
        self._unheard = b""
        self._tick = QTimer(self)
        self._tick.setInterval(_TICK)
        self._tick.timeout.connect(self._go_on)

    @property
    def state(self) -> PlayerState:
        """What the player is doing."""
        return self._state

    @property
    def take(self) -> Take | None:
        """The take that is played."""
        return self._take

    @property
    def sample(self) -> int:
        """The sample that is being heard, or at which the player stands."""
        return self._at

    def load(self, take: Take) -> None:
        """Put a take in, at its beginning."""
        self._silence()
        self._take = take
        self._at = 0
        self._go(PlayerState.PAUSED)
        self.position.emit(0)

    def eject(self) -> None:
        """Take the take out again, for instance because it is purged."""
        self._silence()
        self._take = None
        self._at = 0
        self._go(PlayerState.EMPTY)

    def play(self) -> None:
        """Go on from where the player stands; from the beginning where it stands at the end."""
        if self._take is None or self._state is PlayerState.PLAYING:
            return
        if self._at >= self._take.samples:
            self._at = 0
        self._go(PlayerState.PLAYING)
        self._begin()

    def pause(self) -> None:
        """Stand still."""
        if self._state is PlayerState.PLAYING:
            self._silence()
            self._go(PlayerState.PAUSED)

    def seek(self, sample: int) -> None:
        """Stand at another sample, or go on from there where the take is being played."""
        if self._take is None:
            return
        self._silence()
        self._at = max(0, min(sample, self._take.samples))
        self.position.emit(self._at)
        if self._state is PlayerState.PLAYING:
            self._begin()

    def _begin(self) -> None:
        assert self._take is not None
        self._from = self._read_to = self._at
        self._unheard = b""
        self._open_loudspeaker(self._take.rate)
        self._started = time.monotonic()
        self._tick.start()
        self._go_on()

    def _open_loudspeaker(self, rate: int) -> None:
        try:
            device = output_device()
        except StudyboardError as reason:
            self.silent.emit(tr("{reason} The take is played silently.", reason=reason))
            return
        if device is None:
            self.silent.emit(tr(_NO_LOUDSPEAKER))
            return
        from PySide6.QtMultimedia import QAudioFormat, QAudioSink

        form = QAudioFormat()
        form.setSampleRate(rate)
        form.setChannelCount(1)
        form.setSampleFormat(QAudioFormat.SampleFormat.Int16)
        sink = QAudioSink(device, form, self)
        sink.setBufferSize(round(_BUFFER * rate) * SAMPLE_BYTES)
        stream = sink.start()
        if stream is None:
            sink.deleteLater()
            self.silent.emit(tr(_NO_LOUDSPEAKER))
            return
        self._sink, self._stream = sink, stream

    @Slot()
    def _go_on(self) -> None:
        take = self._take
        if take is None:
            return
        if not self._hand_over(take):
            return
        heard = self._heard(take.rate)
        at = min(take.samples, self._from + heard)
        if at > self._at:
            self._at = at
            self.position.emit(at)
        # Half of the silence: the system's count of what it has played is rounded and can stop short of the end.
        tail = round(_TAIL * take.rate) // 2 if self._sink is not None else 0
        if self._from + heard >= take.samples + tail:
            self._silence()
            self._go(PlayerState.PAUSED)
            self.finished.emit()

    def _hand_over(self, take: Take) -> bool:
        """Give the system as much sound as it takes; False where that failed and the player stands still."""
        if self._sink is None or self._stream is None:
            return True
        if has_stopped(self._sink):
            self._go_on_silently()
            return True
        room = self._sink.bytesFree() // SAMPLE_BYTES - len(self._unheard) // SAMPLE_BYTES
        wanted = min(room, take.samples - self._read_to)
        if wanted > 0:
            try:
                sound = self._shelf.read_sound(take.id, self._read_to, wanted)
            except StudyboardError as reason:
                self._silence()
                self._go(PlayerState.PAUSED)
                self.failed.emit(str(reason))
                return False
            self._unheard += sound
            self._read_to += len(sound) // SAMPLE_BYTES
            if self._read_to >= take.samples:
                self._unheard += bytes(round(_TAIL * take.rate) * SAMPLE_BYTES)
        if self._unheard:
            written = self._stream.write(self._unheard)
            self._unheard = self._unheard[max(0, written) :]
        return True

    def _go_on_silently(self) -> None:
        self._close_loudspeaker()
        self._from = self._at
        self._started = time.monotonic()
        self.silent.emit(tr("The loudspeaker has gone away: the take goes on silently, and the board still follows."))

    def _heard(self, rate: int) -> int:
        if self._sink is not None:
            return self._sink.processedUSecs() * rate // 1_000_000
        return int((time.monotonic() - self._started) * rate)

    def _silence(self) -> None:
        self._tick.stop()
        self._close_loudspeaker()

    def _close_loudspeaker(self) -> None:
        sink, self._sink, self._stream = self._sink, None, None
        if sink is not None:
            sink.reset()
            sink.deleteLater()

    def _go(self, state: PlayerState) -> None:
        if state is not self._state:
            self._state = state
            self.state_changed.emit(state)
