"""The wave of a take under the time ruler: which take, playing it, and the board that follows."""

from __future__ import annotations

from PySide6.QtCore import Qt, QThreadPool, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.look import Look
from studyboard.desk.reel_player import ReelPlayer
from studyboard.desk.session import Session
from studyboard.desk.take_words import take_and_length
from studyboard.desk.wave_talk import WaveTalk
from studyboard.desk.wave_view import WaveView
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Changed
from studyboard.model.takes import Span, Take
from studyboard.sound.peaks import Peaks, peaks_of
from studyboard.sound.reel import raw_reel
from studyboard.store.sound import TakeSound
from studyboard.timing.recorded import kept_takes
from studyboard.translation import tr

#: How long writing must rest before the words beside the wave are laid out anew (ms).
_REST = 200
#: As many waves are remembered as somebody may compare.
_REMEMBERED = 6


class WavePane(QWidget):
    """Shows one take and plays it.

    State: the take that is shown, and the waves that were measured.

    followed: one goes to a place of the take; carries the beat that is told there, or None
    asked_to_listen: the board is to follow the voice of the take; carries its id
    problem: something could not be done; carries a sentence
    measured: comes from the measuring thread; carries the take, its length and its Peaks or a sentence
    """

    followed = Signal(object)
    asked_to_listen = Signal(int)
    problem = Signal(str)
    measured = Signal(object)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._take: Take | None = None
        self._waves: dict[tuple[int, int], Peaks] = {}
        self._player = ReelPlayer(session, self)
        self._stale = True
        self._round = 0
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST)
        self._rest.timeout.connect(lambda: self._lay_out(anew=False))
        self.view = WaveView(look)
        self.takes = QComboBox()
        self.takes.setAccessibleName(tr("Take"))
        self.takes.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.takes.setMinimumContentsLength(16)
        self.play_button = QPushButton(tr("Play"))
        self.listen_button = QPushButton(tr("Let the board follow the voice …"))
        self.place = ElidedLabel()
        self.place.setAccessibleName(tr("Place in the take"))
        head = QHBoxLayout()
        head.setContentsMargins(14, 2, 14, 0)
        head.setSpacing(10)
        head.addWidget(self.takes)
        head.addWidget(self.play_button)
        head.addWidget(self.place, 1)
        head.addWidget(self.listen_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        layout.addLayout(head)
        layout.addWidget(self.view)
        self.takes.activated.connect(lambda _: self.show_take(self.takes.currentData()))
        self.play_button.clicked.connect(self.play_or_pause)
        self.listen_button.clicked.connect(self._ask_to_listen)
        self.view.moved_to.connect(self._go)
        self.measured.connect(self._show_measured)
        self._player.heard.connect(self._played_to)
        self._player.changed.connect(self._show_playing)
        self._player.told.connect(self.problem)
        self._player.failed.connect(self.problem)
        session.changed.connect(self._change)
        session.opened.connect(self._reopen)

    @property
    def take(self) -> Take | None:
        """The take that is shown."""
        return self._take

    def show_take(self, number: int | None) -> None:
        """Show this take, the newest one for None."""
        takes = self._kept()
        if number not in takes:
            number = max(takes, default=None)
        anew = self._take is None or number is None or self._take.id != number
        self._take = None if number is None else takes[number]
        self._fill(takes)
        if anew:
            self._player.eject()
        self._lay_out(anew=anew)

    def play_or_pause(self) -> None:
        """Play on from where one stands, or pause."""
        take = self._take
        if self._player.playing:
            self._player.pause()
        elif take is not None:
            self._play(take, self.view.at if self.view.at < take.length.seconds else 0.0)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space plays and pauses."""
        if event.key() == Qt.Key.Key_Space and not event.modifiers():
            self.play_or_pause()
        else:
            super().keyPressEvent(event)

    def showEvent(self, event: QShowEvent) -> None:
        """What has changed meanwhile is looked up."""
        super().showEvent(event)
        if self._stale:
            self._stale = False
            self.show_take(None if self._take is None else self._take.id)

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing plays where nobody sees it."""
        super().hideEvent(event)
        self._player.pause()

    # ---- what the session says --------------------------------------------------------------------------------------

    def _reopen(self) -> None:
        self._take = None
        self._waves.clear()
        self._change(Changed(takes={0}))

    def _change(self, changed: Changed) -> None:
        if not (changed.takes or changed.nodes or changed.parts):
            return
        if not self.isVisible():
            self._stale = True
        elif changed.takes:
            # Another take than before is the one that was just recorded.
            newest = max(self._kept(), default=None)
            grown = newest is not None and (self._take is None or newest in changed.takes)
            self.show_take(newest if grown else None if self._take is None else self._take.id)
        else:
            self._rest.start()

    def _kept(self) -> dict[int, Take]:
        return {take.id: take for take in kept_takes(self._session.study) if take.samples}

    def _fill(self, takes: dict[int, Take]) -> None:
        self.takes.blockSignals(True)
        self.takes.clear()
        for take in sorted(takes.values(), key=lambda one: -one.id):
            self.takes.addItem(take_and_length(take), take.id)
        if self._take is not None:
            self.takes.setCurrentIndex(self.takes.findData(self._take.id))
        self.takes.blockSignals(False)
        for widget in (self.takes, self.play_button, self.listen_button):
            widget.setEnabled(bool(takes))

    def _lay_out(self, *, anew: bool) -> None:
        take = self._take
        if take is None:
            self.view.show_take(None)
            self.place.setText("")
            return
        talk = WaveTalk(self._session.study, self._session.positions, take)
        self.view.show_take(talk, take.rate, anew=anew)
        self._tell()
        if anew:
            self._measure(take)

    # ---- the wave ---------------------------------------------------------------------------------------------------

    def _measure(self, take: Take) -> None:
        known = self._waves.get((take.id, take.samples))
        self.view.show_peaks(known, tr("The wave is being measured …"))
        self._round += 1
        if known is None:
            shelf, turn = self._session.file.sound, self._round
            QThreadPool.globalInstance().start(WorkBeside(lambda: self._measure_beside(shelf, take, turn)))

    def _measure_beside(self, shelf: TakeSound, take: Take, turn: int) -> None:
        try:
            found: Peaks | str | None = peaks_of(shelf.sound_chunks(take.id), lambda: self._round != turn)
        except StudyboardError as reason:
            found = str(reason)
        if found is not None:
            self.measured.emit((take.id, take.samples, found))

    def _show_measured(self, told: tuple[int, int, Peaks | str]) -> None:
        number, samples, found = told
        if isinstance(found, Peaks):
            self._waves[number, samples] = found
            while len(self._waves) > _REMEMBERED:
                self._waves.pop(next(iter(self._waves)))
        if self._take is not None and (self._take.id, self._take.samples) == (number, samples):
            self.view.show_peaks(found if isinstance(found, Peaks) else None, found if isinstance(found, str) else "")

    # ---- going and playing ------------------------------------------------------------------------------------------

    def _go(self, seconds: float) -> None:
        if self._take is None:
            return
        if self._player.playing:
            self._play(self._take, seconds)
        self._follow(seconds)

    def _play(self, take: Take, seconds: float) -> None:
        self._player.play(raw_reel(take, Span(0, take.samples)), round(seconds * take.rate))

    def _follow(self, seconds: float) -> None:
        """Show on the board what it showed at this second of the take."""
        take = self._take
        shown = (
            None if take is None else next((one for one in reversed(take.events) if one.at.seconds <= seconds), None)
        )
        if shown is not None:
            self._session.show(shown.node)
            self.followed.emit(shown.beat)
        self._tell()

    def _tell(self) -> None:
        self.place.setText(self.view.place)

    def _played_to(self, sample: int) -> None:
        take = self._take
        if take is not None and self._player.playing:
            self.view.stand_at(sample / take.rate)
            self._follow(sample / take.rate)

    def _show_playing(self) -> None:
        self.play_button.setText(tr("Pause") if self._player.playing else tr("Play"))

    def _ask_to_listen(self) -> None:
        if self._take is not None:
            self.asked_to_listen.emit(self._take.id)
