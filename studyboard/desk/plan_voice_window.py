"""Hearing the plan before it is recorded: a synthesiser speaks it, and the board follows."""

from __future__ import annotations

from bisect import bisect_right
from threading import Event

from PySide6.QtCore import Qt, QThreadPool, QTimer, Signal
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QProgressBar, QSlider, QVBoxLayout, QWidget

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.session import Session
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.errors import StudyboardError
from studyboard.model.takes import Take
from studyboard.sound.pcm import RATE
from studyboard.sound.player import Player, PlayerState
from studyboard.sound.scratch_voice import ScratchVoice
from studyboard.sound.synthesiser import require_synthesiser
from studyboard.timing.clock import clock
from studyboard.translation import tr


class _StoppedError(Exception):
    """The window was closed."""


class PlanVoiceWindow(QDialog):
    """Has the plan spoken, then plays it from the beat that is on the desk, with the board following.

    State: the voice, once it is made, and its player.

    spoken: the voice is made; carries it, or a sentence; comes from another thread
    share: which share of it is made
    """

    spoken = Signal(object)
    share = Signal(float)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._stop = Event()
        self._player: Player | None = None
        self._timeline = session.timeline
        self._events = [event for stretch in self._timeline.stretches for event in stretch.events]
        self.setWindowTitle(tr("Hear the plan"))
        self.told = QLabel("")
        self.told.setWordWrap(True)
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("How much of it is spoken"))
        self.place = QSlider(Qt.Orientation.Horizontal)
        self.place.setRange(0, max(1, round(self._timeline.seconds)))
        self.place.setAccessibleName(tr("Where in the talk (seconds)"))
        self.play_button = ActingButton(tr("Play"))
        self.play_button.setProperty("primary", True)
        close = ActingButton(tr("Close"))
        foot = QHBoxLayout()
        foot.addWidget(self.play_button)
        foot.addStretch(1)
        foot.addWidget(close)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        for widget in (self.told, self.bar, self.place):
            layout.addWidget(widget)
        layout.addLayout(foot)
        self.setMinimumWidth(30 * self.fontMetrics().height())
        self.play_button.clicked.connect(self.play_or_pause)
        close.clicked.connect(self.close)
        self.place.sliderMoved.connect(self._seek)
        self.place.actionTriggered.connect(lambda _: QTimer.singleShot(0, self, self._seek_to_slider))
        self.share.connect(lambda share: self.bar.setValue(round(1000 * share)))
        self.spoken.connect(self._ready)
        self._enable(False)
        self._begin()

    def play_or_pause(self) -> None:
        """Play from where the slider stands, or pause."""
        player = self._player
        if player is None:
            return
        if player.state is PlayerState.PLAYING:
            player.pause()
        else:
            player.play()

    def hideEvent(self, event: QHideEvent) -> None:
        """However the window is left, nothing more is spoken."""
        super().hideEvent(event)
        self._stop.set()
        if self._player is not None:
            self._player.pause()

    def _begin(self) -> None:
        try:
            voice = ScratchVoice(self._session.study.snapshot(), self._timeline, require_synthesiser())
        except StudyboardError as reason:
            self.told.setText(str(reason))
            return
        self.told.setText(tr("The plan is being spoken …"))

        def ask(share: float) -> None:
            if self._stop.is_set():
                raise _StoppedError
            self.share.emit(share)

        def work() -> None:
            remarks: list[str] = []
            try:
                voice.level(remarks.append, ask)
            except _StoppedError:
                return
            except StudyboardError as reason:
                self.spoken.emit(str(reason))
            else:
                self.spoken.emit((voice, " ".join(remarks)))

        QThreadPool.globalInstance().start(WorkBeside(work))

    def _ready(self, made: tuple[ScratchVoice, str] | str) -> None:
        self.bar.setValue(1000)
        if isinstance(made, str):
            self.told.setText(made)
            return
        voice, remarks = made
        try:
            player = Player(voice, self)
        except StudyboardError as reason:
            self.told.setText(str(reason))
            return
        self.told.setText(remarks)
        player.position.connect(self._follow)
        player.state_changed.connect(self._show_state)
        player.silent.connect(self.told.setText)
        player.failed.connect(self.told.setText)
        self._player = player
        player.load(Take(1, "", RATE, voice.samples, ""))
        here = next((one.start for one in self._timeline.stretches if one.node == self._session.node), 0.0)
        player.seek(round(here * RATE))
        self._enable(True)
        self.play_button.setFocus()

    def _follow(self, sample: int) -> None:
        seconds = sample / RATE
        if not self.place.isSliderDown():
            self.place.setValue(round(seconds))
        player = self._player
        if player is None or player.state is not PlayerState.PLAYING:
            return
        number = bisect_right(self._events, seconds, key=lambda event: event.at) - 1
        if number >= 0:
            self._session.show(self._events[number].node)
        self.told.setText(
            tr("Scratch voice: {at} of {length}", at=clock(seconds), length=clock(self._timeline.seconds))
        )

    def _seek(self, seconds: int) -> None:
        if self._player is not None:
            self._player.seek(seconds * RATE)

    def _seek_to_slider(self) -> None:
        self._seek(self.place.sliderPosition())

    def _show_state(self, state: PlayerState) -> None:
        self.play_button.setText(tr("Pause") if state is PlayerState.PLAYING else tr("Play"))

    def _enable(self, ready: bool) -> None:
        self.play_button.setEnabled(ready)
        self.place.setEnabled(ready)
