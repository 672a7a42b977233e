"""A disk that is full or can only be read: what was stored stays, the rest is refused with a sentence."""

from __future__ import annotations

import os
import random
import shutil
import subprocess
import wave
from collections.abc import Iterator
from pathlib import Path

import pytest

from studyboard.model.edits import ChangeNode, ChangeSlot
from studyboard.model.study import Study
from studyboard.sound.importing import import_sound
from studyboard.store.errors import ReadOnlyStudyError, StudyFileError, StudyNotStoredError
from studyboard.store.study_file import StudyFile

PAGE = "A long note about a short game. " * 2_000


def mount(*arguments: str) -> None:
    done = subprocess.run(["mount", *arguments], capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.skip(f"a small disk cannot be made here: {done.stderr.strip()}")


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of two megabytes."""
    if shutil.which("mount") is None or os.geteuid() != 0:
        pytest.skip("only root can make a small disk")
    place = tmp_path / "disk"
    place.mkdir()
    mount("-t", "tmpfs", "-o", "size=2m", "tmpfs", str(place))
    yield place
    subprocess.run(["umount", "-l", str(place)], check=True)


def fill(place: Path) -> Path:
    """Leave no room on a disk."""
    ballast = place / "ballast"
    with ballast.open("wb", buffering=0) as file:
        size = 65_536
        while size:
            try:
                file.write(bytes(size))
            except OSError:
                size //= 2
    return ballast


def write_pages(file: StudyFile) -> None:
    """Edit until the disk says no."""
    for number in range(1_000):
        file.do(ChangeNode(0, "note", f"{number} {PAGE}"))


def swing(file: StudyFile) -> None:
    """Undo and redo until the disk says no."""
    for _ in range(1_000):
        file.undo()
        file.redo()


def notes(study: Study) -> list[str]:
    return [node.note for node in study.nodes.values()]


def test_an_edit_that_finds_the_disk_full_is_taken_back_and_goes_once_there_is_room(small_disk):
    path = small_disk / "evening.studyboard"
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", "before"))
        ballast = fill(small_disk)
        with pytest.raises(StudyNotStoredError, match=r"disk that holds “evening\.studyboard” is full"):
            write_pages(file)
        with StudyFile.open(path, read_only=True) as reader:
            assert notes(reader.study) == notes(file.study)
            assert reader.study.next_id == file.study.next_id
        entries = len(file.history())
        ballast.unlink()
        file.do(ChangeNode(0, "think", 5.0))
        file.do(ChangeNode(0, "note", f"after {PAGE}"))
        assert len(file.history()) == entries + 2
        done = notes(file.study)
    with StudyFile.open(path) as file:
        assert notes(file.study) == done
        while file.can_undo:
            file.undo()
        assert notes(file.study) == [""]


def test_undo_on_a_full_disk_is_refused_without_losing_the_place_in_the_history(small_disk):
    path = small_disk / "evening.studyboard"
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", PAGE))
        file.do(ChangeNode(0, "think", 5.0))
        file.do(ChangeNode(0, "note", "short"))
        ballast = fill(small_disk)
        with pytest.raises(StudyNotStoredError, match="full"):
            swing(file)
        ballast.unlink()
        while file.can_undo:
            file.undo()
        assert notes(file.study) == [""]
        while file.can_redo:
            file.redo()
        assert notes(file.study) == ["short"]


def test_sound_that_finds_the_disk_full_keeps_what_was_stored(small_disk):
    path = small_disk / "evening.studyboard"
    second = random.Random(5).randbytes(96_000)  # noise, because anything else is stored in less than its size
    with StudyFile.create(path) as file:
        take = file.sound.begin_take("one", 48_000, "2030-05-17T21:30:00+02:00")
        stored = 0

        def record() -> None:
            nonlocal stored
            for _ in range(1_000):
                file.sound.append_sound(take, second)
                stored += 1

        with pytest.raises(StudyNotStoredError, match="full"):
            record()
        assert stored > 3
        assert file.sound.length(take) == stored * 48_000
    with StudyFile.open(path) as file:
        (recovered,) = file.recovered
        assert recovered.samples == stored * 48_000
        assert file.sound.read_sound(take) == second * stored


def test_a_sound_file_for_which_there_is_no_room_is_not_taken_in_and_says_so(small_disk, tmp_path):
    pytest.importorskip("av")
    sound = tmp_path / "long.wav"
    with wave.open(str(sound), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(48_000)
        file.writeframes(random.Random(5).randbytes(4_000_000))
    path = small_disk / "evening.studyboard"
    ballast = small_disk / "ballast"
    ballast.write_bytes(bytes(300_000))
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", "before"))
        with pytest.raises(StudyNotStoredError, match="full"):
            import_sound(sound, file.sound)
        assert file.study.takes == {}
    with StudyFile.open(path, read_only=True) as file:
        assert notes(file.study) == ["before"]
    ballast.unlink()
    with StudyFile.open(path) as file:
        assert notes(file.study) == ["before"]
        assert all(not take.complete for take in file.study.takes.values())
        file.do(ChangeNode(0, "think", 5.0))


def test_a_study_is_not_made_and_not_copied_by_halves_on_a_full_disk(small_disk, tmp_path):
    path = tmp_path / "big.studyboard"
    copy = small_disk / "copy.studyboard"
    with StudyFile.create(path) as file:
        take = file.sound.begin_take("one", 48_000, "2030-05-17T21:30:00+02:00")
        for _ in range(40):
            file.sound.append_sound(take, random.Random(5).randbytes(96_000))
        file.sound.finish_take(take)
        with pytest.raises(StudyNotStoredError, match="full"):
            file.save_as(copy)
        assert os.listdir(small_disk) == []
        fill(small_disk)
        with pytest.raises(StudyFileError):
            StudyFile.create(copy)
        assert os.listdir(small_disk) == ["ballast"]
        file.do(ChangeSlot(60.0))


def test_an_older_copy_survives_a_new_one_for_which_there_is_no_room(small_disk, tmp_path):
    copy = small_disk / "copy.studyboard"
    with StudyFile.create(copy) as file:
        file.do(ChangeNode(0, "note", "the older copy"))
    with StudyFile.create(tmp_path / "big.studyboard") as file:
        file.do(ChangeNode(0, "note", PAGE * 40))
        with pytest.raises(StudyNotStoredError, match="full"):
            file.save_as(copy, overwrite=True)
    with StudyFile.open(copy) as file:
        assert notes(file.study) == ["the older copy"]


def test_a_study_on_a_full_disk_can_be_read(small_disk):
    path = small_disk / "evening.studyboard"
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", "before"))
    fill(small_disk)
    with StudyFile.open(path, read_only=True) as file:
        assert notes(file.study) == ["before"]
    with pytest.raises(StudyNotStoredError, match="full"):
        StudyFile.open(path)
    with StudyFile.open(path, read_only=True) as file:
        assert notes(file.study) == ["before"]
    (small_disk / "ballast").unlink()
    StudyFile.open(path).close()
    assert os.listdir(small_disk) == [path.name]


def test_a_study_on_a_disk_that_can_only_be_read_can_be_read(small_disk):
    path = small_disk / "evening.studyboard"
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", "burnt on a disc"))
        take = file.sound.begin_take("one", 48_000, "2030-05-17T21:30:00+02:00")
        file.sound.append_sound(take, bytes(96_000))
        file.sound.finish_take(take)
    mount("-o", "remount,ro", str(small_disk))
    with StudyFile.open(path, read_only=True) as file:
        assert notes(file.study) == ["burnt on a disc"]
        assert file.sound.read_sound(take, 0, 10) == bytes(20)
    with pytest.raises(ReadOnlyStudyError, match="to be read only"):
        StudyFile.open(path)
    assert os.listdir(small_disk) == [path.name]


def test_a_study_that_was_not_closed_on_a_disk_that_can_only_be_read_says_what_to_do(small_disk, tmp_path):
    path = tmp_path / "evening.studyboard"
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", "only in the log"))
        for name in (path.name, f"{path.name}-wal"):
            shutil.copy(tmp_path / name, small_disk / name)
    mount("-o", "remount,ro", str(small_disk))
    with pytest.raises(ReadOnlyStudyError, match=r"evening\.studyboard-wal"):
        StudyFile.open(small_disk / path.name, read_only=True)
    for name in (path.name, f"{path.name}-wal"):
        shutil.copy(small_disk / name, tmp_path / f"copy{name.removeprefix('evening')}")
    with StudyFile.open(tmp_path / "copy.studyboard", read_only=True) as file:
        assert notes(file.study) == ["only in the log"]


def test_a_disk_that_takes_no_more_of_a_file_is_no_harm(tmp_path):
    """Needs no rights: the system itself refuses to let files grow beyond a length."""
    resource = pytest.importorskip("resource")
    path = tmp_path / "evening.studyboard"
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", "before"))
        soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
        resource.setrlimit(resource.RLIMIT_FSIZE, (100_000, hard))
        try:
            with pytest.raises(StudyNotStoredError):
                write_pages(file)
        finally:
            resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        with StudyFile.open(path, read_only=True) as reader:
            assert notes(reader.study) == notes(file.study)
        file.do(ChangeNode(0, "note", "after"))
    with StudyFile.open(path) as file:
        assert notes(file.study) == ["after"]
