"""Many studies delivered at once: failures beside successes, interrupts, kills, and going on afterwards."""

from __future__ import annotations

import json
import os
import shutil
import signal
import subprocess
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from studyboard.cli.delivery_batch import deliver_batch, folders
from studyboard.cli.delivery_job import DeliveryJob
from studyboard.delivery.product import Item
from tests.cli.conftest import PROGRAM, surroundings

#: How long anything may take on a machine that is busy with other things (s).
PATIENCE = 120.0


@pytest.fixture
def studies(study: Path, tmp_path: Path) -> list[Path]:
    """Four studies."""
    paths = [tmp_path / f"evening {number}.studyboard" for number in range(1, 5)]
    for path in paths:
        shutil.copy(study, path)
    return paths


def products(folder: Path) -> set[str]:
    return {path.suffix for path in folder.iterdir()}


def begin(*words: object) -> subprocess.Popen[str]:
    """The program in a session of its own, so that all of its processes can be killed at once."""
    return subprocess.Popen(
        [*PROGRAM, *map(str, words)],
        env=surroundings(),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )


def until(holds: Callable[[], object]) -> None:
    """Look again and again; fail where it never holds."""
    deadline = time.monotonic() + PATIENCE
    while not holds():
        assert time.monotonic() < deadline


def nobody_in(session: int) -> bool:
    """No process of this session is left (a zombie is none)."""
    for stat in Path("/proc").glob("[0-9]*/stat"):
        try:
            state, _, _, its = stat.read_text().rpartition(")")[2].split()[:4]
        except OSError:
            continue
        if int(its) == session and state != "Z":
            return False
    return True


def test_each_study_has_a_folder_named_after_it(call: Callable, studies: list[Path], tmp_path: Path) -> None:
    answer = call("deliver", *studies, "--to", "out", "--game", "--chapters")
    assert (answer.status, answer.err) == (0, "")
    assert {path.name for path in (tmp_path / "out").iterdir()} == {path.stem for path in studies}
    for path in studies:
        assert products(tmp_path / "out" / path.stem) == {".pgn", ".txt", ".vtt", ".json"}
    printed = {tmp_path / line for line in answer.out.splitlines()}
    assert printed == {path for path in (tmp_path / "out").rglob("*.*") if path.suffix in (".pgn", ".txt", ".vtt")}


def test_two_studies_of_one_name_do_not_meet(tmp_path: Path) -> None:
    paths = [tmp_path / "a" / "talk.studyboard", tmp_path / "b" / "Talk.studyboard", tmp_path / "c" / "talk.pgn"]
    found = folders([*paths, paths[0]], tmp_path)
    assert [path for path, _ in found] == paths
    assert [to.name for _, to in found] == ["talk", "Talk-2", "talk-3"]


def test_one_that_fails_does_not_stop_the_others(call: Callable, studies: list[Path], tmp_path: Path) -> None:
    studies[1].write_text("no study at all", encoding="utf-8")
    answer = call("deliver", *studies, "--to", "out", "--game", "--parallel", 2)
    assert answer.status == 1
    assert answer.err.splitlines()[0] == "studyboard: 1 of 4 studies could not be delivered:"
    assert answer.err.splitlines()[1].startswith(f"  {studies[1]}: ")
    assert len(answer.err.splitlines()) == 2
    made = {path.parent.name for path in (tmp_path / "out").rglob("*.pgn")}
    assert made == {"evening 1", "evening 3", "evening 4"}
    assert not (tmp_path / "out" / "evening 2").exists()


def test_the_report_keeps_the_order_of_the_studies(call: Callable, studies: list[Path]) -> None:
    studies[2].unlink()
    answer = call("deliver", *studies, "--to", "out", "--game", "--parallel", 4, "--json")
    report = json.loads(answer.out)["studies"]
    assert [one["study"] for one in report] == [str(path) for path in studies]
    assert ["problem" in one for one in report] == [False, False, True, False]
    assert [len(one["delivered"]) for one in report] == [1, 1, 0, 1]


