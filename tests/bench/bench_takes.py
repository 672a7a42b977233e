"""How much room takes need, and how fast a talk is put together from them: `python tests/bench/bench_takes.py`.

Speech is that of espeak-ng in a room of a given noise; a real voice has more high tones, a real microphone more noise.
"""

from __future__ import annotations

import resource
import sqlite3
import statistics
import subprocess
import tempfile
import time
from pathlib import Path

import numpy as np
import soxr

from studyboard.example import example_study
from studyboard.model.edits import PutTake
from studyboard.model.take_edits import leave_out
from studyboard.model.takes import SoundTime, Span, TakeEvent
from studyboard.sound.narration import TalkNarration
from studyboard.store.sound_coding import decoded, encoded
from studyboard.store.study_file import StudyFile
from studyboard.timing.plan import plan
from studyboard.timing.recorded import put_together, recorded_talk

RATE = 48_000
CHUNK = RATE * 3 // 4
#: Noise of the room in dBFS (RMS), and what kind of room that is.
ROOMS = ((-75.0, "a booth"), (-65.0, "a quiet room"), (-50.0, "a noisy room"))


def spoken(text: str) -> np.ndarray:
    """A text said by espeak-ng, with its loudest sample at -6 dBFS."""
    wave = subprocess.run(["espeak-ng", "--stdout", text], check=True, capture_output=True).stdout
    sound = soxr.resample(np.frombuffer(wave[44:], "<i2").astype(np.float32), 22_050, RATE)
    return sound * (16_384 / max(1.0, float(np.abs(sound).max())))


def in_room(sound: np.ndarray, level: float) -> bytes:
    """That in the noise of a room (dBFS)."""
    noise = np.random.default_rng(3).normal(0, 32_768 * 10 ** (level / 20), len(sound))
    return np.clip(np.rint(sound + noise), -32_768, 32_767).astype("<i2").tobytes()


def main() -> None:
    """Measure and print."""
    study = example_study()
    stretches = plan(study).stretches
    lines = [spoken(stretch.spoken.text or "Hm.") for stretch in stretches]
    pause = np.zeros(RATE // 2, np.float32)
    everything = np.concatenate([part for line in lines for part in (line, pause)])
    print(f"speech: {len(everything) / RATE:.0f} s, {len(lines)} beats")
    for level, room in ROOMS:
        pcm = in_room(everything, level)
        write: list[float] = []
        read: list[float] = []
        size = 0
        for first in range(0, len(pcm), 2 * CHUNK):
            chunk = pcm[first : first + 2 * CHUNK]
            begun = time.perf_counter()
            coding, data = encoded(chunk, RATE)
            write.append(time.perf_counter() - begun)
            begun = time.perf_counter()
            decoded(coding, data, len(chunk) // 2)
            read.append(time.perf_counter() - begun)
            size += len(data)
        late = sorted(write)[int(0.95 * len(write))]
        print(
            f"{room:14} {level:.0f} dBFS: {100 * size / len(pcm):4.1f} % of the room; a chunk of 0.75 s is "
            f"compressed in {1e3 * statistics.median(write):.2f} ms (p95 {1e3 * late:.2f}), "
            f"read in {1e3 * statistics.median(read):.2f} ms"
        )
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "talk.studyboard"
        with StudyFile.create(path, study) as file:
            for number, (stretch, line) in enumerate(zip(stretches, lines, strict=True), 1):
                pcm = in_room(np.concatenate((line, pause)), -65.0)
                take = file.sound.begin_take(f"Take {number}", RATE, "2031-03-04T20:00:00+00:00")
                for first in range(0, len(pcm), 2 * CHUNK):
                    file.sound.append_sound(take, pcm[first : first + 2 * CHUNK])
                file.sound.append_sound(take, b"", [TakeEvent(SoundTime(0, RATE), stretch.node, stretch.key)])
                file.keep(PutTake(file.sound.finish_take(take)))
                if len(pcm) > 4 * RATE:
                    file.do(leave_out(file.study.takes[take], Span(RATE, RATE + RATE // 3)))
            begun = time.perf_counter()
            assembly = put_together(file.study)
            print(
                f"deciding what is heard: {1e3 * (time.perf_counter() - begun):.0f} ms, {len(assembly.sources)} pieces"
            )
            told = recorded_talk(file.study)
            assert told is not None
            before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
            begun = time.perf_counter()
            length = sum(len(chunk) // 2 for chunk in TalkNarration(file.sound, file.study.takes, told, None).chunks())
            seconds = time.perf_counter() - begun
            more = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) / 1024
            assert length == told.samples
            print(
                f"putting the sound together: {length / RATE:.0f} s in {seconds:.2f} s, {length / RATE / seconds:.0f} "
                f"times as fast as it is heard, {more:.0f} MB more memory"
            )
        stored = sqlite3.connect(path)
        size, samples = stored.execute("SELECT sum(length(data)), sum(samples) FROM sound").fetchone()
        stored.close()
        print(f"in the study: {size / 1e6:.1f} MB of sound, {100 * size / (2 * samples):.1f} % of its samples")


if __name__ == "__main__":
    main()
