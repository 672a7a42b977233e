"""The verb readthrough."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import chess
from rich.console import Console
from rich.progress import Progress
from rich.text import Text

from studyboard.cli.sources import load_study
from studyboard.model.errors import StudyboardError
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.reading.findings import Finding, ReadThrough
from studyboard.reading.read_through import judge, read_through


class ReadThroughRefusedError(StudyboardError):
    """What was asked for cannot be checked; the message says why."""


def readthrough(path: Path | None, number: int | None, fen: str | None, say: str | None, *, as_json: bool) -> int:
    """Check a study's script, or a text beside a position, and print what came out.

    1 where there is a query, or part of a game could not be read.
    """
    whole = True
    if path is not None and fen is None and say is None:
        loaded = load_study(path, number)
        whole = loaded.whole
        found = _with_progress(loaded.study)
        labels = _Labels(loaded.study)
    elif path is None and fen is not None and say is not None:
        try:
            found = judge(chess.Board(fen), say)
        except ValueError as reason:
            raise ReadThroughRefusedError(
                f"“{fen}” describes no position ({reason}). A position looks like “{chess.STARTING_FEN}”."
            ) from reason
        labels = _Labels(None)
    else:
        raise ReadThroughRefusedError("Name a study, or give both --fen and --say.")
    if as_json:
        print(json.dumps(_plain(found, labels), indent=2, ensure_ascii=False))
    else:
        _print(found, labels)
    return 1 if found.queries or not whole else 0


def _with_progress(study: Study) -> ReadThrough:
    if not sys.stderr.isatty():
        return read_through(study)
    with Progress(console=Console(stderr=True), transient=True) as shown:
        task = shown.add_task("Reading the script against the board", total=1.0)
        return read_through(study, progress=lambda share: shown.update(task, completed=share))


class _Labels:
    """Names of beats: “16. Ne4”, “closing”."""

    def __init__(self, study: Study | None) -> None:
        self.study = study
        self.positions = None if study is None else Positions(study)

    def of(self, key: BeatKey | None) -> str:
        if key is None or self.study is None or self.positions is None:
            return ""
        if isinstance(key, Part):
            return key.value
        return move_label(self.positions, key) if self.study.nodes[key].move is not None else "start"

    def plain(self, key: BeatKey | None) -> object:
        if key is None:
            return None
        node = None if isinstance(key, Part) else key
        return {"node": node, "part": key.value if isinstance(key, Part) else None, "move": self.of(key)}


def _plain(found: ReadThrough, labels: _Labels) -> dict[str, list[dict[str, object]]]:
    groups = (("queries", found.queries), ("confirmed", found.confirmed), ("unchecked", found.unchecked))
    return {name: [_finding(finding, labels) for finding in group] for name, group in groups}


def _finding(finding: Finding, labels: _Labels) -> dict[str, object]:
    plain: dict[str, object] = {
        "quote": finding.quote,
        "kind": finding.kind.value,
        "why": finding.why,
        "beat": labels.plain(finding.beat),
        "claimed": finding.claimed,
        "start": finding.start,
        "end": finding.end,
        "squares": [chess.square_name(square) for square in finding.squares],
        "line": list(finding.line),
    }
    if finding.do:
        plain["do"] = finding.do
    if finding.fix is not None:
        plain["fix"] = {"start": finding.fix.start, "end": finding.fix.end, "text": finding.fix.text}
    return plain


def _print(found: ReadThrough, labels: _Labels) -> None:
    console = Console(highlight=False, soft_wrap=True)
    with console.capture() as printed:
        for query in found.queries:
            label = labels.of(query.beat)
            console.print(Text(f"{label}: “{query.quote}”" if label else f"“{query.quote}”"))
            console.print(Text(f"    {query.why} {query.do}".rstrip()))
        counts = f"{len(found.confirmed)} confirmed, {len(found.unchecked)} left unchecked"
        queries = (
            "no query" if not found.queries else f"{len(found.queries)} quer{'y' if len(found.queries) == 1 else 'ies'}"
        )
        console.print(Text(f"{queries}; {counts}"))
    sys.stdout.write(printed.get())
