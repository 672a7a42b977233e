"""What goes wrong with the sound of a running take, below the level meter, with the moments at which it did."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QWidget

from studyboard.desk.look import Look
from studyboard.sound.level_watch import LevelWatch, Trouble, Warned
from studyboard.sound.pcm import RATE
from studyboard.sound.recorder import Recorder, RecorderState
from studyboard.timing.clock import clock
from studyboard.translation import tr, tr_later

#: So many moments are named; more would hide the booth.
_NAMED = 6
_STANDING = {
    Trouble.NO_SIGNAL: tr_later("Nothing arrives from the microphone since {moment}: is it muted?"),
    Trouble.TOO_QUIET: tr_later("The voice is too quiet since {moment}: come nearer, or turn the microphone up."),
}
_PAST = {
    Trouble.CLIPPED: tr_later("Cut off at {moments}: too loud for the microphone."),
    Trouble.TOO_QUIET: tr_later("Too quiet from {moments} on."),
    Trouble.NO_SIGNAL: tr_later("Nothing arrived at {moments}."),
}


class SoundWarnings(QLabel):
    """Watches the level of each take; hidden while there is nothing to say.

    State: the watch of the running take, or of the latest one.

    warned: something has gone wrong just now; carries the Warned
    """

    warned = Signal(object)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._recorder: Recorder | None = None
        self._watch = LevelWatch()
        self._running = False
        self.setWordWrap(True)
        self.setAccessibleName(tr("Warnings of the sound"))
        look.changed.connect(self._show)
        self.hide()

    def attach(self, recorder: Recorder) -> None:
        """Watch what this recorder records."""
        self._recorder = recorder
        recorder.level.connect(self._read)
        recorder.clipped.connect(self._clip)
        recorder.state_changed.connect(self._follow)

    @property
    def moments(self) -> tuple[Warned, ...]:
        """What went wrong in the running take, or in the latest one."""
        return tuple(self._watch.warned)

    def _follow(self, state: RecorderState) -> None:
        if state is RecorderState.RECORDING and not self._running:
            self._running = True
            self._watch = LevelWatch()
        elif state not in (RecorderState.RECORDING, RecorderState.PAUSED):
            self._running = False
        self._show()

    def _read(self, peak: float, rms: float) -> None:
        if not self._recording:
            return
        before = self._watch.standing
        told = self._watch.read(peak, rms, self._at)
        for warned in told:
            self.warned.emit(warned)
        if told or before != self._watch.standing:
            self._show()

    def _clip(self) -> None:
        if not self._recording:
            return
        warned = self._watch.clip(self._at)
        if warned is not None:
            self._show()
            self.warned.emit(warned)

    @property
    def _recording(self) -> bool:
        recorder = self._recorder
        return recorder is not None and recorder.state is RecorderState.RECORDING and recorder.samples > 0

    @property
    def _at(self) -> float:
        return 0.0 if self._recorder is None else self._recorder.samples / RATE

    def _show(self) -> None:
        sentences = []
        standing = self._watch.standing if self._running else frozenset()
        for trouble in Trouble:
            moments = [clock(warned.at) for warned in self._watch.warned if warned.trouble is trouble]
            if not moments:
                continue
            if trouble in standing:
                sentences.append(tr(_STANDING[trouble], moment=moments[-1]))
                continue
            more = len(moments) - _NAMED
            named = ", ".join(moments[:_NAMED])
            sentences.append(
                tr(
                    _PAST[trouble],
                    moments=named if more <= 0 else tr("{named} and {more} more", named=named, more=more),
                )
            )
        text = " ".join(sentences)
        self.setStyleSheet(f"color: {self._look.color('over').name()};")
        if text != self.text():
            self.setText(text)
        self.setVisible(bool(text))
