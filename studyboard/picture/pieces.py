"""The drawn pieces, as SVG text to render or to embed."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

import chess

from studyboard.picture.lathe import SQUARE
from studyboard.resources_path import resource
from studyboard.translation import tr_later

DEFAULT_SET: Final = "study"

PIECE_SETS: Final = (("study", tr_later("Turned")), ("bold", tr_later("Bold")))
"""The sets that there are: the folder of each and what it is called."""

GRID: Final = SQUARE
"""Side of the grid on which every piece is drawn; one square of the board."""

_HALO: Final = 3.4
"""Width of the rim around a piece that keeps it free of hatching, in hundredths of a square."""

_INSIDE: Final = re.compile(r"<svg[^>]*>\s*<title>[^<]*</title>\s*(.*?)\s*</svg>", re.DOTALL)
_OUTLINE: Final = re.compile(
    r'<g fill="[^"]*" stroke="[^"]*" stroke-width="([^"]*)" stroke-linejoin="round">(.*?)</g>', re.DOTALL
)


def piece_code(piece: chess.Piece) -> str:
    """The piece's name in file names and ids: ``"wK"``, ``"bP"``."""
    return ("w" if piece.color == chess.WHITE else "b") + chess.piece_symbol(piece.piece_type).upper()


@cache
def piece_svg(piece: chess.Piece, piece_set: str = DEFAULT_SET) -> str:
    """The whole SVG document of *piece*, on a grid of 100 × 100 that is one square of the board.

    Raises FileNotFoundError when the set or the piece is not there.
    """
    return resource("pieces", piece_set, f"{piece_code(piece)}.svg").read_text(encoding="utf-8")


@cache
def piece_fragment(piece: chess.Piece, piece_set: str = DEFAULT_SET, halo: str | None = None) -> str:
    """What stands inside the piece's SVG, to be embedded in another on the same grid; it uses no ids.

    halo: colour of a rim drawn around the piece, ``#rrggbb``; None for no rim
    """
    found = _INSIDE.search(piece_svg(piece, piece_set))
    if found is None:
        raise ValueError(f"The file of the piece {piece_code(piece)} in the set {piece_set!r} is damaged.")
    inside = found[1]
    if halo is None:
        return inside
    outline = _OUTLINE.search(inside)
    if outline is None:
        raise ValueError(f"The piece {piece_code(piece)} in the set {piece_set!r} has no outline to put a rim around.")
    width = float(outline[1]) + 2 * _HALO
    return (
        f'<g fill="{halo}" stroke="{halo}" stroke-width="{width:g}" stroke-linejoin="round">{outline[2]}</g>\n{inside}'
    )
