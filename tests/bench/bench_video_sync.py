"""Whether sound and picture stay together: `python tests/bench/bench_video_sync.py [MINUTES]`, sixty by default.

The example is told again and again, with a click in the sound at every move; the file is then decoded, and the distance
of each click from the nearest change of the picture is printed.
"""

from __future__ import annotations

import resource
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import av
import numpy as np

from studyboard.delivery.video.film import write_video
from studyboard.delivery.video.options import Composition, VideoOptions
from studyboard.example import example_study
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Happening, Source, Stretch, Timeline

_RATE = 48_000
_OPTIONS = VideoOptions(lines=720, rate=25, still_moves=True, composition=Composition.BOARD, captions=True)


class Clicks:
    """Silence with a click of a fiftieth of a second at each of these seconds."""

    rate = _RATE
    notice = ""

    def __init__(self, seconds: float, clicks: Sequence[float]) -> None:
        self._samples = round(seconds * _RATE)
        self._clicks = [round(at * _RATE) for at in clicks]

    def chunks(self) -> Iterator[bytes]:
        """See studyboard.delivery.video.narration."""
        click = (20_000 * np.sin(np.arange(960) * 0.3)).astype("<i2")
        for first in range(0, self._samples, _RATE):
            count = min(_RATE, self._samples - first)
            sound = np.zeros(count + len(click), "<i2")
            for at in self._clicks:
                if first <= at < first + count:
                    sound[at - first : at - first + len(click)] = click
            yield sound[:count].tobytes()


def main() -> None:
    """Write, decode, compare, print."""
    study = example_study()
    timeline = _repeated(60 * (float(sys.argv[1]) if len(sys.argv) > 1 else 60.0))
    moves = [event.at for event in timeline.events if event.what is Happening.MOVE]
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "talk.mp4"
        begun = time.perf_counter()
        write_video(study, timeline, path, _OPTIONS, narration=Clicks(timeline.seconds, moves))
        memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        print(f"{timeline.seconds:.0f} s written at {timeline.seconds / (time.perf_counter() - begun):.1f} × real time")
        print(f"{memory:.0f} MB of memory at most")
        seen, heard = np.array(_changes(path)), _clicks(path)
    # The first move is there from the first frame on, which nothing comes before.
    apart = [float(np.min(np.abs(seen - at))) for at in heard[1:]]
    print(f"{len(heard)} clicks, {len(seen)} changes of the picture; one frame is {1000 / _OPTIONS.rate:.0f} ms")
    print(f"apart: at most {1000 * max(apart):.1f} ms, at the end {1000 * apart[-1]:.1f} ms")


def _repeated(seconds: float) -> Timeline:
    study = example_study()
    told = [stretch for stretch in plan(study).stretches if isinstance(stretch.key, int)]
    stretches: list[Stretch] = []
    at = 0.0
    while at < seconds:
        for stretch in told:
            start = stretch.start
            from_zero = replace(
                stretch,
                start=0.0,
                speech_end=stretch.speech_end - start,
                end=stretch.end - start,
                said=tuple(replace(word, at=word.at - start, until=word.until - start) for word in stretch.words),
                shown=tuple(replace(event, at=event.at - start) for event in stretch.events),
                since=0.0,
            )
            stretches.append(from_zero.moved(at))
            at = stretches[-1].end
    return Timeline(Source.PLANNED, study.root, tuple(stretches))


def _changes(path: Path) -> list[float]:
    """When the board changes (s); what stands below it is left out."""
    found: list[float] = []
    before = None
    with av.open(str(path)) as film:
        film.streams.video[0].thread_type = "AUTO"
        for frame in film.decode(film.streams.video[0]):
            grey = frame.to_ndarray()[:620:4, ::4].astype(np.int16)
            if before is not None and (np.abs(grey - before) > 30).mean() > 0.001:
                found.append(float(frame.time))
            before = grey
    return found


def _clicks(path: Path) -> list[float]:
    """When a click begins (s)."""
    loud: list[int] = []
    start, heard = None, 0
    with av.open(str(path)) as film:
        for frame in film.decode(film.streams.audio[0]):
            start = float(frame.time) if start is None else start
            samples = frame.to_ndarray()[0]
            loud.extend((np.flatnonzero(np.abs(samples) > 0.2) + heard).tolist())
            heard += len(samples)
    begins = [loud[0], *(after for before, after in pairwise(loud) if after - before > _RATE // 10)]
    return [(start or 0.0) + at / _RATE for at in begins]


if __name__ == "__main__":
    main()
