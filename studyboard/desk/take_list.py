"""The list of all takes in the booth, each to be played and discarded."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QListWidget, QListWidgetItem, QPushButton, QVBoxLayout, QWidget

from studyboard.desk.reel_player import ReelPlayer
from studyboard.desk.session import Session
from studyboard.desk.take_words import take_text
from studyboard.model.study import Changed
from studyboard.model.take_edits import discard, take_back
from studyboard.model.takes import Take
from studyboard.sound.reel import take_reel
from studyboard.translation import tr


class TakeList(QWidget):
    """Takes, the newest first, with the buttons for the one that is chosen.

    State: the take that is played, or was last; whether one is being recorded.

    about_to_play: a take is going to be played
    played_to: a take is being played; carries it and the second of it that is heard, or None at the end
    paused: it was paused before its end
    """

    about_to_play = Signal()
    played_to = Signal(object)
    paused = Signal()

    def __init__(self, session: Session, player: ReelPlayer, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._player = player
        self._played: Take | None = None
        self._recording = False
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Takes"))
        self.play_button = QPushButton(tr("Play"))
        self.discard_button = QPushButton(tr("Discard"))
        self.takes_button = QPushButton(tr("Takes …"))
        self.takes_button.setToolTip(tr("Choose a take for each beat, cut, say words again, take in sound files"))
        self._lay_out()
        self.play_button.clicked.connect(self.play_or_pause)
        self.discard_button.clicked.connect(self.discard_or_take_back)
        self.list.currentRowChanged.connect(self._show_buttons)
        self.list.itemActivated.connect(lambda _: self.play_or_pause())
        player.heard.connect(self._follow)
        player.changed.connect(self._player_changed)
        player.finished.connect(self._heard_out)
        session.changed.connect(self._study_changed)
        session.opened.connect(self._other_study)
        self.fill()

    def play_or_pause(self) -> None:
        """Play the chosen take as it is heard, from where it stands, or pause it."""
        take = self._chosen()
        if take is None or self._recording:
            return
        self.about_to_play.emit()
        if self._player.playing and self._played == take:
            self._player.pause()
            return
        reel = take_reel(self._session.study, take)
        if reel.sources:
            self._played = take
            self._player.play(reel)

    def discard_or_take_back(self) -> None:
        """Discard the chosen take, or take that back; its sound stays in the study meanwhile."""
        take = self._chosen()
        if take is None:
            return
        if self._played == take:
            self._player.eject()
        self._session.do(discard(take) if take.kept else take_back(take))

    def leave(self) -> None:
        """What the player plays from now on is no take of this list."""
        self._played = None

    def lock(self, recording: bool) -> None:
        """While a take is being recorded nothing is played or discarded."""
        self._recording = recording
        self._show_buttons()

    def fill(self) -> None:
        """The takes have changed."""
        chosen = self._chosen()
        self.list.blockSignals(True)
        self.list.clear()
        for take in sorted(self._session.study.takes.values(), key=lambda take: -take.id):
            item = QListWidgetItem(take_text(take))
            item.setData(Qt.ItemDataRole.UserRole, take.id)
            font = item.font()
            font.setStrikeOut(not take.kept)
            item.setFont(font)
            self.list.addItem(item)
            if chosen is not None and take.id == chosen.id:
                self.list.setCurrentItem(item)
        if self.list.currentRow() < 0 and self.list.count():
            self.list.setCurrentRow(0)
        self.list.blockSignals(False)
        self._show_buttons()

    def _chosen(self) -> Take | None:
        item = self.list.currentItem()
        if item is None:
            return None
        return self._session.study.takes.get(int(item.data(Qt.ItemDataRole.UserRole)))

    def _study_changed(self, changed: Changed) -> None:
        if changed.takes or changed.choices:
            self.fill()

    def _follow(self, sample: int) -> None:
        if self._played is not None and not self._recording:
            self.played_to.emit((self._played, sample / self._played.rate))

    def _player_changed(self) -> None:
        if self._played is not None and not self._player.playing and not self._player.at_end and not self._recording:
            self.paused.emit()
        self._show_buttons()

    def _heard_out(self) -> None:
        if self._played is not None:
            self.played_to.emit(None)

    def _other_study(self) -> None:
        self._played = None
        self.fill()

    def _show_buttons(self) -> None:
        take = self._chosen()
        there = take is not None and not self._recording
        self.play_button.setText(tr("Pause") if self._player.playing else tr("Play"))
        self.play_button.setEnabled(there)
        self.discard_button.setText(tr("Take back") if take is not None and not take.kept else tr("Discard"))
        self.discard_button.setEnabled(there)

    def _lay_out(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(12)
        buttons = QVBoxLayout()
        pair = QHBoxLayout()
        pair.addWidget(self.play_button)
        pair.addWidget(self.discard_button)
        buttons.addLayout(pair)
        buttons.addWidget(self.takes_button)
        buttons.addStretch(1)
        row.addWidget(self.list, 1)
        row.addLayout(buttons)
        line = self.list.fontMetrics().lineSpacing()
        self.list.setFixedHeight(max(3 * line + 20, 76))
