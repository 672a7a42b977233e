"""What the actions of the menu “Script” do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog

from studyboard.desk.command_group import CommandGroup
from studyboard.model import chosen_rows, edits
from studyboard.model.errors import StudyboardError
from studyboard.model.script import BeatKey, Part
from studyboard.timing.clock import over_or_under
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.timing.fit import Fit


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

    def type_cue(self) -> None:
        """Type the next move; with the cursor in the line it is played at its word."""
        self._window.board_view.begin_entry()

    def cue_back(self) -> None:
        """The cue at the cursor one word earlier."""
        self._window.line_editor.shift_cue(-1)

    def cue_on(self) -> None:
        """The cue at the cursor one word later."""
        self._window.line_editor.shift_cue(1)

    def played_cues(self) -> None:
        """Let played moves become cues, or not."""
        self._window.played_cues.turn(self._window.actions_by_name["played_cues"].isChecked())

    def clear_line(self) -> None:
        """Say nothing at the chosen rows any more."""
        self._window.line_editor.flush()
        self._session.attempt(chosen_rows.clear_chosen, self._window.lanes.choosing.rows)

    def note_to_line(self) -> None:
        """Turn the notes of the chosen rows into their spoken lines."""
        self._window.line_editor.flush()
        nodes = [key for key in self._window.lanes.choosing.rows if not isinstance(key, Part)]
        self._session.attempt(edits.notes_to_spoken, nodes)

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

    def fit_to_slot(self) -> None:
        """Spread what is over or under the slot, and say how it came out."""
        from studyboard.timing.fit import fit_to_slot

        self._window.line_editor.flush()
        try:
            fit = fit_to_slot(self._session.study, self._session.beats)
        except StudyboardError as reason:
            self._session.refused.emit(str(reason))
            return
        if self._session.do(fit.edit):
            self._window.tell(_fit_words(fit))

    def suggest_cuts(self) -> None:
        """Show what could be left out, the best first."""
        from studyboard.desk.cuts_window import CutsWindow

        self._window.line_editor.flush()
        CutsWindow(self._session, self._window).exec()

    def lock_length(self) -> None:
        """Lock the length of the beat that is shown, or unlock it."""
        from studyboard.timing.fit import lock

        self._window.line_editor.flush()
        rows = self._window.lanes.choosing.rows
        if len(rows) > 1:
            self._lock_several(rows)
            return
        (key,) = rows
        study = self._session.study
        locked = study.line(key).locked if isinstance(key, Part) else study.nodes[key].locked
        if self._session.attempt(lock, key, not locked, self._session.beats):
            self._window.tell(tr("The length is unlocked.") if locked else tr("The length is locked."))

    def _lock_several(self, rows: tuple[BeatKey, ...]) -> None:
        """Lock the lengths of these rows, or unlock them where all that are told are locked."""
        from studyboard.timing.fit import all_locked, lock_several

        locked = all_locked(self._session.study, rows)
        if self._session.attempt(lock_several, rows, not locked):
            self._window.tell(tr("The lengths are unlocked.") if locked else tr("The lengths are locked."))

    def unlock_lengths(self) -> None:
        """Unlock every beat."""
        from studyboard.timing.fit import unlock_all

        self._session.attempt(unlock_all)


def _fit_words(fit: Fit) -> str:
    pace = round(100 / fit.factor)
    told = tr("{beats} beats are told at {pace} % of your pace.", beats=fit.beats, pace=pace)
    if not fit.left:
        return tr("The talk fits its slot: {told}", told=told)
    if fit.left > 0:
        return tr(
            "The talk is still {distance}: {told} Nobody is believed to speak faster; "
            "shorten a line or hide a side-line.",
            distance=over_or_under(fit.left),
            told=told,
        )
    return tr(
        "The talk is still {distance}: {told} Slower would sound drawn out; add a line or a think pause.",
        distance=over_or_under(fit.left),
        told=told,
    )
