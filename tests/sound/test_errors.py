"""What is missing for sound is named with the package that brings it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from studyboard.sound.errors import SoundUnavailableError, require


def test_a_missing_python_package_is_named(tmp_path: Path) -> None:
    with pytest.raises(SoundUnavailableError, match="pip install lute"):
        require("lute.strings")


def test_a_missing_system_library_is_named_with_its_debian_package(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "lacking.py").write_text(
        'raise ImportError("libpulse.so.0: cannot open shared object file: No such file or directory")\n'
    )
    monkeypatch.syspath_prepend(tmp_path)
    with pytest.raises(SoundUnavailableError, match=r"libpulse\.so\.0.*apt install libpulse0"):
        require("lacking")


def test_without_qt_multimedia_everything_can_be_imported_and_recording_says_what_to_install() -> None:
    program = """
import sys
sys.modules["PySide6.QtMultimedia"] = None  # as if PySide6-Addons were not installed
for package in ("numpy", "soxr", "pulsectl", "pyloudnorm"):
    sys.modules[package] = None
from PySide6.QtCore import QCoreApplication
from studyboard.model.errors import StudyboardError
from studyboard.model.takes import Take
from studyboard.sound import conversion, devices, levelling, levels, loudness, microphone, player, recorder, wav
application = QCoreApplication([])
talk = recorder.Recorder(lambda: None)
foreign = conversion.DeviceFormat(conversion.SampleKind.FLOAT)
for way in (
    devices.inputs,
    devices.DeviceWatch,
    talk.listen,
    lambda: talk.start("Take 1"),
    lambda: conversion.Converter(foreign),
    loudness.LoudnessMeter,
):
    try:
        way()
    except StudyboardError as reason:
        print(reason)
print(levels.peak_dbfs(b"\\x00\\x40"))
"""
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    lines = done.stdout.splitlines()
    addons, numpy, loudness = (
        f"Sound needs the Python package {package}, which is not installed: pip install {package}"
        for package in ("PySide6-Addons", "numpy", "pyloudnorm")
    )
    assert lines[:6] == [addons] * 4 + [numpy, loudness]
    assert lines[6].startswith("-6.02")
