"""Prints how well the delay of a microphone is measured, and how far stamps lie from their words with and without it.

Run: python -m tests.bench.bench_delay

A microphone hears the loudspeaker through PulseAudio's own loopback, so much late. The delay is measured as the desk
does it; then words are played, a tap hears them without the delay and stamps them, and each stamp is compared with
where the word stands in the take.
"""

from __future__ import annotations

import statistics
import tempfile
from pathlib import Path

import numpy as np
from PySide6.QtCore import QCoreApplication

from studyboard.sound.devices import inputs
from studyboard.sound.latency import Delay
from studyboard.sound.loopback import Loopback, Trial, Way
from studyboard.sound.pcm import RATE
from studyboard.sound.recorder import Recorder
from studyboard.store.study_file import StudyFile
from tests.bench.bench_recording import stopped, until
from tests.sound import virtual_microphone
from tests.sound.hearing import Mouth, Tap
from tests.sound.spoken import Speech, onsets, speech
from tests.sound.virtual_microphone import SoundServer

LATE = (20, 60, 150, 300, 500)


def main() -> None:
    """Print the figures."""
    missing = virtual_microphone.missing_packages()
    if missing:
        print("needs", *missing)
        return
    server = virtual_microphone.running()
    application = QCoreApplication([])
    with tempfile.TemporaryDirectory() as folder:
        words = speech(Path(folder))
        for late in LATE:
            name = f"late{late}"
            modules = server.plug_in_late(name, late)
            until(lambda name=name: name in {device.id for device in inputs()})
            found = _measured(name)
            if found is None:
                print(f"{late:4} ms late: not heard")
            else:
                print(f"{late:4} ms late: measured {1000 * found.seconds:6.1f} ms, spread {1000 * found.spread:.2f} ms")
                for seconds in (0.0, found.seconds):
                    errors = _errors(server, Path(folder) / f"{late}-{seconds}.studyboard", name, words, seconds)
                    print(
                        f"     stamps with {1000 * seconds:6.1f} ms: mean {1000 * statistics.mean(errors):+7.1f} ms,"
                        f" worst {1000 * max(errors, key=abs):+7.1f} ms, {len(errors)} words"
                    )
            for module in modules:
                server.unplug(module)
    application.processEvents()


def _measured(name: str) -> Delay | None:
    heard: list[Trial | str] = []
    loopback = Loopback()
    loopback.heard.connect(heard.append)
    loopback.failed.connect(heard.append)
    loopback.measure(name, Way.AIR)
    until(lambda: bool(heard))
    loopback.stop()
    found = heard[0]
    return None if isinstance(found, str) else found.delay()


def _errors(server: SoundServer, path: Path, name: str, words: Speech, late: float) -> list[float]:
    with StudyFile.create(path) as file:
        recorder = Recorder(file.sound_writer, lambda _: late)
        tap = Tap(server, "loudspeaker")
        tap.onset.connect(lambda: recorder.stamp(tap.onsets, None))
        until(lambda: tap.listening)
        recorder.start("Bench", name)
        until(lambda: recorder.samples > 0)
        mouth = Mouth(server, words.path, sink="loudspeaker")
        until(lambda: tap.onsets == len(words.onsets) and not mouth.speaking)
        # Without its delay the take would end before the last word is there.
        until(lambda end=recorder.samples: recorder.samples > end + RATE)
        take = stopped(recorder)
        tap.stop()
        recorder.close()
        heard = onsets(np.frombuffer(file.sound.read_sound(take.id), "<i2"), RATE)
    return [(event.at.samples - word) / RATE for event, word in zip(take.events, heard, strict=True)]


if __name__ == "__main__":
    main()
