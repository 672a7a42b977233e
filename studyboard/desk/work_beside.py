"""Work that goes on beside the desk's thread, for as long as somebody wants to know what comes of it."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress

from PySide6.QtCore import QRunnable


class WorkBeside(QRunnable):
    """One piece of work for a thread of a QThreadPool."""

    def __init__(self, work: Callable[[], None]) -> None:
        super().__init__()
        self._work = work

    def run(self) -> None:
        """See QRunnable."""
        # The desk may have been closed meanwhile: then nobody wants to know any more.
        with suppress(RuntimeError):
            self._work()
