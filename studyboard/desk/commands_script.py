"""What the actions of the menu “Script” do."""

from __future__ import annotations

from PySide6.QtWidgets import QDialog

from studyboard.desk.command_group import CommandGroup
from studyboard.model import edits
from studyboard.model.script import Part


class ScriptCommands(CommandGroup):
    """One method for each action of that menu, named as it."""

    def edit_line(self) -> None:
        """Put the cursor into the spoken line."""
        self._window.write_stage()
        self._window.line_editor.focus_line()

    def edit_note(self) -> None:
        """Put the cursor into the note."""
        self._window.write_stage()
        self._window.line_editor.focus_note()

    def insert_cue(self) -> None:
        """Put a cue at the cursor: for the first move of this beat that has none yet."""
        self._window.line_editor.insert_next_cue()

    def note_to_line(self) -> None:
        """Turn the note of the shown node into its spoken line."""
        self._window.line_editor.flush()
        self._session.attempt(edits.notes_to_spoken, [self._session.node])

    def notes_to_lines(self) -> None:
        """Turn every note into a spoken line, where nothing is said yet."""
        self._window.line_editor.flush()
        self._session.attempt(edits.notes_to_spoken, list(self._session.study.nodes))

    def read_through(self) -> None:
        """List every query."""
        self._window.proofreading.show_list()

    def next_query(self) -> None:
        """The next query: of this line, then of the talk."""
        self._window.proofreading.show_next()

    def fix_query(self) -> None:
        """Mend the line as the query says."""
        self._window.proofreading.bar.fix()

    def leave_query(self) -> None:
        """Leave the query that is shown."""
        self._window.proofreading.bar.leave()

    def add_said_move(self) -> None:
        """Put the move that the line says on the tree."""
        self._window.proofreading.bar.add()

    def edit_greeting(self) -> None:
        """Edit what is said before the first move."""
        self._window.edit_part(Part.GREETING)

    def edit_closing(self) -> None:
        """Edit what is said after the last move."""
        self._window.edit_part(Part.CLOSING)

    def edit_thanks(self) -> None:
        """Edit what is said at the very end."""
        self._window.edit_part(Part.THANKS)

    def set_slot(self) -> None:
        """Ask for the length of the talk."""
        from studyboard.desk.slot_dialog import SlotDialog

        dialog = SlotDialog(self._session.study.slot, self._session.timeline.seconds, self._window)
        if dialog.exec() == QDialog.DialogCode.Accepted and dialog.slot != self._session.study.slot:
            self._session.do(edits.ChangeSlot(dialog.slot))
