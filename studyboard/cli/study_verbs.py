"""The verbs new and pgn."""

from __future__ import annotations

import json
import sys
from dataclasses import asdict
from pathlib import Path

import chess

from studyboard.board.naming import in_figures
from studyboard.cli.sources import load_game, load_study, print_remark, report_problems
from studyboard.model.errors import StudyboardError
from studyboard.model.position_study import position_study
from studyboard.notation.pgn_reader import Problem
from studyboard.notation.pgn_writer import pgn_remarks, pgn_text
from studyboard.store.study_file import StudyFile


def new(path: Path, game: Path | None, number: int | None, fen: str | None, *, as_json: bool) -> int:
    """Make a study from a game or a position; 1 where part of the game could not be read."""
    problems: tuple[Problem, ...] = ()
    if game is not None:
        read = load_game(game, number)
        report_problems(game, read)
        problems, study = read.problems, read.study
    else:
        if number is not None:
            raise StudyboardError("--number chooses a game of a PGN file: it goes with --game.")
        if fen is None or not fen.strip():
            raise StudyboardError(f"--fen needs a position, such as “{chess.STARTING_FEN}”.")
        study = position_study(fen)
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
            "problems": [asdict(problem) for problem in problems],
        }
        print(json.dumps(report, indent=2, ensure_ascii=False))
    else:
        print(f"{path}: {in_figures(main_line, 'half-move')}, {in_figures(side_lines, 'side-line')}")
    return 1 if problems else 0


def pgn(path: Path, number: int | None, *, spoken: bool) -> int:
    """Print the annotated game; 1 where part of it could not be read."""
    loaded = load_study(path, number)
    for remark in pgn_remarks(loaded.study, spoken=spoken):
        print_remark(remark)
    sys.stdout.write(pgn_text(loaded.study, spoken=spoken))
    return 0 if loaded.whole else 1
