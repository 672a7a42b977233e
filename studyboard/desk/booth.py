"""The booth: microphone, recording, and the takes with their playback."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime

from PySide6.QtCore import QSettings, Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.delay_window import DelayWindow
from studyboard.desk.level_meter import LevelMeter
from studyboard.desk.look import Look
from studyboard.desk.lost_microphone import LostMicrophone
from studyboard.desk.loudness_readout import LoudnessReadout
from studyboard.desk.moments import moment
from studyboard.desk.performance import Performance
from studyboard.desk.room_window import RoomWindow, was_checked
from studyboard.desk.session import Session
from studyboard.desk.sound_delays import kept_delay
from studyboard.desk.sound_warnings import SoundWarnings
from studyboard.model.edits import PutTake
from studyboard.model.errors import StudyboardError
from studyboard.model.takes import Take
from studyboard.sound.devices import DeviceWatch, Input, inputs
from studyboard.sound.pcm import RATE
from studyboard.sound.player import Player, PlayerState
from studyboard.sound.recorder import Recorder, RecorderState
from studyboard.timing.clock import clock
from studyboard.translation import tr, tr_later


class Booth(QFrame):
    """Records the narration against the board, and plays takes with the board following.

    State: the recorder and the player, both made when the booth is first opened; without a microphone, or without
    Qt's sound, the booth says so and everything else goes on.

    played_to: a take is being played; carries the take and the second of it that is heard, or None at the end
    busy: the presenter has nothing more to do here; the keyboard belongs to the prompter
    """

    played_to = Signal(object)
    busy = Signal()

    def __init__(
        self,
        session: Session,
        performance: Performance,
        look: Look,
        parent: QWidget | None = None,
        settings: QSettings | None = None,
    ) -> None:
        super().__init__(parent)
        self._settings = settings
        self.setObjectName("card")
        self._session = session
        self._performance = performance
        self._look = look
        self._recorder: Recorder | None = None
        self._player: Player | None = None
        self._watch: DeviceWatch | None = None
        self._problem = ""
        self._lost: LostMicrophone | None = None
        self.setAccessibleName(tr("Booth"))

        self.devices = QComboBox()
        self.devices.setAccessibleName(tr("Microphone"))
        self.devices.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.devices.setMinimumContentsLength(10)
        self.meter = LevelMeter(look)
        self.loudness = LoudnessReadout()
        self.verdict = QLabel("")
        self.verdict.setAccessibleName(tr("What the level means"))
        self.warnings = SoundWarnings(look)
        self.room_button = QPushButton(tr("Room check …"))
        self.room_button.setToolTip(tr("Noise, hum and level, told before the first take"))
        self.record_button = QPushButton(tr("Record"))
        self.record_button.setProperty("primary", True)
        self.status = QLabel("")
        self.status.setAccessibleName(tr("What the booth is doing"))
        self.status.setWordWrap(True)
        self.takes = QListWidget()
        self.takes.setAccessibleName(tr("Takes"))
        self.play_button = QPushButton(tr("Play"))
        self.discard_button = QPushButton(tr("Discard"))
        self._lay_out()
        for button in (self.room_button, self.record_button, self.play_button, self.discard_button):
            # A click leaves the keyboard where it is; Tab reaches the buttons all the same.
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)

        self.devices.activated.connect(self._choose_device)
        self.room_button.clicked.connect(self.check_room)
        self.record_button.clicked.connect(self.start_or_stop)
        self.play_button.clicked.connect(self.play_or_pause)
        self.discard_button.clicked.connect(self.discard_or_take_back)
        self.takes.currentRowChanged.connect(self._show_buttons)
        self.takes.itemActivated.connect(lambda _: self.play_or_pause())
        performance.ended.connect(self._performance_ended)
        session.changed.connect(lambda changed: self._fill_takes() if changed.takes else None)
        session.opened.connect(self._other_study)
        look.changed.connect(self._dress)
        self._dress()
        self._fill_takes()

    @property
    def recording(self) -> bool:
        """True while a take is being recorded."""
        return self._recorder is not None and self._recorder.state in (
            RecorderState.RECORDING,
            RecorderState.PAUSED,
            RecorderState.STOPPING,
        )

    @property
    def recorder(self) -> Recorder | None:
        """The recorder, None before the booth was opened or without Qt's sound."""
        return self._recorder

    def open(self) -> None:
        """Listen to the microphone, so that its level is seen before the first take."""
        if self._recorder is None and not self._make_recorder():
            return
        self._fill_devices()
        self._listen()

    def close_down(self) -> None:
        """End a running take and let go of the microphone; returns when everything is stored."""
        if self._player is not None:
            self._player.pause()
        if self._recorder is not None:
            self._recorder.close()

    def start_or_stop(self) -> None:
        """Begin a take, or end the one that is running."""
        if self.recording:
            self._performance.stop()
            self._stop_recorder()
        else:
            self.begin()

    def begin(self) -> None:
        """Begin a take with the beat that the prompter shows; nothing happens while one is running."""
        self.busy.emit()
        if self.recording or (self._recorder is None and not self._make_recorder()):
            return
        assert self._recorder is not None
        if self._player is not None:
            self._player.pause()
        if not self._performance.run.stops:
            self._say(tr("There is nothing to tell yet: play a move or write a line first."), wrong=True)
            return
        # What was rehearsed until now is over: only what is said into the microphone belongs to the take.
        self._performance.stop()
        self.meter.reset()
        self.loudness.reset()
        self._problem = ""
        self._lost = None
        try:
            self._recorder.start(tr("Take {next_take}", next_take=self._session.study.next_take), self._device())
        except StudyboardError as reason:
            self._say(str(reason), wrong=True)

    def check_room(self) -> None:
        """Open the room check for the chosen microphone; not while a take is running."""
        self._open_over(lambda: RoomWindow(self._look, self._device(), self._settings, self.window()))

    def measure_delay(self) -> None:
        """Open the measurement of the chosen microphone's delay; not while a take is running."""
        settings = self._settings
        if settings is None:
            return
        if not self.devices.count():
            self._fill_devices()
        name = self.devices.currentText()
        self._open_over(lambda: DelayWindow(self._look, settings, self._device(), name, self.window()))

    def _open_over(self, make: Callable[[], QDialog]) -> None:
        if self.recording:
            self._say(tr("A take is being recorded: stop it first (Ctrl+Space)."), wrong=True)
            return
        self.close_down()
        make().exec()
        if self.isVisible():
            self.open()

    def play_or_pause(self) -> None:
        """Play the chosen take from where it stands, or pause it."""
        take = self._chosen()
        if take is None or self.recording:
            return
        player = self._player_for()
        if player is None:
            return
        if player.state is PlayerState.PLAYING and player.take == take:
            player.pause()
            return
        if player.take != take:
            player.load(take)
        player.play()

    def discard_or_take_back(self) -> None:
        """Discard the chosen take, or take that back; its sound stays in the study meanwhile."""
        take = self._chosen()
        if take is None:
            return
        if self._player is not None and self._player.take == take:
            self._player.eject()
        label = tr_later("Discard a take") if take.kept else tr_later("Take a take back")
        self._session.keep(PutTake(replace(take, kept=not take.kept), label))

    def showEvent(self, event: QShowEvent) -> None:
        """Listen as soon as the booth is seen."""
        super().showEvent(event)
        self.open()

    # ---- recording --------------------------------------------------------------------------------------------------

    def _make_recorder(self) -> bool:
        try:
            recorder = Recorder(
                lambda: self._session.file.sound_writer(),
                lambda device: kept_delay(self._settings, device.id) or 0.0,
                parent=self,
            )
            watch = DeviceWatch(self)
        except StudyboardError as reason:
            self._say(str(reason), wrong=True)
            self.record_button.setEnabled(False)
            return False
        recorder.level.connect(self._show_level)
        recorder.loudness.connect(self.loudness.show_reading)
        recorder.clipped.connect(self.meter.show_clipped)
        self.warnings.attach(recorder)
        recorder.running.connect(self._begin_talk)
        recorder.progress.connect(self._show_progress)
        recorder.stopped.connect(self._keep_take)
        recorder.lost.connect(self._lose_microphone)
        recorder.failed.connect(self._failed)
        recorder.state_changed.connect(lambda _: self._show_buttons())
        watch.changed.connect(self._devices_changed)
        self._recorder, self._watch = recorder, watch
        return True

    def _fill_devices(self) -> None:
        chosen = self._device()
        self.devices.clear()
        try:
            for device in inputs():
                self.devices.addItem(device.description, device.id)
        except StudyboardError as reason:
            self._say(str(reason), wrong=True)
        if not self.devices.count():
            self.devices.addItem(tr("No microphone"), None)
        self.devices.setCurrentIndex(max(0, self.devices.findData(chosen)))
        there = self.devices.itemData(0) is not None
        self.devices.setEnabled(there)
        self.record_button.setEnabled(there or self.recording)

    def _devices_changed(self) -> None:
        chosen, name = self._device(), self.devices.currentText()
        self._fill_devices()
        if self._lost is None and not self.recording and chosen is not None and self.devices.findData(chosen) < 0:
            self._lost = LostMicrophone(chosen, name, None)
        lost = self._lost
        row = -1 if lost is None or self.recording else self.devices.findData(lost.device)
        if lost is not None and row >= 0:
            self.devices.setCurrentIndex(row)
            self._lost = None
        if self.isVisible():
            self._listen()
            if lost is not None and not self.recording:
                self._say(lost.is_back if row >= 0 else lost.is_gone, wrong=row < 0)

    def _lose_microphone(self, device: Input) -> None:
        taking = self._performance.active
        self._lost = LostMicrophone(device.id, device.description, self._performance.beat if taking else None)

    def _choose_device(self) -> None:
        # Whoever chooses another microphone does not want the lost one back.
        self._lost = None
        self._listen()

    def _device(self) -> str | None:
        chosen = self.devices.currentData()
        return None if chosen is None else str(chosen)

    def _listen(self) -> None:
        if self._recorder is None or self.recording:
            return
        try:
            self._recorder.listen(self._device())
            settings, first = self._settings, not self._session.study.takes
            unchecked = first and settings is not None and not was_checked(settings, self._device())
            self._say(
                " ".join(
                    (
                        tr("Speak to see the level. Record begins with the first beat on the board."),
                        tr("Before the first take, check the room.") if unchecked else "",
                    )
                ).strip()
            )
        except StudyboardError as reason:
            self._say(str(reason), wrong=True)

    def _begin_talk(self) -> None:
        """The first sound is there: the talk begins."""
        if self._recorder is not None and self.recording:
            self._performance.start(self._recorder)

    def _performance_ended(self) -> None:
        self._stop_recorder()

    def _stop_recorder(self) -> None:
        if self._recorder is not None and self.recording:
            self._recorder.stop()

    def _keep_take(self, take: Take | None) -> None:
        if self._performance.active:
            self._performance.stop()
        if take is None:
            self._say(self._problem or tr("Nothing was recorded."), wrong=True)
            return
        length = clock(take.length.seconds)
        if not self._session.keep(PutTake(take)):
            self._say(
                tr(
                    "{name} ({length}) could not be put into the list; its sound is in the study and comes back when "
                    "the study is opened again.",
                    name=take.name,
                    length=length,
                ),
                wrong=True,
            )
            return
        self.takes.setCurrentRow(0)
        if self._lost is not None:
            # What was being said is said again from its beginning, with this microphone or another one.
            if self._lost.beat is not None:
                self._performance.get_ready(self._lost.beat)
            self._listen()
            self._say(
                " ".join((tr("{name} is kept: {length}.", name=take.name, length=length), self._lost.is_gone)),
                wrong=True,
            )
        elif self._problem:
            self._say(
                tr("{problem} {name} is kept: {length}.", problem=self._problem, name=take.name, length=length),
                wrong=True,
            )
        else:
            self._say(
                tr("{name} is kept: {length}. Play it, discard it, or record another.", name=take.name, length=length)
            )

    def _failed(self, sentence: str) -> None:
        self._problem = sentence
        self._say(sentence, wrong=True)

    def _show_level(self, peak: float, rms: float) -> None:
        self.meter.show_level(peak, rms)
        self.verdict.setText(self.meter.verdict)

    def _show_progress(self, samples: int) -> None:
        if self.recording:
            self._say(tr("Recording {time}. Space goes on, Ctrl+Space stops.", time=clock(samples / RATE)))

    # ---- takes ------------------------------------------------------------------------------------------------------

    def _fill_takes(self) -> None:
        chosen = self._chosen()
        self.takes.blockSignals(True)
        self.takes.clear()
        for take in sorted(self._session.study.takes.values(), key=lambda take: -take.id):
            item = QListWidgetItem(_take_text(take))
            item.setData(Qt.ItemDataRole.UserRole, take.id)
            font = item.font()
            font.setStrikeOut(not take.kept)
            item.setFont(font)
            self.takes.addItem(item)
            if chosen is not None and take.id == chosen.id:
                self.takes.setCurrentItem(item)
        if self.takes.currentRow() < 0 and self.takes.count():
            self.takes.setCurrentRow(0)
        self.takes.blockSignals(False)
        self._show_buttons()

    def _chosen(self) -> Take | None:
        item = self.takes.currentItem()
        if item is None:
            return None
        return self._session.study.takes.get(int(item.data(Qt.ItemDataRole.UserRole)))

    def _player_for(self) -> Player | None:
        if self._player is None:
            try:
                player = Player(self._session.file.sound, self)
            except StudyboardError as reason:
                self._say(str(reason), wrong=True)
                return None
            player.position.connect(self._follow)
            player.state_changed.connect(lambda _: self._show_buttons())
            player.finished.connect(self._played)
            player.silent.connect(self._say)
            player.failed.connect(self._failed)
            self._player = player
        return self._player

    def _follow(self, sample: int) -> None:
        """Show on the board what it showed at this sample of the take."""
        player = self._player
        if player is None or player.take is None or self.recording:
            return
        events = player.take.events
        place = bisect_right([event.at.samples for event in events], sample) - 1
        if place >= 0 and player.state is PlayerState.PLAYING:
            self._session.show(events[place].node)
            self._performance.follow(events[place].beat)
        self.played_to.emit((player.take, sample / player.take.rate))

    def _played(self) -> None:
        self.played_to.emit(None)
        self._performance.get_ready()

    def _other_study(self) -> None:
        if self._player is not None:
            self._player.eject()
            self._player.deleteLater()
            self._player = None
        self._fill_takes()

    # ---- looks ------------------------------------------------------------------------------------------------------

    def _show_buttons(self) -> None:
        take = self._chosen()
        recording = self.recording
        playing = self._player is not None and self._player.state is PlayerState.PLAYING
        self.record_button.setText(tr("Stop") if recording else tr("Record"))
        self.record_button.setProperty("primary", not recording)
        self.record_button.setProperty("recording", recording)
        self.record_button.style().unpolish(self.record_button)
        self.record_button.style().polish(self.record_button)
        self.play_button.setText(tr("Pause") if playing else tr("Play"))
        self.play_button.setEnabled(take is not None and not recording)
        self.discard_button.setText(tr("Take back") if take is not None and not take.kept else tr("Discard"))
        self.discard_button.setEnabled(take is not None and not recording)
        self.devices.setEnabled(not recording and self.devices.currentData() is not None)
        self.room_button.setEnabled(not recording)

    def _say(self, sentence: str, *, wrong: bool = False) -> None:
        self.status.setText(sentence)
        self.status.setStyleSheet(f"color: {self._look.color('over' if wrong else 'ink_quiet').name()};")

    def _dress(self) -> None:
        for label in (self.loudness, self.verdict, self.status):
            label.setStyleSheet(f"color: {self._look.color('ink_quiet').name()};")

    def _lay_out(self) -> None:
        hear = QHBoxLayout()
        hear.setSpacing(12)
        hear.addWidget(self.devices, 2)
        hear.addWidget(self.meter, 3)
        hear.addWidget(self.loudness)
        hear.addWidget(self.verdict)
        hear.addWidget(self.room_button)
        act = QHBoxLayout()
        act.setSpacing(12)
        act.addWidget(self.record_button)
        act.addWidget(self.status, 1)
        takes = QHBoxLayout()
        takes.setSpacing(12)
        buttons = QVBoxLayout()
        buttons.addWidget(self.play_button)
        buttons.addWidget(self.discard_button)
        buttons.addStretch(1)
        takes.addWidget(self.takes, 1)
        takes.addLayout(buttons)
        line = self.takes.fontMetrics().lineSpacing()
        self.takes.setFixedHeight(max(3 * line + 20, 76))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 10, 16, 10)
        layout.setSpacing(8)
        layout.addLayout(hear)
        layout.addWidget(self.warnings)
        layout.addLayout(act)
        layout.addLayout(takes)


def _take_text(take: Take) -> str:
    beats = len({event.beat for event in take.events if event.beat is not None})
    when = moment(datetime.fromisoformat(take.started))
    state = "" if take.complete else tr(" · cut off, kept to its last second")
    kept = "" if take.kept else tr(" · discarded")
    count = tr("1 beat") if beats == 1 else tr("{beats} beats", beats=beats)
    return f"{take.name} · {clock(take.length.seconds)} · {count} · {when}{state}{kept}"
