"""Moves as people say them, written down: “knight takes e five” is “Nxe5”."""

from __future__ import annotations

import re
from functools import cache

from studyboard.notation.spoken import spoken_table

_PASSED_BY = frozenset({"to", "on", "at", "the", "and", "with"})
_TAKES = frozenset({"takes", "take", "captures", "capture", "capturing", "taking", "x"})
_ENDINGS = frozenset({"check", "checkmate", "mate"})
_SHORT = frozenset({"", "short", "kingside", "king side"})
_LONG = frozenset({"long", "queenside", "queen side"})
_PROMOTES = frozenset({"promotes", "promoting", "equals", "becomes", "="})
_MOVE = re.compile(r"([KQRBNP]?)([a-h]?[1-8]?)(x?)([a-h][1-8])(?:=([QRBN]))?")


def written(text: str) -> str:
    """The move that *text* says, in algebraic notation without a sign of check; what says none comes back as it is."""
    words = text.lower().replace("-", " ").split()
    if words and words[0] in ("castles", "castle", "castling"):
        side = " ".join(word for word in words[1:] if word not in _PASSED_BY | _ENDINGS | {"side"})
        side = side.removesuffix("side").strip()
        if side in _SHORT | {"king"}:
            return "O-O"
        return "O-O-O" if side in _LONG | {"queen"} else text
    if len(words) < 2:
        return text
    signs = _signs()
    letters: list[str] = []
    for word in words:
        # The letter a is a file, but not in “promotes to a queen”.
        if word in _PASSED_BY or word in _ENDINGS or (word == "a" and letters[-1:] == ["="]):
            continue
        sign = "x" if word in _TAKES else "=" if word in _PROMOTES else signs.get(word, word)
        letters.append(sign)
    said = "".join(letters)
    return said if _MOVE.fullmatch(said) else text


@cache
def _signs() -> dict[str, str]:
    """The letter or figure of each word for a piece and a rank."""
    table = spoken_table()
    pieces = {word: letter for letter, word in table.pieces.items()}
    return pieces | {word: figure for figure, word in table.ranks.items()}
