"""How long work on a position is stopped when nobody wants its result any more."""

from __future__ import annotations

from typing import Final

from studyboard.model.errors import StudyboardError

#: Positions between two looks at whether the work is still wanted: a few milliseconds.
CANCEL_EVERY: Final = 64


class WorkCancelledError(StudyboardError):
    """The work was stopped before it was done; there is no result."""


def never_cancelled() -> bool:
    """For work that runs to its end."""
    return False
