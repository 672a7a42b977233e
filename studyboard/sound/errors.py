"""What can go wrong with sound, in sentences that a presenter understands."""

from __future__ import annotations

import importlib
import sys

from studyboard.model.errors import StudyboardError

#: The Debian package that brings a system library, by the beginning of the library's file name.
_DEBIAN_PACKAGES = {
    "libpulse": "libpulse0",
    "libEGL": "libegl1",
    "libGL": "libgl1",
    "libxkbcommon": "libxkbcommon0",
    "libX11": "libx11-6",
    "libXrandr": "libxrandr2",
    "libXext": "libxext6",
    "libfontconfig": "libfontconfig1",
    "libdbus-1": "libdbus-1-3",
    "libglib-2.0": "libglib2.0-0",
}


class SoundUnavailableError(StudyboardError):
    """Something that sound needs is not installed; the message names the package that brings it."""


class NoMicrophoneError(StudyboardError):
    """The system offers no microphone, or not the one that was asked for."""


class SoundFileError(StudyboardError):
    """A sound file could not be written."""


def require(module: str) -> None:
    """Make sure that a module which sound needs can be imported.

    Raises SoundUnavailableError with the pip or Debian package to install.
    """
    try:
        importlib.import_module(module)
    except ModuleNotFoundError as reason:
        raise SoundUnavailableError(
            f'Sound needs the Python package {_pip_package(module)}: pip install "studyboard[sound]" brings it.'
        ) from reason
    except ImportError as reason:
        raise SoundUnavailableError(_library_sentence(str(reason))) from reason


def require_multimedia() -> None:
    """Make sure that Qt can hear and play sound. Raises SoundUnavailableError."""
    require("PySide6.QtMultimedia")


def _pip_package(module: str) -> str:
    return "PySide6-Addons" if module.startswith("PySide6.") else module.partition(".")[0]


def _library_sentence(reason: str) -> str:
    library = reason.partition(":")[0]
    for beginning, package in _DEBIAN_PACKAGES.items():
        if library.startswith(beginning):
            hint = f"on Debian and Ubuntu: apt install {package}" if sys.platform == "linux" else "install it"
            return f"Sound needs the system library {library} ({hint})."
    return f"Sound cannot be used, because a system library is missing: {reason}."
