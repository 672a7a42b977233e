"""What check-setup prints."""

from __future__ import annotations

import json
from collections.abc import Callable


def test_everything_is_listed_with_its_version(say: Callable) -> None:
    answer = say("check-setup")
    assert answer.status == 0
    for name in ("Python", "chess", "Qt", "Screen", "typst", "cairo", "Sound", "platformdirs", "filelock", "rich"):
        assert any(line[9:].startswith(f"{name}:") for line in answer.out.splitlines())


def test_programs_get_the_same_findings(say: Callable) -> None:
    report = json.loads(say("check-setup", "--json").out)
    names = [finding["name"] for finding in report["findings"]]
    assert names[:3] == ["Python", "chess", "Qt"]
    assert all(finding["good"] for finding in report["findings"] if finding["essential"])
    assert report["debian_packages"] == []


def test_without_a_screen_the_rest_is_good(call: Callable) -> None:
    answer = call("check-setup", DISPLAY=None, WAYLAND_DISPLAY=None, QT_QPA_PLATFORM=None)
    assert answer.status == 0
    assert "missing  Screen: neither DISPLAY nor WAYLAND_DISPLAY is set" in answer.out
    assert answer.err == ""
