"""What the actions of the menu “Edit” do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QGuiApplication

from studyboard.desk.command_group import CommandGroup
from studyboard.model import edits, pasting
from studyboard.model.node import Node
from studyboard.notation.labels import move_label
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow


class EditCommands(CommandGroup):
    """One method for each action of that menu, named as it.

    State: the branch that was cut or copied last.
    """

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._copied: tuple[Node, ...] = ()
        self._copied_from: int | None = None

    def undo(self) -> None:
        """Take the last change back, and say what it was."""
        self._window.line_editor.flush()
        label = self._session.file.undo_label
        self._session.undo()
        if label:
            self._window.tell(tr("Taken back: {label}.", label=tr(label)))

    def redo(self) -> None:
        """Do again what was taken back, and say what it was."""
        self._window.line_editor.flush()
        label = self._session.file.redo_label
        self._session.redo()
        if label:
            self._window.tell(tr("Done again: {label}.", label=tr(label)))

    def show_history(self) -> None:
        """Every edit in words."""
        from studyboard.desk.history_window import HistoryWindow

        self._window.line_editor.flush()
        HistoryWindow(self._session, self._window).exec()

    def cut_branch(self) -> None:
        """Copy the branch; pasting it takes it away here."""
        self.copy_branch()
        self._copied_from = self._session.node
        self._window.tell(tr("The branch goes away here when it is pasted elsewhere."))

    def copy_branch(self) -> None:
        """Keep the branch for pasting."""
        self._window.line_editor.flush()
        self._copied = tuple(self._session.study.branch(self._session.node))
        self._copied_from = None

    def paste_branch(self) -> None:
        """Put the copied branch after the shown node, or move the one that was cut."""
        if not self._copied:
            self._window.tell(tr("No branch has been cut or copied yet."))
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
            moves = tr("1 move") if size == 1 else tr("{size} moves", size=size)
            self._window.tell(tr("Deleted {label}, {moves}. Ctrl+Z brings it back.", label=label, moves=moves))

    def copy_pgn(self) -> None:
        """Put the annotated game on the clipboard, and tell what PGN has no room for."""
        from studyboard.notation.pgn_writer import pgn_remarks, pgn_text

        study = self._session.study
        QGuiApplication.clipboard().setText(pgn_text(study))
        self._window.tell(" ".join((tr("The game is on the clipboard."), *pgn_remarks(study))))

    def copy_fen(self) -> None:
        """Put the shown position on the clipboard."""
        QGuiApplication.clipboard().setText(self._session.board.fen())
