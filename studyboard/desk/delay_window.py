"""Measuring how late the microphone is, so that the board's moves stand at the words that they belong to."""

from __future__ import annotations

from PySide6.QtCore import QSettings, QSize, Qt, QThreadPool, Signal
from PySide6.QtGui import QHideEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QDoubleSpinBox,
    QFrame,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QRadioButton,
    QScrollArea,
    QStyle,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.desk.level_meter import LevelMeter
from studyboard.desk.look import Look
from studyboard.desk.microphone_memory import LONGEST, keep_delay, kept_delay
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.errors import StudyboardError
from studyboard.sound.latency import Delay
from studyboard.sound.loopback import Loopback, Trial, Way
from studyboard.translation import tr


class DelayWindow(QDialog):
    """Plays five rising tones, finds them in what the microphone hears, and keeps what it found if that is wished.

    State: the measurement that is going on.

    found: carries a Delay, None, or a sentence; comes from another thread
    """

    found = Signal(object)

    def __init__(
        self, look: Look, settings: QSettings, device: str | None, name: str, parent: QWidget | None = None
    ) -> None:
        """device, name: id of the microphone that is measured (None for the system's choice), and what it is called"""
        super().__init__(parent)
        self._settings = settings
        self._device = device
        self._loopback: Loopback | None = None
        self.setWindowTitle(tr("Measure the delay"))
        about = QLabel(
            tr("How late is “{name}”? Five rising tones are played; moves are stamped by what is found.", name=name)
        )
        self.air = QRadioButton(tr("Through the air: the microphone hears the loudspeaker"))
        self.cable = QRadioButton(tr("By a cable from the output to the input"))
        self.tap = QRadioButton(tr("By tapping: the space bar, pressed eight times beside the microphone"))
        self.air.setChecked(True)
        caution = QLabel(
            tr(
                "Take headphones off and turn the volume low first. Where the microphone is played through the "
                "loudspeaker, switch that off: it may howl."
            )
        )
        caution.setObjectName("quiet")
        self.meter = LevelMeter(look)
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Progress of the measurement"))
        self.measure_button = ActingButton(tr("Measure"))
        self.measure_button.clicked.connect(self.measure)
        self.told = QLabel("")
        self.told.setAccessibleName(tr("What was measured"))
        self.milliseconds = QDoubleSpinBox()
        self.milliseconds.setRange(0.0, 1000 * LONGEST)
        self.milliseconds.setDecimals(1)
        self.milliseconds.setSuffix(tr(" ms"))
        self.milliseconds.setAccessibleName(tr("Delay of the microphone in milliseconds"))
        kept = kept_delay(settings, device)
        self.milliseconds.setValue(1000 * (kept or 0.0))
        self.told.setText(
            tr("Nothing was measured for this microphone yet: 0 ms are counted with.")
            if kept is None
            else tr("This is what is counted with now.")
        )
        buttons = DialogButtons(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        field = QHBoxLayout()
        label = QLabel(tr("De&lay"))
        label.setBuddy(self.milliseconds)
        field.addWidget(label)
        field.addWidget(self.milliseconds)
        field.addStretch(1)
        field.addWidget(self.measure_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        panel = QWidget()
        texts = QVBoxLayout(panel)
        texts.setContentsMargins(0, 0, 0, 0)
        for widget in (about, self.air, self.cable, self.tap, caution):
            texts.addWidget(widget)
        # With large text on a small screen the texts scroll, so that the rest has room.
        scrolled = QScrollArea()
        scrolled.setFrameShape(QFrame.Shape.NoFrame)
        scrolled.setWidgetResizable(True)
        scrolled.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scrolled.setWidget(panel)
        layout.addWidget(scrolled, 1)
        layout.addWidget(self.meter)
        layout.addWidget(self.bar)
        layout.addLayout(field)
        layout.addWidget(self.told)
        layout.addWidget(buttons)
        for text in (about, caution, self.told):
            text.setWordWrap(True)
        # Buttons with a mark do not wrap: the window is as wide as the longest of them.
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        panel.ensurePolished()
        width = max(34 * self.fontMetrics().height(), panel.minimumSizeHint().width() + 40 + bar)
        inside = width - 40 - bar
        height = layout.totalHeightForWidth(width) + texts.totalHeightForWidth(inside) - scrolled.sizeHint().height()
        self.resize(QSize(width, height + 10).boundedTo(self.screen().availableSize()))
        # The space bar would press the button that has the keyboard.
        self._key = QShortcut(QKeySequence(Qt.Key.Key_Space), self, self._tapped)
        self._key.setAutoRepeat(False)
        self._key.setEnabled(False)
        self.found.connect(self._show)

    @property
    def measuring(self) -> bool:
        """True while the tones are played."""
        return self._loopback is not None and self._loopback.running

    def measure(self) -> None:
        """Begin, or break off."""
        if self.measuring:
            self._stop()
            self._ready(tr("Broken off; nothing was measured."))
            return
        self.meter.reset()
        try:
            if self._loopback is None:
                self._loopback = self._made()
            way = Way.TAP if self.tap.isChecked() else Way.AIR if self.air.isChecked() else Way.CABLE
            self._loopback.measure(self._device, way)
        except StudyboardError as reason:
            self._ready(str(reason))
            return
        self.measure_button.setText(tr("Break off"))
        self._key.setEnabled(way is Way.TAP)
        self.told.setText(
            tr("Press the space bar eight times, firmly and not too fast, close to the microphone.")
            if way is Way.TAP
            else tr("Five tones are played: be silent for six seconds.")
        )

    def accept(self) -> None:
        """Count with this delay from now on."""
        keep_delay(self._settings, self._device, self.milliseconds.value() / 1000)
        super().accept()

    def hideEvent(self, event: QHideEvent) -> None:
        """However the window is left, nothing more is played."""
        super().hideEvent(event)
        self._stop()

    def _made(self) -> Loopback:
        loopback = Loopback(self)
        loopback.level.connect(self.meter.show_level)
        loopback.progress.connect(lambda share: self.bar.setValue(round(1000 * share)))
        loopback.heard.connect(self._judge)
        loopback.failed.connect(self._ready)
        return loopback

    def _tapped(self) -> None:
        if self._loopback is not None:
            self._loopback.tap()

    def _judge(self, trial: Trial) -> None:
        def work() -> None:
            try:
                self.found.emit(trial.delay())
            except StudyboardError as reason:
                self.found.emit(str(reason))

        QThreadPool.globalInstance().start(WorkBeside(work))

    def _show(self, found: Delay | str | None) -> None:
        if isinstance(found, str):
            self._ready(found)
        elif found is None:
            self._ready(
                tr("The key was not heard well enough. Press it harder, or bring the microphone nearer.")
                if self.tap.isChecked()
                else tr(
                    "The tones were not heard well enough. Turn the loudspeaker up, or bring the microphone nearer."
                )
            )
        else:
            self.milliseconds.setValue(1000 * found.seconds)
            self._ready(
                tr(
                    "The microphone is {late:.1f} ms late; {count} of them agree within {spread:.1f} ms. OK counts "
                    "with it.",
                    late=1000 * found.seconds,
                    count=found.signals,
                    spread=1000 * found.spread,
                )
            )

    def _stop(self) -> None:
        if self._loopback is not None:
            self._loopback.stop()

    def _ready(self, sentence: str) -> None:
        self.bar.setValue(0)
        self._key.setEnabled(False)
        self.measure_button.setText(tr("Measure"))
        self.told.setText(sentence)
