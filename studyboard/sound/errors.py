"""What can go wrong with sound, in sentences that a presenter understands."""

from __future__ import annotations

import importlib

from studyboard.model.errors import StudyboardError
from studyboard.shared_libraries import named_library, remedy
from studyboard.translation import tr


class SoundUnavailableError(StudyboardError):
    """Something that sound needs is not installed; the message names the package that brings it."""


class NoMicrophoneError(StudyboardError):
    """The system offers no microphone, or not the one that was asked for."""


class SoundFileError(StudyboardError):
    """A sound file could not be read, or not be written."""


def require(module: str) -> None:
    """Make sure that a module which sound needs can be imported.

    Raises SoundUnavailableError with the pip or Debian package to install.
    """
    try:
        importlib.import_module(module)
    except ModuleNotFoundError as reason:
        package = "PySide6-Addons" if module.startswith("PySide6.") else module.partition(".")[0]
        raise SoundUnavailableError(
            tr(
                "Sound needs the Python package {package}, which is not installed: pip install {package}",
                package=package,
            )
        ) from reason
    except ImportError as reason:
        library = named_library(reason)
        if library is None:
            raise SoundUnavailableError(tr("Sound cannot be used: {reason}.", reason=reason)) from reason
        raise SoundUnavailableError(
            tr("Sound needs {library}, which this system lacks. {remedy}", library=library, remedy=remedy([library]))
        ) from reason
