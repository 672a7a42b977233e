"""Recording: from the microphone into the study, each event of the board stamped in samples of that sound."""

from __future__ import annotations

import time
from collections.abc import Callable
from enum import StrEnum
from functools import partial
from threading import Lock
from typing import TYPE_CHECKING

import shiboken6
from PySide6.QtCore import QCoreApplication, QMetaObject, QObject, Qt, QThread, QTimer, Signal, Slot

from studyboard.model.script import BeatKey
from studyboard.model.takes import Replaced
from studyboard.sound.clock import SoundClock
from studyboard.sound.devices import DeviceWatch, Input, described, input_device, inputs
from studyboard.sound.microphone import BUFFER, Microphone, capture_format
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.sound.splice import Splice
from studyboard.sound.take_writer import SoundSink, TakeWriter
from studyboard.translation import tr

if TYPE_CHECKING:
    from PySide6.QtMultimedia import QAudioDevice

#: How long the end of a take is waited for that is still under way from the microphone (ms).
_LAST_SOUND = 1500
#: How long closing waits for the disk (ms).
_LAST_WORDS = 10_000


class RecorderState(StrEnum):
    """What a recorder is doing."""

    CLOSED = "closed"
    LISTENING = "listening"
    RECORDING = "recording"
    PAUSED = "paused"
    STOPPING = "stopping"


