"""The room check: a few seconds of silence and a few of speech, and what is to be mended before the first take."""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum, auto

from PySide6.QtCore import QPointF, QSettings, QSize, Qt, QThreadPool, Signal
from PySide6.QtGui import QColor, QHideEvent, QIcon, QPainter, QPixmap, QPolygonF
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QProgressBar,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.level_meter import LevelMeter
from studyboard.desk.look import Look
from studyboard.desk.microphone_memory import note_check
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.errors import StudyboardError
from studyboard.sound.levels import SILENCE
from studyboard.sound.passing_sound import PassingSound
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.sound.recorder import Recorder, RecorderState
from studyboard.sound.room import NO_SIGNAL
from studyboard.sound.room_advice import Advice, Weight, room_advice, voice_advice, worst
from studyboard.translation import tr, tr_later

#: What is heard while the microphone is switched on (s), the silence, the time to draw breath, and the speech.
_SETTLE, _SILENCE, _BREATH, _SPEECH = 0.5, 5.0, 0.7, 8.0

_VERDICTS = {
    Weight.GOOD: tr_later("Nothing is in the way of a good recording."),
    Weight.MIND: tr_later("It can be recorded like this; better is possible."),
    Weight.BAD: tr_later("Mend this before the first take."),
}
_TRIANGLE = (QPointF(16, 6), QPointF(27, 25), QPointF(5, 25))
_COLORS = {Weight.GOOD: "accent", Weight.MIND: "side_line", Weight.BAD: "over"}


class _Step(Enum):
    READY = auto()
    SILENCE = auto()
    SPEECH = auto()
    JUDGING = auto()


