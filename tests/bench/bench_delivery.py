"""How long a delivery of all that is quick takes: the first, one that keeps everything, and many at once.

python tests/bench/bench_delivery.py
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from studyboard.delivery.deliver import deliver
from studyboard.delivery.making import Talk
from studyboard.delivery.version import ingredient_digests
from studyboard.example import example_study
from studyboard.model.edits import ChangeNode, apply
from studyboard.model.positions import Positions
from studyboard.model.script import SpokenLine
from studyboard.store.study_file import StudyFile
from studyboard.timing.plan import plan

STUDIES = 8


def seconds(work) -> float:
    """How long it takes (s)."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def main() -> None:
    """Measure and print."""
    print(f"load average {os.getloadavg()[0]:.1f}")
    study = example_study()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        print(f"all that is quick, the first time in a process: {seconds(lambda: deliver(study, folder / 'a')):.2f} s")
        print(f"again in another folder: {seconds(lambda: deliver(study, folder / 'b')):.2f} s")
        print(f"everything kept: {seconds(lambda: deliver(study, folder / 'b')) * 1000:.0f} ms")
        talk = Talk(study, plan(study), Positions(study))
        print(f"of that, the digests: {seconds(lambda: ingredient_digests(talk)) * 1000:.0f} ms")
        node = list(study.main_line())[5]
        apply(study, ChangeNode(node, "spoken", SpokenLine("One line is another one.")))
        print(f"after one changed line: {seconds(lambda: deliver(study, folder / 'b')):.2f} s")
        paths = [folder / f"talk {number}.studyboard" for number in range(STUDIES)]
        for path in paths:
            StudyFile.create(path, study).close()
        for parallel in (1, 2):
            words = ["deliver", *map(str, paths), "--to", str(folder / f"many {parallel}"), "--parallel", str(parallel)]
            command = [sys.executable, "-m", "studyboard", *words]
            took = seconds(lambda command=command: subprocess.run(command, check=True, stdout=subprocess.DEVNULL))
            print(f"{STUDIES} studies, {parallel} at once: {took:.1f} s")


if __name__ == "__main__":
    main()
