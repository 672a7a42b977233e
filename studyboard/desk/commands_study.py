"""What the actions of the menu “Study” do."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QFileDialog

from studyboard.board.set_up import SetUp, SetUpError, fen_of, set_up_of
from studyboard.desk.command_group import CommandGroup
from studyboard.model.errors import StudyboardError
from studyboard.model.position_study import position_study, start_at
from studyboard.model.study import Study
from studyboard.store.study_file import StudyFile
from studyboard.translation import tr


class StudyCommands(CommandGroup):
    """One method for each action of that menu, named as it."""

    def new_study(self) -> None:
        """Begin with the start position."""
        from studyboard.desk.opening import new_study

        self._open(lambda: new_study(Study()))

    def new_from_position(self) -> None:
        """Set a position up and begin there: the one on the clipboard to begin with, else the one on the desk."""
        from studyboard.desk.opening import new_study
        from studyboard.desk.position_window import PositionWindow

        begin = self._copied_position() or set_up_of(self._session.board.fen())
        window = PositionWindow(
            self._window.look, begin, tr("New from a position"), tr("Begin a study here"), self._window
        )
        if window.exec() == QDialog.DialogCode.Accepted:
            self._open(lambda: new_study(position_study(fen_of(window.set_up))))

    def change_start(self) -> None:
        """Set up another start position, as long as no move stands on the tree."""
        from studyboard.desk.position_window import PositionWindow

        self._window.line_editor.flush()
        begin = set_up_of(self._session.board.fen())
        window = PositionWindow(
            self._window.look, begin, tr("Change the start position"), tr("Begin here"), self._window
        )
        if window.exec() == QDialog.DialogCode.Accepted and window.set_up != begin:
            self._session.attempt(start_at, fen_of(window.set_up))

    def _copied_position(self) -> SetUp | None:
        copied = QGuiApplication.clipboard().text().strip()
        if copied.count("/") != 7 or len(copied) > 100:
            return None
        try:
            return set_up_of(copied)
        except SetUpError:
            return None

    def open_file(self) -> None:
        """Choose a study or a PGN file."""
        if self._window.recording:
            self._window.tell(tr("A take is being recorded: stop it first (Ctrl+Space)."))
            return
        start = str(self._session.file.path.parent)
        kinds = tr("Studies and games (*.studyboard *.pgn);;All files (*)")
        name, _ = QFileDialog.getOpenFileName(self._window, tr("Open"), start, kinds)
        if name:
            self._window.open_path(name)

    def save_as(self) -> None:
        """Go on with a copy under another name."""
        start = str(self._session.file.path)
        name, _ = QFileDialog.getSaveFileName(self._window, tr("Save as"), start, tr("Studies (*.studyboard)"))
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

    def _open(self, make: Callable[[], StudyFile]) -> None:
        from studyboard.desk.opening import Opened

        try:
            file = make()
        except StudyboardError as reason:
            self._window.tell(str(reason))
            return
        self._window.show_opened(Opened(file))
