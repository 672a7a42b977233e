"""What a written move says, before anyone knows whether it can be played."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

import chess

#: Castling and passing are written without squares; these stand for a piece type in WrittenMove.piece.
ANY_PIECE, CASTLES_SHORT, CASTLES_LONG, PASSES = 0, 7, 8, 9


@dataclass(frozen=True, slots=True)
class WrittenMove:
    """One reading of a written move.

    piece: python-chess piece type (1 pawn to 6 king), or one of the constants above
    to: target square (0-63); -1 for castling and passing
    origins: squares from which it may start; None where nothing is said about that
    file: file of origin (0-7), -1 where none is written
    promotion: piece type, 0 where none is written
    """

    piece: int
    to: int = -1
    origins: bytes | None = None
    file: int = -1
    promotion: int = 0


_CHECK = r"(?:[+#†‡]{1,2}|ch|mate)?"
_CASTLING = re.compile(rf"([O0o])-?\1(-?\1)?{_CHECK}")
_PASSING = frozenset({"--", "Z0", "0000", "@@@@"})
_MOVE = re.compile(
    rf"([KQRBNP])?([a-h])?([1-8])?([-x:×–])?([a-h])([1-8])(?:[=/]?\(?([QRBNqrbn])\)?)?(?:\s?e\.?\s?p\.?)?{_CHECK}"
)
_FIGURINES = str.maketrans("♔♕♖♗♘♙♚♛♜♝♞♟", "KQRBNPKQRBNP")
_PIECES = {letter: number for number, letter in enumerate("PNBRQK", start=1)}
_FILES = [bytes(square for square in range(64) if square & 7 == file) for file in range(8)]
_RANKS = [bytes(square for square in range(64) if square >> 3 == rank) for rank in range(8)]


@lru_cache(maxsize=1 << 15)
def readings(text: str) -> tuple[WrittenMove, ...]:
    """What *text* can mean, the likeliest first; nothing where it does not look like a move at all.

    Reads standard algebraic notation and what is common beside it: long algebraic and bare coordinates, figurines,
    castling with zeros, promotions without a sign or in parentheses, letters in the wrong case.
    """
    text = text.translate(_FIGURINES)
    castling = _CASTLING.fullmatch(text)
    if castling:
        return (WrittenMove(CASTLES_LONG if castling[2] else CASTLES_SHORT),)
    if text in _PASSING:
        return (WrittenMove(PASSES),)
    low = text.lower()
    found = (_reading(spelling) for spelling in dict.fromkeys((text, low, low[:1].upper() + low[1:])))
    return tuple(dict.fromkeys(reading for reading in found if reading is not None))


def _reading(text: str) -> WrittenMove | None:
    match = _MOVE.fullmatch(text)
    if match is None:
        return None
    letter, file, rank, sign, to_file, to_rank, promotion = match.groups()
    if sign and not (letter or file or rank):
        return None
    to = (ord(to_rank) - 49) * 8 + ord(to_file) - 97
    origins: bytes | None = None
    if file and rank:
        origins = bytes([(ord(rank) - 49) * 8 + ord(file) - 97])
    elif file:
        origins = _FILES[ord(file) - 97]
    elif rank:
        origins = _RANKS[ord(rank) - 49]
    piece = _PIECES[letter] if letter else ANY_PIECE if file and rank else chess.PAWN
    return WrittenMove(
        piece, to, origins, ord(file) - 97 if file else -1, _PIECES[promotion.upper()] if promotion else 0
    )
