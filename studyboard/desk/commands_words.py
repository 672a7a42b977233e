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

    def show_script(self) -> None:
        """The whole talk as one text."""
        self._window.script_tools.show_script()

    def replace_in_script(self) -> None:
        """Find words in the whole script and replace them."""
        self._window.script_tools.find()

    def insert_snippet(self) -> None:
        """Choose a recurring text for the cursor."""
        self._window.script_tools.offer_snippets()

    def edit_snippets(self) -> None:
        """Write recurring texts, and choose the file with names."""
        self._window.script_tools.show_snippets()

    def pronounce(self) -> None:
        """How the word at the cursor is said."""
        self._window.script_tools.pronounce()
