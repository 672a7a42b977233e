"""The menu of a square of the board: its marks, and what one may ask about it."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

import chess
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMenu

from studyboard.board.marking import kinds_for
from studyboard.desk.edit_labels import kind_name
from studyboard.picture.describe import describe_mark, describe_square
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.board_view import BoardView


def square_menu(board: BoardView, square: chess.Square | None) -> QMenu:
    """A new menu for *square*, or for the whole board where the pointer is beside it."""
    menu = QMenu(board)
    menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    if square is not None:
        name = describe_square(board.board, square)
        asked = menu.addAction(tr("&Ask about {square}", square=name))
        asked.triggered.connect(partial(board.ask_square, square))
    menu.addAction(tr("What the &last move changed")).triggered.connect(board.ask_move)
    marks = board.shown_marks
    here = [(index, mark) for index, mark in enumerate(board.node_marks) if square in mark.squares and mark in marks]
    for index, mark in here:
        menu.addSeparator()
        menu.addAction(describe_mark(mark)).setEnabled(False)
        for kind in kinds_for(mark):
            change = menu.addAction(tr("Make it a {kind}", kind=kind_name(kind)))
            change.triggered.connect(partial(board.pen.alter, index, kind))
        numbered = tr("Number it") if mark.number is None else tr("Take its number off")
        menu.addAction(numbered).triggered.connect(partial(board.pen.number_one, index))
        menu.addAction(tr("Wipe it")).triggered.connect(partial(board.pen.wipe, index))
    return menu
