"""How long it takes from a key press to the painted board, on a tree of 5,000 nodes.

    QT_QPA_PLATFORM=offscreen python tests/bench/bench_stepping.py

Opens the whole desk on a study of 5,000 nodes (a long main line with side-lines all along it, a spoken line at every
third node, marks at every tenth) and presses its stepping keys; a step counts until everything that asked for it has
been painted. Prints percentiles; the goal is 16 ms at the 95th. Set QT_QPA_PLATFORM to measure on a screen.
"""

from __future__ import annotations

import os
import random
import statistics
import sys
import tempfile
import time
from pathlib import Path

import chess

NODES = 5_000
STEPS = 400


def big_study(nodes: int = NODES):
    """A study of that many nodes: a main line of random legal moves with side-lines of ten moves all along it."""
    from studyboard.model.edits import AddMove, ChangeNode, apply
    from studyboard.model.marks import Mark, MarkKind
    from studyboard.model.script import SpokenLine
    from studyboard.model.study import Study

    chance = random.Random(5)
    study = Study({"White": "Ines Okafor", "Black": "Bram Feld"})

    def grow(node: int, board: chess.Board, moves: int) -> list[int]:
        grown = []
        for _ in range(moves):
            played = {study.nodes[child].move for child in study.nodes[node].children}
            legal = [move for move in board.legal_moves if move not in played]
            if not legal or len(study.nodes) >= nodes or board.is_game_over(claim_draw=False):
                break
            move = chance.choice(legal)
            new = study.next_id
            apply(study, AddMove(node, move, new))
            board.push(move)
            grown.append(new)
            node = new
        return grown

    main = grow(study.root, chess.Board(), 180)
    while len(study.nodes) < nodes:
        start = chance.choice(main[:-1])
        board = chess.Board()
        for step in study.path(start)[1:]:
            board.push(study.nodes[step].move)
        grow(start, board, 10)
    for number, node in enumerate(list(study.nodes)):
        if number % 3 == 0:
            line = SpokenLine(f"and here is what happens at number {number}, slowly and then at once.")
            apply(study, ChangeNode(node, "spoken", line))
        if number % 10 == 0:
            marks = (Mark(MarkKind.THREAT, (chess.D1, chess.H5)), Mark(MarkKind.KEY_SQUARE, (chess.E5,)))
            apply(study, ChangeNode(node, "marks", marks))
    return study, main


def percentile(values: list[float], share: float) -> float:
    """The value under which this share of them lies."""
    return sorted(values)[min(len(values) - 1, int(share * len(values)))]


def report(name: str, taken: list[tuple[float, float]]) -> None:
    """Print two lines of figures (ms): by the clock, and of the processor, which other work on the machine spares."""
    for kind, milliseconds in zip(("clock", "processor"), zip(*taken, strict=True), strict=True):
        values = list(milliseconds)
        middle, high = statistics.median(values), percentile(values, 0.95)
        print(f"{name:46}{kind:10} median {middle:6.2f}   95th {high:6.2f}   worst {max(values):6.2f} ms")
        name = ""


def main() -> None:
    """Measure and print."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtCore import QSettings, Qt
    from PySide6.QtTest import QTest
    from PySide6.QtWidgets import QApplication

    from studyboard.desk.look import Look
    from studyboard.desk.main_window import MainWindow
    from studyboard.store.study_file import StudyFile

    app = QApplication(sys.argv[:1])
    with tempfile.TemporaryDirectory() as folder:
        os.environ.setdefault("STUDYBOARD_STATE_DIR", folder)
        study, _ = big_study()
        file = StudyFile.create(Path(folder) / "big.studyboard", study)
        settings = QSettings(str(Path(folder) / "settings.ini"), QSettings.Format.IniFormat)
        window = MainWindow(file, Look(), settings)
        window.resize(1366, 768)
        window.show()
        window.activateWindow()
        app.processEvents()
        QTest.qWait(300)
        board, session = window.board_view, window.session
        print(f"{len(study.nodes)} nodes, window {window.width()} × {window.height()}")
        print(f"board {board.place.side * 8:.0f} px")

        def measured(act) -> tuple[float, float]:
            start, busy = time.perf_counter(), time.process_time()
            act()
            # Everything that has asked to be painted by now is painted now, the board first.
            board.repaint()
            app.processEvents()
            return (time.perf_counter() - start) * 1000, (time.process_time() - busy) * 1000

        def board_only(act) -> tuple[float, float]:
            start, busy = time.perf_counter(), time.process_time()
            act()
            board.repaint()
            taken = (time.perf_counter() - start) * 1000, (time.process_time() - busy) * 1000
            app.processEvents()
            return taken

        def press(key: Qt.Key):
            return lambda: QTest.keyClick(window.lanes, key, Qt.KeyboardModifier.AltModifier)

        session.show(study.root)
        window.lanes.setFocus()
        QTest.qWait(300)
        forward, back, jumps = [], [], []
        nodes = list(study.nodes)
        chance = random.Random(7)
        for _ in range(170):
            was = session.node
            forward.append(board_only(press(Qt.Key.Key_Down)))
            assert session.node != was
        report("key forward until the board is painted", forward)
        for _ in range(170):
            back.append(board_only(press(Qt.Key.Key_Up)))
        report("key back until the board is painted", back)
        session.show(study.root)
        everything = [measured(press(Qt.Key.Key_Down)) for _ in range(170)]
        report("key forward until all of the desk is painted", everything)
        for _ in range(STEPS):
            node = chance.choice(nodes)
            jumps.append(board_only(lambda node=node: session.show(node)))
        report("jump to any node until the board is painted", jumps)
        window.close()


if __name__ == "__main__":
    main()
