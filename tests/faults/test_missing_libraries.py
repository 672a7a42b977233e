"""A machine that lacks shared libraries: each is named with its package, and what can work still works.

The libraries are really gone: the program runs where an overlay covers the folder in which they lie. That takes root
and a kernel that allows it, as in CI on a container; elsewhere these tests are skipped.
"""

from __future__ import annotations

import ctypes
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

import studyboard

HIDING = """\
set -e
folder=$1; scratch=$2; shift 2
mount -t tmpfs none "$scratch"
mkdir "$scratch/upper" "$scratch/work"
while [ "$1" != -- ]; do mknod "$scratch/upper/$1" c 0 0; shift; done
shift
mount -t overlay overlay -o "lowerdir=$folder,upperdir=$scratch/upper,workdir=$scratch/work" "$folder"
exec "$@"
"""
NOWHERE = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")


def _folder_of(library: str) -> Path | None:
    """The folder in which the system's loader finds this library."""
    try:
        ctypes.CDLL(library)
    except OSError:
        return None
    lines = Path("/proc/self/maps").read_text(encoding="utf-8").splitlines()
    found = [Path(line.split(maxsplit=5)[5]) for line in lines if library.partition(".so")[0] + ".so" in line]
    return found[0].parent if found else None


@pytest.fixture
def without(tmp_path: Path) -> Callable[..., subprocess.CompletedProcess[str]]:
    """Runs the program on a machine without some libraries."""
    if not hasattr(os, "geteuid") or os.geteuid() != 0 or shutil.which("unshare") is None:
        pytest.skip("needs root, to hide libraries from a process")
    folder = _folder_of("libcairo.so.2")
    if folder is None:
        pytest.skip("needs libcairo.so.2, to hide it")
    scratch = tmp_path / "scratch"
    scratch.mkdir()
    work = tmp_path / "work"
    work.mkdir()

    def run(libraries: tuple[str, ...], *words: object) -> subprocess.CompletedProcess[str]:
        hide = ["unshare", "--mount", "bash", "-c", HIDING, "hide", str(folder), str(scratch)]
        tried = subprocess.run([*hide, "--", "true"], capture_output=True, text=True)
        if tried.returncode:
            pytest.skip(f"this kernel lets nobody hide libraries: {tried.stderr.strip()}")
        environment = {key: value for key, value in os.environ.items() if key not in NOWHERE}
        environment["PYTHONPATH"] = str(Path(studyboard.__file__).parent.parent)
        program = [sys.executable, "-m", "studyboard", *map(str, words)]
        return subprocess.run(
            [*hide, *libraries, "--", *program], cwd=work, env=environment, capture_output=True, text=True
        )

    return run


def test_all_missing_libraries_are_found_at_once_with_one_line_to_install_them(without) -> None:
    answer = without(("libEGL.so.1", "libcairo.so.2", "libxcb-cursor.so.0", "libpulse.so.0"), "check-setup")
    assert answer.returncode == 1
    assert answer.stderr == ""
    assert "MISSING  Qt: this system lacks libEGL.so.1" in answer.stdout
    assert "missing  cairo: this system lacks libcairo.so.2" in answer.stdout
    assert "missing  Sound: this system lacks libEGL.so.1, libpulse.so.0" in answer.stdout
    assert answer.stdout.splitlines()[-1].endswith("apt install libcairo2 libegl1 libpulse0 libxcb-cursor0")


def test_the_desk_names_every_library_that_it_needs_in_one_line(without) -> None:
    answer = without(("libEGL.so.1", "libxcb-cursor.so.0", "libcairo.so.2"), "open")
    assert answer.returncode == 2
    assert answer.stderr.count("\n") == 1
    assert "lacks libEGL.so.1, libxcb-cursor.so.0" in answer.stderr
    assert answer.stderr.endswith("apt install libegl1 libxcb-cursor0\n")


def test_without_sound_the_rest_of_the_set_up_is_good(without) -> None:
    answer = without(("libpulse.so.0",), "check-setup")
    assert answer.returncode == 0
    assert "ok       Qt" in answer.stdout
    assert "apt install libpulse0" in answer.stdout


def test_without_cairo_a_still_names_its_package(without, tmp_path: Path) -> None:
    game = tmp_path / "game.pgn"
    game.write_text("1. e4 e5 *\n", encoding="utf-8")
    answer = without(("libcairo.so.2",), "deliver", game, "--to", tmp_path / "out", "--still")
    assert answer.returncode == 2
    assert "apt install libcairo2" in answer.stderr
    assert "Traceback" not in answer.stderr
    assert not (tmp_path / "out").exists()


def test_without_any_of_them_the_tour_delivers_what_needs_none(without, tmp_path: Path) -> None:
    answer = without(("libEGL.so.1", "libGL.so.1", "libcairo.so.2", "libfontconfig.so.1"), "tour")
    assert answer.returncode == 0
    assert "Traceback" not in answer.stderr
    assert "apt install libcairo2" in answer.stderr
    written = {path.suffix for path in (tmp_path / "work" / "tour").iterdir()}
    assert written == {".studyboard", ".pdf", ".txt", ".vtt", ".srt", ".pgn", ".html", ".json"}