class Recorder(QObject):
    """Listens to a microphone and records takes from it.

    State: the open microphone, the clock of its sound, and the take that is being recorded. The microphone's sound
    arrives in one thread, goes to the disk in another, and is announced in this object's own; `stamp` may be called
    from any.

    level: peak and RMS (dBFS), fifteen times a second while the microphone is open, recording or not
    loudness: a Reading of loudness and true peak, as often, where what measures it is installed
    clipped: the microphone is overdriven
    running: the first sound of the take is there; a window should wait for it before it asks the presenter to speak
    progress: the length of the take so far (samples), as often as the level
    stored: how much of it is safely on the disk (samples)
    state_changed: carries the RecorderState
    stopped: the take is over, for whatever reason; carries the Take, or None where there was no sound
    lost: the microphone is gone; carries its Input. `failed` follows
    failed: something went wrong; carries a sentence. A running take ends with what is there, and `stopped` follows
    """

    level = Signal(float, float)
    loudness = Signal(object)
    clipped = Signal()
    running = Signal()
    progress = Signal(int)
    stored = Signal(int)
    state_changed = Signal(object)
    stopped = Signal(object)
    lost = Signal(object)
    failed = Signal(str)

    _open = Signal(object, object, int)
    _close = Signal()
    _leave = Signal()
    _first_sound = Signal(object)
    _last_sound = Signal(object)

    def __init__(
        self,
        open_sink: Callable[[], SoundSink],
        latency: Callable[[Input], float] | None = None,
        parent: QObject | None = None,
    ) -> None:
        """A recorder with its microphone closed. Needs a QCoreApplication.

        open_sink: makes the sink of one take, for instance a study file's `sound_writer`; called by `start`
        latency: how long sound is under way from this microphone to its promptest delivery (s, 0 or more), as it was
            measured (studyboard.sound.loopback); asked whenever one is opened; None counts with 0
        """
        super().__init__(parent)
        self._open_sink = open_sink
        self._latency_of = latency
        self._state = RecorderState.CLOSED
        self._stays_open = False
        self._lock = Lock()
        self._clock = SoundClock(RATE, 0.0, BUFFER)
        self._opening = 0
        self._device: Input | None = None
        self._watch: DeviceWatch | None = None
        self._device_rate = RATE
        self._converted = 0
        self._splice: Splice | None = None
        self._heard_any = False
        self._told_end = False
        self._writer: TakeWriter | None = None
        self._writers: list[TakeWriter] = []
        self._thread = QThread(self)
        self._thread.setObjectName("microphone")
        self._microphone = Microphone(self._hear)
        self._microphone.moveToThread(self._thread)
        self._open.connect(self._microphone.open)
        self._close.connect(self._microphone.close)
        self._leave.connect(self._microphone.leave)
        self._microphone.level.connect(self._tell_level)
        self._microphone.loudness.connect(self.loudness)
        self._microphone.clipped.connect(self.clipped)
        self._microphone.failed.connect(self._microphone_failed)
        self._first_sound.connect(self._tell_running)
        self._last_sound.connect(self._end_reached)
        self._last_chance = QTimer(self)
        self._last_chance.setSingleShot(True)
        self._last_chance.setInterval(_LAST_SOUND)
        self._last_chance.timeout.connect(self._finish_take)
        self.destroyed.connect(partial(_end_threads, self._thread, self._microphone, self._writers))
        application = QCoreApplication.instance()
        if application is not None:
            application.aboutToQuit.connect(self.close)

    @property
    def state(self) -> RecorderState:
        """What the recorder is doing."""
        return self._state

    @property
    def device(self) -> Input | None:
        """The microphone that is open; None where none is."""
        return self._device

    @property
    def device_rate(self) -> int:
        """What that delivers, or the one before it did (Hz)."""
        return self._device_rate

    @property
    def samples(self) -> int:
        """Length of the running take as far as it has arrived (samples); 0 without one."""
        with self._lock:
            return self._splice.place(self._converted) if self._splice is not None else 0

    def listen(self, device: str | None = None) -> None:
        """Open the microphone with this id, or the system's choice, and show its level; a take can then begin at once.

        A take that is running goes on with the microphone it has. Raises NoMicrophoneError, SoundUnavailableError.
        """
        if self._writer is None:
            self._open_microphone(input_device(device))
            self._go(RecorderState.LISTENING)
        self._stays_open = True

    def start(self, name: str, device: str | None = None, replaces: Replaced | None = None) -> None:
        """Begin a take: at this moment where the microphone delivers already, else with its first sample.

        device: the microphone to take, None for the one that is open, or for the system's choice
        replaces: what the take is heard in place of, where it is a pickup
        Raises NoMicrophoneError, SoundUnavailableError, and what `open_sink` raises. Nothing happens while a take is
        running.
        """
        if self._writer is not None:
            return
        ready = self._device is not None and device in (None, self._device.id)
        found = None if ready else input_device(device)
        writer = TakeWriter(self._open_sink(), name, self, replaces)
        if found is not None:
            self._open_microphone(found)
        writer.stored.connect(self.stored)
        writer.written.connect(self._take_written)
        writer.start()
        self._writers.append(writer)
        splice = Splice()
        with self._lock:
            splice.begin(self._clock_sample(time.monotonic()))
            self._writer, self._splice = writer, splice
            self._heard_any = self._told_end = False
        self._go(RecorderState.RECORDING)

    def pause(self) -> None:
        """Leave out what comes from now on; the level is still shown."""
        if self._state is RecorderState.RECORDING and self._splice is not None:
            with self._lock:
                self._splice.cut(self._clock_sample(time.monotonic()))
            self._go(RecorderState.PAUSED)

    def resume(self) -> None:
        """Go on after a pause."""
        if self._state is RecorderState.PAUSED and self._splice is not None:
            with self._lock:
                self._splice.begin(self._clock_sample(time.monotonic()))
                self._told_end = False
            self._go(RecorderState.RECORDING)

    def stop(self) -> None:
        """End the take now; `stopped` follows when all of it is stored."""
        if self._state not in (RecorderState.RECORDING, RecorderState.PAUSED) or self._splice is None:
            return
        with self._lock:
            self._splice.cut(self._clock_sample(time.monotonic()))
            complete = self._converted >= (self._splice.end or 0)
        self._go(RecorderState.STOPPING)
        if complete:
            self._finish_take()
        else:
            self._last_chance.start()

    def stamp(self, node: int, beat: BeatKey | None, when: float | None = None) -> int | None:
        """The board shows another node now: stamp it with the sample that is being heard at this moment.

        when: the moment, if it was earlier (s, time.monotonic())
        Returns the sample of the take, None where no take is running. Before the first sound it is sample 0, in a
        pause the sample at which the take will go on.
        """
        with self._lock:
            if self._writer is None or self._splice is None:
                return None
            place = self._splice.place(self._clock_sample(time.monotonic() if when is None else when))
            self._writer.stamp(place, node, beat)
            return place

    def sample_at(self, when: float | None = None) -> int:
        """The sample of the take that is heard at this moment (s, time.monotonic(); now by default), without a stamp.

        0 where no take is running, or before its beginning.
        """
        with self._lock:
            if self._splice is None:
                return 0
            heard = self._clock.at(time.monotonic() if when is None else when)
            return self._splice.place(heard * RATE // self._device_rate)

    @Slot()
    def close(self) -> None:
        """Close the microphone and end the take, if one is running; returns when it is stored and `stopped` was told.

        The end of the application does it too. A recorder that is deleted without being closed keeps what was heard
        as well, but tells nobody.
        """
        self._stays_open = False
        writer = self._writer
        self.stop()
        if self._thread.isRunning():
            self._leave.emit()
            self._thread.wait()
        self._device = None
        if writer is not None:
            writer.finish()
            writer.wait(_LAST_WORDS)
            self._take_written(writer)
        self._go(RecorderState.CLOSED)

    # ---- in the microphone's thread ---------------------------------------------------------------------------------

    def _hear(self, opening: int, pcm: bytes, frames: int, now: float) -> None:
        with self._lock:
            if opening != self._opening:
                return
            self._clock.deliver(frames, now)
            first = self._converted
            self._converted += len(pcm) // SAMPLE_BYTES
            splice, writer = self._splice, self._writer
            if splice is None or writer is None:
                return
            kept = splice.keep(first, pcm)
            if kept:
                writer.hear(kept)
            tell_first = bool(kept) and not self._heard_any
            self._heard_any = self._heard_any or bool(kept)
            end = splice.end
            tell_end = end is not None and self._converted >= end and not self._told_end
            self._told_end = self._told_end or tell_end
        if tell_first:
            self._first_sound.emit(splice)
        if tell_end:
            writer.flush()
            self._last_sound.emit(splice)

    # ---- in this object's thread ------------------------------------------------------------------------------------

    def _clock_sample(self, now: float) -> int:
        return self._clock.sample(now) * RATE // self._device_rate

    def _open_microphone(self, device: QAudioDevice) -> None:
        form = capture_format(device)
        opened = described(device)
        latency = 0.0 if self._latency_of is None else max(0.0, self._latency_of(opened))
        with self._lock:
            self._opening += 1
            self._device_rate = form.sampleRate()
            self._clock = SoundClock(self._device_rate, latency, BUFFER + latency)
            self._converted = 0
        self._device = opened
        if self._watch is None:
            self._watch = DeviceWatch(self)
            self._watch.changed.connect(self._devices_changed)
        if not self._thread.isRunning():
            self._thread.start(QThread.Priority.TimeCriticalPriority)
        self._open.emit(device, form, self._opening)

    @Slot(object)
    def _tell_running(self, splice: Splice) -> None:
        if splice is self._splice:
            self.running.emit()

    @Slot(object)
    def _end_reached(self, splice: Splice) -> None:
        if splice is self._splice:
            self._finish_take()

    @Slot()
    def _finish_take(self) -> None:
        if self._state is RecorderState.STOPPING and self._writer is not None:
            self._writer.finish()

    @Slot(float, float)
    def _tell_level(self, peak: float, rms: float) -> None:
        if self._state is RecorderState.CLOSED:
            return
        self.level.emit(peak, rms)
        if self._writer is not None:
            self.progress.emit(self.samples)

    @Slot()
    def _devices_changed(self) -> None:
        device = self._device
        if device is None or device.id in {there.id for there in inputs()}:
            return
        self._close.emit()
        self._microphone_failed(
            self._opening, tr("The microphone “{description}” has been unplugged.", description=device.description)
        )

    @Slot(int, str)
    def _microphone_failed(self, opening: int, sentence: str) -> None:
        if self._device is None or opening != self._opening:
            return
        lost, self._device = self._device, None
        self._stays_open = False
        self.lost.emit(lost)
        if self._writer is None:
            self._go(RecorderState.CLOSED)
            self.failed.emit(sentence)
            return
        seconds = self.samples / RATE
        kept = (
            tr("The take ends here; its {seconds:.1f} seconds are kept.", seconds=seconds)
            if seconds
            else tr("Nothing was recorded.")
        )
        self._go(RecorderState.STOPPING)
        self._writer.finish()
        self.failed.emit(f"{sentence} {kept}")

    @Slot(object)
    def _take_written(self, writer: TakeWriter) -> None:
        if writer is not self._writer:
            return
        with self._lock:
            self._writer, self._splice = None, None
        self._last_chance.stop()
        writer.wait(_LAST_WORDS)
        self._writers.remove(writer)
        writer.deleteLater()
        if self._stays_open:
            self._go(RecorderState.LISTENING)
        else:
            self._close.emit()
            self._device = None
            self._go(RecorderState.CLOSED)
        if writer.failure is not None:
            self.failed.emit(writer.failure)
        self.stopped.emit(writer.take)

    def _go(self, state: RecorderState) -> None:
        if state is not self._state:
            self._state = state
            self.state_changed.emit(state)


def _end_threads(thread: QThread, microphone: Microphone, writers: list[TakeWriter]) -> None:
    """Qt ends the program where a thread still runs when it is deleted."""
    if thread.isRunning():
        if shiboken6.isValid(microphone):
            QMetaObject.invokeMethod(microphone, "leave", Qt.ConnectionType.QueuedConnection)
        else:
            # Python ends what a recorder holds in any order, at the end of the program.
            thread.quit()
        thread.wait()
    for writer in writers:
        writer.finish()
        writer.wait(_LAST_WORDS)
