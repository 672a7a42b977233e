"""What can go wrong before a narration is read."""

from studyboard.model.errors import StudyboardError


class NoSuchLanguageError(StudyboardError):
    """There is no file of words for this language."""


class NarrationRefusedError(StudyboardError):
    """A narration that cannot be read at all; the message says why."""
