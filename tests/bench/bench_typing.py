"""How long a letter takes until it is painted while the script is being read, and folding, on a study of 5,000 nodes.

    QT_QPA_PLATFORM=offscreen python tests/bench/bench_typing.py

The goals are 10 ms for a letter and 50 ms for folding, at the 95th percentile.
"""

from __future__ import annotations

import os
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSettings
from PySide6.QtTest import QTest

from studyboard.desk.application import collect_garbage, make_application
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.store.study_file import StudyFile
from tests.bench.bench_stepping import NODES, big_study, report

LETTERS = "And here the knight takes on e5, which nobody saw; then the queen comes, and it is a fork. " * 3
#: A fast writer's letters are that far apart (ms).
BETWEEN = 80


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        os.environ["STUDYBOARD_STATE_DIR"] = folder
        application = make_application()
        study, main_line = big_study(NODES)
        settings = QSettings(str(Path(folder) / "settings.ini"), QSettings.Format.IniFormat)
        desk = MainWindow(StudyFile.create(Path(folder) / "big.studyboard", study), Look(settings), settings)
        desk.resize(1366, 768)
        desk.show()
        QTest.qWait(3000)
        collect_garbage()

        def taken(act: Callable[[], object], painted: Callable[[], object]) -> tuple[float, float]:
            start, busy = time.perf_counter(), time.thread_time()
            act()
            painted()
            return (time.perf_counter() - start) * 1000, (time.thread_time() - busy) * 1000

        reading = [False]
        proofreader = desk.proofreading.proofreader
        proofreader.reading.connect(lambda on: reading.__setitem__(0, on))
        desk.session.show(main_line[10])
        text = desk.line_editor.text
        desk.line_editor.focus_line()
        letters, during = [], 0
        for letter in LETTERS:
            if not reading[0]:
                proofreader.read_now()
            during += reading[0]
            letters.append(taken(lambda letter=letter: QTest.keyClicks(text, letter), text.viewport().repaint))
            QTest.qWait(BETWEEN)
        report("a letter until it is painted", letters)
        print(f"{during} of {len(letters)} letters while the script was being read")

        lanes = desk.lanes
        branches = [child for node in study.nodes.values() for child in node.children[1:]][:40]
        folds, unfolds = [], []
        for branch in branches:
            folds.append(taken(lambda branch=branch: lanes.fold(branch), lanes.viewport().repaint))
            unfolds.append(taken(lambda branch=branch: lanes.unfold(branch), lanes.viewport().repaint))
        report("fold a side-line", folds)
        report("unfold it", unfolds)
        report("fold all", [taken(lanes.fold_all, lanes.viewport().repaint)])
        report("unfold all", [taken(lanes.unfold_all, lanes.viewport().repaint)])
        desk.close()
        del application


if __name__ == "__main__":
    main()
