"""How long the desk takes from nothing to its first picture, against importing QtWidgets alone.

Run it with `python tests/bench/bench_start.py [RUNS]`. Both are whole processes, started in turn; what counts is the
ratio of their medians.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

_QT_ALONE = "import PySide6.QtWidgets"
_NOTHING = "pass"
_DESK = """
import gc, os, sys
gc.disable()
from pathlib import Path
from PySide6.QtCore import QEvent, QObject
from studyboard.desk.application import make_application, make_settings
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.store.study_file import StudyFile

class FirstPaint(QObject):
    def eventFilter(self, watched, event):
        if event.type() == QEvent.Type.Paint:
            os._exit(0)
        return False

application = make_application()
window = MainWindow(StudyFile.open(Path(sys.argv[1])), Look(), make_settings())
first = FirstPaint()
window.lanes.viewport().installEventFilter(first)
window.show()
application.exec()
"""


def seconds(code: str, *arguments: str) -> float:
    """Wall time of one process that runs *code* (s)."""
    start = time.perf_counter()
    subprocess.run([sys.executable, "-c", code, *arguments], check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def main() -> None:
    """Print medians and ratios."""
    from studyboard.example import example_study
    from studyboard.store.study_file import StudyFile

    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 9
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    with tempfile.TemporaryDirectory() as folder:
        os.environ["STUDYBOARD_STATE_DIR"] = folder
        os.environ["XDG_CONFIG_HOME"] = folder
        # As in an installation: modules are compiled once, here by the first run, which does not count.
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
        os.environ["PYTHONPYCACHEPREFIX"] = str(Path(folder) / "compiled")
        path = Path(folder) / "example.studyboard"
        StudyFile.create(path, example_study()).close()
        times: dict[str, list[float]] = {"python alone": [], "import QtWidgets": [], "desk to its first paint": []}
        for run in range(runs + 1):
            row = (seconds(_NOTHING), seconds(_QT_ALONE), seconds(_DESK, str(path)))
            if run:
                for figures, value in zip(times.values(), row, strict=True):
                    figures.append(value)
    medians = {name: statistics.median(figures) for name, figures in times.items()}
    for name, figures in times.items():
        print(f"{name:26} {medians[name] * 1000:7.0f} ms   ({min(figures) * 1000:.0f}-{max(figures) * 1000:.0f})")
    nothing, qt, desk = medians.values()
    print(f"first paint / import of QtWidgets        {desk / qt:.2f} x")
    print(f"the same without the start of Python     {(desk - nothing) / (qt - nothing):.2f} x")


if __name__ == "__main__":
    main()
