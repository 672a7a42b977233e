"""What the actions of the menu “Edit” do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QGuiApplication

from studyboard.desk.command_group import CommandGroup
from studyboard.desk.edit_labels import label_words
from studyboard.desk.piecemeal import Piecemeal
from studyboard.model import chosen_rows, pasting
from studyboard.model.node import Node
from studyboard.model.script import BeatKey, Part
from studyboard.notation import copied
from studyboard.notation.labels import move_label
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow


class EditCommands(CommandGroup):
    """One method for each action of that menu, named as it.

    State: the branch that was cut or copied last, and the game that is being written for the clipboard.
    """

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._copied: tuple[Node, ...] = ()
        self._copied_from: int | None = None
        self._writing = Piecemeal(self)

    def undo(self) -> None:
        """Take the last change back, and say what it was."""
        self._window.line_editor.flush()
        label = self._session.file.undo_label
        self._session.undo()
        if label:
            self._window.tell(tr("Taken back: {label}.", label=label_words(label)))

    def redo(self) -> None:
        """Do again what was taken back, and say what it was."""
        self._window.line_editor.flush()
        label = self._session.file.redo_label
        self._session.redo()
        if label:
            self._window.tell(tr("Done again: {label}.", label=label_words(label)))

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
        """Delete the shown move and all after it, or every chosen one; undo brings them back."""
        study, rows = self._session.study, self._window.lanes.choosing.rows
        path = study.path(self._session.node)
        label = move_label(self._session.positions, self._session.node)
        gone = {node.id for key in rows if not isinstance(key, Part) for node in study.branch(key)}
        if self._session.attempt(chosen_rows.delete_chosen, rows):
            self._session.show(next((node for node in reversed(path) if node in study.nodes), study.root))
            moves = tr("1 move") if len(gone) == 1 else tr("{size} moves", size=len(gone))
            if len(rows) > 1:
                self._window.tell(tr("Deleted {moves}. Ctrl+Z brings them back.", moves=moves))
            else:
                self._window.tell(tr("Deleted {label}, {moves}. Ctrl+Z brings it back.", label=label, moves=moves))

    def choose_line(self) -> None:
        """Every row of the line; once more, with all that branches off it."""
        self._window.lanes.choosing.line()
        self._window.tell(tr("{rows} rows are chosen. Escape lets them go.", rows=len(self._session.chosen)))

    def copy_words(self) -> None:
        """Put what is said at the chosen rows on the clipboard, with their moves."""
        self._window.line_editor.flush()
        rows = self._window.lanes.choosing.rows
        self._copy(copied.spoken_words(self._session.study, self._session.positions, rows), rows)

    def copy_rows_pgn(self) -> None:
        """Put the line on the clipboard as a game."""
        self._window.line_editor.flush()
        rows = self._window.lanes.choosing.rows
        self._copy(copied.rows_as_pgn(self._session.study, self._game_rows(rows)), rows)

    def copy_fen(self) -> None:
        """Put the shown position on the clipboard, or those of the chosen rows."""
        rows = self._game_rows(self._window.lanes.choosing.rows)
        self._copy(copied.rows_as_fen(self._session.study, self._session.positions, rows), rows)

    def copy_picture(self) -> None:
        """Put a picture of the shown position on the clipboard, or of those of the chosen rows."""
        from studyboard.desk.copied_picture import MOST, boards_picture

        nodes = [key for key in self._game_rows(self._window.lanes.choosing.rows) if not isinstance(key, Part)]
        if len(nodes) > MOST:
            self._window.tell(
                tr("{rows} boards are too many for one picture: choose at most {most}.", rows=len(nodes), most=MOST)
            )
            return
        flipped = self._window.board_view.flipped
        picture = boards_picture(self._session.positions, nodes, self._window.look, flipped=flipped)
        QGuiApplication.clipboard().setImage(picture)
        boards = tr("The board is on the clipboard") if len(nodes) == 1 else tr("{boards} boards", boards=len(nodes))
        self._window.tell(tr("On the clipboard as a picture: {boards}.", boards=boards))

    def _game_rows(self, rows: tuple[BeatKey, ...]) -> tuple[BeatKey, ...]:
        """The rows, with the move that is on the board where only lines without a move are chosen."""
        return rows if any(not isinstance(key, Part) for key in rows) else (*rows, self._session.node)

    def _copy(self, text: str, rows: tuple[BeatKey, ...]) -> None:
        if not text:
            self._window.tell(tr("There is nothing to copy here: no move, and nothing is said."))
            return
        QGuiApplication.clipboard().setText(text)
        count = (
            tr("1 row is on the clipboard.")
            if len(rows) == 1
            else tr("{rows} rows are on the clipboard.", rows=len(rows))
        )
        self._window.tell(count)

    def copy_pgn(self) -> None:
        """Put the annotated game on the clipboard, and tell what PGN has no room for."""
        from studyboard.notation.pgn_writer import pgn_pieces, pgn_remarks

        study = self._session.study.snapshot()

        def copied(text: str) -> None:
            QGuiApplication.clipboard().setText(text)
            self._window.tell(" ".join((tr("The game is on the clipboard."), *pgn_remarks(study))))

        self._writing.start(pgn_pieces(study), copied)
        if self._writing.busy:
            self._window.tell(tr("The game is being written …"))

    def find(self) -> None:
        """Open the find bar over the lanes."""
        self._window.write_stage()
        self._window.find_bar.open_bar()

    def find_next(self) -> None:
        """The next match, or the find bar where nothing is sought yet."""
        self._step(1)

    def find_previous(self) -> None:
        """The match before."""
        self._step(-1)

    def find_position(self) -> None:
        """Every move that leads to the position on the board."""
        bar = self._window.find_bar
        self._window.write_stage()
        bar.seek_position(self._session.board)
        others = len(bar.matches) - 1
        self._window.tell(
            tr("This position stands nowhere else on the tree.")
            if others < 1
            else tr("Other moves that lead to this position: {count}. F3 goes to the next.", count=others)
        )

    def _step(self, step: int) -> None:
        bar = self._window.find_bar
        if not bar.field.text().strip():
            self.find()
            return
        if self._window.stage != "write":
            self._window.write_stage()
        bar.step(step, self._window.lanes.current)
        if not bar.matches:
            self._window.tell(tr("“{text}” is not found.", text=bar.field.text().strip()))
