"""How long a study sheet with many diagrams takes, and a still: python tests/bench/bench_sheet.py [diagrams]."""

from __future__ import annotations

import random
import statistics
import sys
import time

from studyboard.delivery.sheet import sheet_data, sheet_pdf
from studyboard.delivery.sheet_options import SheetOptions
from studyboard.delivery.still import still_pictures
from studyboard.delivery.still_options import StillOptions, StillShape
from studyboard.model.edits import ChangeNode, add_move, apply
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.positions import Positions
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study


def marked_study(diagrams: int) -> Study:
    """A random game in which every position has a mark, a note and a spoken line."""
    chance = random.Random(4)
    study = Study({"White": "Halvorse, Maja", "Black": "Nduka, Ade", "Event": "Bench", "Result": "*"})
    positions = Positions(study)
    at = study.root
    for _ in range(diagrams):
        move = chance.choice(sorted(positions.board(at).legal_moves, key=str))
        edit = add_move(study, at, move)
        apply(study, edit)
        at = edit.node
        mark = Mark(MarkKind.THREAT, (move.from_square, move.to_square))
        apply(study, ChangeNode(at, "marks", (mark, Mark(MarkKind.TARGET, (move.to_square,)))))
        apply(study, ChangeNode(at, "spoken", SpokenLine("and every piece looks one way, at the king. " * 3)))
        apply(study, ChangeNode(at, "note", "Compare the position after the exchange on e5. " * 4))
    return study


def main() -> None:
    """Print the time of each part."""
    diagrams = int(sys.argv[1]) if len(sys.argv) > 1 else 40
    study = marked_study(diagrams)
    whole, data, busy = [], [], []
    for _ in range(7):
        start = time.perf_counter()
        sheet_data(study, Positions(study), SheetOptions())
        data.append(time.perf_counter() - start)
        start, worked = time.perf_counter(), time.process_time()
        pdf = sheet_pdf(study)
        whole.append(time.perf_counter() - start)
        busy.append(time.process_time() - worked)
    median, size = statistics.median(whole), len(pdf) / 1e3
    print(f"{diagrams} diagrams: first {whole[0]:.3f} s, median {median:.3f} s, {size:.0f} kB")
    print(f"of the processor: first {busy[0]:.3f} s, median {statistics.median(busy):.3f} s")
    print(f"of that, drawing the boards and writing the story: {statistics.median(data):.3f} s")
    for place, node in enumerate(list(study.main_line())[::8]):
        if place:
            apply(study, ChangeNode(node, "think", 8.0))
    for name, options in (("with exercises", SheetOptions()), ("in large print", SheetOptions(large_print=True))):
        start, worked = time.perf_counter(), time.process_time()
        sheet_pdf(study, options=options)
        print(f"{name}: {time.perf_counter() - start:.3f} s, {time.process_time() - worked:.3f} s of the processor")
    for shape in (StillShape.WIDE, StillShape.TALL):
        start, worked = time.perf_counter(), time.process_time()
        still_pictures(study, options=StillOptions(shape=shape))
        took, busy_for = time.perf_counter() - start, time.process_time() - worked
        print(f"a {shape} still: {took:.3f} s, {busy_for:.3f} s of the processor")


if __name__ == "__main__":
    main()
