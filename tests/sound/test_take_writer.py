"""A take is on the disk while it is still being recorded."""

from __future__ import annotations

import random
import subprocess
import sys
from array import array
from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studyboard.model.edits import PutTake
from studyboard.model.takes import Take
from studyboard.sound.pcm import RATE, pcm_of
from studyboard.sound.take_writer import CHUNK, TakeWriter
from studyboard.store.study_file import StudyFile

PATIENCE = 10_000


def counted(first: int, samples: int) -> bytes:
    """Sound in which every sample tells its place."""
    return pcm_of(array("h", ((first + place) % 30_000 for place in range(samples))))


def ended(writer: TakeWriter, qtbot: QtBot) -> None:
    with qtbot.waitSignal(writer.written, timeout=PATIENCE):
        writer.finish()
    writer.wait()


@pytest.fixture
def writer(study_file: StudyFile, qapp: object) -> Iterator[TakeWriter]:
    writer = TakeWriter(study_file.sound_writer(), "Take 1")
    writer.start()
    yield writer
    writer.finish()
    writer.wait()


def test_sound_is_stored_every_three_quarters_of_a_second(
    writer: TakeWriter, study_file: StudyFile, qtbot: QtBot
) -> None:
    lengths: list[int] = []
    writer.stored.connect(lengths.append)
    for first in range(0, 100_000, 1_000):
        writer.hear(counted(first, 1_000))
    qtbot.waitUntil(lambda: len(lengths) == 2, timeout=PATIENCE)
    assert lengths == [CHUNK, 2 * CHUNK]
    assert CHUNK < RATE
    assert study_file.sound.read_sound(1) == counted(0, 2 * CHUNK)


def test_a_take_holds_all_its_sound_and_every_stamp_in_order(
    writer: TakeWriter, study_file: StudyFile, qtbot: QtBot
) -> None:
    writer.stamp(0, 1, None)
    writer.hear(counted(0, 50_000))
    writer.stamp(60_000, 2, 2)
    writer.hear(counted(50_000, 50_000))
    writer.stamp(99_999, 3, None)
    ended(writer, qtbot)
    take = writer.take
    assert isinstance(take, Take)
    assert (take.name, take.samples, take.rate, take.complete) == ("Take 1", 100_000, RATE, True)
    assert [(event.at.samples, event.node, event.beat) for event in take.events] == [
        (0, 1, None),
        (60_000, 2, 2),
        (99_999, 3, None),
    ]
    assert study_file.sound.read_sound(take.id) == counted(0, 100_000)
    study_file.do(PutTake(take))
    assert study_file.study.takes[take.id] == take


def test_what_was_stamped_after_the_last_sound_happens_at_the_end(writer: TakeWriter, qtbot: QtBot) -> None:
    writer.hear(counted(0, 1_000))
    writer.stamp(1_500, 1, None)
    ended(writer, qtbot)
    assert writer.take is not None
    assert [event.at.samples for event in writer.take.events] == [1_000]


def test_a_pause_stores_what_there_is(writer: TakeWriter, study_file: StudyFile, qtbot: QtBot) -> None:
    with qtbot.waitSignal(writer.stored, timeout=PATIENCE):
        writer.hear(counted(0, 500))
        writer.flush()
    assert study_file.sound.length(1) == 500


def test_a_take_without_sound_is_none(writer: TakeWriter, qtbot: QtBot) -> None:
    writer.stamp(0, 1, None)
    ended(writer, qtbot)
    assert (writer.take, writer.failure) == (None, None)


def test_a_full_disk_ends_the_take_and_keeps_its_beginning(small_disk: Path, qapp: object, qtbot: QtBot) -> None:
    path = small_disk / "talk.studyboard"
    with StudyFile.create(path) as file:
        writer = TakeWriter(file.sound_writer(), "Take 1")
        stored: list[int] = []
        writer.stored.connect(stored.append)
        noise = random.Random(11).randbytes(2 * 60 * RATE)  # anything else is stored in less than its size
        writer.start()
        with qtbot.waitSignal(writer.written, timeout=PATIENCE):
            for first in range(0, 60 * RATE, RATE):
                writer.hear(noise[2 * first : 2 * (first + RATE)])
        writer.wait()
        assert writer.failure is not None
        assert "is full" in writer.failure
        assert f"its first {stored[-1] / RATE:.1f} seconds are" in writer.failure
    small_disk.joinpath("ballast").unlink()
    with StudyFile.open(path) as again:
        (take,) = again.study.takes.values()
        assert take.samples == stored[-1] > RATE
        assert again.sound.read_sound(take.id) == noise[: 2 * stored[-1]]


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of its own with room for some seconds of sound, and something on it that can be deleted."""
    disk = tmp_path / "disk"
    disk.mkdir()
    try:
        subprocess.run(["mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", disk], check=True, capture_output=True)
    except (OSError, subprocess.CalledProcessError):
        pytest.skip("needs the right to mount a small disk, as root has it")
    try:
        disk.joinpath("ballast").write_bytes(bytes(400_000))
        yield disk
    finally:
        subprocess.run(["umount", "--lazy", disk], check=True)


def test_a_file_that_may_not_grow_ends_the_take_and_keeps_its_beginning(tmp_path: Path) -> None:
    path = tmp_path / "talk.studyboard"
    program = """
import random, resource, sys
from PySide6.QtCore import QCoreApplication
from studyboard.sound.pcm import RATE
from studyboard.sound.take_writer import TakeWriter
from studyboard.store.study_file import StudyFile
application = QCoreApplication([])
file = StudyFile.create(sys.argv[1])
resource.setrlimit(resource.RLIMIT_FSIZE, (600_000, resource.RLIM_INFINITY))
writer = TakeWriter(file.sound_writer(), "Take 1")
for second in range(30):
    writer.hear(random.randbytes(2 * RATE))
writer.start()
writer.wait()
print(writer.failure)
"""
    python = [sys.executable, "-c", program, str(path)]
    told = subprocess.run(python, capture_output=True, text=True, check=True).stdout
    assert "The take ends here; its first" in told
    with StudyFile.open(path) as again:
        (take,) = again.study.takes.values()
        assert take.samples >= CHUNK
        assert f"its first {take.length.seconds:.1f} seconds" in told
