"""What is installed and what is missing."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from studyboard.setup_check import (
    Finding,
    all_packages,
    cairo,
    check_setup,
    draws_into_memory,
    qt,
    scratch_voice,
    screen,
    sound,
)


def test_what_the_tests_run_with_is_found() -> None:
    findings = {finding.name: finding for finding in check_setup()}
    assert findings["Python"].detail == ".".join(map(str, sys.version_info[:3]))
    assert [name for name, finding in findings.items() if finding.essential and not finding.good] == []
    assert qt().good
    assert cairo().good
    assert sound().good
    assert all_packages(findings.values()) == ()


def test_a_system_without_a_speech_synthesiser_is_told_what_brings_one(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    found = scratch_voice()
    assert not found.good
    assert not found.essential
    assert found.packages == ("espeak-ng",)
    (tmp_path / "espeak-ng").write_text("#!/bin/sh\n")
    (tmp_path / "espeak-ng").chmod(0o755)
    assert scratch_voice().good


def test_a_screen_in_memory_is_none_that_anybody_sees(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    assert draws_into_memory()
    found = screen()
    assert not found.good
    assert "memory" in found.detail
    assert "QT_QPA_PLATFORM" in found.remedy


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="DISPLAY is a matter of X11")
def test_without_a_display_there_is_no_screen(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("QT_QPA_PLATFORM", "DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    found = screen()
    assert (found.good, found.essential) == (False, False)
    assert "DISPLAY" in found.detail
    assert "xvfb-run" in found.remedy


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="DISPLAY is a matter of X11")
def test_a_display_that_nobody_serves_is_no_screen(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("QT_QPA_PLATFORM", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("DISPLAY", ":7431")
    found = screen()
    assert not found.good
    assert found.detail == "no X server answers at DISPLAY=:7431"


def test_packages_of_all_findings_are_named_once() -> None:
    findings = [
        Finding("One", False, "this", "lacking", packages=("libgl1", "libegl1")),
        Finding("Two", False, "that", "lacking", packages=("libegl1", "libcairo2")),
        Finding("Three", True, "something", "there"),
    ]
    assert all_packages(findings) == ("libcairo2", "libegl1", "libgl1")