class RoomWindow(QDialog):
    """Listens to the room, then to the voice, and says in sentences what it found.

    State: what is being listened to, and what was found last.

    judged: carries the found Advice, as a tuple; comes from another thread
    """

    judged = Signal(object)

    def __init__(
        self, look: Look, device: str | None = None, settings: QSettings | None = None, parent: QWidget | None = None
    ) -> None:
        """device: id of the microphone, None for the system's choice; settings: where it is noted that it was done"""
        super().__init__(parent)
        self._look = look
        self._device = device
        self._settings = settings
        self._sound = PassingSound()
        self._recorder: Recorder | None = None
        self._step = _Step.READY
        self._highest = SILENCE
        self.setWindowTitle(tr("Room check"))
        self.told = QLabel(
            tr(
                "First five seconds of silence, for the noise of the room and the hum of the mains; then eight seconds "
                "of speech, as loud as in the talk. Nothing of it is kept."
            )
        )
        self.told.setWordWrap(True)
        self.told.setAccessibleName(tr("What to do now"))
        self.meter = LevelMeter(look)
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Progress of the room check"))
        self.verdict = QLabel("")
        self.verdict.setObjectName("heading")
        self.verdict.setWordWrap(True)
        self.found = QListWidget()
        self.found.setAccessibleName(tr("What was found"))
        self.found.setWordWrap(True)
        self.found.setSpacing(3)
        self.found.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.check_button = ActingButton(tr("Check"))
        self.check_button.setProperty("primary", True)
        self.check_button.clicked.connect(self.check)
        close = ActingButton(tr("Close"))
        close.clicked.connect(self.close)
        foot = QHBoxLayout()
        foot.addStretch(1)
        foot.addWidget(self.check_button)
        foot.addWidget(close)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        for widget in (self.told, self.meter, self.bar, self.verdict):
            layout.addWidget(widget)
        layout.addWidget(self.found, 1)
        layout.addLayout(foot)
        line = self.fontMetrics().height()
        self.resize(QSize(36 * line, 32 * line).boundedTo(self.screen().availableSize() * 0.95))
        self.check_button.setFocus()
        self.judged.connect(self._show)

    @property
    def listening(self) -> bool:
        """True while the room or the voice is being listened to."""
        return self._step in (_Step.SILENCE, _Step.SPEECH)

    def check(self) -> None:
        """Begin, or break off what is going on."""
        if self._step is _Step.JUDGING:
            return
        if self.listening:
            self._stop()
            self._ready(tr("Broken off; nothing was judged."))
            return
        self.found.clear()
        self.verdict.setText("")
        self.meter.reset()
        self._highest = SILENCE
        try:
            if self._recorder is None:
                self._recorder = self._made()
            self._recorder.start("", self._device)
        except StudyboardError as reason:
            self._ready(str(reason))
            return
        self._step = _Step.SILENCE
        self.check_button.setText(tr("Break off"))
        self._say(tr("Be silent now: the room is being listened to."))

    def hideEvent(self, event: QHideEvent) -> None:
        """However the window is left, the microphone is let go of."""
        super().hideEvent(event)
        self._stop()

    def _made(self) -> Recorder:
        recorder = Recorder(lambda: self._sound, parent=self)
        recorder.level.connect(self._show_level)
        recorder.clipped.connect(self.meter.show_clipped)
        recorder.progress.connect(self._go_on)
        recorder.failed.connect(self._failed)
        return recorder

    def _show_level(self, peak: float, rms: float) -> None:
        self.meter.show_level(peak, rms)
        self._highest = max(self._highest, peak)

    def _go_on(self, samples: int) -> None:
        if not self.listening:
            return
        seconds = samples / RATE
        whole = _SETTLE + _SILENCE + _BREATH + _SPEECH
        self.bar.setValue(round(1000 * min(1.0, seconds / whole)))
        if self._step is _Step.SILENCE and seconds >= _SETTLE + _SILENCE:
            if self._highest <= NO_SIGNAL:
                # Nobody needs to speak into a microphone that is dead.
                self._judge()
                return
            self._step = _Step.SPEECH
            self._say(tr("Now speak, as loud as in the talk: how does the game begin?"))
        elif seconds >= whole + 0.1:
            self._judge()

    def _judge(self) -> None:
        assert self._recorder is not None
        rate = self._recorder.device_rate
        self._step = _Step.JUDGING
        self._recorder.close()
        pcm = self._sound.pcm
        self._say(tr("Judging …"))
        # A window that is closed meanwhile is not waited for.
        QThreadPool.globalInstance().start(WorkBeside(lambda: self.judged.emit(judgement(pcm, rate))))

    def _show(self, found: tuple[Advice, ...] | str) -> None:
        if isinstance(found, str):
            self._ready(found)
            return
        weight = worst(found)
        self.verdict.setText(tr(_VERDICTS[weight]))
        for one in found:
            item = QListWidgetItem(
                _sign(one.weight, self._look.color(_COLORS[one.weight])), f"{one.says}\n{one.do}".strip()
            )
            self.found.addItem(item)
        self.found.setCurrentRow(0)
        if self._settings is not None:
            note_check(self._settings, self._device, weight)
        self._ready(tr("Levels are those of the microphone: nothing is turned up or down in a take."))

    def _failed(self, sentence: str) -> None:
        self._step = _Step.READY
        self._ready(sentence)

    def _stop(self) -> None:
        if self.listening:
            self._step = _Step.READY
        if self._recorder is not None and self._recorder.state is not RecorderState.CLOSED:
            self._recorder.close()

    def _ready(self, sentence: str) -> None:
        self._step = _Step.READY
        self.bar.setValue(0)
        self.check_button.setText(tr("Check again") if self.found.count() else tr("Check"))
        self._say(sentence)

    def _say(self, sentence: str) -> None:
        self.told.setText(sentence)


def judgement(pcm: bytes, device_rate: int) -> tuple[Advice, ...] | str:
    """What is found in the sound of a room check; a sentence where it cannot be judged."""
    try:
        import numpy as np

        from studyboard.sound.loudness import measure
        from studyboard.sound.room import listen_to_room

        first, last = round(_SETTLE * RATE), round((_SETTLE + _SILENCE) * RATE)
        sound = np.frombuffer(pcm, "<i2")
        room = listen_to_room(sound[first:last])
        found = room_advice(room, device_rate)
        if room.dead:
            return found
        voice = pcm[(last + round(_BREATH * RATE)) * SAMPLE_BYTES :]
        order = list(Weight)
        both = (*found, *voice_advice(room, measure([voice])))
        return tuple(sorted(both, key=lambda one: -order.index(one.weight)))
    except (StudyboardError, ValueError) as reason:
        return str(reason)


def _sign(weight: Weight, color: QColor) -> QIcon:
    """A round, a triangle or a square: told apart by its shape too."""
    picture = QPixmap(32, 32)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(color)
    draw: dict[Weight, Callable[[], object]] = {
        Weight.GOOD: lambda: painter.drawEllipse(8, 8, 16, 16),
        Weight.MIND: lambda: painter.drawPolygon(QPolygonF([*_TRIANGLE])),
        Weight.BAD: lambda: painter.drawRect(8, 8, 16, 16),
    }
    draw[weight]()
    painter.end()
    icon = QIcon(picture)
    # A chosen line would tint it.
    icon.addPixmap(picture, QIcon.Mode.Selected)
    return icon
