"""Records for a long time while the machine is busy, and prints whether a single sample was lost.

Run: python -m tests.bench.bench_long_recording --minutes 60

What is played into the virtual microphone is a ramp in which every sample has its place (tests/sound/ramp.py), so that
the sound server's own count of samples can be read in the recording. Beside it other processes keep the processor busy,
and the thread of the window stands still for a tenth of each second, as no window should.
"""

from __future__ import annotations

import argparse
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QCoreApplication, QTimer

from studyboard.model.takes import Take
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.sound.recorder import Recorder
from studyboard.store.study_file import StudyFile
from tests.bench.bench_recording import stopped, until
from tests.sound import virtual_microphone
from tests.sound.ramp import Ramp, heard

_BUSY = "import os\nos.nice({nice})\nwhile True:\n    sum(range(100_000))\n"
_CHUNK = 10 * RATE


def main() -> None:
    """Print the figures."""
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--minutes", type=float, default=60.0)
    arguments.add_argument("--busy", type=int, default=1, help="processes that keep a processor busy")
    arguments.add_argument("--nice", type=int, default=10, help="how much they give way")
    asked = arguments.parse_args()
    missing = virtual_microphone.missing_packages()
    if missing:
        print("needs", *missing)
        return
    server = virtual_microphone.running()
    application = QCoreApplication([])
    busy = [subprocess.Popen([sys.executable, "-c", _BUSY.format(nice=asked.nice)]) for _ in range(asked.busy)]
    ramp = Ramp(server)
    try:
        with tempfile.TemporaryDirectory() as folder, StudyFile.create(Path(folder) / "talk.studyboard") as file:
            take = _recorded(file, 60 * asked.minutes)
            _tell_losses(file, take)
            print(f"the study file: {file.path.stat().st_size / 1e6:.1f} MB")
    finally:
        ramp.end()
        for process in busy:
            process.kill()
            process.wait()
    application.processEvents()


def _recorded(file: StudyFile, seconds: float) -> Take:
    recorder = Recorder(file.sound_writer)
    recorder.start("Long")
    until(lambda: recorder.samples > RATE)
    marks: list[tuple[float, int]] = []
    loads: list[float] = []

    def look() -> None:
        marks.append((time.monotonic(), recorder.sample_at()))
        loads.append(os.getloadavg()[0])
        time.sleep(0.1)

    every = QTimer()
    every.setInterval(1000)
    every.timeout.connect(look)
    every.start()
    began, used, first = time.monotonic(), time.process_time(), recorder.sample_at()
    until(lambda: recorder.samples - first >= seconds * RATE)
    elapsed, used, count = time.monotonic() - began, time.process_time() - used, recorder.sample_at() - first
    every.stop()
    take = stopped(recorder)
    recorder.close()
    print(f"recorded {elapsed:.1f} s by the computer's clock, load average {statistics.mean(loads):.1f}")
    print(f"    highest load average {max(loads):.1f}, {used / elapsed:.1%} of one core")
    print(f"    {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB at most")
    apart = (count / elapsed / RATE - 1) * 1e6
    print(f"    {count - elapsed * RATE:+.0f} samples against that clock ({apart:+.1f} ppm)")
    errors = [(sample - marks[0][1]) / RATE - (moment - marks[0][0]) for moment, sample in marks]
    print(f"    the clock of stamps against it: {min(errors) * 1000:+.1f} to {max(errors) * 1000:+.1f} ms")
    return take


def _tell_losses(file: StudyFile, take: Take) -> None:
    found = heard(_chunks(file, take))
    print(f"{found.samples} samples stored, {found.ramp} of them of the ramp that was played")
    print(f"    torn at {found.torn} places, {found.lost} samples lost")
    print(f"    the player came late {found.gaps} times ({found.silence} samples of silence, nothing lost)")


def _chunks(file: StudyFile, take: Take) -> Iterator[NDArray[np.int16]]:
    for start in range(0, take.samples, _CHUNK):
        pcm = file.sound.read_sound(take.id, start, min(_CHUNK, take.samples - start))
        assert len(pcm) % SAMPLE_BYTES == 0
        yield np.frombuffer(pcm, "<i2")


if __name__ == "__main__":
    main()
