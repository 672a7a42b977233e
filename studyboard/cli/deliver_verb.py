"""The verb deliver."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Collection, Mapping
from contextlib import ExitStack
from pathlib import Path
from types import MappingProxyType
from typing import Any

from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn

from studyboard.cli.sources import is_study, load_study, print_remark
from studyboard.delivery.deliver import QUICK, Delivered, deliver
from studyboard.delivery.product import Item
from studyboard.model.study import Study
from studyboard.sound.narration import TakeNarration
from studyboard.store.study_file import StudyFile
from studyboard.timing.recorded import talk, whole_take


def deliver_study(
    path: Path,
    number: int | None,
    to: Path,
    wanted: Collection[Item],
    *,
    options: Mapping[Item, Any],
    again: bool = False,
    as_json: bool,
) -> int:
    """Write what is wanted of a study, everything but the video if nothing is named, and print what was written.

    1 where part of a game could not be read, or something that was named could not be made.
    """
    loaded = load_study(path, number)
    remarks: list[str] = []
    with ExitStack() as opened:
        narration = None
        take = whole_take(loaded.study)
        if take is not None and is_study(path):
            file = opened.enter_context(StudyFile.open(path, read_only=True))
            narration = TakeNarration(file.sound, take)
        written = deliver_with_progress(
            loaded.study,
            to,
            wanted,
            options=options,
            narration=narration,
            again=again,
            remark=remarks.append,
        )
    if as_json:
        files = [{"item": str(one.item), "path": str(one.path), "kept": one.kept} for one in written]
        print(json.dumps({"delivered": files, "remarks": remarks}, indent=2, ensure_ascii=False))
    else:
        for one in written:
            print(f"{one.path} (kept)" if one.kept else one.path)
    for sentence in remarks:
        print_remark(sentence)
    return 0 if loaded.whole and {one.item for one in written}.issuperset(wanted) else 1


def deliver_with_progress(
    study: Study,
    to: Path,
    wanted: Collection[Item],
    *,
    options: Mapping[Item, Any] = MappingProxyType({}),
    again: bool = False,
    narration: TakeNarration | None = None,
    remark: Callable[[str], None] = print_remark,
) -> list[Delivered]:
    """Deliver with a progress bar on the terminal; nothing is drawn where standard error is none."""
    console = Console(stderr=True)
    columns = (TextColumn("{task.description}"), BarColumn(), TimeElapsedColumn())
    with Progress(*columns, console=console, transient=True, disable=not sys.stderr.isatty()) as bar:
        task = bar.add_task("Delivering", total=1.0)

        def show(item: Item, _: float, share: float) -> None:
            bar.update(task, completed=share, description=item.value)

        return deliver(
            study,
            to,
            wanted or QUICK,
            options=options,
            timeline=talk(study),
            narration=narration,
            again=again,
            progress=show,
            remark=remark,
        )
