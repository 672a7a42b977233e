"""The annotated game, with what is said as its comments."""

from __future__ import annotations

from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.pgn_writer import pgn_text


def game_pgn(study: Study, positions: Positions | None = None) -> bytes:
    """The whole study as one PGN game in UTF-8: side-lines, glyphs, notes, and spoken lines before the notes.

    Hidden side-lines are in it too: who opens the file has a board to go through them.
    """
    return pgn_text(study, positions, spoken=True, notes=True).encode("utf-8", errors="replace")
