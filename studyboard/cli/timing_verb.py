"""The verb timing."""

from __future__ import annotations

import json
import sys
from dataclasses import asdict
from pathlib import Path

from rich.console import Console
from rich.table import Table
from rich.text import Text

from studyboard.cli.sources import load_study
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.timing.clock import clock, over_or_under
from studyboard.timing.report import TimingReport, timing_report

#: Columns of seconds, and the width of a long move with its number, such as “12... Nbxd7+” (characters).
_COLUMNS = ("intended", "estimated", "recorded", "rehearsed")
_LABEL = 12


def timing(path: Path, number: int | None, *, as_json: bool) -> int:
    """Print every beat with its seconds; 1 where the talk runs over its slot or a game could not all be read."""
    loaded = load_study(path, number)
    report = timing_report(loaded.study)
    if as_json:
        print(json.dumps(_timing_plain(report), indent=2, ensure_ascii=False))
    else:
        print_timing(loaded.study, report)
    over = report.over is not None and report.over > 0.5
    return 1 if over or not loaded.whole else 0


def _timing_plain(report: TimingReport) -> dict[str, object]:
    def tidy(value: object) -> object:
        return round(value, 2) if isinstance(value, float) else value

    return {
        "slot": tidy(report.slot),
        "total": tidy(report.total),
        "over": tidy(report.over),
        "beats": [{key: tidy(value) for key, value in asdict(beat).items()} for beat in report.beats],
    }


def print_timing(study: Study, report: TimingReport) -> None:
    """Print the report as a table with its sum."""
    positions = Positions(study)
    shown = [name for name in _COLUMNS if any(getattr(beat, name) is not None for beat in report.beats)]
    table = Table(box=None, pad_edge=False)
    table.add_column("", no_wrap=True, min_width=_LABEL)
    for name in shown:
        table.add_column(name, justify="right", no_wrap=True, min_width=len(name))
    table.add_column("spoken line", overflow="ellipsis", no_wrap=True, max_width=56)
    for beat in report.beats:
        label = beat.san if beat.node is None else move_label(positions, beat.node)
        seconds = (getattr(beat, name) for name in shown)
        texts = ("" if s is None else f"{s:.1f}" for s in seconds)
        table.add_row(Text(label), *texts, Text(" ".join(beat.text.split())))
    console = Console(highlight=False)
    with console.capture() as printed:
        console.print(table)
        console.print(_summary(report))
    sys.stdout.write(printed.get())


def _summary(report: TimingReport) -> str:
    total = clock(report.total)
    if report.slot is None or report.over is None:
        return f"total {total}; no slot is set"
    return f"total {total}, slot {clock(report.slot)}: {over_or_under(report.over)}"
