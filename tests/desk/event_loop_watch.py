"""Watches how long the desk's thread works before it listens again."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QAbstractEventDispatcher, QEventLoop, QObject, QTimer


@dataclass(frozen=True)
class Busy:
    """One stretch of work between two times at which the thread listened.

    what: what was being done
    processor: how long it took of the processor, which other work on the machine spares (s)
    """

    what: str
    processor: float


class EventLoopWatch(QObject):
    """Runs a script of actions in a real event loop, and notes each stretch of work.

    State: the stretches so far, and what is being done.
    """

    def __init__(self) -> None:
        super().__init__()
        self.stretches: list[Busy] = []
        self._what = ""
        self._since = time.thread_time()
        # Timers are served after the thread has listened and before it says so: only this signal divides the work.
        QAbstractEventDispatcher.instance().aboutToBlock.connect(self._listens)

    def run(self, script: Sequence[tuple[str, Callable[[], object]]], rest: int = 30) -> None:
        """Do one action after the other, each *rest* ms after the last one was done and painted."""
        loop = QEventLoop()
        steps = iter(script)
        failed: list[BaseException] = []

        def step() -> None:
            found = next(steps, None)
            if found is None:
                loop.quit()
                return
            self._what, act = found
            try:
                act()
            except BaseException as reason:
                failed.append(reason)
                loop.quit()
                return
            QTimer.singleShot(rest, self, step)

        self._since = time.thread_time()
        QTimer.singleShot(0, self, step)
        loop.exec()
        if failed:
            raise failed[0]

    def call_it(self, what: str) -> None:
        """What is being done is better told by these words."""
        self._what = what

    def over(self, limit: float) -> list[Busy]:
        """The stretches that took longer than *limit* of the processor (s), the longest first."""
        found = [busy for busy in self.stretches if busy.processor > limit]
        return sorted(found, key=lambda busy: -busy.processor)

    def _listens(self) -> None:
        now = time.thread_time()
        self.stretches.append(Busy(self._what, now - self._since))
        self._since = now
