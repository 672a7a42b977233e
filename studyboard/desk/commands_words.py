"""What the actions of the menu “Words” do."""

from __future__ import annotations

from studyboard.desk.command_group import CommandGroup


class WordsCommands(CommandGroup):
    """One method for each action of that menu, named as it."""

    def spelling(self) -> None:
        """Whether spelling is checked, in which language, and which words are right besides."""
        self._window.script_tools.show_spelling()

    def next_misspelling(self) -> None:
        """The next word that no dictionary has."""
        self._window.script_tools.next_misspelling()

    def pronounce(self) -> None:
        """How the word at the cursor is said."""
        self._window.script_tools.pronounce()
