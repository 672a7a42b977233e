"""A position in words, for screen readers and as the alternative text of a picture."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import chess

from studyboard.model.marks import Mark, MarkKind

_ORDER = (chess.KING, chess.QUEEN, chess.ROOK, chess.BISHOP, chess.KNIGHT, chess.PAWN)


def describe_board(board: chess.Board, *, last_move: chess.Move | None = None) -> str:
    """The whole position: ``"White: king g1, rooks a1 and f1. Black: king g8. Black to move, in check."``

    Each side's pieces come in the order king to pawns, each kind's squares from a to h. With *last_move*, the
    squares of the move that led here are named at the end.
    """
    sentences = [describe_side(board, chess.WHITE), describe_side(board, chess.BLACK), describe_turn(board)]
    if last_move:
        squares = [chess.square_name(square) for square in (last_move.from_square, last_move.to_square)]
        sentences.append(f"Last move from {squares[0]} to {squares[1]}.")
    return " ".join(sentences)


def describe_side(board: chess.BaseBoard, colour: chess.Color) -> str:
    """One side's pieces: ``"White: king g1, rooks a1 and f1, pawns a2, b2 and c3."``"""
    groups = []
    for kind in _ORDER:
        names = sorted(chess.square_name(square) for square in board.pieces(kind, colour))
        if names:
            name = chess.piece_name(kind) + ("s" if len(names) > 1 else "")
            groups.append(f"{name} {_listed(names)}")
    return f"{_side(colour)}: {', '.join(groups) if groups else 'no pieces'}."


def describe_turn(board: chess.Board) -> str:
    """Whose move it is, or how the game ended: ``"Black to move, in check."``, ``"White is checkmated."``"""
    side = _side(board.turn)
    if board.king(board.turn) is None:
        return f"{side} to move."
    if board.is_checkmate():
        return f"{side} is checkmated."
    if board.is_stalemate():
        return f"{side} to move is stalemated."
    return f"{side} to move, in check." if board.is_check() else f"{side} to move."


def describe_square(board: chess.BaseBoard, square: chess.Square) -> str:
    """What stands on *square*: ``"white rook on e5"``, ``"e5, empty"``."""
    piece = board.piece_at(square)
    name = chess.square_name(square)
    if piece is None:
        return f"{name}, empty"
    return f"{_side(piece.color).lower()} {chess.piece_name(piece.piece_type)} on {name}"


def describe_mark(mark: Mark) -> str:
    """One mark: ``"Threat from d8 to h4."``; one of a sequence: ``"1: threat from d8 to h4."``"""
    words = _mark_words(mark)
    return words if mark.number is None else f"{mark.number}: {words[0].lower()}{words[1:]}"


def _mark_words(mark: Mark) -> str:
    names = [chess.square_name(square) for square in mark.squares]
    match mark.kind:
        case MarkKind.THREAT:
            return f"Threat from {names[0]} to {names[1]}."
        case MarkKind.TARGET:
            return f"Target on {names[0]}."
        case MarkKind.ROUTE:
            return f"Route {', '.join(names[:-1])} to {names[-1]}."
        case MarkKind.KEY_SQUARE:
            return f"Key square {names[0]}."
        case MarkKind.GUARD:
            return f"{names[0]} guards {names[1]}."


def describe_marks(marks: Iterable[Mark]) -> str:
    """All the marks in their order, each as a sentence; empty when there are none."""
    return " ".join(describe_mark(mark) for mark in dict.fromkeys(marks))


def _side(colour: chess.Color) -> str:
    return "White" if colour == chess.WHITE else "Black"


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
