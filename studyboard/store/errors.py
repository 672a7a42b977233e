"""What can go wrong with a study file, in sentences that a presenter understands."""

from __future__ import annotations

from studyboard.model.errors import StudyboardError


class StudyFileError(StudyboardError):
    """Something that cannot be done with a study file; what is on the disk is as it was."""


class StudyMissingError(StudyFileError):
    """There is no such file."""


class StudyExistsError(StudyFileError):
    """A file of this name is there already and was not to be replaced."""


class NotAStudyError(StudyFileError):
    """The file is something else than a study."""


class DamagedStudyError(StudyFileError):
    """The file is a study, but part of it is missing or unreadable."""


class NewerStudyError(StudyFileError):
    """The file was written by a later version of the program."""


class StudyInUseError(StudyFileError):
    """Another window or program is working on the file."""


class ReadOnlyStudyError(StudyFileError):
    """The file may be read but not changed."""


class StudyNotStoredError(StudyFileError):
    """A change could not be written to the disk and was taken back."""


class StudyClosedError(StudyFileError):
    """The file has been closed already."""


class SoundMissingError(StudyFileError):
    """The sound of a take is not in the file (any more)."""
