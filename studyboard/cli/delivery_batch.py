"""Many studies delivered at once, each in a process of its own."""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection, wait
from multiprocessing.context import BaseContext
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import TypeAlias

from studyboard.cli.delivery_job import DeliveryJob, DeliveryReport, run_beside_others
from studyboard.delivery.product import Item

#: Told which study is worked on, at which item it is, and which share of it is done (0.0 to 1.0).
Told: TypeAlias = Callable[[DeliveryJob, Item, float], None]


def usual_parallel() -> int:
    """How many at once where nobody says: all processors but one, so that the machine can still be used."""
    return max(1, (os.cpu_count() or 2) - 1)


def folders(paths: Sequence[Path], to: Path) -> list[tuple[Path, Path]]:
    """Each file once, with the folder into which it is delivered: named after it, numbered where two have one name."""
    found: list[tuple[Path, Path]] = []
    taken: set[str] = set()
    seen: set[Path] = set()
    for path in paths:
        real = Path(os.path.realpath(path))
        if real in seen:
            continue
        seen.add(real)
        name, number = path.stem, 2
        # Some file systems know no difference between small and capital letters.
        while name.casefold() in taken:
            name, number = f"{path.stem}-{number}", number + 1
        taken.add(name.casefold())
        found.append((path, to / name))
    return found


def deliver_batch(
    jobs: Sequence[DeliveryJob],
    parallel: int,
    told: Told = lambda *_: None,
    done: Callable[[DeliveryReport], None] = lambda _: None,
) -> list[DeliveryReport]:
    """Deliver all of these, *parallel* at once; the reports in the order of the jobs.

    told: how far each is; done: each report as soon as it is there

    A study that cannot be delivered, or whose process ends, does not stop the others. KeyboardInterrupt stops all of
    them, waits until they have put away what they had begun, and goes on to whoever called; what was delivered by then
    stays.
    """
    return _Batch(jobs, max(1, parallel), told, done).run()


@dataclass(frozen=True, slots=True)
class _Running:
    job: DeliveryJob
    process: BaseProcess


class _Batch:
    """State: the jobs that wait, the processes that run, and the reports so far."""

    def __init__(
        self, jobs: Sequence[DeliveryJob], parallel: int, told: Told, done: Callable[[DeliveryReport], None]
    ) -> None:
        self._jobs = list(jobs)
        self._waiting = list(reversed(self._jobs))
        self._parallel = parallel
        self._told, self._done = told, done
        self._running: dict[Connection, _Running] = {}
        self._reports: dict[Path, DeliveryReport] = {}
        self._context = _context()

    def run(self) -> list[DeliveryReport]:
        """See deliver_batch."""
        try:
            while self._waiting or self._running:
                while self._waiting and len(self._running) < self._parallel:
                    self._start(self._waiting.pop())
                self._listen()
        except BaseException:
            self._stop()
            raise
        return [self._reports[job.path] for job in self._jobs]

    def _start(self, job: DeliveryJob) -> None:
        ours, theirs = self._context.Pipe()
        process = self._context.Process(target=run_beside_others, args=(job, theirs), name=job.path.name)  # type: ignore[attr-defined]
        self._running[ours] = _Running(job, process)
        process.start()
        theirs.close()

    def _listen(self) -> None:
        """Wait for the next messages, and take them in."""
        for line in [line for line in wait([*self._running]) if line in self._running]:
            running = self._running[line]
            try:
                message = line.recv()
            except (EOFError, OSError):
                running.process.join()
                problem = f"its process ended unexpectedly ({_ending(running.process.exitcode)})."
                message = DeliveryReport(running.job, problem=problem, whole=False)
            if isinstance(message, DeliveryReport):
                self._end(line)
                self._reports[message.job.path] = message
                self._done(message)
            else:
                self._told(running.job, *message)

    def _end(self, line: Connection) -> None:
        running = self._running.pop(line)
        line.close()
        running.process.join()

    def _stop(self) -> None:
        """End all that runs: each puts away what it has begun as soon as nobody listens to it any more."""
        for line in self._running:
            line.close()
        for running in self._running.values():
            if running.process.pid is not None:
                running.process.join()
        self._running.clear()


def _context() -> BaseContext:
    """Processes that begin with the modules loaded where the system can do that, and with a clean state everywhere."""
    if "forkserver" not in multiprocessing.get_all_start_methods():
        return multiprocessing.get_context("spawn")
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(["studyboard.cli.delivery_job", "studyboard.delivery.sheet"])
    return context


def _ending(code: int | None) -> str:
    return f"signal {-code}" if code is not None and code < 0 else f"status {code}"
