"""The verb deliver."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType
from typing import Any

from rich.progress import Progress, TaskID

from studyboard.cli.delivery_batch import deliver_batch, folders, usual_parallel
from studyboard.cli.delivery_job import DeliveryJob, DeliveryReport, run_job
from studyboard.cli.progress import progress_bar
from studyboard.cli.sources import NoSuchGameError, print_remark
from studyboard.delivery.deliver import QUICK, Delivered, deliver
from studyboard.delivery.product import Item
from studyboard.model.study import Study
from studyboard.sound.levelling import TARGETS
from studyboard.timing.recorded import talk


def deliver_studies(
    paths: Sequence[Path],
    number: int | None,
    to: Path,
    wanted: Sequence[Item],
    *,
    options: Mapping[Item, Any],
    again: bool = False,
    parallel: int | None = None,
    loudness: str = "-18",
    scratch_voice: bool = False,
    as_json: bool,
) -> int:
    """Write what is wanted of studies, all that is quick if nothing is named, and print what was written.

    One study goes into the folder itself, several into folders of their own inside it.

    loudness: one of TARGETS
    scratch_voice: a plan that is not recorded is spoken by a synthesiser

    1 where part of a game could not be read, something that was named could not be made, or one of several studies
    could not be delivered. Raises StudyboardError where a single one cannot be.
    """
    target = TARGETS[loudness]
    jobs = [
        DeliveryJob(path, number, folder, tuple(wanted), options, again, target, scratch_voice)
        for path, folder in folders(paths, to)
    ]
    if len(paths) > 1:
        if number is not None:
            raise NoSuchGameError("With several files --number says nothing: deliver the game alone, or leave it out.")
        return _deliver_several(jobs, min(parallel or usual_parallel(), len(jobs)), as_json=as_json)
    job = replace(jobs[0], to=to)
    with progress_bar() as bar:
        task = bar.add_task("Delivering", total=1.0)
        report = run_job(job, _shown_on(bar, task))
    if as_json:
        print(json.dumps(_plain(report), indent=2, ensure_ascii=False))
    else:
        _print_files(report)
    for sentence in report.remarks:
        print_remark(sentence)
    return 0 if report.whole else 1


def _deliver_several(jobs: Sequence[DeliveryJob], parallel: int, *, as_json: bool) -> int:
    with progress_bar() as bar:
        whole = bar.add_task(f"{len(jobs)} studies", total=len(jobs))
        tasks: dict[Path, TaskID] = {}

        def told(job: DeliveryJob, item: Item, share: float) -> None:
            if job.path not in tasks:
                tasks[job.path] = bar.add_task(job.to.name, total=1.0)
            bar.update(tasks[job.path], completed=share, description=f"{job.to.name}: {item}")

        def done(report: DeliveryReport) -> None:
            if report.job.path in tasks:
                bar.remove_task(tasks.pop(report.job.path))
            bar.advance(whole)
            if not as_json:
                _print_files(report)
            for sentence in report.remarks:
                print_remark(f"{report.job.path}: {sentence}")

        reports = deliver_batch(jobs, parallel, told, done)
    if as_json:
        plain = [{"study": str(one.job.path), "to": str(one.job.to), **_plain(one)} for one in reports]
        print(json.dumps({"studies": plain}, indent=2, ensure_ascii=False))
    failed = [report for report in reports if report.problem]
    if failed:
        print_remark(f"{len(failed)} of {len(reports)} studies could not be delivered:")
        for report in failed:
            print(f"  {report.job.path}: {report.problem}", file=sys.stderr)
    return 0 if all(report.whole for report in reports) else 1


def deliver_with_progress(
    study: Study,
    to: Path,
    wanted: Collection[Item] = QUICK,
    *,
    options: Mapping[Item, Any] = MappingProxyType({}),
) -> list[Delivered]:
    """Deliver a study that lies in no file."""
    with progress_bar() as bar:
        task = bar.add_task("Delivering", total=1.0)
        return deliver(
            study,
            to,
            wanted,
            options=options,
            timeline=talk(study),
            progress=_shown_on(bar, task),
            remark=print_remark,
        )


def _shown_on(bar: Progress, task: TaskID) -> Callable[[Item, float, float], None]:
    def show(item: Item, _: float, share: float) -> None:
        bar.update(task, completed=share, description=item.value)

    return show


def _print_files(report: DeliveryReport) -> None:
    for one in report.delivered:
        print(f"{one.path} (kept)" if one.kept else one.path, flush=True)


def _plain(report: DeliveryReport) -> dict[str, Any]:
    files = [{"item": str(one.item), "path": str(one.path), "kept": one.kept} for one in report.delivered]
    return {
        "delivered": files,
        "remarks": list(report.remarks),
        **({"problem": report.problem} if report.problem else {}),
    }
