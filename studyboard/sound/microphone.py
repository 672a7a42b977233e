"""An open microphone, read in a thread of its own so that a busy window loses no sound."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QTimer, Signal, Slot

from studyboard.model.errors import StudyboardError
from studyboard.sound.conversion import Converter, DeviceFormat, SampleKind
from studyboard.sound.levels import clips, peak_dbfs, rms_dbfs
from studyboard.sound.live_loudness import LiveLoudness
from studyboard.sound.multimedia import could_not_open, has_stopped
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.translation import tr

if TYPE_CHECKING:
    from PySide6.QtCore import QIODevice
    from PySide6.QtMultimedia import QAudioDevice, QAudioFormat, QAudioSource

#: How much sound the system keeps for us while the whole program is held up (s).
BUFFER = 4.0
#: How many samples one reading of the level covers: fifteen readings a second.
_LEVEL_SAMPLES = RATE // 15
#: How long a microphone may take to deliver its first sound, and how long it may pause afterwards (s).
_PATIENCE_AT_FIRST = 10.0
_PATIENCE = 3.0


class Microphone(QObject):
    """One input that is being heard; lives in a thread of its own, reached by its slots only.

    State: the open source, and the sound that has not filled a reading of the level yet.

    level: peak and RMS of the last fifteenth of a second (dBFS)
    loudness: the Reading of the same moment, where what measures it is installed
    clipped: some of that was at full scale
    failed: the microphone is gone or never came; carries the number of the opening and a sentence
    """

    level = Signal(float, float)
    loudness = Signal(object)
    clipped = Signal()
    failed = Signal(int, str)

    def __init__(self, heard: Callable[[int, bytes, int, float], None]) -> None:
        """A closed microphone.

        heard: called in this object's thread with the number of the opening, each block of 16-bit mono sound at
            48 kHz, the number of the device's own frames that it was made from, and the moment of its arrival
            (s, time.monotonic())
        """
        super().__init__()
        self._heard = heard
        self._opening = 0
        self._source: QAudioSource | None = None
        self._stream: QIODevice | None = None
        self._form = DeviceFormat()
        self._converter = Converter(self._form)
        self._part_of_frame = b""
        self._unmeasured = bytearray()
        self._loudness: LiveLoudness | None = None
        self._last_heard: float | None = None
        self._opened = 0.0
        self._watch: QTimer | None = None

    @Slot(object, object, int)
    def open(self, device: QAudioDevice, form: QAudioFormat, opening: int) -> None:
        """Begin to listen; *opening* tells the sound of this microphone from that of one that was open before."""
        from PySide6.QtMultimedia import QAudioSource

        self.close()
        self._opening = opening
        try:
            self._form = device_format(form)
            self._converter = Converter(self._form)
        except StudyboardError as reason:
            self.failed.emit(self._opening, str(reason))
            return
        self._part_of_frame = b""
        self._unmeasured.clear()
        self._loudness = LiveLoudness() if self._loudness is None else self._loudness
        self._last_heard = None
        self._opened = time.monotonic()
        source = QAudioSource(device, form, self)
        source.setBufferSize(round(BUFFER * self._form.rate) * self._form.frame_bytes)
        source.stateChanged.connect(self._source_changed)
        self._source = source
        self._stream = source.start()
        if self._source is None:
            return
        if self._stream is None:
            self._fail(tr("The microphone {description} could not be opened.", description=device.description()))
            return
        self._stream.readyRead.connect(self._read, Qt.ConnectionType.DirectConnection)
        self._watch = QTimer(self)
        self._watch.timeout.connect(self._look_for_sound)
        self._watch.start(500)

    @Slot()
    def close(self) -> None:
        """Stop listening; what has arrived is heard first."""
        if self._watch is not None:
            self._watch.stop()
            self._watch.deleteLater()
            self._watch = None
        source, self._source = self._source, None
        if source is None:
            return
        self._read()
        self._stream = None
        source.stateChanged.disconnect(self._source_changed)
        source.stop()
        source.deleteLater()

    @Slot()
    def leave(self) -> None:
        """Stop listening, and end the thread that this lives in."""
        self.close()
        self.thread().quit()

    @Slot()
    def _read(self) -> None:
        if self._stream is None:
            return
        now = time.monotonic()
        block = self._part_of_frame + bytes(self._stream.readAll().data())
        whole = len(block) - len(block) % self._form.frame_bytes
        self._part_of_frame = block[whole:]
        if not whole:
            return
        self._last_heard = now
        pcm = self._converter.convert(block[:whole])
        self._heard(self._opening, pcm, whole // self._form.frame_bytes, now)
        self._measure(pcm)

    def _measure(self, pcm: bytes) -> None:
        self._unmeasured += pcm
        size = _LEVEL_SAMPLES * SAMPLE_BYTES
        while len(self._unmeasured) >= size:
            reading = bytes(self._unmeasured[:size])
            del self._unmeasured[:size]
            self.level.emit(peak_dbfs(reading), rms_dbfs(reading))
            self._tell_loudness(reading)
            if clips(reading):
                self.clipped.emit()

    def _tell_loudness(self, pcm: bytes) -> None:
        if self._loudness is None:
            return
        self._loudness.feed(pcm)
        reading = self._loudness.read()
        if reading is not None:
            self.loudness.emit(reading)

    @Slot()
    def _look_for_sound(self) -> None:
        now = time.monotonic()
        if self._last_heard is None and now - self._opened > _PATIENCE_AT_FIRST:
            self._fail(
                tr("The microphone is open but no sound arrives from it. Choose another one, or plug it in again.")
            )
        elif self._last_heard is not None and now - self._last_heard > _PATIENCE:
            self._fail(tr("The microphone has stopped delivering sound. Is it still plugged in?"))

    @Slot()
    def _source_changed(self) -> None:
        source = self._source
        if source is None or not has_stopped(source):
            return
        if could_not_open(source):
            self._fail(
                tr("The microphone could not be opened. Perhaps another program has it, or access is not allowed.")
            )
        else:
            self._fail(tr("The microphone has gone away. Is it still plugged in?"))

    def _fail(self, sentence: str) -> None:
        self.close()
        rest = self._converter.flush()
        if rest:
            self._heard(self._opening, rest, 0, time.monotonic())
        self.failed.emit(self._opening, sentence)


def capture_format(device: QAudioDevice) -> QAudioFormat:
    """The format to ask of a device: the one in which sound is kept if it can, else the nearest to it."""
    from PySide6.QtMultimedia import QAudioFormat

    wanted = QAudioFormat()
    wanted.setSampleRate(RATE)
    wanted.setChannelCount(1)
    wanted.setSampleFormat(QAudioFormat.SampleFormat.Int16)
    if device.isFormatSupported(wanted):
        return wanted
    preferred = device.preferredFormat()
    for rate, channels in ((RATE, preferred.channelCount()), (preferred.sampleRate(), 1)):
        wanted.setSampleRate(rate)
        wanted.setChannelCount(channels)
        for sample_format in (QAudioFormat.SampleFormat.Int16, preferred.sampleFormat()):
            wanted.setSampleFormat(sample_format)
            if device.isFormatSupported(wanted):
                return wanted
    return preferred


def device_format(form: QAudioFormat) -> DeviceFormat:
    """Qt's format in our own words. Raises StudyboardError where Qt does not know the kind of its samples."""
    from PySide6.QtMultimedia import QAudioFormat

    kinds = {
        QAudioFormat.SampleFormat.UInt8: SampleKind.UINT8,
        QAudioFormat.SampleFormat.Int16: SampleKind.INT16,
        QAudioFormat.SampleFormat.Int32: SampleKind.INT32,
        QAudioFormat.SampleFormat.Float: SampleKind.FLOAT,
    }
    kind = kinds.get(form.sampleFormat())
    if kind is None or form.sampleRate() <= 0 or form.channelCount() <= 0:
        raise StudyboardError(
            tr("The microphone delivers sound in a form that is not known. Choose another microphone.")
        )
    return DeviceFormat(kind, form.sampleRate(), form.channelCount())
