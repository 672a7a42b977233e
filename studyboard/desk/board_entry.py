"""A field over the board in which a move is typed."""

from __future__ import annotations

from collections.abc import Callable

import chess
from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from studyboard.board.typed_moves import MoveNotReadError, read_move
from studyboard.desk.board_announce import announce
from studyboard.desk.look import Look
from studyboard.translation import tr


class MoveEntry(QFrame):
    """Takes a move in letters and figures.

    State: what has been typed. Enter plays it, or says why it cannot be played; Escape puts the field away.

    entered: carries the legal move
    previewed: what is typed is a legal move now, or None
    closed: the field is put away
    """

    entered = Signal(object)
    previewed = Signal(object)
    closed = Signal()

    def __init__(self, board: Callable[[], chess.Board], look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._board = board
        self._look = look
        self._host = parent
        self._closing = False
        self.setObjectName("card")
        self._field = QLineEdit()
        self._field.setAccessibleName(tr("Move to play"))
        self._field.setPlaceholderText(tr("Nf3, exd5, O-O, g1f3 or knight f3"))
        self._field.textChanged.connect(self._typed)
        self._field.installEventFilter(self)
        label = QLabel(tr("Move"))
        label.setObjectName("quiet")
        label.setBuddy(self._field)
        self._reason = QLabel()
        self._reason.setObjectName("over")
        self._reason.setWordWrap(True)
        self._reason.hide()
        row = QHBoxLayout()
        row.addWidget(label)
        row.addWidget(self._field, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(10, 8, 10, 8)
        layout.addLayout(row)
        layout.addWidget(self._reason)
        self.hide()

    @property
    def field(self) -> QLineEdit:
        """Where one types."""
        return self._field

    @property
    def reason(self) -> str:
        """Why the last move was refused; empty where none was."""
        return self._reason.text() if self._reason.isVisibleTo(self) else ""

    def begin(self, text: str = "") -> None:
        """Show the field at the foot of the board with *text* in it."""
        self._reason.hide()
        self._field.setFont(self._look.move_font(1.1))
        self._field.setText(text)
        self.place()
        self.show()
        self.raise_()
        self._field.setFocus(Qt.FocusReason.OtherFocusReason)
        self._field.setCursorPosition(len(text))

    def place(self) -> None:
        """Take the foot of the board."""
        width = min(self._host.width() - 24, 360)
        self.setFixedWidth(width)
        self.adjustSize()
        self.move((self._host.width() - width) // 2, self._host.height() - self.height() - 12)

    def close_entry(self) -> None:
        """Put the field away."""
        if self.isVisible() and not self._closing:
            self._closing = True
            if self._field.hasFocus():
                # Before it is hidden, which would hand the keyboard to some other pane.
                self._host.setFocus(Qt.FocusReason.OtherFocusReason)
            self.hide()
            self._closing = False
            self.previewed.emit(None)
            self.closed.emit()

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """Enter and Escape belong to the field, and so does every other key while it is open."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.ShortcutOverride:
            if event.key() in (Qt.Key.Key_Escape, Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Backspace):
                event.accept()
                return True
        elif isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            if event.key() == Qt.Key.Key_Escape:
                self.close_entry()
                return True
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self._enter()
                return True
        elif isinstance(event, QFocusEvent) and event.lostFocus() and event.reason() != Qt.FocusReason.PopupFocusReason:
            self.close_entry()
        return super().eventFilter(watched, event)  # type: ignore[arg-type]

    def _enter(self) -> None:
        try:
            move = read_move(self._board(), self._field.text())
        except MoveNotReadError as reason:
            self._reason.setText(f"{reason} {reason.choices}".strip())
            self._reason.show()
            self.place()
            announce(self._field, self._reason.text)
            return
        self.close_entry()
        self.entered.emit(move)

    def _typed(self, text: str) -> None:
        if self._reason.isVisibleTo(self):
            self._reason.hide()
            self.place()
        try:
            move = read_move(self._board(), text)
        except MoveNotReadError:
            move = None
        self.previewed.emit(move)
