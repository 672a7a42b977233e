"""The context menu of a row of the lanes."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

from studyboard.model.script import BeatKey, Part
from studyboard.translation import tr, tr_later

_COPY = ("copy_words", "copy_rows_pgn", "copy_fen", "copy_picture")
_GROUPS: tuple[tuple[str, ...], ...] = (
    ("edit_line", "edit_note", "note_to_line", "clear_line", "lock_length"),
    ("promote", "demote", "make_main_line", "name_side_line"),
    ("tell_after", "tell_before", "tell_later", "hide_side_line"),
    ("cut_branch", "copy_branch", "paste_branch", "delete_branch"),
    ("choose_line", "find_position", "fold_all", "unfold_all"),
)
#: What makes sense at a line that belongs to no move.
_AT_PART: tuple[tuple[str, ...], ...] = (("edit_line", "clear_line", "lock_length"), ("choose_line",))
_COPY_TITLE = tr_later("Copy &as")


def lanes_menu(parent: QWidget, key: BeatKey, actions: Mapping[str, QAction]) -> QMenu:
    """What can be done at this row, or at all that are chosen with it."""
    menu = QMenu(parent)
    menu.setToolTipsVisible(True)
    for group in _AT_PART if isinstance(key, Part) else _GROUPS:
        menu.addActions([actions[name] for name in group])
        menu.addSeparator()
    copies = menu.addMenu(tr(_COPY_TITLE))
    copies.addActions([actions[name] for name in _COPY])
    return menu
