"""The board alone on the whole screen, with the keys of the desk at work."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from studyboard.desk.arrangement import Arrangement

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow

_STEPS = {
    Qt.Key.Key_Down: "forward",
    Qt.Key.Key_Right: "forward",
    Qt.Key.Key_Up: "back",
    Qt.Key.Key_Left: "back",
    Qt.Key.Key_Home: "to_start",
    Qt.Key.Key_End: "to_end",
}


class BoardOnly(QObject):
    """Leaves nothing of the desk but its board, and brings the rest back.

    State: whether the board is alone, and how the window was shown before. The arrows step while it is, Home and End
    go to the ends of the line; all shortcuts of the desk go on working. Escape brings the desk back.
    """

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._on = False
        self._before = Qt.WindowState.WindowNoState
        self._focus: QWidget | None = None
        self._steps = [QShortcut(QKeySequence(key), window, window.commands.of(name)) for key, name in _STEPS.items()]
        for step in self._steps:
            step.setEnabled(False)

    @property
    def on(self) -> bool:
        """True while the board is alone."""
        return self._on

    def turn(self, on: bool) -> None:
        """Show the board alone, or the whole desk again."""
        if on == self._on:
            return
        window, self._on = self._window, on
        if on:
            self._before = window.windowState()
            self._focus = window.focusWidget()
            # Before its pane is hidden, which would hand the keyboard on as Tab does, with a ring around the board.
            window.board_view.setFocus(Qt.FocusReason.OtherFocusReason)
        arrangement = window.centralWidget()
        if isinstance(arrangement, Arrangement):
            arrangement.show_board_only(on)
        window.menuBar().setVisible(not on)
        window.actions_by_name["board_only"].setChecked(on)
        for step in self._steps:
            step.setEnabled(on)
        if on:
            window.showFullScreen()
        else:
            window.setWindowState(self._before)
            if self._focus is not None and self._focus.isVisibleTo(window):
                self._focus.setFocus(Qt.FocusReason.OtherFocusReason)
