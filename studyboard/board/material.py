"""Who is up what: the material of a position in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

import chess

from studyboard.board.exchange import PIECE_VALUES

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight")
_BY_VALUE = (chess.QUEEN, chess.ROOK, chess.BISHOP, chess.KNIGHT, chess.PAWN)
_MINOR = (chess.BISHOP, chess.KNIGHT)


def material_words(board: chess.BaseBoard) -> str:
    """The material in one sentence: ``"White is a pawn up."``, ``"Material is level."``.

    Where both sides have something that the other has not, it says what stands against what: ``"White has a rook for a
    bishop and a knight (5 points to 6)."`` A rook for a knight or bishop is the exchange (common practice). O(1).
    """
    extra = {colour: _extra(board, colour) for colour in chess.COLORS}
    ahead = max(chess.COLORS, key=lambda colour: (_points(extra[colour]), _costliest(extra[colour]), colour))
    mine, theirs = extra[ahead], extra[not ahead]
    side, other = chess.COLOR_NAMES[ahead].capitalize(), chess.COLOR_NAMES[not ahead].capitalize()
    if not mine:
        return "Material is level."
    if not theirs:
        return f"{side} is {_listed(mine)} up."
    holder = next((colour for colour in chess.COLORS if _has_the_exchange(extra[colour], extra[not colour])), None)
    if holder is not None:
        return _exchange_words(extra, holder)
    if not _points(mine) - _points(theirs):
        holder = max(chess.COLORS, key=lambda colour: (_costliest(extra[colour]), colour))
        side = chess.COLOR_NAMES[holder].capitalize()
        mine, theirs = extra[holder], extra[not holder]
        if sum(mine.values()) == sum(theirs.values()) == 1:
            return f"Material is level: {side} has {_listed(mine)} for {_listed(theirs)}."
    elif _costliest(theirs) > _costliest(mine):
        side, mine, theirs = other, theirs, mine
    return f"{side} has {_listed(mine)} for {_listed(theirs)} ({_points(mine)} points to {_points(theirs)})."


def _exchange_words(extra: Mapping[chess.Color, Counter[chess.PieceType]], holder: chess.Color) -> str:
    """Words where *holder* has a rook for a minor piece, and perhaps pawns stand on either side of the deal."""
    side = chess.COLOR_NAMES[holder].capitalize()
    pawns, paid = extra[holder][chess.PAWN], extra[not holder][chess.PAWN]
    if paid:
        return f"{side} has the exchange for {_count(chess.PAWN, paid)}."
    return f"{side} is the exchange and {_count(chess.PAWN, pawns)} up." if pawns else f"{side} is the exchange up."


def _has_the_exchange(mine: Counter[chess.PieceType], theirs: Counter[chess.PieceType]) -> bool:
    rest = theirs - Counter({chess.PAWN: theirs[chess.PAWN]})
    return mine[chess.ROOK] == sum(mine.values()) - mine[chess.PAWN] == 1 and any(
        rest == Counter({minor: 1}) for minor in _MINOR
    )


def _extra(board: chess.BaseBoard, colour: chess.Color) -> Counter[chess.PieceType]:
    """What *colour* has more of than the other side."""
    return Counter(
        {
            kind: more
            for kind in _BY_VALUE
            if (more := len(board.pieces(kind, colour)) - len(board.pieces(kind, not colour))) > 0
        }
    )


def _points(pieces: Counter[chess.PieceType]) -> int:
    return sum(PIECE_VALUES[kind] * count for kind, count in pieces.items())


def _costliest(pieces: Counter[chess.PieceType]) -> int:
    """Tells a bishop from a knight too, so that a deal is always told from the same side."""
    return max((len(_BY_VALUE) - _BY_VALUE.index(kind) for kind in pieces), default=0)


def _listed(pieces: Counter[chess.PieceType]) -> str:
    names = [_count(kind, pieces[kind]) for kind in _BY_VALUE if pieces[kind]]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def _count(kind: chess.PieceType, count: int) -> str:
    name = chess.piece_name(kind)
    if count == 1:
        return f"a {name}"
    return f"{_NUMBERS[count] if count < len(_NUMBERS) else count} {name}s"
