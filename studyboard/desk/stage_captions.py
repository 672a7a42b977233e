"""The caption that is due on the stage, from the planned talk and where the presenter is in it."""

from __future__ import annotations

from bisect import bisect_right

from PySide6.QtCore import QObject, Signal

from studyboard.delivery.caption_lines import Caption, captions
from studyboard.desk.performance import Performance
from studyboard.desk.session import Session
from studyboard.timing.timeline import Timeline


class StageCaptions(QObject):
    """Follows the run-through; while none is going on, the caption is the first one of the beat that is shown.

    State: whether it follows, the captions of the talk as it was last planned (made when they are first asked for),
    and which is due.

    changed: another caption is due
    """

    changed = Signal()

    def __init__(self, session: Session, performance: Performance, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._performance = performance
        self._captions: tuple[Caption, ...] = ()
        self._timeline: Timeline | None = None
        self._starts: list[int] = []
        self._following = False
        self.lines: tuple[str, ...] = ()
        session.planned.connect(self._look)
        session.stepped.connect(lambda _: self._look())
        performance.moved.connect(self._look)
        performance.ticked.connect(self._look)
        performance.ended.connect(self._look)

    def follow(self, following: bool) -> None:
        """Follow the talk from now on, or rest: nothing is worked out while nobody sees it."""
        self._following = following
        self._look()

    def _look(self) -> None:
        if self._following and not self._performance.is_ready:
            # A long talk is being planned; what was due stays until that is done.
            return
        due = self._due() if self._following else ()
        if due != self.lines:
            self.lines = due
            self.changed.emit()

    def _due(self) -> tuple[str, ...]:
        timeline = self._session.timeline
        if self._timeline is not timeline:
            self._timeline = timeline
            self._captions = tuple(captions(timeline))
            self._starts = [caption.start for caption in self._captions]
        run, performance = self._performance.run, self._performance
        if performance.active and run.wandering:
            return ()
        if performance.active and run.beats:
            key, told = run.beats[performance.beat].key, run.beat_seconds(performance.beat)
        else:
            stretch = next((s for s in timeline.stretches if s.node == self._session.node), None)
            if stretch is None:
                return ()
            key, told = stretch.key, 0.0
        stretch = next((s for s in timeline.stretches if s.key == key), None)
        if stretch is None:
            return ()
        first = bisect_right(self._starts, round(stretch.start * 1000) - 1)
        at = round((stretch.start + min(told, stretch.seconds)) * 1000)
        found: tuple[str, ...] = ()
        for caption in self._captions[first:]:
            if caption.beat != key or (found and caption.start > at):
                break
            found = caption.lines
        return found
