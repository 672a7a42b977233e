"""Prints how long complete mate searches take on thirty middlegames, and how far a longer one gets until it is stopped.

python tests/bench/bench_mates.py
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

import chess
from middlegames import middlegames

from studyboard.board.forced_wins import forced_win
from studyboard.board.mates import mate_in
from studyboard.board.work import WorkCancelledError

#: S. Loyd, London Era 1861, the pawn that goes from b2 to b8: mate in five, 1.b4 (from memory).
FIVE_MOVES = "n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1"


def clock(name: str, goal: str, boards: list[chess.Board], work: Callable[[chess.Board], object]) -> None:
    times, found = [], 0
    for board in boards:
        begun = time.perf_counter()
        found += work(board) is not None
        times.append(1000 * (time.perf_counter() - begun))
    times.sort()
    print(
        f"{name:34} {goal:10} median {statistics.median(times):8.1f} ms   95 % {times[int(0.95 * len(times))]:8.1f} ms"
        f"   worst {times[-1]:8.1f} ms   found in {found} of {len(boards)}"
    )


def stopped_after(seconds: float) -> None:
    """How far a mate in five is searched when it is stopped, and how soon it stops."""
    shares: list[float] = []
    ends = time.perf_counter() + seconds
    board = middlegames(1)[0]
    try:
        mate_in(board, 5, progress=shares.append, cancelled=lambda: time.perf_counter() > ends)
        print("mate in 5: searched to its end")
    except WorkCancelledError:
        late = 1000 * (time.perf_counter() - ends)
        print(f"mate in 5, stopped after {seconds} s: {100 * max(shares, default=0):.0f} % done, {late:.1f} ms late")


def main() -> None:
    boards = middlegames(30)
    clock("mate in 2, every move", "0.3 s", boards, lambda board: mate_in(board, 2))
    clock("mate in 3, every move", "5 s", boards, lambda board: mate_in(board, 3))
    clock("mate in 6, checks alone", "2 s", boards, lambda board: mate_in(board, 6, checks_only=True))
    clock("mate in 4, every move", "", boards[:6], lambda board: mate_in(board, 4))
    clock("material by force, 1 move", "", boards, lambda board: forced_win(board, 1))
    clock("material by force, 2 moves", "", boards, lambda board: forced_win(board, 2))
    stopped_after(3.0)
    begun = time.perf_counter()
    board = chess.Board(FIVE_MOVES)
    mate = mate_in(board, 5)
    line = "none" if mate is None else board.variation_san(list(mate.line))
    print(f"Loyd's mate in 5: {time.perf_counter() - begun:.1f} s, {line}")


if __name__ == "__main__":
    main()
