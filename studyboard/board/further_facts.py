"""Everything further that can be said of a position: lines, forks, guards, pawns, kings, castling, the last move."""

from __future__ import annotations

from collections.abc import Iterator

import chess

from studyboard.board.changes import abandoned_words, cover_after, covered_words, taken_away_words
from studyboard.board.facts import Fact, FactKind, end_words
from studyboard.board.lines import batteries, battery_words, discoveries, discovery_words, skewer_words, skewers
from studyboard.board.pawns import majority_words, pawn_words
from studyboard.board.rights import bishops_words, castling, draw_by_rule, exposure_words, only_move, only_move_words
from studyboard.board.tactics import (
    fork_words,
    forks,
    guard_words,
    overloaded,
    removable,
    removal_words,
    trapped,
    trapped_words,
)


def further_facts(
    board: chess.Board, before: chess.Board | None = None, move: chess.Move | None = None
) -> tuple[Fact, ...]:
    """What facts.facts leaves out, the most pressing first; with the move that led here, what it covers no longer.

    Mates and material won by force are not among them, since they may take long: see mates and forced_wins.
    """
    found = [*_rules(board), *_tactics(board)]
    if before is not None and move is not None and move:
        found += _cover(before, board, move)
    return (*found, *_standing(board))


def _rules(board: chess.Board) -> Iterator[Fact]:
    if end_words(board) is None and (rule := draw_by_rule(board)) is not None:
        yield Fact(FactKind.DRAW, rule)
    only, words = only_move(board), only_move_words(board)
    if only is not None and words is not None:
        yield Fact(FactKind.ONLY_MOVE, words, (only.from_square, only.to_square))


def _tactics(board: chess.Board) -> Iterator[Fact]:
    for piece in trapped(board):
        yield Fact(FactKind.TRAPPED, trapped_words(board, piece), (piece.square, *piece.attacked_by))
    for fork in forks(board):
        yield Fact(FactKind.FORK, fork_words(board, fork), (fork.by, *fork.targets))
    for skewer in skewers(board):
        yield Fact(FactKind.LINE, skewer_words(board, skewer), (skewer.by, skewer.front, skewer.behind))
    for colour in chess.COLORS:
        for line in discoveries(board, colour):
            yield Fact(FactKind.DISCOVERY, discovery_words(board, line), (line.front, line.by, line.behind))
    for move, guard in removable(board):
        yield Fact(FactKind.GUARD, removal_words(board, move, guard), (guard.square, move.from_square, *guard.keeps))
    for guard in overloaded(board):
        yield Fact(FactKind.GUARD, guard_words(board, guard), (guard.square, *guard.keeps))
    for battery in batteries(board):
        yield Fact(FactKind.LINE, battery_words(board, battery), (battery.back, battery.front))


def _cover(before: chess.Board, board: chess.Board, move: chess.Move) -> Iterator[Fact]:
    cover = cover_after(before, move)
    for words, squares in (
        (abandoned_words(board, cover), cover.abandoned),
        (covered_words(board, cover), (*cover.gained, *cover.opened)),
        (taken_away_words(board, cover), cover.taken_away),
    ):
        if words is not None:
            yield Fact(FactKind.COVER, words, (cover.piece, *squares))


def _standing(board: chess.Board) -> Iterator[Fact]:
    for colour in chess.COLORS:
        for words in pawn_words(board, colour):
            yield Fact(FactKind.PAWNS, words)
    for words in majority_words(board):
        yield Fact(FactKind.PAWNS, words)
    bishops = bishops_words(board)
    if bishops is not None:
        yield Fact(FactKind.BISHOPS, bishops)
    for colour in chess.COLORS:
        king, exposed = board.king(colour), exposure_words(board, colour)
        # How open a king stands matters as long as there is a queen to attack it; in an ending it walks about.
        if king is not None and exposed is not None and board.pieces_mask(chess.QUEEN, not colour):
            yield Fact(FactKind.KING, exposed, (king,))
        for kingside in (True, False):
            state = castling(board, colour, kingside)
            if state.right:
                yield Fact(FactKind.CASTLING, state.why)
