"""Where the program's own resources lie, in an installed wheel and in a checkout alike."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent
_HOMES = (_PACKAGE / "resources", _PACKAGE.parent / "resources")


def resource(*parts: str) -> Path:
    """The path of a file or folder under resources/. Raises FileNotFoundError where it is missing."""
    for home in _HOMES:
        path = home.joinpath(*parts)
        if path.exists():
            return path
    raise FileNotFoundError(
        f"The program's own file resources/{'/'.join(parts)} is missing: install Studyboard again."
    )
