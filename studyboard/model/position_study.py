"""A study that begins with a position instead of a game."""

from __future__ import annotations

import chess

from studyboard.model.edits import ChangeHeaders
from studyboard.model.errors import StudyboardError
from studyboard.model.study import SEVEN_TAG_ROSTER, Study, start_board
from studyboard.translation import tr, tr_later

_WRONG = {
    chess.STATUS_NO_WHITE_KING: tr_later("there is no white king"),
    chess.STATUS_NO_BLACK_KING: tr_later("there is no black king"),
    chess.STATUS_TOO_MANY_KINGS: tr_later("there are too many kings"),
    chess.STATUS_TOO_MANY_WHITE_PAWNS: tr_later("White has more than eight pawns"),
    chess.STATUS_TOO_MANY_BLACK_PAWNS: tr_later("Black has more than eight pawns"),
    chess.STATUS_PAWNS_ON_BACKRANK: tr_later("a pawn stands on the first or the last rank"),
    chess.STATUS_TOO_MANY_WHITE_PIECES: tr_later("White has more than sixteen pieces"),
    chess.STATUS_TOO_MANY_BLACK_PIECES: tr_later("Black has more than sixteen pieces"),
    chess.STATUS_BAD_CASTLING_RIGHTS: tr_later("the castling rights do not fit kings and rooks"),
    chess.STATUS_INVALID_EP_SQUARE: tr_later("no pawn could be taken en passant there"),
    chess.STATUS_OPPOSITE_CHECK: tr_later("the side that is not to move stands in check"),
    chess.STATUS_EMPTY: tr_later("the board is empty"),
    chess.STATUS_TOO_MANY_CHECKERS: tr_later("the king cannot be in check from so many pieces at once"),
    chess.STATUS_IMPOSSIBLE_CHECK: tr_later("no legal move could have given this check"),
}


def start_at(study: Study, fen: str) -> ChangeHeaders:
    """The edit that lets a study without moves begin with *fen*. Raises StudyboardError where nobody could play on."""
    headers = {name: value for name, value in study.headers.items() if name not in ("SetUp", "FEN")}
    begun = position_study(fen)
    if begun.headers["FEN"] != chess.STARTING_FEN:
        headers |= {"SetUp": "1", "FEN": begun.headers["FEN"]}
    return ChangeHeaders(tuple(headers.items()), tr_later("Change the start position"))


def position_study(fen: str) -> Study:
    """A study that begins with this position. Raises StudyboardError where it could not be played on."""
    headers = {**SEVEN_TAG_ROSTER, "SetUp": "1", "FEN": " ".join(fen.split())}
    board = start_board(headers)
    status = board.status()
    if status:
        reasons = ", ".join(tr(words) for flag, words in _WRONG.items() if status & flag)
        raise StudyboardError(
            tr("This position cannot be played on: {reasons}.", reasons=reasons or tr("it is not a legal position"))
        )
    headers["FEN"] = board.fen()
    return Study(headers)
