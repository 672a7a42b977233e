"""Playing reels at the desk, with the board following."""

from __future__ import annotations

from bisect import bisect_right

from PySide6.QtCore import QObject, Signal

from studyboard.desk.session import Session
from studyboard.model.errors import StudyboardError
from studyboard.sound.player import Player, PlayerState
from studyboard.sound.reel import Reel, ReelShelf


class ReelPlayer(QObject):
    """Plays one reel of the study on the desk at a time.

    State: the reel that is on, and the player, which is made when it is first needed and again for another study.

    heard: carries the sample of the reel that is heard now
    followed: a beat is heard; carries its key, or None where the presenter wandered off
    changed: it began, paused or ended
    finished: the reel was heard to its end
    told: something is to be said; carries a sentence
    failed: likewise, and nothing is played
    """

    heard = Signal(int)
    followed = Signal(object)
    changed = Signal()
    finished = Signal()
    told = Signal(str)
    failed = Signal(str)

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._player: Player | None = None
        self._shelf: ReelShelf | None = None
        self._reel: Reel | None = None
        self._node: int | None = None
        session.opened.connect(self._forget)

    @property
    def playing(self) -> bool:
        """True while sound is played."""
        return self._player is not None and self._player.state is PlayerState.PLAYING

    @property
    def at_end(self) -> bool:
        """True where the reel was heard to its end."""
        return self._reel is not None and self.sample >= sum(source.samples for source in self._reel.sources)

    @property
    def sample(self) -> int:
        """The sample of the reel that is heard, or at which it stands."""
        return 0 if self._player is None else self._player.sample

    def play(self, reel: Reel, at: int | None = None) -> None:
        """Play a reel: from this sample on, else from where it stands if it was on already, else from its start."""
        player = self._made()
        if player is None or self._shelf is None:
            return
        if reel != self._reel:
            player.load(self._shelf.put_on(reel, dict(self._session.study.takes)))
            self._reel = reel
        self._node = None
        if at is not None:
            player.seek(at)
        player.play()

    def pause(self) -> None:
        """Stand still."""
        if self._player is not None:
            self._player.pause()

    def eject(self) -> None:
        """Take the reel off."""
        if self._player is not None and self._reel is not None:
            self._player.eject()
        self._reel = None

    def _made(self) -> Player | None:
        if self._player is None:
            try:
                shelf = ReelShelf(self._session.file.sound)
                player = Player(shelf, self)
            except StudyboardError as reason:
                self.failed.emit(str(reason))
                return None
            player.position.connect(self._follow)
            player.state_changed.connect(lambda _: self.changed.emit())
            player.finished.connect(self.finished)
            player.silent.connect(self.told)
            player.failed.connect(self.failed)
            self._player, self._shelf = player, shelf
        return self._player

    def _follow(self, sample: int) -> None:
        """Show on the board what it showed at this sample."""
        if self._reel is None:
            return
        events = self._reel.events
        place = bisect_right([event.at.samples for event in events], sample) - 1
        if place >= 0 and self.playing and place != self._node:
            self._node = place
            self._session.show(events[place].node)
            self.followed.emit(events[place].beat)
        self.heard.emit(sample)

    def _forget(self) -> None:
        self.eject()
        if self._player is not None:
            self._player.deleteLater()
            self._player = self._shelf = None
