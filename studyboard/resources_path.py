"""Where the files are that the program ships: pieces, palettes, fonts, tables, templates."""

from __future__ import annotations

from pathlib import Path
from typing import Final

_PACKAGE: Final = Path(__file__).resolve().parent


def resource(*parts: str) -> Path:
    """Path of a shipped file or folder, the same in an installed wheel and in a checkout.

    Raises FileNotFoundError, with a sentence that says what is missing, when it is in neither.
    """
    for root in (_PACKAGE / "resources", _PACKAGE.parent / "resources"):
        path = root.joinpath(*parts)
        if path.exists():
            return path
    raise FileNotFoundError(
        f"Studyboard's own file {'/'.join(parts)} is missing; the installation is damaged, install it again."
    )
