"""Prints how long lanes and ruler take on large trees: laying out, stepping to the painted row, folding, finding.

Run: QT_QPA_PLATFORM=offscreen python tests/bench/bench_lanes.py
"""

from __future__ import annotations

import os
import random
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import chess
from PySide6.QtWidgets import QApplication, QWidget

from studyboard.desk.lane_layout import lay_out
from studyboard.desk.lanes import Lanes
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.desk.time_ruler import TimeRuler
from studyboard.model import stepping
from studyboard.model.jumps import is_unwritten, next_beat
from studyboard.model.node import Node
from studyboard.model.script import Cue, SpokenLine, words
from studyboard.model.study import Changed, Study
from studyboard.notation.finding import find
from studyboard.store.study_file import StudyFile

NODES = 5_000
NESTED = 3_000
WORDS = words("the rook lifts over to meet this knight before White can castle and then every pawn on that wing falls")


def grown(rng: random.Random, nodes: int) -> Study:
    """A main line of 160 half-moves with side-lines of about eight everywhere, half of all nodes with a line."""
    study = Study()
    boards = {0: chess.Board()}
    tip = 0
    while len(study.nodes) < nodes:
        if len(study.nodes) >= 160 and rng.random() < 0.12:
            tip = rng.randrange(len(study.nodes))
        played = {study.nodes[child].move for child in study.nodes[tip].children}
        moves = [move for move in boards[tip].legal_moves if move not in played]
        if not moves:
            tip = rng.randrange(len(study.nodes))
            continue
        tip = _add(study, boards, tip, rng.choice(moves), " ".join(rng.sample(WORDS, 12)) if rng.random() < 0.5 else "")
    return study


def nested(depth: int) -> Study:
    """A side-line in a side-line in a side-line, *depth* times: knights out and home."""
    study = Study()
    boards = {0: chess.Board()}
    tip = 0
    cycle = (("g1f3", "b1c3"), ("g8f6", "b8c6"), ("f3g1", "c3b1"), ("f6g8", "c6b8"))
    for step in range(depth):
        main, other = cycle[step % 4]
        if boards[tip].piece_at(chess.parse_square(other[:2])) is None:
            main, other = other, main
        _add(study, boards, tip, chess.Move.from_uci(_legal(boards[tip], main)), "")
        tip = _add(study, boards, tip, chess.Move.from_uci(_legal(boards[tip], other)), "")
    return study


def _legal(board: chess.Board, uci: str) -> str:
    if chess.Move.from_uci(uci) in board.legal_moves:
        return uci
    knights = [move.uci() for move in board.legal_moves if board.piece_type_at(move.from_square) == chess.KNIGHT]
    return min(knights, key=lambda move: (move != uci, move))


def _add(study: Study, boards: dict[int, chess.Board], parent: int, move: chess.Move, text: str) -> int:
    node = study.next_id
    study.next_id += 1
    study.nodes[node] = Node(node, parent, move, spoken=SpokenLine(text, (Cue(0, node),) if text else ()))
    study.nodes[parent] = replace(study.nodes[parent], children=(*study.nodes[parent].children, node))
    boards[node] = boards[parent].copy(stack=False)
    boards[node].push(move)
    return node


def timed(work: Callable[[], object]) -> float:
    """How long *work* takes (ms)."""
    begin = time.perf_counter()
    work()
    return (time.perf_counter() - begin) * 1000


def report(name: str, times: Iterable[float]) -> None:
    """One line with median and 95th percentile."""
    figures = sorted(times)
    worst = figures[min(len(figures) - 1, round(0.95 * len(figures)))]
    print(f"{name:<58} median {statistics.median(figures):7.2f} ms   p95 {worst:7.2f} ms   n {len(figures)}")


def step(session: Session, widget: QWidget, node: int | None) -> float:
    """From the wish to see a node to its row being painted (ms)."""

    def work() -> None:
        session.show(node)
        widget.repaint()

    return timed(work)


def folded(lanes: Lanes, lines: list[int], back: bool = False) -> float:
    """Folding these lines away, painted (ms); *back*: they are shown again afterwards."""

    def work() -> None:
        lanes.fold(*lines)
        lanes.viewport().repaint()

    took = timed(work)
    if back:
        lanes.unfold(*lines)
    return took


