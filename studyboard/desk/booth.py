"""The booth: microphone, recording, and the takes with their playback."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings, Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.delay_window import DelayWindow
from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.level_meter import LevelMeter
from studyboard.desk.look import Look
from studyboard.desk.lost_microphone import LostMicrophone
from studyboard.desk.loudness_readout import LoudnessReadout
from studyboard.desk.microphone_memory import kept_delay, was_checked
from studyboard.desk.performance import Performance
from studyboard.desk.record_range import RecordRange
from studyboard.desk.recording import Recording
from studyboard.desk.reel_player import ReelPlayer
from studyboard.desk.room_window import RoomWindow
from studyboard.desk.session import Session
from studyboard.desk.sound_warnings import SoundWarnings
from studyboard.desk.take_list import TakeList
from studyboard.model.errors import StudyboardError
from studyboard.model.takes import Span, Take
from studyboard.sound.devices import DeviceWatch, Input, inputs
from studyboard.sound.pcm import RATE
from studyboard.sound.recorder import Recorder
from studyboard.timing.clock import clock
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.takes_window import TakesWindow


class Booth(QFrame):
    """Records the narration against the board, and plays takes with the board following.

    State: what records, what plays, the microphone that was lost, and the window of the takes once it was opened.
    Without a microphone, or without Qt's sound, the booth says so and everything else goes on.

    played_to: a take is being played; carries the take and the second of it that is heard, or None at the end
    busy: the presenter has nothing more to do here; the keyboard belongs to the prompter
    said: the status line says something else; carries it
    state_changed: recording, playing, or what could be done has changed
    """

    played_to = Signal(object)
    busy = Signal()
    said = Signal(str)
    state_changed = Signal()

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
        self._player = ReelPlayer(session, self)
        self._window: TakesWindow | None = None
        self._watch: DeviceWatch | None = None
        self._lost: LostMicrophone | None = None
        self.setAccessibleName(tr("Booth"))

        self.devices = QComboBox()
        self.devices.setAccessibleName(tr("Microphone"))
        self.devices.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.devices.setMinimumContentsLength(10)
        self.meter = LevelMeter(look)
        self.loudness = LoudnessReadout()
        self.verdict = ElidedLabel()
        self.verdict.setAccessibleName(tr("What the level means"))
        self.warnings = SoundWarnings(look)
        self.room_button = QPushButton(tr("Room check …"))
        self.room_button.setToolTip(tr("Noise, hum and level, told before the first take"))
        self.record_button = QPushButton(tr("Record"))
        self.record_button.setProperty("primary", True)
        self.status = QLabel("")
        self.status.setAccessibleName(tr("What the booth is doing"))
        self.status.setWordWrap(True)
        self.range = RecordRange(session)
        self._making = Recording(session, performance, self._player, self.range, self._make, self)
        self.take_list = TakeList(session, self._player)
        self.takes, self.play_button = self.take_list.list, self.take_list.play_button
        self.discard_button, self.takes_button = self.take_list.discard_button, self.take_list.takes_button
        self._lay_out()
        buttons = (self.room_button, self.record_button, self.play_button, self.discard_button, self.takes_button)
        for button in buttons:
            # A click leaves the keyboard where it is; Tab reaches the buttons all the same.
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)

        self.devices.activated.connect(self._choose_device)
        self.room_button.clicked.connect(self.check_room)
        self.record_button.clicked.connect(self.start_or_stop)
        self.takes_button.clicked.connect(lambda: self.open_takes())
        self.range.first_changed.connect(self._first_moved)
        performance.begun.connect(self._make_room)
        performance.ended.connect(self._make_room)
        self.take_list.about_to_play.connect(self._making.leave_off)
        self.take_list.played_to.connect(self._played_to)
        self.take_list.paused.connect(self._playing_paused)
        self._player.followed.connect(performance.follow)
        self._player.changed.connect(self._show_buttons)
        self._player.told.connect(self._say)
        self._player.failed.connect(lambda sentence: self._say(sentence, wrong=True))
        self._making.said.connect(lambda sentence, wrong: self._say(sentence, wrong=wrong))
        self._making.began.connect(self._begin_metering)
        self._making.kept.connect(self._take_kept)
        look.changed.connect(self._dress)
        self._dress()
        self._show_buttons()

    @property
    def recording(self) -> bool:
        """True while a take is being recorded."""
        return self._making.active

    @property
    def about_to_record(self) -> bool:
        """True while the pre-roll of a take is heard."""
        return self._making.rolling

    @property
    def recorder(self) -> Recorder | None:
        """The recorder, None before the booth was opened or without Qt's sound."""
        return self._making.recorder

    def open(self) -> None:
        """Listen to the microphone, so that its level is seen before the first take."""
        if self._watch is None and not self._make_recorder():
            return
        self._fill_devices()
        self._listen()

    def close_down(self) -> None:
        """End a running take and let go of the microphone; returns when everything is stored."""
        self._making.stop_everything()

    def start_or_stop(self) -> None:
        """Begin a take, or end the one that is running."""
        if not self.recording and not self._making.rolling:
            self.begin()
        else:
            self._making.start_or_stop()

    def begin(self) -> None:
        """Begin a take with the beat that the prompter shows; nothing happens while one is running.

        Where a pre-roll is wanted, that is heard first; pressed once more meanwhile, the take begins at once.
        """
        self.busy.emit()
        if self._watch is None and not self._make_recorder():
            return
        self.take_list.leave()
        self._making.device = self._device()
        self._making.begin()

    def say_again(self, take: Take, span: Span) -> None:
        """Begin a pickup: what is said until it is stopped is heard in place of this stretch of a take."""
        if self._watch is None and not self._make_recorder():
            return
        self.take_list.leave()
        self._making.device = self._device()
        self._making.say_again(take, span)

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

    def open_takes(self) -> None:
        """Open the window in which takes are chosen, cut and taken in."""
        from studyboard.desk.takes_window import TakesWindow

        if self._window is None:
            self._window = TakesWindow(self._session, self, self._look, self.window())
        self._window.show_beat(self._performance.beat)
        self._window.show()
        self._window.raise_()
        self._window.activateWindow()

    def take_in(self, path: Path) -> None:
        """Take a sound file in, into the window of the takes."""
        self.open_takes()
        assert self._window is not None
        self._window.take_in(path)

    def showEvent(self, event: QShowEvent) -> None:
        """Listen as soon as the booth is seen."""
        super().showEvent(event)
        self.open()

    # ---- recording --------------------------------------------------------------------------------------------------

    def _make(self) -> Recorder:
        return Recorder(
            lambda: self._session.file.sound_writer(),
            lambda device: kept_delay(self._settings, device.id) or 0.0,
            parent=self._making,
        )

    def _make_recorder(self) -> bool:
        recorder = self._making.recorder if self._making.make() else None
        if recorder is None:
            self.record_button.setEnabled(False)
            return False
        recorder.level.connect(self._show_level)
        recorder.loudness.connect(self.loudness.show_reading)
        recorder.clipped.connect(self.meter.show_clipped)
        self.warnings.attach(recorder)
        recorder.progress.connect(self._show_progress)
        recorder.lost.connect(self._lose_microphone)
        recorder.state_changed.connect(lambda _: self._show_buttons())
        self._watch = DeviceWatch(self)
        self._watch.changed.connect(self._devices_changed)
        return True

    def _begin_metering(self) -> None:
        self.meter.reset()
        self.loudness.reset()
        self._lost = None

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
        recorder = self._making.recorder
        if recorder is None or self.recording:
            return
        try:
            recorder.listen(self._device())
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

    def _take_kept(self, take: Take | None) -> None:
        """The prompter stands where the next take begins."""
        self.takes.setCurrentRow(0)
        lost = self._lost
        if lost is not None and take is not None:
            # What was being said is said again from its beginning, with this microphone or another one.
            if lost.beat is not None and not self._making.is_pickup:
                self.range.set_first(lost.beat)
                self._performance.get_ready(lost.beat)
            self._listen()
            length = clock(take.length.seconds)
            kept = tr("{name} is kept: {length}.", name=take.name, length=length)
            self._say(f"{kept} {lost.is_gone}", wrong=True)
            return
        if self._making.is_pickup or not self.isVisible():
            return
        if take is not None and not self._making.problem:
            self.range.go_on()
        self._performance.get_ready(self.range.first_beat)

    def _first_moved(self, beat: int) -> None:
        if self.isVisible() and not self.recording:
            self._performance.get_ready(beat)

    def _show_level(self, peak: float, rms: float) -> None:
        self.meter.show_level(peak, rms)
        self.verdict.setText(self.meter.verdict)

    def _show_progress(self, samples: int) -> None:
        if not self.recording:
            return
        if self._making.is_pickup:
            self._say(tr("Recording {time}. Ctrl+Space stops.", time=clock(samples / RATE)))
        else:
            self._say(tr("Recording {time}. Space goes on, Ctrl+Space stops.", time=clock(samples / RATE)))

    def _playing_paused(self) -> None:
        """Paused in the middle, the next take would begin with what was heard."""
        self.range.set_first(self._performance.beat)

    def _played_to(self, played: object) -> None:
        self.played_to.emit(played)
        if played is None:
            self._performance.get_ready(self.range.first_beat)

    # ---- looks ------------------------------------------------------------------------------------------------------

    def _show_buttons(self) -> None:
        recording = self.recording
        self.record_button.setText(tr("Stop") if recording else tr("Record"))
        self.record_button.setProperty("primary", not recording)
        self.record_button.setProperty("recording", recording)
        self.record_button.style().unpolish(self.record_button)
        self.record_button.style().polish(self.record_button)
        self.devices.setEnabled(not recording and self.devices.currentData() is not None)
        self.room_button.setEnabled(not recording)
        self.range.lock(recording)
        self.take_list.lock(recording)
        self._make_room()
        self.state_changed.emit()

    def _make_room(self) -> None:
        """While one speaks, the room of what is not used then is the prompter's."""
        speaking = self.recording or self._performance.active
        self.range.setVisible(not speaking)
        self.take_list.setVisible(not speaking)

    def _say(self, sentence: str, *, wrong: bool = False) -> None:
        self.status.setText(sentence)
        self.said.emit(sentence)
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
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 10, 16, 10)
        layout.setSpacing(8)
        layout.addLayout(hear)
        layout.addWidget(self.warnings)
        layout.addWidget(self.range)
        layout.addLayout(act)
        layout.addWidget(self.take_list)
