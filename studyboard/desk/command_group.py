"""What the groups of commands have in common: the window that they act on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow
    from studyboard.desk.session import Session


class CommandGroup(QObject):
    """Commands of one menu; a subclass has one public method for each of its actions (studyboard.desk.actions)."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._session: Session = window.session
