"""Prints how long a study of 5,000 nodes takes to open, how long an edit takes to be safe, and the size of the file.

Run: python tests/bench/bench_open.py [FOLDER]; the folder decides which disk is measured.
"""

from __future__ import annotations

import random
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import chess
import numpy as np

from studyboard.model.edits import AddMove, ChangeNode, InsertBranch
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Node
from studyboard.model.script import Cue, SpokenLine, words
from studyboard.model.study import Changed, Study
from studyboard.store.study_file import StudyFile

NODES = 5_000
EDITS = 1_000
WORDS = words("the rook lifts over to meet this knight before White can castle and then every pawn on that wing falls")


def big_study(rng: random.Random) -> Study:
    """A main line of 120 half-moves with side-lines everywhere, a spoken line and a note at every node."""
    study = Study()
    boards = {0: chess.Board()}
    while len(study.nodes) < NODES:
        parent = len(study.nodes) - 1 if len(study.nodes) < 120 else rng.choice(list(boards))
        board = boards[parent]
        played = {study.nodes[child].move for child in study.nodes[parent].children}
        moves = [move for move in board.legal_moves if move not in played]
        if not moves:
            continue
        move = rng.choice(moves)
        number = study.next_id
        AddMove(parent, move, number).apply(study, Changed())
        after = board.copy(stack=False)
        after.push(move)
        boards[number] = after
    for number, node in study.nodes.items():
        text = " ".join(rng.choices(WORDS, k=25)).capitalize() + "."
        marks = (Mark(MarkKind.THREAT, (rng.randrange(64), rng.randrange(64))), Mark(MarkKind.TARGET, (28,)))
        study.nodes[number] = Node(
            number,
            node.parent,
            node.move,
            node.children,
            spoken=SpokenLine(text, (Cue(3, node=number), Cue(8, mark=0))),
            note=" ".join(rng.choices(WORDS, k=12)),
            marks=marks,
            nags=(1,),
            intended=8.0,
        )
    return study


def timed(work: Callable[[], object], times: int) -> list[float]:
    """Seconds of each of several runs."""
    seconds = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        seconds.append(time.perf_counter() - start)
    return seconds


def spread(seconds: list[float]) -> str:
    """Median and 95th percentile in milliseconds."""
    ordered = sorted(seconds)
    return f"p50 {1e3 * statistics.median(ordered):7.2f} ms   p95 {1e3 * ordered[int(0.95 * len(ordered))]:7.2f} ms"


def main() -> None:
    """Measure and print."""
    rng = random.Random(7)
    study = big_study(rng)
    with tempfile.TemporaryDirectory(dir=sys.argv[1] if len(sys.argv) > 1 else None) as folder:
        path = Path(folder) / "big.studyboard"
        made = timed(lambda: StudyFile.create(path, study, overwrite=True).close(), 5)
        print(f"create, {len(study.nodes):,} nodes      {spread(made)}")
        print(f"size                     {path.stat().st_size / 1e6:7.2f} MB")
        print(f"open to work and close   {spread(timed(lambda: StudyFile.open(path).close(), 20))}")
        print(f"open to read and close   {spread(timed(lambda: StudyFile.open(path, read_only=True).close(), 20))}")
        with StudyFile.open(path) as file:
            numbers = iter(range(EDITS))

            def type_text() -> None:
                node = next(numbers) % NODES
                file.do(ChangeNode(node, "spoken", SpokenLine(" ".join(rng.choices(WORDS, k=30)))))

            print(f"edit a spoken line       {spread(timed(type_text, EDITS))}")
            print(f"undo                     {spread(timed(file.undo, EDITS))}")
            print(f"redo                     {spread(timed(file.redo, EDITS))}")
            branch = _branch(file.study, 1_000)
            print(f"insert 1,000 nodes       {spread(timed(lambda: file.do(branch), 1))}")
            print(f"take them back           {spread(timed(file.undo, 1))}")
            second = _second()
            take = file.sound.begin_take("bench", 48_000, "2030-01-01T12:00:00+00:00")
            print(f"append a second of sound {spread(timed(lambda: file.sound.append_sound(take, second), 300))}")
            file.sound.finish_take(take)
            seconds = timed(lambda: file.sound.read_sound(take, rng.randrange(299) * 48_000, 48_000), 300)
            print(f"read a second of sound   {spread(seconds)}")
        print(f"open and close, later on {spread(timed(lambda: StudyFile.open(path).close(), 20))}")
        print(f"size                     {path.stat().st_size / 1e6:7.2f} MB")


def _second() -> bytes:
    """A second of a hum in a quiet room, which is compressed like speech; noise alone cannot be."""
    at = np.arange(48_000)
    sound = 3_000 * np.sin(at / 35) * np.abs(np.sin(at / 4_000)) + np.random.default_rng(1).normal(0, 18, len(at))
    return bytes(np.rint(sound).astype("<i2").tobytes())


def _branch(study: Study, size: int) -> InsertBranch:
    """A branch of null moves: legal or not does not matter to the store."""
    first = study.next_id
    nodes = [
        Node(first + i, first + i - 1 if i else 0, chess.Move.null(), (first + i + 1,) if i + 1 < size else ())
        for i in range(size)
    ]
    return InsertBranch(tuple(nodes))


if __name__ == "__main__":
    main()
