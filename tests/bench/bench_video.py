"""How fast a video is written: `python tests/bench/bench_video.py [LINES]`; ratios to real time, and the memory."""

from __future__ import annotations

import os
import resource
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path

from studyboard.delivery.video.film import write_video
from studyboard.delivery.video.options import VideoOptions
from studyboard.example import example_study
from studyboard.timing.plan import plan


def main() -> None:
    """Print one line for a constant and one for a variable frame rate."""
    study = example_study()
    timeline = plan(study)
    options = VideoOptions(lines=int(sys.argv[1]) if len(sys.argv) > 1 else 1080)
    kind = f"{options.lines} lines, {options.rate} frames a second"
    print(f"{timeline.seconds:.0f} s of talk, {kind}, {os.cpu_count()} cores")
    with tempfile.TemporaryDirectory() as folder:
        for constant in (True, False):
            path = Path(folder) / "talk.mp4"
            begun, worked = time.perf_counter(), time.process_time()
            write_video(study, timeline, path, replace(options, constant=constant))
            took, cpu = time.perf_counter() - begun, time.process_time() - worked
            kind = "constant" if constant else "variable"
            memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
            clock, processor = timeline.seconds / took, timeline.seconds / cpu
            size = path.stat().st_size / 1e6
            print(f"{kind} rate: {clock:.1f} × real time by the clock, {processor:.1f} × by processor,", end=" ")
            print(f"{size:.1f} MB, at most {memory:.0f} MB of memory so far")


if __name__ == "__main__":
    main()