def unfolded(lanes: Lanes, lines: list[int], back: bool = False) -> float:
    """Showing these lines again, painted (ms); *back*: they were folded away before, all of them."""
    if back:
        lanes.fold(*lines)

    def work() -> None:
        lanes.unfold(*lines)
        lanes.viewport().repaint()

    return timed(work)


def repainted(ruler: TimeRuler) -> float:
    """The ruler at a slightly other scale, painted (ms)."""
    ruler.zoom(1.01)
    return timed(ruler.repaint)


def bench(name: str, study: Study, folder: Path, look: Look, rng: random.Random) -> None:
    """Print the figures of one study."""
    layout = lay_out(study)
    print(f"\n{name}: {len(study.nodes)} nodes, {len(layout.lines)} lines, {layout.lanes} lanes, {layout.rows} rows")
    report("laying out", (timed(lambda: lay_out(study)) for _ in range(20)))
    session = Session(StudyFile.create(folder / f"{name.replace(' ', '-')}.studyboard", study))
    lanes = Lanes(session, look)
    lanes.resize(752, 560)
    lanes.show()
    QApplication.processEvents()
    study = session.study
    walk = list(study.main_line())[:200]
    report("one step down, to the painted row", (step(session, lanes, node) for node in walk))
    anywhere = rng.sample(list(study.nodes), 200)
    report("jump to any node, to the painted row", (step(session, lanes, node) for node in anywhere))
    up = []
    for _ in range(200):
        up.append(step(session, lanes, stepping.back(study, session.node)))
    report("one step back, to the painted row", up)
    bar = lanes.verticalScrollBar()
    scrolls = []
    for position in range(0, min(bar.maximum(), 200 * 40), 40):
        bar.setValue(position)
        scrolls.append(timed(lanes.viewport().repaint))
    report("scrolling by 40 px, painted", scrolls)
    lines = [line for line in layout.lines if line != study.root]
    session.show(study.root)
    report("folding one line, painted", (folded(lanes, [line]) for line in rng.sample(lines, 40)))
    report("unfolding one line, painted", (unfolded(lanes, [line]) for line in sorted(lanes.folded)[:40]))
    report("folding every line, painted", (folded(lanes, lines, back=True) for _ in range(10)))
    report("unfolding every line, painted", (unfolded(lanes, lines, back=True) for _ in range(10)))
    session.show(study.root)
    positions = session.positions
    last = positions.board(list(study.main_line())[-1]).fen()
    for sought in ("Nf3", "knight takes e5", "castles", "the rook lifts over", last):
        report(
            f"finding “{sought[:20]}”", (timed(lambda sought=sought: find(study, positions, sought)) for _ in range(20))
        )
    wanted = next_beat(study, study.root, is_unwritten)
    report("jumping to what is unwritten", (timed(lambda: next_beat(study, wanted, is_unwritten)) for _ in range(20)))
    edits = []
    for node in anywhere[:20]:
        edits.append(timed(lambda node=node: session.changed.emit(Changed(nodes={node}))))
    report("taking in a changed line", edits)
    lanes.close()

    ruler = TimeRuler(session, look)
    ruler.resize(1334, ruler.sizeHint().height())
    ruler.show()
    report("timing the talk anew for the ruler", (timed(ruler._replan) for _ in range(3)))
    QApplication.processEvents()
    print(f"{len(session.timeline.stretches)} beats on the ruler")
    report("ruler, painted", (timed(ruler.repaint) for _ in range(60)))
    report("ruler after a change of scale, painted", (repainted(ruler) for _ in range(30)))
    ruler.zoom(8.0)
    report("ruler at 8 times the scale, painted", (timed(ruler.repaint) for _ in range(60)))
    ruler.close()
    session.file.close()


def main() -> None:
    """Both trees."""
    application = QApplication(sys.argv[:1])
    look = Look()
    rng = random.Random(7)
    with tempfile.TemporaryDirectory() as folder:
        bench("a grown tree", grown(rng, NODES), Path(folder), look, rng)
        bench("nested side-lines", nested(NESTED), Path(folder), look, rng)
    del application


if __name__ == "__main__":
    main()
