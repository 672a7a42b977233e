"""Progress on the terminal."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn


def progress_bar() -> Progress:
    """A bar that goes away when the work is done; nothing is drawn where standard error is no terminal."""
    columns = (TextColumn("{task.description}"), BarColumn(), TimeElapsedColumn())
    return Progress(*columns, console=Console(stderr=True), transient=True, disable=not sys.stderr.isatty())


@contextmanager
def progress_of(what: str) -> Iterator[Callable[[float], None]]:
    """A bar for one piece of work, as what is told the share of it that is done (0.0 to 1.0)."""
    with progress_bar() as bar:
        task = bar.add_task(what, total=1.0)
        yield lambda share: bar.update(task, completed=share)
