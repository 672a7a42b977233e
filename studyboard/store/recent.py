"""The studies that were open last, remembered between sessions."""

from __future__ import annotations

import json
import os
from contextlib import suppress
from pathlib import Path
from tempfile import mkstemp

import platformdirs

#: How many are remembered.
MOST = 20

#: The environment variable that names another folder for what is remembered.
STATE_DIR = "STUDYBOARD_STATE_DIR"


def state_dir() -> Path:
    """The folder in which the program remembers things of this user; it need not exist yet."""
    chosen = os.environ.get(STATE_DIR)
    return Path(chosen) if chosen else platformdirs.user_state_path("studyboard", appauthor=False)


def recent_files() -> list[Path]:
    """Studies that were open last and are still there, the latest first; empty where nothing can be read."""
    return [path for path in _remembered() if os.path.isfile(path)]


def remember(path: Path | str) -> None:
    """Put a study on top of the recent ones. What cannot be written down is not remembered: that stops no work."""
    top = Path(os.path.abspath(path))
    _write([top, *(other for other in _remembered() if other != top)][:MOST])


def forget(path: Path | str) -> None:
    """Take a study off the recent ones."""
    gone = Path(os.path.abspath(path))
    _write([other for other in _remembered() if other != gone])


def _file() -> Path:
    return state_dir() / "recent.json"


def _remembered() -> list[Path]:
    """All that is written down, the studies on a disk that is not plugged in at present among them."""
    try:
        plain = json.loads(_file().read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
        return []
    if not isinstance(plain, list):
        return []
    return [Path(name) for name in plain if isinstance(name, str) and name and "\0" not in name][:MOST]


def _write(paths: list[Path]) -> None:
    with suppress(OSError, UnicodeError):
        target = _file()
        target.parent.mkdir(parents=True, exist_ok=True)
        text = json.dumps([str(path) for path in paths], indent=0)
        descriptor, beside = mkstemp(dir=target.parent, suffix=".partial")
        try:
            with open(descriptor, "w", encoding="utf-8") as file:
                file.write(text)
            os.replace(beside, target)
        except OSError:
            os.unlink(beside)
            raise
