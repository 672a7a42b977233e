"""What the actions of the menu “Help” do."""

from __future__ import annotations

from PySide6.QtWidgets import QMessageBox, QWhatsThis

from studyboard.desk.command_group import CommandGroup
from studyboard.translation import tr


class HelpCommands(CommandGroup):
    """One method for each action of that menu, named as it."""

    def find_action(self) -> None:
        """Choose an action by typing what it does."""
        from studyboard.desk.action_finder import ActionFinder

        finder = ActionFinder(self._window.actions_by_name, self._window)
        finder.exec()
        if finder.chosen is not None:
            finder.chosen.trigger()

    def what_is_this(self) -> None:
        """Explain what is pointed at next."""
        from studyboard.desk.explanations import explain

        explain(self._window)
        QWhatsThis.enterWhatsThisMode()

    def quick_start(self) -> None:
        """The day in seven steps."""
        from studyboard.desk import help_texts

        help_texts.show_text(self._window, tr("Quick start"), help_texts.quick_start())

    def shortcuts(self) -> None:
        """Every action with its keys."""
        from studyboard.desk import help_texts

        help_texts.show_text(self._window, tr("Keys"), help_texts.keys())

    def check_setup(self) -> None:
        """What is installed and what is missing."""
        from studyboard.desk import help_texts

        help_texts.show_text(self._window, tr("Set-up"), help_texts.setup())

    def about(self) -> None:
        """Version, licence and cautions."""
        from studyboard.desk import help_texts

        QMessageBox.about(self._window, tr("About Studyboard"), help_texts.about())
