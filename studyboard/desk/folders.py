"""Where new studies are kept, and what their files are called."""

from __future__ import annotations

import os
import re
from pathlib import Path

from platformdirs import user_documents_path

from studyboard.model.study import Study

SUFFIX = ".studyboard"
_FORBIDDEN = re.compile(r'[<>:"/\\|?*\x00-\x1f]+')
_LONGEST = 80


def studies_folder() -> Path:
    """The folder for new studies, made if it is not there: Studyboard in the user's documents.

    The environment variable STUDYBOARD_STUDIES names another one.
    """
    named = os.environ.get("STUDYBOARD_STUDIES")
    folder = Path(named) if named else user_documents_path() / "Studyboard"
    folder.mkdir(parents=True, exist_ok=True)
    return folder


def new_path(study: Study, folder: Path | None = None) -> Path:
    """A name for a new study from its players and date that is not taken in *folder* yet."""
    folder = studies_folder() if folder is None else folder
    stem = _stem(study)
    path = folder / f"{stem}{SUFFIX}"
    number = 2
    while path.exists():
        path = folder / f"{stem} {number}{SUFFIX}"
        number += 1
    return path


def _stem(study: Study) -> str:
    white, black = (study.headers.get(tag, "?") for tag in ("White", "Black"))
    date = study.headers.get("Date", "?")
    parts = [part for part in (white, black) if part not in ("", "?")]
    stem = " - ".join(parts) or "Study"
    if date and "?" not in date:
        stem = f"{stem} {date}"
    stem = _FORBIDDEN.sub("-", stem).strip(" .")
    return stem[:_LONGEST].rstrip(" .") or "Study"
