"""Small text files of the user's that outlive a study: own words, snippets."""

from __future__ import annotations

import os
from pathlib import Path
from tempfile import mkstemp

import platformdirs

from studyboard.model.errors import StudyboardError
from studyboard.translation import tr

#: The environment variable that names another folder for what the user keeps.
CONFIG_DIR = "STUDYBOARD_CONFIG_DIR"


class NotKeptError(StudyboardError):
    """A file of the user's that cannot be read or written."""


def config_folder() -> Path:
    """The platform's place for what a user sets up in this program; it need not exist yet."""
    chosen = os.environ.get(CONFIG_DIR)
    return Path(chosen) if chosen else platformdirs.user_config_path("studyboard", appauthor=False)


def read_text(path: Path) -> str:
    """What is in a text file: UTF-8, with or without a mark at its start, else Latin-1 as of Windows.

    Empty where there is no such file. Raises NotKeptError where it cannot be read.
    """
    try:
        data = path.read_bytes()
    except FileNotFoundError:
        return ""
    except OSError as reason:
        raise NotKeptError(
            tr("“{path}” cannot be read: {reason}.", path=path, reason=reason.strerror or reason)
        ) from reason
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")


def write_text(path: Path, text: str) -> None:
    """Write a text file beside its place and rename it into it. Raises NotKeptError, with the old one still there."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        descriptor, beside = mkstemp(dir=path.parent, suffix=".partial")
        try:
            with open(descriptor, "w", encoding="utf-8") as file:
                file.write(text)
            os.replace(beside, path)
        except OSError:
            os.unlink(beside)
            raise
    except OSError as reason:
        raise NotKeptError(
            tr("“{path}” cannot be written: {reason}.", path=path, reason=reason.strerror or reason)
        ) from reason
