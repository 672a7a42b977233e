"""Naming the system's shared libraries and the packages that bring them."""

from __future__ import annotations

import importlib.util
import shutil
import sys
from pathlib import Path

import pytest

from studyboard.shared_libraries import (
    DEBIAN_PACKAGE_OF,
    debian_packages,
    missing_libraries,
    named_library,
    remedy,
)

on_linux = pytest.mark.skipif(
    not sys.platform.startswith("linux") or shutil.which("ldd") is None, reason="asks the loader of Linux"
)


def _qt_plugin() -> Path:
    spec = importlib.util.find_spec("PySide6")
    assert spec is not None
    assert spec.origin is not None
    return Path(spec.origin).parent / "Qt" / "plugins" / "platforms" / "libqoffscreen.so"


@on_linux
def test_a_file_whose_libraries_are_all_there_lacks_none() -> None:
    assert missing_libraries([_qt_plugin()]) == ()


@on_linux
def test_a_file_that_was_torn_from_its_libraries_lacks_them_all(tmp_path: Path) -> None:
    torn = tmp_path / "libqoffscreen.so"
    torn.write_bytes(_qt_plugin().read_bytes())
    lacking = missing_libraries([torn])
    assert "libQt6Core.so.6" in lacking
    assert "libQt6Gui.so.6" in lacking


@on_linux
def test_a_file_that_is_not_there_is_no_reason_to_fail(tmp_path: Path) -> None:
    assert missing_libraries([tmp_path / "libnothing.so"]) == ()
    assert missing_libraries([]) == ()


@pytest.mark.parametrize(
    ("message", "library"),
    [
        ("libEGL.so.1: cannot open shared object file: No such file or directory", "libEGL.so.1"),
        ("libxcb-cursor.so.0: cannot open shared object file", "libxcb-cursor.so.0"),
        ("libglib-2.0.so.0: cannot open shared object file", "libglib-2.0.so.0"),
        ("libstdc++.so.6: version `GLIBCXX_3.4.99' not found", "libstdc++.so.6"),
        ("No module named 'chess'", None),
    ],
)
def test_the_library_is_read_out_of_the_loaders_message(message: str, library: str | None) -> None:
    assert named_library(ImportError(message)) == library


def test_packages_are_named_once_and_in_order() -> None:
    libraries = ["libpulse.so.0", "libEGL.so.1", "libpulse-simple.so.0", "libunheard-of.so.3"]
    assert debian_packages(libraries) == ("libegl1", "libpulse0")


@on_linux
def test_the_remedy_is_one_line_that_can_be_copied() -> None:
    assert remedy(["libEGL.so.1", "libcairo.so.2"]) == "On Debian and Ubuntu: apt install libcairo2 libegl1"


@on_linux
def test_a_library_that_nobody_knows_is_named_itself() -> None:
    line = remedy(["libEGL.so.1", "libunheard-of.so.3"])
    assert "apt install libegl1" in line
    assert "libunheard-of.so.3" in line
    assert "\n" not in line


def test_every_name_in_the_table_is_one_of_the_loaders() -> None:
    assert all(named_library(library) == library for library in DEBIAN_PACKAGE_OF)
