"""Work of the window's own thread that is long for a long talk: done piece by piece, the keys come in between."""

from __future__ import annotations

from collections.abc import Callable, Generator
from time import thread_time
from typing import Any, TypeVar

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtGui import QGuiApplication

Made = TypeVar("Made")

#: How long the first piece and each other one may take of the processor before the desk listens again (s).
FIRST, SLICE = 0.020, 0.008


class Piecemeal(QObject):
    """Runs one generator at a time to its end, and passes on what it returns.

    State: the work that is going on, for which the pointer tells that the desk is busy.
    """

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._work: Generator[None, None, object] | None = None
        self._done: Callable[[Any], None] | None = None
        self._shown = False
        self._next = QTimer(self)
        self._next.setSingleShot(True)
        self._next.timeout.connect(lambda: self._go_on())

    @property
    def busy(self) -> bool:
        """True while there is work left."""
        return self._work is not None

    def start(self, work: Generator[None, None, Made], done: Callable[[Made], None]) -> None:
        """Do this work, then call *done* with what it returns; what takes a moment is done on return.

        Work that was going on is dropped.
        """
        self.stop()
        self._work, self._done = work, done
        self._go_on(FIRST)
        if self.busy:
            self._shown = True
            QGuiApplication.setOverrideCursor(Qt.CursorShape.BusyCursor)

    def stop(self) -> None:
        """Drop the work that is going on."""
        if self._shown:
            self._shown = False
            QGuiApplication.restoreOverrideCursor()
        self._next.stop()
        self._work = None

    def _go_on(self, seconds: float = SLICE) -> None:
        work, done, until = self._work, self._done, thread_time() + seconds
        if work is None or done is None:
            return
        try:
            while thread_time() < until:
                next(work)
        except StopIteration as finished:
            self.stop()
            done(finished.value)
            return
        self._next.start()
