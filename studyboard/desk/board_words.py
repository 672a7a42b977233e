"""What a screen reader is told about the board."""

from __future__ import annotations

from studyboard.desk.session import Session
from studyboard.model.marks import Mark
from studyboard.notation.spoken import describe_move
from studyboard.picture.describe import describe_board, describe_marks, describe_turn
from studyboard.translation import tr


def position_words(session: Session, node: int, marks: tuple[Mark, ...]) -> str:
    """The whole position at *node*, with the move that led there and the marks that are shown."""
    move = session.study.node(node).move
    words = describe_board(session.positions.board(node), last_move=move)
    return f"{words} {describe_marks(marks)}".strip()


def step_words(session: Session, was: int) -> str:
    """What happened when the board stepped from node *was* to the shown one.

    A move is told as ``"Move 12, black knight from d7 takes the pawn on e5, check."``, a step back as ``"Back to move
    11, …"``, and what is drawn on the board after either.
    """
    study, here, board = session.study, session.study.node(session.node), session.board
    drawn = describe_marks(here.marks)
    if here.parent == was:
        ended = describe_turn(board) if board.is_stalemate() else ""
        told = tr("Move {move}. {ended}", move=move_words(session, here.id), ended=ended).strip()
    elif here.move is None:
        told = tr("Back to the start. {turn}", turn=describe_turn(board))
    else:
        told = tr("Back to move {move}.", move=move_words(session, here.id))
        if was not in study.nodes or study.node(was).parent != here.id:
            told = f"{told} {describe_turn(board)}"
    return f"{told} {drawn}".strip()


def move_words(session: Session, node: int) -> str:
    """A node's move with its number: ``"12, black knight from d7 takes the pawn on e5"``; empty at the root."""
    told = session.study.node(node)
    if told.move is None or told.parent is None:
        return ""
    before = session.positions.board(told.parent)
    return f"{before.fullmove_number}, {describe_move(before, told.move)}"
