"""Prints how well spoken moves are understood: python tests/bench/narration_accuracy.py FOLDER [FOLDER ...]"""

from __future__ import annotations

import sys
import time
import tomllib
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import chess

from studyboard.model.edits import add_move, apply
from studyboard.model.study import Study
from studyboard.notation.narration.narration import Narration
from studyboard.notation.narration.reading import read_narration


@dataclass(frozen=True, slots=True)
class Score:
    """Counts of one narration. extra: side-line half-moves that are in no side-line of the file."""

    main_right: int
    main_all: int
    side_right: int
    side_all: int
    extra: int
    mentions_right: int
    mentions_all: int
    seconds: float

    def __add__(self, other: Score) -> Score:
        return Score(*(getattr(self, name) + getattr(other, name) for name in Score.__slots__))


def sans(moves: str | list[str]) -> list[str]:
    """Moves as a list, from a list or from one text."""
    return moves.split() if isinstance(moves, str) else list(moves)


def paths(fen: str, lines: list[tuple[list[str], list[str]]]) -> set[str]:
    """Every half-move of the lines, known by the moves from the start. Raises ValueError for an impossible one."""
    found: set[str] = set()
    for after, line in lines:
        board = chess.Board(fen)
        for san in after:
            board.push_san(san)
        for san in line:
            board.push_san(san)
            found.add(" ".join(move.uci() for move in board.move_stack))
    return found


def study_of(fen: str | None, moves: list[str]) -> Study:
    """A game without side-lines."""
    study = Study(None if fen is None else {"FEN": fen, "SetUp": "1"})
    board = chess.Board() if fen is None else chess.Board(fen)
    at = study.root
    for san in moves:
        edit = add_move(study, at, board.push_san(san))
        apply(study, edit)
        at = edit.node
    return study


def longest_common(one: list[str], other: list[str]) -> int:
    """How many items both have in the same order."""
    row = [0] * (len(other) + 1)
    for item in one:
        before = 0
        for place, further in enumerate(other, 1):
            before, row[place] = row[place], max(row[place], row[place - 1], before + (item == further))
    return row[-1]


def score(truth: dict[str, Any], narration: Narration, seconds: float) -> Score:
    """Compare what was read with what a careful listener hears."""
    fen = truth.get("fen", chess.STARTING_FEN)
    main = sans(truth["main_line"])
    read_main = list(narration.main_line)
    side = paths(fen, [(sans(s["after"]), sans(s["line"])) for s in truth.get("side_lines", [])])
    read_side = paths(fen, [(list(s.after), list(s.line)) for s in narration.side_lines])
    told_on_main = paths(fen, [([], main)])
    wrong_mentions = 0
    mentions = truth.get("mentions", [])
    for mention in mentions:
        start = narration.text.find(mention["quote"])
        if start < 0:
            raise ValueError(f"the text does not hold “{mention['quote']}”")
        end = start + len(mention["quote"])
        wrong_mentions += any(move.start < end and move.end > start for move in narration.moves)
    return Score(
        longest_common(main, read_main),
        max(len(main), len(read_main)),
        len(side & read_side),
        len(side),
        len(read_side - side - told_on_main),
        len(mentions) - wrong_mentions,
        len(mentions),
        seconds,
    )


def told_of_game(truth: dict[str, Any], narration: Narration) -> Narration:
    """With the game given its main line is right by itself: count which of its moves were heard in the text."""
    heard = tuple(move.san for move in narration.moves if move.depth == 0)
    return replace(narration, main_line=heard)


def measure(path: Path, with_game: bool) -> Score:
    """Read one narration and score it."""
    truth = tomllib.loads(path.read_text(encoding="utf-8"))
    game = study_of(truth.get("fen"), sans(truth.get("game", truth["main_line"]))) if with_game else None
    fen = None if with_game else truth.get("fen")
    began = time.process_time()
    narration = read_narration(truth["text"], game=game, fen=fen, language=truth.get("language", "en"))
    seconds = time.process_time() - began
    return score(truth, told_of_game(truth, narration) if with_game else narration, seconds)


def row(name: str, result: Score) -> str:
    """One line of the table."""

    def share(right: int, whole: int) -> str:
        return f"{right:4d}/{whole:<4d}{100 * right / whole if whole else 100:6.1f} %"

    return (
        f"{name:34.34} {share(result.main_right, result.main_all)}  {share(result.side_right, result.side_all)}"
        f"  {result.extra:4d}  {share(result.mentions_right, result.mentions_all)}  {result.seconds:5.2f} s"
    )


def main() -> None:
    """Print the tables for the folders that were named."""
    files = sorted(path for folder in sys.argv[1:] for path in Path(folder).glob("*.toml"))
    if not files:
        sys.exit("usage: python tests/bench/narration_accuracy.py FOLDER [FOLDER ...]")
    for with_game in (False, True):
        print("With the game given" if with_game else "From the words alone")
        print(f"{'':34}  main line           side-lines          extra  mentions             time")
        total = Score(0, 0, 0, 0, 0, 0, 0, 0.0)
        for path in files:
            result = measure(path, with_game)
            total += result
            print(row(path.stem, result))
        print(row("all", total), end="\n\n")


if __name__ == "__main__":
    main()
