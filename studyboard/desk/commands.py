"""What each action of the table does at the desk."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from studyboard.desk.commands_board import BoardCommands
from studyboard.desk.commands_edit import EditCommands
from studyboard.desk.commands_go import GoCommands
from studyboard.desk.commands_help import HelpCommands
from studyboard.desk.commands_lines import LinesCommands
from studyboard.desk.commands_script import ScriptCommands
from studyboard.desk.commands_study import StudyCommands
from studyboard.desk.commands_talk import TalkCommands
from studyboard.desk.commands_view import ViewCommands
from studyboard.desk.commands_words import WordsCommands

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow

# Dialogs and what they need are imported when they are asked for: the desk is on the screen in half the time.


class Commands:
    """The commands of every menu, found by the name of their action."""

    def __init__(self, window: MainWindow) -> None:
        groups = (
            StudyCommands,
            EditCommands,
            LinesCommands,
            ScriptCommands,
            WordsCommands,
            BoardCommands,
            GoCommands,
            TalkCommands,
            ViewCommands,
            HelpCommands,
        )
        self._groups = tuple(group(window) for group in groups)

    def of(self, name: str) -> Callable[[], None]:
        """The method that does the action with this name. Raises KeyError where no group has one."""
        for group in self._groups:
            if name in type(group).__dict__:
                method: Callable[[], None] = getattr(group, name)
                return method
        raise KeyError(name)
