"""What each action of the table does at the desk."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QFileDialog, QInputDialog, QMessageBox

from studyboard.model import edits, pasting, stepping
from studyboard.model.errors import StudyboardError
from studyboard.model.node import Node, Place, Telling
from studyboard.model.position_study import position_study
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.store.study_file import StudyFile

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow

# Dialogs and what they need are imported when they are asked for: the desk is on the screen in half the time.


class Commands(QObject):
    """One method for each action (studyboard.desk.actions), named as it.

    State: the branch that was cut or copied last.
    """

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._session = window.session
        self._copied: tuple[Node, ...] = ()
        self._copied_from: int | None = None

    # ---- study ------------------------------------------------------------------------------------------------------

    def new_study(self) -> None:
        """Begin with the start position."""
        from studyboard.desk.opening import new_study

        self._open(lambda: new_study(Study()))

    def new_from_position(self) -> None:
        """Ask for a FEN and begin there."""
        from studyboard.desk.opening import new_study

        clipboard = QGuiApplication.clipboard().text().strip()
        suggestion = clipboard if clipboard.count("/") == 7 and len(clipboard) < 100 else ""
        fen, given = QInputDialog.getText(self._window, "New from a position", "FEN of the position", text=suggestion)
        if given and fen.strip():
            self._open(lambda: new_study(position_study(fen)))

    def open_file(self) -> None:
        """Choose a study or a PGN file."""
        if self._window.recording:
            self._window.tell("A take is being recorded: stop it first (Ctrl+Space).")
            return
        start = str(self._session.file.path.parent)
        kinds = "Studies and games (*.studyboard *.pgn);;All files (*)"
        name, _ = QFileDialog.getOpenFileName(self._window, "Open", start, kinds)
        if name:
            self._window.open_path(name)

    def save_as(self) -> None:
        """Go on with a copy under another name."""
        start = str(self._session.file.path)
        name, _ = QFileDialog.getSaveFileName(self._window, "Save as", start, "Studies (*.studyboard)")
        if name:
            self._window.save_as(name if name.endswith(".studyboard") else f"{name}.studyboard")

    def edit_headers(self) -> None:
        """Edit the tags of the game."""
        from studyboard.desk.headers_dialog import HeadersDialog

        HeadersDialog(self._session, self._window).exec()

    def deliver(self) -> None:
        """Open the delivery window."""
        from studyboard.desk.deliver_window import DeliverWindow

        self._window.line_editor.flush()
        DeliverWindow(self._session, self._window.settings, self._window).exec()

    def close_window(self) -> None:
        """Close the desk."""
        self._window.close()

    # ---- edit -------------------------------------------------------------------------------------------------------

    def undo(self) -> None:
        """Take the last change back, and say what it was."""
        self._window.line_editor.flush()
        label = self._session.file.undo_label
        self._session.undo()
        if label:
            self._window.tell(f"Taken back: {label}.")

    def redo(self) -> None:
        """Do again what was taken back, and say what it was."""
        self._window.line_editor.flush()
        label = self._session.file.redo_label
        self._session.redo()
        if label:
            self._window.tell(f"Done again: {label}.")

    def cut_branch(self) -> None:
        """Copy the branch; pasting it takes it away here."""
        self.copy_branch()
        self._copied_from = self._session.node
        self._window.tell("The branch goes away here when it is pasted elsewhere.")

    def copy_branch(self) -> None:
        """Keep the branch for pasting."""
        self._window.line_editor.flush()
        self._copied = tuple(self._session.study.branch(self._session.node))
        self._copied_from = None

    def paste_branch(self) -> None:
        """Put the copied branch after the shown node, or move the one that was cut."""
        if not self._copied:
            self._window.tell("No branch has been cut or copied yet.")
            return
        here = self._session.node
        source = self._copied_from
        if source is not None and source in self._session.study.nodes:
            if self._session.attempt(pasting.cut_and_paste, source, here):
                self._copied_from = None
        else:
            self._session.attempt(pasting.paste, self._copied, here)

    def delete_branch(self) -> None:
        """Delete the shown move and all after it; undo brings it back."""
        node = self._session.study.node(self._session.node)
        size = sum(1 for _ in self._session.study.branch(node.id))
        label = move_label(self._session.positions, node.id)
        if self._session.do(edits.RemoveBranch(node.id)):
            self._session.show(node.parent)
            moves = "1 move" if size == 1 else f"{size} moves"
            self._window.tell(f"Deleted {label}, {moves}. Ctrl+Z brings it back.")

    def copy_pgn(self) -> None:
        """Put the annotated game on the clipboard, and tell what PGN has no room for."""
        from studyboard.notation.pgn_writer import pgn_remarks, pgn_text

        study = self._session.study
        QGuiApplication.clipboard().setText(pgn_text(study))
        self._window.tell(" ".join(("The game is on the clipboard.", *pgn_remarks(study))))

    def copy_fen(self) -> None:
        """Put the shown position on the clipboard."""
        QGuiApplication.clipboard().setText(self._session.board.fen())

    # ---- lines ------------------------------------------------------------------------------------------------------

    def promote(self) -> None:
        """One step towards the main line."""
        self._session.attempt(edits.promote, self._session.node)

    def demote(self) -> None:
        """One step away from it."""
        self._session.attempt(edits.demote, self._session.node)

    def make_main_line(self) -> None:
        """All the way to the main line."""
        self._session.attempt(edits.make_main_line, self._session.node)

    def name_side_line(self) -> None:
        """Ask for the heading of the lane."""
        start = self._session.study.node(self._session.study.line_start(self._session.node))
        name, given = QInputDialog.getText(self._window, "Name the side-line", "Heading of its lane", text=start.name)
        if given:
            self._session.do(edits.ChangeNode(start.id, "name", name.strip(), "Name a side-line"))

    def tell_after(self) -> None:
        """The usual place."""
        self._tell(Telling())

    def tell_before(self) -> None:
        """Before the main move."""
        self._tell(Telling(Place.BEFORE))

    def hide_side_line(self) -> None:
        """Out of the talk; it stays on the tree and in print."""
        self._tell(Telling(Place.HIDDEN))

    def tell_later(self) -> None:
        """Ask after which main move it is told."""
        study = self._session.study
        start = study.line_start(self._session.node)
        inside = {node.id for node in study.branch(start)}
        branching = study.node(start).parent
        assert branching is not None
        choices = [node for node in study.main_line(branching) if node not in inside and node != branching]
        labels = [move_label(self._session.positions, node) for node in choices]
        if not choices:
            self._window.tell("There is no later move after which it could be told.")
            return
        label, given = QInputDialog.getItem(
            self._window, "Tell the side-line later", "After the move", labels, editable=False
        )
        if given:
            self._tell(Telling(Place.MOVED, choices[labels.index(label)]))

    def _tell(self, telling: Telling) -> None:
        start = self._session.study.line_start(self._session.node)
        if self._session.study.node(start).telling != telling:
            self._session.do(edits.ChangeNode(start, "telling", telling, "Change the running order"))

    # ---- script -----------------------------------------------------------------------------------------------------

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

    # ---- go ---------------------------------------------------------------------------------------------------------

    def forward(self) -> None:
        """The main move after this one."""
        self._session.show(stepping.forward(self._session.study, self._session.node))

    def back(self) -> None:
        """The move before."""
        self._session.show(stepping.back(self._session.study, self._session.node))

    def into_side_line(self) -> None:
        """The line beside this move."""
        self._session.show(stepping.next_line(self._session.study, self._session.node))

    def out_of_side_line(self) -> None:
        """Back towards the main line."""
        self._session.show(stepping.previous_line(self._session.study, self._session.node))

    def to_start(self) -> None:
        """The start position."""
        self._session.show(self._session.study.root)

    def to_end(self) -> None:
        """The last move of this line."""
        self._session.show(stepping.end_of_line(self._session.study, self._session.node))

    def next_beat(self) -> None:
        """The next stop of the talk."""
        self._window.step_beat(1)

    def previous_beat(self) -> None:
        """The stop before."""
        self._window.step_beat(-1)

    # ---- talk -------------------------------------------------------------------------------------------------------

    def write(self) -> None:
        """Lanes, board and the spoken line."""
        self._window.write_stage()

    def rehearse(self) -> None:
        """The prompter beside the board."""
        self._window.rehearse_stage()

    def record(self) -> None:
        """The prompter and the booth beside the board."""
        self._window.record_stage()

    def advance(self) -> None:
        """The next thing on the board."""
        self._window.performance.advance()

    def retreat(self) -> None:
        """The thing before."""
        self._window.performance.retreat()

    def come_back(self) -> None:
        """Back to where the talk was left."""
        self._window.performance.come_back()

    def start_or_stop(self) -> None:
        """The rehearsal or the recording."""
        self._window.start_or_stop()

    # ---- view -------------------------------------------------------------------------------------------------------

    def flip(self) -> None:
        """Show the board from the other side."""
        self._window.board_view.flip()

    def marking(self) -> None:
        """Draw marks, or stop drawing them."""
        self._window.write_stage()
        self._window.board_view.set_marking(not self._window.board_view.marking)

    def show_stage(self) -> None:
        """The window with only the board."""
        self._window.show_stage()

    def show_prompter(self) -> None:
        """The window with only the lines."""
        self._window.show_prompter()

    def full_screen(self) -> None:
        """The desk on the whole screen, or not."""
        window = self._window
        window.showNormal() if window.isFullScreen() else window.showFullScreen()

    def larger_text(self) -> None:
        """One step larger."""
        self._window.scale_text(1)

    def smaller_text(self) -> None:
        """One step smaller."""
        self._window.scale_text(-1)

    def reduce_motion(self) -> None:
        """Let nothing move by itself, or let it again."""
        self._window.look.reduce_motion(not self._window.look.reduced_motion)

    # ---- help -------------------------------------------------------------------------------------------------------

    def quick_start(self) -> None:
        """The day in seven steps."""
        from studyboard.desk import help_texts

        help_texts.show_text(self._window, "Quick start", help_texts.quick_start())

    def shortcuts(self) -> None:
        """Every action with its keys."""
        from studyboard.desk import help_texts

        help_texts.show_text(self._window, "Keys", help_texts.keys())

    def check_setup(self) -> None:
        """What is installed and what is missing."""
        from studyboard.desk import help_texts

        help_texts.show_text(self._window, "Set-up", help_texts.setup())

    def about(self) -> None:
        """Version, licence and cautions."""
        from studyboard.desk import help_texts

        QMessageBox.about(self._window, "About Studyboard", help_texts.about())

    def _open(self, make: Callable[[], StudyFile]) -> None:
        from studyboard.desk.opening import Opened

        try:
            file = make()
        except StudyboardError as reason:
            self._window.tell(str(reason))
            return
        self._window.show_opened(Opened(file))
