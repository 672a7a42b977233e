"""Prints how long facts, mate searches and one line of the read-through take.

python tests/bench/bench_facts.py
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

import chess

from studyboard.board.exchange import best_exchange
from studyboard.board.facts import facts
from studyboard.board.forced_wins import forced_win
from studyboard.board.lines import relative_pins, skewers
from studyboard.board.mates import mate_in
from studyboard.board.tactics import forks, guards, trapped
from studyboard.example import example_study
from studyboard.model.positions import Positions
from studyboard.model.script import Part
from studyboard.reading.read_through import read_line, read_through

MIDDLEGAMES = (
    "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9",
    "r2q1rk1/pb2bppp/1pn1pn2/3p4/2PP4/1PNB1N2/PB3PPP/R2Q1RK1 w - - 0 11",
    "2r2rk1/1bqnbppp/p2ppn2/1p6/3NPP2/P1NBB3/1PP1Q1PP/4RR1K w - - 0 15",
    "r2qr1k1/1b1n1pbp/p2p1np1/1ppP4/4P3/P1NBBN1P/1P1Q1PP1/R3R1K1 w - - 0 16",
    "r4rk1/1pp2ppp/p1nqbn2/3p4/3P4/2NBPN2/PP3PPP/R2Q1RK1 b - - 0 12",
    "3r1rk1/ppq2ppp/2p1bn2/4p3/4P3/1QP2N1P/PP3PP1/R3RBK1 w - - 0 19",
)


def clock(name: str, work: Callable[[chess.Board], object]) -> None:
    times = []
    for fen in MIDDLEGAMES:
        board = chess.Board(fen)
        begun = time.perf_counter()
        work(board)
        times.append(time.perf_counter() - begun)
    print(f"{name:44} median {1000 * statistics.median(times):9.1f} ms   worst {1000 * max(times):9.1f} ms")


def every_exchange(board: chess.Board) -> None:
    for square in chess.scan_forward(board.occupied_co[not board.turn]):
        best_exchange(board, square)


def main() -> None:
    clock("facts of a position", facts)
    clock("every exchange", every_exchange)
    clock("pins and skewers", lambda board: (relative_pins(board), skewers(board)))
    clock("forks, guards, trapped pieces", lambda board: (forks(board), guards(board), trapped(board)))
    clock("no mate in 1", lambda board: mate_in(board, 1))
    clock("no mate in 2", lambda board: mate_in(board, 2))
    clock("no mate in 3", lambda board: mate_in(board, 3))
    clock("no mate in 6 by checks", lambda board: mate_in(board, 6, checks_only=True))
    clock("material by force, 2 moves", lambda board: forced_win(board, 2))

    study = example_study()
    positions = Positions(study)
    read_line(study, positions, study.root)
    times = []
    for key in [node.id for node in study.nodes.values() if node.spoken] + list(Part):
        begun = time.perf_counter()
        read_line(study, positions, key)
        times.append(1000 * (time.perf_counter() - begun))
    times.sort()
    print(
        f"{'one line of the example':44} median {statistics.median(times):9.1f} ms"
        f"   95 %  {times[int(0.95 * len(times))]:9.1f} ms   worst {times[-1]:6.1f} ms"
    )
    begun = time.perf_counter()
    read_through(study)
    print(f"{'the whole example':44} {1000 * (time.perf_counter() - begun):16.1f} ms")


if __name__ == "__main__":
    main()
