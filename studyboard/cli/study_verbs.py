"""The verbs new, timing and pgn."""

from __future__ import annotations

import json
import sys
from dataclasses import asdict
from pathlib import Path

from rich.console import Console
from rich.table import Table

from studyboard.cli.sources import load_game, load_study, report_problems
from studyboard.model.errors import StudyboardError
from studyboard.model.position_study import position_study
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.notation.pgn_writer import pgn_text
from studyboard.store.study_file import StudyFile
from studyboard.timing.clock import clock, over_or_under
from studyboard.timing.report import TimingReport, timing_report


def new(path: Path, game: Path | None, number: int | None, fen: str | None, *, as_json: bool) -> int:
    """Make a study from a game or a position; 1 where part of the game could not be read."""
    problems = 0
    if game is not None:
        read = load_game(game, number)
        report_problems(game, read)
        problems = len(read.problems)
        study = read.study
    else:
        if number is not None:
            raise StudyboardError("--number chooses a game of a PGN file: it goes with --game.")
        study = position_study(fen or "")
    with StudyFile.create(path, study):
        pass
    main_line = len(list(study.main_line())) - 1
    side_lines = sum(max(0, len(node.children) - 1) for node in study.nodes.values())
    if as_json:
        report = {
            "study": str(path),
            "half_moves": main_line,
            "side_lines": side_lines,
            "nodes": len(study.nodes),
            "problems": problems,
        }
        print(json.dumps(report, indent=2, ensure_ascii=False))
    else:
        print(f"{path}: {main_line} half-moves, {side_lines} side-lines")
    return 1 if problems else 0


def timing(path: Path, number: int | None, *, as_json: bool) -> int:
    """Print every beat with its seconds; 1 where the talk runs over its slot."""
    study = load_study(path, number)
    report = timing_report(study)
    if as_json:
        print(json.dumps(_timing_plain(report), indent=2, ensure_ascii=False))
    else:
        print_timing(study, report)
    return 1 if report.over is not None and report.over > 0.5 else 0


def pgn(path: Path, number: int | None, *, spoken: bool) -> int:
    """Print the annotated game."""
    sys.stdout.write(pgn_text(load_study(path, number), spoken=spoken))
    return 0


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
    table = Table(box=None, pad_edge=False)
    table.add_column("", justify="left", no_wrap=True)
    for name in ("intended", "estimated", "recorded", "rehearsed"):
        table.add_column(name, justify="right")
    table.add_column("spoken line", overflow="ellipsis", no_wrap=True, max_width=56)
    for beat in report.beats:
        label = beat.san if beat.node is None else move_label(positions, beat.node)
        seconds = (beat.intended, beat.estimated, beat.recorded, beat.rehearsed)
        table.add_row(label, *("" if s is None else f"{s:.1f}" for s in seconds), beat.text.replace("\n", " "))
    console = Console(highlight=False)
    console.print(table)
    console.print(_summary(report))


def _summary(report: TimingReport) -> str:
    total = clock(report.total)
    if report.slot is None or report.over is None:
        return f"total {total}; no slot is set"
    return f"total {total}, slot {clock(report.slot)}: {over_or_under(report.over)}"
