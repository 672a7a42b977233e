"""A rehearsal or a recording on the desk: it drives the board, and the board's wanderings come back to it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from PySide6.QtCore import QObject, QTimer, Signal

from studyboard.desk.session import Session
from studyboard.model.script import BeatKey, Part
from studyboard.timing.run_through import RunThrough

#: How often the clock is shown anew (ms).
_TICK = 200


class Stamps(Protocol):
    """What a recording wants to know: the board showing a node from now on."""

    def stamp(self, node: int, beat: BeatKey | None) -> object: ...


class Performance(QObject):
    """One run-through at the desk.

    State: the run-through that is going on or ready to go, and the recorder that wants the board's moves.

    moved: another stop is reached, or the presenter wandered off or came back
    ticked: the clock shows another time
    ended: the run-through is over, by the key or because the study changed
    """

    moved = Signal()
    ticked = Signal()
    ended = Signal()

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._stepping = False
        self._stamps: Stamps | None = None
        self._run: RunThrough | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(_TICK)
        self._timer.timeout.connect(self.ticked)
        session.stepped.connect(self._on_stepped)
        session.planned.connect(self._prepare)
        session.opened.connect(self._on_opened)

    @property
    def run(self) -> RunThrough:
        """The run-through that is going on, or the one that would begin now."""
        if self._run is None:
            self._run = RunThrough(self._session.study)
        return self._run

    @property
    def active(self) -> bool:
        """True from the first press until the end."""
        return self._timer.isActive()

    def start(self, stamps: Stamps | None = None, clock: Callable[[], float] | None = None) -> None:
        """Begin at the beat that is on the board, else at the beginning; moves are stamped by *stamps*."""
        self._run = RunThrough(self._session.study) if clock is None else RunThrough(self._session.study, clock)
        self._stamps = stamps
        self._timer.start()
        self._step(self.run.advance)

    def start_at(self, beat: int, stamps: Stamps | None = None) -> None:
        """Begin at another beat than the first."""
        self.start(stamps)
        self._step(lambda: self.run.jump(beat))

    def advance(self) -> None:
        """The next stop; begins the run-through where none is going on."""
        if not self.active:
            self.start(self._stamps)
        elif self.run.finished:
            self.stop()
        else:
            self._step(self.run.advance)

    def retreat(self) -> None:
        """The stop before."""
        if self.active:
            self._step(self.run.retreat)

    def come_back(self) -> None:
        """Back to where the talk was left."""
        if self.active and self.run.wandering:
            self._step(lambda: self.run.come_back() is not None)

    def stop(self) -> None:
        """End the run-through; the seconds of its beats are kept."""
        if not self.active:
            return
        self.run.pause()
        self._timer.stop()
        self._stamps = None
        kept = self.run.keep()
        if kept is not None:
            known = set(self._session.study.nodes) | set(Part)
            seconds = tuple((key, value) for key, value in kept.seconds if key in known)
            self._session.do(type(kept)(seconds))
        self.ended.emit()

    def _step(self, step: Callable[[], bool]) -> None:
        if not step():
            return
        self._stepping = True
        try:
            self._session.show(self.run.node)
        finally:
            self._stepping = False
        self._stamp()
        self.moved.emit()

    def _on_stepped(self, node: int) -> None:
        if self._stepping or not self.active:
            return
        self.run.wander(node)
        self._stamp()
        self.moved.emit()

    def _stamp(self) -> None:
        if self._stamps is not None and self.run.node is not None:
            self._stamps.stamp(self.run.node, self.run.beat_key)

    def _prepare(self) -> None:
        if not self.active:
            self._run = None
            self.moved.emit()

    def _on_opened(self) -> None:
        if self.active:
            self.run.pause()
            self._timer.stop()
            self._stamps = None
            self.ended.emit()
        self._prepare()
