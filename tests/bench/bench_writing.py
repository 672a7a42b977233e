"""How long a letter takes while one writes: `python tests/bench/bench_writing.py`.

Measured from the key to the painted text, spelling and read-through included, in the line editor and in the window
with the whole script; the talk has 500 stops of 40 words.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import chess
from PySide6.QtCore import QSettings
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from studyboard.desk.application import make_application
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeLanguage, ChangeNode, add_move, apply
from studyboard.model.script import Cue, SpokenLine
from studyboard.model.study import Study
from studyboard.store.study_file import StudyFile
from studyboard.writing.find_replace import Search, find

STOPS = 500
LINE = (
    "The knight goes back to its old square and waits there for the bishop, which has nothing better to do than to "
    "look at the long diagonal while the rooks are doubled on the open file once more."
)
TYPED = "Now the king walks over to the casle and everybody wonders what it is doing ther. " * 3


def long_talk() -> Study:
    """Knights that go out and back, with a line at every move."""
    study = Study({"White": "Ada Qvist", "Black": "Bo Zsombory"})
    node = study.root
    shuffle = ("g1f3", "g8f6", "f3g1", "f6g8")
    for number in range(STOPS):
        edit = add_move(study, node, chess.Move.from_uci(shuffle[number % 4]))
        apply(study, edit)
        node = edit.node
        apply(study, ChangeNode(node, "spoken", SpokenLine(LINE, (Cue(3, node=node),))))
    return study


def main() -> None:
    """Print medians and 95th percentiles (ms)."""
    with tempfile.TemporaryDirectory() as folder:
        os.environ["STUDYBOARD_STATE_DIR"] = os.environ["STUDYBOARD_CONFIG_DIR"] = folder
        make_application()
        settings = QSettings(str(Path(folder) / "s.ini"), QSettings.Format.IniFormat)
        look = Look()
        look.reduce_motion(True)
        desk = MainWindow(StudyFile.create(Path(folder) / "long.studyboard", long_talk()), look, settings)
        desk.show()
        desk.session.do(ChangeLanguage("en_US"))
        desk.session.show(250)
        desk.line_editor.focus_line()
        _wait(lambda: desk.script_tools.spelling.ready)
        quiet = "--quiet" in sys.argv
        if quiet:
            desk.proofreading.stop()
        _report("a letter in the line editor", _typed(desk.line_editor.text))
        tools = desk.script_tools
        begun = time.perf_counter()
        tools.show_script()
        QApplication.processEvents()
        print(f"opening the whole script: {time.perf_counter() - begun:.2f} s")
        script = tools._script
        assert script is not None
        script.text.put_cursor(250, 20)
        _report("a letter in the whole script", _typed(script.text))
        script.text.put_cursor(250, 3)
        QTest.keyClicks(script.text, "x")
        begun = time.perf_counter()
        script.flush()
        print(f"storing a stop from the whole script: {1000 * (time.perf_counter() - begun):.0f} ms")
        begun = time.perf_counter()
        count = len(find(desk.session.study, Search("diagonal")))
        print(f"finding {count} places: {1000 * (time.perf_counter() - begun):.0f} ms")
        desk.close()


def _typed(text: QWidget) -> list[float]:
    times: list[float] = []
    busy = time.thread_time()
    for letter in TYPED:
        begun = time.perf_counter()
        QTest.keyClicks(text, letter)
        text.repaint()
        times.append(1000 * (time.perf_counter() - begun))
        QTest.qWait(25)
    each = 1000 * (time.thread_time() - busy) / len(TYPED)
    print(f"  the window's thread is busy for {each:.1f} ms a letter, what goes on between letters included")
    return times


def _report(what: str, times: list[float]) -> None:
    ordered = sorted(times)
    median, most = ordered[len(ordered) // 2], ordered[int(0.95 * len(ordered))]
    print(
        f"{what}: median {median:.1f} ms, 95th percentile {most:.1f} ms, "
        f"worst {ordered[-1]:.1f} ms ({len(times)} letters)"
    )


def _wait(reached: Callable[[], bool]) -> None:
    while not reached():
        QTest.qWait(20)


if __name__ == "__main__":
    main()
