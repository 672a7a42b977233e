"""One study delivered, from its file to its report: in this process, or in one of its own beside others."""

from __future__ import annotations

import io
import signal
from collections.abc import Callable, Mapping
from contextlib import ExitStack, redirect_stderr, suppress
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

from studyboard.cli.sources import is_study, load_study
from studyboard.delivery.deliver import QUICK, Delivered, Progress, deliver
from studyboard.delivery.product import Item
from studyboard.delivery.video.narration import Narration
from studyboard.model.errors import StudyboardError
from studyboard.sound.levelling import Target
from studyboard.sound.narration import TalkNarration
from studyboard.sound.scratch_voice import ScratchVoice
from studyboard.sound.synthesiser import require_synthesiser
from studyboard.store.study_file import StudyFile
from studyboard.timing.recorded import recorded_talk, talk

#: Progress is told to the other process in steps of this share.
_STEP = 0.01


@dataclass(frozen=True, slots=True)
class DeliveryJob:
    """What is to be delivered.

    path: a study or a PGN file; number: which of its games
    wanted: the items that were named; all quick ones where there is none
    target: the loudness that the voice is published with; None leaves it as it was spoken
    scratch_voice: a plan that is not recorded is spoken by a synthesiser
    """

    path: Path
    number: int | None
    to: Path
    wanted: tuple[Item, ...]
    options: Mapping[Item, Any]
    again: bool = False
    target: Target | None = Target.ONLINE
    scratch_voice: bool = False


@dataclass(frozen=True, slots=True)
class DeliveryReport:
    """What came of it.

    problem: why nothing was delivered; "" where something was
    whole: False where part of a game could not be read, or something that was named could not be made
    """

    job: DeliveryJob
    delivered: tuple[Delivered, ...] = ()
    remarks: tuple[str, ...] = ()
    problem: str = ""
    whole: bool = True


def run_job(
    job: DeliveryJob, progress: Progress | None = None, cancelled: Callable[[], bool] | None = None
) -> DeliveryReport:
    """Deliver one study in this process. Raises StudyboardError."""
    loaded = load_study(job.path, job.number)
    remarks: list[str] = []
    with ExitStack() as opened:
        narration: Narration | None = None
        assembly = recorded_talk(loaded.study)
        timeline = talk(loaded.study)
        if assembly is not None and is_study(job.path):
            file = opened.enter_context(StudyFile.open(job.path, read_only=True))
            narration = TalkNarration(file.sound, loaded.study.takes, assembly, job.target)
        if job.scratch_voice:
            if assembly is None:
                narration = ScratchVoice(loaded.study, timeline, require_synthesiser())
            else:
                remarks.append("The talk is recorded, so there is no need of a scratch voice.")
        delivered = deliver(
            loaded.study,
            job.to,
            job.wanted or QUICK,
            options=job.options,
            timeline=timeline,
            narration=narration,
            again=job.again,
            progress=progress,
            cancelled=cancelled,
            remark=remarks.append,
        )
    whole = loaded.whole and {one.item for one in delivered}.issuperset(job.wanted)
    return DeliveryReport(job, tuple(delivered), tuple(remarks), whole=whole)


def run_beside_others(job: DeliveryJob, line: Connection) -> None:
    """Deliver one study in a process of its own, and send (item, share) and in the end a DeliveryReport.

    line: whatever comes from the other end, its end included, stops the work: so nothing goes on where the program
        that asked for it was killed
    """
    # The terminal interrupts all processes at once; the one that asked for this decides what is to happen then.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    told = -1.0

    def tell(item: Item, _: float, share: float) -> None:
        nonlocal told
        if share - told >= _STEP:
            told = share
            with suppress(OSError):
                line.send((item, share))

    printed = io.StringIO()
    try:
        with redirect_stderr(printed):
            report = run_job(job, tell, line.poll)
    except StudyboardError as reason:
        report = DeliveryReport(job, problem=str(reason), whole=False)
    except Exception as reason:
        # One study must not take the others along, whatever is wrong with it.
        report = DeliveryReport(job, problem=f"{type(reason).__name__}: {reason}", whole=False)
    lines = tuple(printed.getvalue().splitlines())
    # Where the other end is gone, nobody wants to know any more.
    with suppress(OSError):
        line.send(DeliveryReport(job, report.delivered, (*lines, *report.remarks), report.problem, report.whole))
