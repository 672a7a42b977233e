"""What a screen reader is told about the board."""

from __future__ import annotations

import chess

from studyboard.desk.session import Session
from studyboard.model.marks import Mark
from studyboard.picture.describe import describe_board, describe_marks, describe_turn


def position_words(session: Session, node: int, marks: tuple[Mark, ...]) -> str:
    """The whole position at *node*, with the move that led there and the marks that are shown."""
    move = session.study.node(node).move
    words = describe_board(session.positions.board(node), last_move=move)
    return f"{words} {describe_marks(marks)}".strip()


def step_words(session: Session, was: int) -> str:
    """What happened when the board stepped from node *was* to the shown one: ``"12, Black: knight takes e5."``"""
    study, here = session.study, session.study.node(session.node)
    if here.parent == was:
        return f"{move_words(session, here.id)} {_turn_news(session.board)}".strip()
    if here.move is None:
        return f"Start position. {describe_turn(session.board)}"
    if was in study.nodes and study.node(was).parent == here.id:
        return f"Back: {move_words(session, here.id)}"
    return f"Back to {move_words(session, here.id)}"


def move_words(session: Session, node: int) -> str:
    """A move as it is said, with its number and side: ``"12, Black: knight takes e5, check."``"""
    study = session.study.node(node)
    if study.move is None or study.parent is None:
        return "Start position."
    before = session.positions.board(study.parent)
    side = chess.COLOR_NAMES[before.turn].capitalize()
    return f"{before.fullmove_number}, {side}: {_spoken(before, study.move)}."


def _spoken(board: chess.Board, move: chess.Move) -> str:
    return board.san(move)


def _turn_news(board: chess.Board) -> str:
    """Only what the move itself does not say."""
    return describe_turn(board) if board.is_checkmate() or board.is_stalemate() else ""
