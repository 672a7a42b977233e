"""What the actions of the menu “Study” do."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QInputDialog

from studyboard.desk.command_group import CommandGroup
from studyboard.model.errors import StudyboardError
from studyboard.model.position_study import position_study
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
        """Ask for a FEN and begin there."""
        from studyboard.desk.opening import new_study

        clipboard = QGuiApplication.clipboard().text().strip()
        suggestion = clipboard if clipboard.count("/") == 7 and len(clipboard) < 100 else ""
        fen, given = QInputDialog.getText(
            self._window, tr("New from a position"), tr("FEN of the position"), text=suggestion
        )
        if given and fen.strip():
            self._open(lambda: new_study(position_study(fen)))

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