def test_a_game_that_cannot_all_be_read_is_told_with_its_file(call: Callable, studies: list[Path], tmp_path: Path):
    broken = tmp_path / "broken.pgn"
    broken.write_text('[Event "Evening"]\n\n1. e4 e5 2. Qxh7 *\n', encoding="utf-8")
    answer = call("deliver", studies[0], broken, "--to", "out", "--game")
    assert answer.status == 1
    assert answer.err.startswith(f"studyboard: {broken}: {broken}:3:")
    assert (tmp_path / "out" / "broken").is_dir()


def test_a_number_says_nothing_of_several_files(refused: Callable, studies: list[Path], tmp_path: Path) -> None:
    assert "--number" in refused("deliver", *studies, "--to", tmp_path / "out", "--number", 1)
    assert not (tmp_path / "out").exists()


def test_a_process_that_dies_takes_nobody_along(studies: list[Path], tmp_path: Path) -> None:
    class Deadly:
        """Ends the process that reads it."""

        def __reduce__(self) -> tuple[object, ...]:
            return os._exit, (3,)

    jobs = [
        DeliveryJob(path, None, tmp_path / "out" / path.stem, (Item.GAME,), {Item.SHEET: Deadly()} if last else {})
        for path, last in zip(studies, (False, True, False, False), strict=True)
    ]
    reports = deliver_batch(jobs, 2)
    assert [one.problem for one in reports] == ["", "its process ended unexpectedly (status 3).", "", ""]
    assert [one.whole for one in reports] == [True, False, True, True]


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="looks for processes in /proc")
def test_after_a_kill_the_same_command_makes_what_is_missing(studies: list[Path], tmp_path: Path) -> None:
    """Everything is killed (SIGKILL) while the second study is being made."""
    words = ("deliver", *studies, "--to", tmp_path / "out", "--sheet", "--game", "--parallel", 1)
    program = begin(*words)
    assert program.stdout is not None
    first = [program.stdout.readline() for _ in range(2)]
    assert all("evening 1" in line for line in first)
    until(lambda: list((tmp_path / "out").glob("evening 2/.studyboard-*")))
    os.killpg(program.pid, signal.SIGKILL)
    program.communicate()
    until(lambda: nobody_in(program.pid))
    untouched = {path: path.stat().st_mtime_ns for path in (tmp_path / "out" / "evening 1").iterdir()}
    assert not (tmp_path / "out" / "evening 4").exists()

    again = begin(*words)
    out, err = again.communicate(timeout=PATIENCE)
    assert (again.returncode, err) == (0, "")
    assert [line for line in out.splitlines() if "evening 1" in line] == [f"{line.strip()} (kept)" for line in first]
    assert not [line for line in out.splitlines() if "evening 4" in line and "(kept)" in line]
    assert {path: path.stat().st_mtime_ns for path in untouched} == untouched
    for path in studies:
        assert products(tmp_path / "out" / path.stem) == {".pdf", ".pgn", ".json"}, "nothing half-written is left"


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="looks for processes in /proc")
@pytest.mark.parametrize("end", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL])
def test_whoever_ends_the_program_ends_its_work(studies: list[Path], tmp_path: Path, end: signal.Signals) -> None:
    """Only the program itself is told; its processes put away what they have begun."""
    program = begin("deliver", *studies, "--to", tmp_path / "out", "--sheet", "--parallel", 2)
    until(lambda: list((tmp_path / "out").glob("*/.studyboard*")))
    program.send_signal(end)
    _, err = program.communicate(timeout=PATIENCE)
    until(lambda: nobody_in(program.pid))
    assert not list((tmp_path / "out").glob("*/.studyboard*"))
    for folder in (tmp_path / "out").glob("*"):
        assert products(folder) == {".pdf", ".json"}, "all of a study, or nothing"
    assert len(list((tmp_path / "out").rglob("*.pdf"))) < len(studies)
    if end is signal.SIGINT:
        assert program.returncode == 130
        assert err == "studyboard: stopped; nothing was left half-written\n"
