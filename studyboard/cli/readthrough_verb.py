"""The verb readthrough."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import chess
from rich.console import Console
from rich.text import Text

from studyboard.cli.progress import progress_of
from studyboard.cli.sources import load_study, print_remark
from studyboard.model.errors import StudyboardError
from studyboard.model.position_study import position_study
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.reading.findings import Finding, ReadThrough
from studyboard.reading.read_through import judge, read_through


class ReadThroughRefusedError(StudyboardError):
    """What was asked for cannot be checked; the message says why."""


def readthrough(
    path: Path | None,
    number: int | None,
    fen: str | None,
    say: str | None,
    *,
    whole_report: bool = False,
    as_json: bool,
) -> int:
    """Check a study's script, or a text beside a position, and print what came out.

    say: what is said of the position; ``-`` reads it from standard input
    whole_report: print what is confirmed and what is left unchecked too, not only how much

    1 where there is a query, or part of a game could not be read.
    """
    whole = True
    if path is not None and fen is None and say is None:
        loaded = load_study(path, number)
        whole = loaded.whole
        found = _with_progress(loaded.study)
        labels = _Labels(loaded.study)
        if not _says_something(loaded.study):
            print_remark(
                f"{path} has no spoken line to check; notes, such as the comments of a PGN file, are not read."
            )
    elif path is None and fen is not None and say is not None:
        if number is not None:
            raise ReadThroughRefusedError("--number chooses a game of a PGN file: it does not go with --fen.")
        board = _position(fen)
        text = sys.stdin.read() if say == "-" else say
        if not text.strip():
            raise ReadThroughRefusedError("There is nothing to check: --say needs what is said of the position.")
        found = judge(board, text)
        labels = _Labels(None)
    else:
        raise ReadThroughRefusedError("Name a study, or give both --fen and --say.")
    if as_json:
        print(json.dumps(_plain(found, labels), indent=2, ensure_ascii=False))
    else:
        _print(found, labels, whole_report=whole_report)
    return 1 if found.queries or not whole else 0


def _position(fen: str) -> chess.Board:
    if not fen.strip():
        raise ReadThroughRefusedError(f"--fen needs a position, such as “{chess.STARTING_FEN}”.")
    try:
        board = chess.Board(" ".join(fen.split()))
    except ValueError as reason:
        raise ReadThroughRefusedError(
            f"“{fen}” describes no position ({reason}). A position looks like “{chess.STARTING_FEN}”."
        ) from reason
    # What cannot be played on cannot be judged either: no check without a king, no turn for a side that gives check.
    position_study(fen)
    return board


def _says_something(study: Study) -> bool:
    return any(node.spoken for node in study.nodes.values()) or any(line.spoken for line in study.lines.values())


def _with_progress(study: Study) -> ReadThrough:
    with progress_of("Reading the script against the board") as progress:
        return read_through(study, progress=progress)


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


def _print(found: ReadThrough, labels: _Labels, *, whole_report: bool) -> None:
    console = Console(highlight=False, soft_wrap=True)
    groups = [("", found.queries)]
    if whole_report:
        groups += [("confirmed: ", found.confirmed), ("unchecked: ", found.unchecked)]
    with console.capture() as printed:
        for heading, findings in groups:
            for finding in findings:
                label = labels.of(finding.beat)
                where = f"{label}: " if label else ""
                console.print(Text(f"{heading}{where}“{finding.quote}”"))
                console.print(Text(f"    {finding.why} {finding.do if not heading else ''}".rstrip()))
        counts = f"{len(found.confirmed)} confirmed, {len(found.unchecked)} left unchecked"
        queries = (
            "no query" if not found.queries else f"{len(found.queries)} quer{'y' if len(found.queries) == 1 else 'ies'}"
        )
        console.print(Text(f"{queries}; {counts}"))
    sys.stdout.write(printed.get())
