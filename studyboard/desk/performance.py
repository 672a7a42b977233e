"""A rehearsal or a recording on the desk: it drives the board, and the board's wanderings come back to it."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from time import monotonic
from typing import Protocol

from PySide6.QtCore import QObject, QTimer, Signal

from studyboard.desk.session import Session
from studyboard.model.node import Place
from studyboard.model.rehearsals import AddRehearsal
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Changed
from studyboard.timing.run_through import RunThrough

#: How often the clock is shown anew (ms).
_TICK = 200


class Stamps(Protocol):
    """What a recording wants to know: the board showing a node from now on."""

    def stamp(self, node: int, beat: BeatKey | None, when: float | None = None) -> object: ...


class Performance(QObject):
    """One run-through at the desk.

    State: the run-through that is going on or would begin now, the beat with which it begins, whether that is to be
    shown, or begun with, as soon as the talk is planned, the recorder that wants
    the board's moves, and what a press of the key does before anything is going on.

    moved: another stop is reached, the presenter wandered off or came back, or it would begin elsewhere
    ticked: the clock shows another time
    begun: a run-through has begun
    ended: the run-through is over, by the key or because another study was opened
    """

    moved = Signal()
    ticked = Signal()
    begun = Signal()
    ended = Signal()

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._stepping = False
        self._stamps: Stamps | None = None
        self._first = 0
        self._last: int | None = None
        self._awaited = self._begins = False
        self.begin_by: Callable[[], None] | None = None
        self._run: RunThrough | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(_TICK)
        self._timer.timeout.connect(self.ticked)
        session.stepped.connect(self._on_stepped)
        session.changed.connect(self._on_changed)
        session.planned.connect(self._prepare)
        session.opened.connect(self._on_opened)

    @property
    def run(self) -> RunThrough:
        """The run-through that is going on, or the one that would begin now."""
        if self._run is None:
            self._run = RunThrough(self._session.study, plan=self._session.plan)
        return self._run

    @property
    def is_ready(self) -> bool:
        """False while a long talk is being planned: asking for the run-through then waits for that."""
        return self._run is not None or self._session.is_planned

    @property
    def active(self) -> bool:
        """True from the first press until the end."""
        return self._timer.isActive()

    @property
    def beat(self) -> int:
        """Index of the beat that is told, or with which the run-through would begin."""
        if self.active:
            return self.run.beat
        return self._first if self._first < len(self.run.beats) else 0

    def get_ready(self, beat: int = 0) -> None:
        """Begin with this beat when the time comes, and show where that is on the board."""
        if self.active:
            return
        self._first, self._awaited = beat, True
        if self._session.is_planned:
            self._prepare()
        else:
            self._session.plan_now()

    def follow(self, key: BeatKey | None) -> None:
        """A take is being played: show this beat's line, without beginning anything."""
        if self.active or key is None:
            return
        beat = next((number for number, beat in enumerate(self.run.beats) if beat.key == key), self._first)
        if beat != self._first:
            self._first = beat
            self.moved.emit()

    def start(
        self,
        stamps: Stamps | None = None,
        clock: Callable[[], float] | None = None,
        last: int | None = None,
    ) -> None:
        """Begin; the board's moves are stamped by *stamps*. What was going on ends first.

        last: index of the beat after which it is over; None for the end of the talk
        A rehearsal of a talk that is being planned begins as soon as that is done.
        """
        self.stop()
        if not self.is_ready and stamps is None and clock is None:
            self._begins = True
            self._session.plan_now()
            return
        first = self.beat
        self._run = RunThrough(self._session.study, clock or monotonic, self._session.plan)
        self._stamps = stamps
        self._last = last
        self._timer.start()
        self._session.trying = True
        if first:
            self.run.jump(first)
            self.run.resume()
            self._step(lambda: True)
        else:
            self._step(self.run.advance)
        self.begun.emit()

    def advance(self) -> None:
        """The next stop; begins the run-through where none is going on, by `begin_by` if that is set."""
        if self.active:
            if self._is_through:
                self._stamp_end()
                self.stop()
            else:
                self._step(self.run.advance)
        elif self.begin_by is not None:
            self.begin_by()
        elif not self.is_ready or self.run.stops:
            self.start()

    @property
    def _is_through(self) -> bool:
        """True where the next press ends it."""
        if self.run.finished:
            return True
        following = self.run.next_stop
        wandering = self.run.wandering
        return self._last is not None and not wandering and following is not None and following.beat > self._last

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
        recorded = self._stamps is not None
        self._end()
        kept = self.run.keep()
        if kept is not None:
            known = set(self._session.study.nodes) | set(Part)
            self._session.keep(type(kept)(tuple((key, value) for key, value in kept.seconds if key in known)))
        # A recording is remembered by its take.
        rehearsal = None if recorded else self.run.rehearsal(datetime.now().astimezone().isoformat())
        if rehearsal is not None:
            self._session.keep(AddRehearsal(rehearsal))
        self.ended.emit()

    def _end(self) -> None:
        self.run.pause()
        self._timer.stop()
        self._stamps = None
        self._first = 0
        self._session.trying = False

    def _step(self, step: Callable[[], bool]) -> None:
        # Showing it takes a while: the moment is that of the key.
        pressed = monotonic()
        if not step():
            return
        self._show(self.run.node)
        self._stamp(pressed)
        self.moved.emit()

    def _show(self, node: int | None) -> None:
        self._stepping = True
        try:
            self._session.show(node)
        finally:
            self._stepping = False

    def _on_stepped(self, node: int) -> None:
        if self._stepping or not self.active:
            return
        self.run.wander(node)
        self._stamp()
        self.moved.emit()

    def _on_changed(self, changed: Changed) -> None:
        """The study was edited in the middle of it: go on in what it has become."""
        if self.active and (changed.nodes or changed.parts) and not self._only_tries(changed):
            self._run = self.run.again(self._session.study, self._session.plan)
            self.moved.emit()

    def _only_tries(self, changed: Changed) -> bool:
        """True where nothing happened but that a move was put on the tree without being told."""
        study = self._session.study
        tried = study.nodes.get(study.next_id - 1)
        if tried is None or tried.children or tried.telling.place is not Place.HIDDEN:
            return False
        return self._session.trying and not changed.parts and changed.nodes == {tried.id, tried.parent}

    def _stamp(self, when: float | None = None) -> None:
        if self._stamps is not None and self.run.node is not None:
            self._stamps.stamp(self.run.node, self.run.beat_key, when)

    def _stamp_end(self) -> None:
        """The presenter has gone on from the last beat: it was told to its end."""
        if self._stamps is not None and self.run.node is not None:
            self._stamps.stamp(self.run.node, None)

    def _prepare(self) -> None:
        """The talk is planned: a run-through would follow this plan."""
        if self.active:
            return
        self._run = None
        if self._awaited:
            self._awaited = False
            self._first = self._first if 0 <= self._first < len(self.run.beats) else 0
            stop = next((stop for stop in self.run.stops if stop.beat == self._first), None)
            self._show(None if stop is None else stop.visit.node)
        self.moved.emit()
        if self._begins:
            self._begins = False
            self.advance()

    def _on_opened(self) -> None:
        self._first, self._awaited, self._begins = 0, False, False
        if self.active:
            self._end()
            self._run = None
            self.ended.emit()
        self._prepare()
