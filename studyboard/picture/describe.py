"""A position in words, for screen readers and as the alternative text of a picture."""

from __future__ import annotations

from collections.abc import Iterable

import chess

from studyboard.board.naming import listed, piece_name, plural_name, side
from studyboard.model.marks import Mark, MarkKind
from studyboard.translation import tr

_ORDER = (chess.KING, chess.QUEEN, chess.ROOK, chess.BISHOP, chess.KNIGHT, chess.PAWN)


def describe_board(board: chess.Board, *, last_move: chess.Move | None = None) -> str:
    """The whole position: ``"White: king g1, rooks a1 and f1. Black: king g8. Black to move, in check."``

    Each side's pieces come in the order king to pawns, each kind's squares from a to h. With *last_move*, the
    squares of the move that led here are named at the end.
    """
    sentences = [describe_side(board, chess.WHITE), describe_side(board, chess.BLACK), describe_turn(board)]
    if last_move:
        squares = [chess.square_name(square) for square in (last_move.from_square, last_move.to_square)]
        sentences.append(tr("Last move from {origin} to {target}.", origin=squares[0], target=squares[1]))
    return " ".join(sentences)


def describe_side(board: chess.BaseBoard, colour: chess.Color) -> str:
    """One side's pieces: ``"White: king g1, rooks a1 and f1, pawns a2, b2 and c3."``"""
    groups = []
    for kind in _ORDER:
        names = sorted(chess.square_name(square) for square in board.pieces(kind, colour))
        if names:
            name = piece_name(kind) if len(names) == 1 else plural_name(kind)
            groups.append(f"{name} {listed(names)}")
    return tr("{side}: {pieces}.", side=side(colour), pieces=", ".join(groups) or tr("no pieces"))


def describe_turn(board: chess.Board) -> str:
    """Whose move it is, or how the game ended: ``"Black to move, in check."``, ``"White is checkmated."``"""
    name = side(board.turn)
    if board.king(board.turn) is not None:
        if board.is_checkmate():
            return tr("{side} is checkmated.", side=name)
        if board.is_stalemate():
            return tr("{side} to move is stalemated.", side=name)
        if board.is_check():
            return tr("{side} to move, in check.", side=name)
    return tr("{side} to move.", side=name)


def describe_square(board: chess.BaseBoard, square: chess.Square) -> str:
    """What stands on *square*: ``"white rook on e5"``, ``"e5, empty"``."""
    piece = board.piece_at(square)
    name = chess.square_name(square)
    if piece is None:
        return tr("{square}, empty", square=name)
    kind = piece_name(piece.piece_type)
    if piece.color:
        return tr("white {piece} on {square}", piece=kind, square=name)
    return tr("black {piece} on {square}", piece=kind, square=name)


def describe_mark(mark: Mark) -> str:
    """One mark: ``"Threat from d8 to h4."``; one of a sequence: ``"1: threat from d8 to h4."``"""
    words = _mark_words(mark)
    if mark.number is None:
        return words
    # Within a sentence the word for a mark is small in English; languages that write nouns large keep the capital.
    small = tr("threat").islower()
    return tr("{number}: {mark}", number=mark.number, mark=words[0].lower() + words[1:] if small else words)


def _mark_words(mark: Mark) -> str:
    names = [chess.square_name(square) for square in mark.squares]
    match mark.kind:
        case MarkKind.THREAT:
            return tr("Threat from {origin} to {target}.", origin=names[0], target=names[1])
        case MarkKind.TARGET:
            return tr("Target on {square}.", square=names[0])
        case MarkKind.ROUTE:
            return tr("Route {stops} to {last}.", stops=", ".join(names[:-1]), last=names[-1])
        case MarkKind.KEY_SQUARE:
            return tr("Key square {square}.", square=names[0])
        case MarkKind.GUARD:
            return tr("{guard} guards {square}.", guard=names[0], square=names[1])


def describe_marks(marks: Iterable[Mark]) -> str:
    """All the marks in their order, each as a sentence; empty when there are none."""
    return " ".join(describe_mark(mark) for mark in dict.fromkeys(marks))
