"""Everything further that can be said of a position: lines, forks, guards, pawns, castling, the last move."""

from __future__ import annotations

import chess

from studyboard.board.changes import abandoned_words, cover_after
from studyboard.board.facts import Fact, FactKind
from studyboard.board.lines import (
    batteries,
    battery_words,
    relative_pin_words,
    relative_pins,
    skewer_words,
    skewers,
)
from studyboard.board.pawns import pawn_words
from studyboard.board.rights import bishops_words, castling
from studyboard.board.tactics import fork_words, forks, guard_words, overloaded, trapped, trapped_words


def further_facts(
    board: chess.Board, before: chess.Board | None = None, move: chess.Move | None = None
) -> tuple[Fact, ...]:
    """What facts.facts leaves out, the most pressing first; with the move that led here, what it no longer covers."""
    found = [
        Fact(FactKind.TRAPPED, trapped_words(board, piece), (piece.square, *piece.attacked_by))
        for piece in trapped(board)
    ]
    found += [Fact(FactKind.FORK, fork_words(board, fork), (fork.by, *fork.targets)) for fork in forks(board)]
    found += [Fact(FactKind.LINE, skewer_words(board, s), (s.by, s.front, s.behind)) for s in skewers(board)]
    found += [
        Fact(FactKind.LINE, relative_pin_words(board, p), (p.front, p.by, p.behind)) for p in relative_pins(board)
    ]
    found += [
        Fact(FactKind.GUARD, guard_words(board, guard), (guard.square, *guard.keeps)) for guard in overloaded(board)
    ]
    found += [Fact(FactKind.LINE, battery_words(board, b), (b.back, b.front)) for b in batteries(board)]
    if before is not None and move is not None and move:
        cover = cover_after(before, move)
        words = abandoned_words(board, cover)
        found += [] if words is None else [Fact(FactKind.COVER, words, (cover.piece, *cover.abandoned))]
    found += [Fact(FactKind.PAWNS, words) for colour in chess.COLORS for words in pawn_words(board, colour)]
    bishops = bishops_words(board)
    found += [] if bishops is None else [Fact(FactKind.BISHOPS, bishops)]
    for colour in chess.COLORS:
        for kingside in (True, False):
            state = castling(board, colour, kingside)
            found += [Fact(FactKind.CASTLING, state.why)] if state.right else []
    return tuple(found)
