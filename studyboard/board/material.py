"""Who is up what: the material of a position in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

import chess

from studyboard.board.exchange import PIECE_VALUES
from studyboard.board.naming import listed, number_name, plural_name, side
from studyboard.translation import tr, tr_later

_ONE = {
    chess.QUEEN: tr_later("a queen"),
    chess.ROOK: tr_later("a rook"),
    chess.BISHOP: tr_later("a bishop"),
    chess.KNIGHT: tr_later("a knight"),
    chess.PAWN: tr_later("a pawn"),
}
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
    if not mine:
        return tr("Material is level.")
    if not theirs:
        return tr("{side} is {pieces} up.", side=side(ahead), pieces=_listed(mine))
    holder = next((colour for colour in chess.COLORS if _has_the_exchange(extra[colour], extra[not colour])), None)
    if holder is not None:
        return _exchange_words(extra, holder)
    holder = ahead
    if not _points(mine) - _points(theirs):
        holder = max(chess.COLORS, key=lambda colour: (_costliest(extra[colour]), colour))
        mine, theirs = extra[holder], extra[not holder]
        if sum(mine.values()) == sum(theirs.values()) == 1:
            return tr(
                "Material is level: {side} has {pieces} for {others}.",
                side=side(holder),
                pieces=_listed(mine),
                others=_listed(theirs),
            )
    elif _costliest(theirs) > _costliest(mine):
        holder, mine, theirs = not ahead, theirs, mine
    return tr(
        "{side} has {pieces} for {others} ({points} points to {against}).",
        side=side(holder),
        pieces=_listed(mine),
        others=_listed(theirs),
        points=_points(mine),
        against=_points(theirs),
    )


def _exchange_words(extra: Mapping[chess.Color, Counter[chess.PieceType]], holder: chess.Color) -> str:
    """Words where *holder* has a rook for a minor piece, and perhaps pawns stand on either side of the deal."""
    name = side(holder)
    pawns, paid = extra[holder][chess.PAWN], extra[not holder][chess.PAWN]
    if paid:
        return tr("{side} has the exchange for {pawns}.", side=name, pawns=_count(chess.PAWN, paid))
    if pawns:
        return tr("{side} is the exchange and {pawns} up.", side=name, pawns=_count(chess.PAWN, pawns))
    return tr("{side} is the exchange up.", side=name)


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
    return listed([_count(kind, pieces[kind]) for kind in _BY_VALUE if pieces[kind]])


def _count(kind: chess.PieceType, count: int) -> str:
    return tr(_ONE[kind]) if count == 1 else f"{number_name(count)} {plural_name(kind)}"
