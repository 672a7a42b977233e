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
from studyboard.timing.cuts import Cut, suggested_cuts, tie_words
from studyboard.timing.report import TimingReport, timing_report

#: Columns of seconds, and the width of a long move with its number, such as “12... Nbxd7+” (characters).
_COLUMNS = ("intended", "estimated", "recorded", "rehearsed")
_LABEL = 12


def timing(path: Path, number: int | None, *, cuts: bool = False, as_json: bool) -> int:
    """Print every beat with its seconds; 1 where the talk runs over its slot or a game could not all be read.

    cuts: print too what could be left out, the best first
    """
    loaded = load_study(path, number)
    report = timing_report(loaded.study)
    plain = _timing_plain(report)
    if cuts:
        found = suggested_cuts(loaded.study)
        plain["cuts"] = [_cut_plain(loaded.study, cut) for cut in found]
    if as_json:
        print(json.dumps(plain, indent=2, ensure_ascii=False))
    else:
        print_timing(loaded.study, report)
        if cuts:
            _print_cuts(loaded.study, report, found)
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


def _cut_plain(study: Study, cut: Cut) -> dict[str, object]:
    positions = Positions(study)
    return {
        "node": cut.start,
        "move": move_label(positions, cut.start),
        "seconds": round(cut.seconds, 1),
        "beats": cut.beats,
        "depends": [{"why": str(tie.why), "node": tie.node} for tie in cut.ties],
        "enough": cut.enough,
    }


def _print_cuts(study: Study, report: TimingReport, cuts: tuple[Cut, ...]) -> None:
    positions = Positions(study)
    table = Table(box=None, pad_edge=False)
    for name in ("leave out", "seconds", "beats", "what depends on it"):
        table.add_column(name, justify="left" if name in ("leave out", "what depends on it") else "right")
    for cut in cuts:
        label = ("* " if cut.enough else "  ") + move_label(positions, cut.start)
        ties = " ".join(tie_words(positions, tie) for tie in cut.ties)
        table.add_row(Text(label), f"{cut.seconds:.1f}", str(cut.beats), Text(ties))
    console = Console(highlight=False)
    with console.capture() as printed:
        console.print()
        console.print(table)
        console.print(_cuts_summary(report, cuts))
    sys.stdout.write(printed.get())


def _cuts_summary(report: TimingReport, cuts: tuple[Cut, ...]) -> str:
    if report.over is None:
        return "No slot is set, so nothing says how much to leave out."
    if report.over <= 0:
        return "The talk is within its slot: nothing need be left out."
    gained = sum(cut.seconds for cut in cuts if cut.enough)
    left = report.over - gained
    return "Without those with a star the talk is " + over_or_under(left) + "."


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
