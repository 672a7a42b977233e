"""The wave of a take under the time ruler: which take, playing it, and the board that follows."""

from __future__ import annotations

from PySide6.QtCore import Qt, QThreadPool, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.desk.wave_talk import WaveTalk
from studyboard.desk.wave_view import WaveView
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Changed
from studyboard.model.takes import Take
from studyboard.sound.peaks import Peaks, peaks_of
from studyboard.sound.player import Player, PlayerState
from studyboard.store.sound import TakeSound
from studyboard.timing.clock import clock
from studyboard.translation import tr

#: How long writing must rest before the words beside the wave are laid out anew (ms).
_REST = 200
#: As many waves are remembered as somebody may compare.
_REMEMBERED = 6


class WavePane(QWidget):
    """Shows one take and plays it.

    State: the take that is shown, the waves that were measured, and the player, made when something is played first.

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
        self._player: Player | None = None
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
        if anew and self._player is not None:
            self._player.eject()
        self._lay_out(anew=anew)

    def play_or_pause(self) -> None:
        """Play on from where one stands, or pause."""
        take = self._take
        player = self._player_for() if take is not None else None
        if take is None or player is None:
            return
        if player.state is PlayerState.PLAYING:
            player.pause()
            return
        if player.take != take:
            player.load(take)
        player.seek(round(self.view.at * take.rate) if self.view.at < take.length.seconds else 0)
        player.play()

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
        if self._player is not None:
            self._player.pause()

    # ---- what the session says --------------------------------------------------------------------------------------

    def _reopen(self) -> None:
        self._take = None
        self._waves.clear()
        if self._player is not None:
            self._player.eject()
            self._player.deleteLater()
            self._player = None
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
        return {take.id: take for take in self._session.study.takes.values() if take.kept and take.samples}

    def _fill(self, takes: dict[int, Take]) -> None:
        self.takes.blockSignals(True)
        self.takes.clear()
        for take in sorted(takes.values(), key=lambda one: -one.id):
            self.takes.addItem(f"{take.name}  ·  {clock(take.length.seconds)}", take.id)
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
        player, take = self._player, self._take
        if take is None:
            return
        if player is not None and player.take is not None:
            player.seek(round(seconds * take.rate))
        self._follow(seconds)

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
        self.place.setText(self.view.accessibleDescription())

    def _player_for(self) -> Player | None:
        if self._player is None:
            try:
                player = Player(self._session.file.sound, self)
            except StudyboardError as reason:
                self.problem.emit(str(reason))
                return None
            player.position.connect(self._played_to)
            player.state_changed.connect(lambda state: self._show_state(state))
            player.silent.connect(self.problem)
            player.failed.connect(self.problem)
            self._player = player
        return self._player

    def _played_to(self, sample: int) -> None:
        player, take = self._player, self._take
        if player is None or take is None or player.state is not PlayerState.PLAYING:
            return
        self.view.stand_at(sample / take.rate)
        self._follow(sample / take.rate)

    def _show_state(self, state: PlayerState) -> None:
        self.play_button.setText(tr("Pause") if state is PlayerState.PLAYING else tr("Play"))

    def _ask_to_listen(self) -> None:
        if self._take is not None:
            self.asked_to_listen.emit(self._take.id)
