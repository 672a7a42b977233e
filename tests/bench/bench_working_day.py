"""How long the desk's thread works before it listens again, through a working day on a study of 5,000 nodes.

    QT_QPA_PLATFORM=offscreen python tests/bench/bench_working_day.py

The goal is that nothing takes longer than 50 ms; what does is listed with what was being done.
"""

from __future__ import annotations

import os
import resource
import statistics
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSettings
from PySide6.QtTest import QTest

from studyboard.desk.application import collect_garbage, make_application
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeSlot, apply
from studyboard.store.study_file import StudyFile
from tests.bench.bench_stepping import NODES, big_study, percentile
from tests.desk.event_loop_watch import EventLoopWatch
from tests.desk.working_day import working_day


def main() -> None:
    """Do the day and print the figures."""
    with tempfile.TemporaryDirectory() as folder:
        os.environ["STUDYBOARD_STATE_DIR"] = folder
        application = make_application()
        study, _ = big_study(NODES)
        apply(study, ChangeSlot(9000.0))
        settings = QSettings(str(Path(folder) / "settings.ini"), QSettings.Format.IniFormat)
        look = Look(settings)
        desk = MainWindow(StudyFile.create(Path(folder) / "day.studyboard", study), look, settings)
        desk.resize(1366, 768)
        desk.show()
        QTest.qWait(3000)
        collect_garbage()
        watch = EventLoopWatch()
        watch.run(list(working_day(desk)))
        spent = [busy.processor * 1000 for busy in watch.stretches]
        print(
            f"{len(spent)} stretches of work; of the processor: median {statistics.median(spent):.2f} ms, "
            f"95th {percentile(spent, 0.95):.1f} ms, worst {max(spent):.1f} ms"
        )
        for busy in watch.over(0.050):
            print(f"  {busy.processor * 1000:6.1f} ms  {busy.what}")
        memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        print(f"largest memory {memory:.0f} MB")
        desk.close()
        del application


if __name__ == "__main__":
    main()
