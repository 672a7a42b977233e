"""Prints how far stamps lie from the sound that they belong to, and what recording costs.

Run: python -m tests.bench.bench_recording
"""

from __future__ import annotations

import resource
import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
from PySide6.QtCore import QCoreApplication, QEventLoop, QTimer

from studyboard.model.takes import Take
from studyboard.sound.pcm import RATE
from studyboard.sound.player import Player
from studyboard.sound.recorder import Recorder
from studyboard.store.study_file import StudyFile
from tests.sound import virtual_microphone
from tests.sound.hearing import Mouth, Tap
from tests.sound.spoken import Speech, onsets, speech
from tests.sound.virtual_microphone import SoundServer

#: How long PulseAudio may keep sound back from the tap that triggers the stamps (ms); the tap is late by up to this.
LATENCIES = (1, 5, 20, 50)
#: How long the cost of recording is measured (s).
LONG = 20.0


def main() -> None:
    """Print the figures."""
    missing = virtual_microphone.missing_packages()
    if missing:
        print("needs", *missing)
        return
    server = virtual_microphone.running()
    application = QCoreApplication([])
    with tempfile.TemporaryDirectory() as folder, StudyFile.create(Path(folder) / "talk.studyboard") as file:
        words = speech(Path(folder))
        recorder = Recorder(file.sound_writer)
        take = None
        for latency in LATENCIES:
            take, errors, start = stamping_errors(server, file, recorder, words, latency)
            told(f"stamp - word in the sound, tap within {latency:2} ms", errors)
            print(f"    start() to the first sound: {start * 1000:.0f} ms")
        cost(recorder)
        recorder.close()
        assert take is not None
        told("position - word from the loudspeaker, playing", playing_errors(server, file, take))
    application.processEvents()


def stamping_errors(
    server: SoundServer, file: StudyFile, recorder: Recorder, words: Speech, latency: int
) -> tuple[Take, list[float], float]:
    """A take of these words, the error of each stamp (s), and how long the first sound took (s)."""
    tap = Tap(server, "mouth", latency)
    tap.onset.connect(lambda: recorder.stamp(tap.onsets, None))
    until(lambda: tap.listening)
    asked = time.monotonic()
    recorder.start("Bench")
    until(lambda: recorder.samples > 0)
    start = time.monotonic() - asked
    mouth = Mouth(server, words.path)
    until(lambda: tap.onsets == len(words.onsets) and not mouth.speaking)
    take = stopped(recorder)
    tap.stop()
    heard = onsets(np.frombuffer(file.sound.read_sound(take.id), "<i2"), RATE)
    pairs = zip(take.events, heard, strict=True)
    return take, [(event.at.samples - word) / RATE for event, word in pairs], start


def playing_errors(server: SoundServer, file: StudyFile, take: Take) -> list[float]:
    """How far the player's position lies from what is heard at that moment (s)."""
    wanted = onsets(np.frombuffer(file.sound.read_sound(take.id), "<i2"), RATE)
    tap = Tap(server, "loudspeaker")
    until(lambda: tap.listening)
    player = Player(file.sound)
    player.load(take)
    heard: list[float] = []
    tap.onset.connect(lambda: heard.append(player.sample / RATE))
    player.play()
    until(lambda: len(heard) == len(wanted))
    player.eject()
    tap.stop()
    return [at - word / RATE for at, word in zip(heard, wanted, strict=True)]


def cost(recorder: Recorder) -> None:
    """Print the processor time and the memory that recording takes."""
    recorder.start("Long")
    until(lambda: recorder.samples > 0)
    first = recorder.samples
    began, used = time.monotonic(), time.process_time()
    until(lambda: recorder.samples - first >= LONG * RATE)
    elapsed, used = time.monotonic() - began, time.process_time() - used
    stopped(recorder)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"recording {elapsed:.1f} s: {used / elapsed:.1%} of one core, {memory:.0f} MB at most")
    print(f"    {LONG * RATE:.0f} samples took {elapsed:.3f} s of the clock")


def stopped(recorder: Recorder) -> Take:
    """Stop, and return the take."""
    takes: list[Take] = []
    recorder.stopped.connect(takes.append)
    recorder.stop()
    until(lambda: bool(takes))
    recorder.stopped.disconnect(takes.append)
    return takes[0]


def until(done: Callable[[], bool]) -> None:
    """Let the event loop run until this is so."""
    loop, look = QEventLoop(), QTimer()
    look.setInterval(5)
    look.timeout.connect(lambda: loop.quit() if done() else None)
    look.start()
    if not done():
        loop.exec()


def told(what: str, errors: list[float]) -> None:
    """Print what is to be known of these errors (s)."""
    inside = [error * 1000 for error in errors]
    print(
        f"{what}: {len(inside)} words, mean {statistics.mean(inside):+.1f} ms,"
        f" spread {statistics.stdev(inside):.1f} ms, worst {max(inside, key=abs):+.1f} ms"
    )


if __name__ == "__main__":
    main()
