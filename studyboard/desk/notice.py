"""A notice: one sentence over the desk that goes away by itself, or stays until it is read."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, Qt, QTimer
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QEnterEvent,
    QHideEvent,
    QKeyEvent,
)
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

from studyboard.desk.look import Look
from studyboard.translation import tr

#: How long a notice is shown that needs no answer (ms).
_SHOWN = 7000


class Notice(QFrame):
    """Shows one sentence at a time, and tells it to a screen reader.

    It lies over the desk and takes neither room nor the keyboard; it waits while the pointer is on it or the keyboard
    in it, and Escape sends it away from there. Its pane places it (see Arrangement).
    """

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._more: Callable[[], None] | None = None
        self._stay = False
        self.setAccessibleName(tr("Notice"))
        self._sentence = QLabel()
        self._sentence.setWordWrap(True)
        self._details = QPushButton(tr("Show all"))
        self._details.hide()
        self._details.clicked.connect(lambda: self._more() if self._more is not None else None)
        self._close = QPushButton(tr("Got it"))
        self._close.clicked.connect(self.hide)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(14, 6, 8, 6)
        layout.addWidget(self._sentence, 1)
        layout.addWidget(self._details)
        layout.addWidget(self._close)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._leave)
        look.changed.connect(self._dress)
        self._dress()
        self.hide()

    @property
    def text(self) -> str:
        """The sentence that is shown, empty where none is."""
        return "" if self.isHidden() else self._sentence.text()

    def tell(self, sentence: str, *, stay: bool = False, details: Callable[[], None] | None = None) -> None:
        """Show a sentence; it goes away after some seconds unless it is to stay.

        details: shows more about it, when asked
        """
        self._sentence.setText(sentence)
        self._more = details
        self._stay = stay
        self._details.setVisible(details is not None)
        self.show()
        self.setAccessibleDescription(sentence)
        if QAccessible.isActive():
            # It is read out although the keyboard is elsewhere.
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, sentence))
        self._timer.stop()
        if not stay:
            self._timer.start(_SHOWN)

    def enterEvent(self, event: QEnterEvent) -> None:
        """It is being read: wait."""
        super().enterEvent(event)
        self._timer.stop()

    def leaveEvent(self, event: QEvent) -> None:
        """It goes away some seconds after the pointer has left it."""
        super().leaveEvent(event)
        if not self._stay and not self.isHidden():
            self._timer.start(_SHOWN)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape sends it away."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        else:
            super().keyPressEvent(event)

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing is waited for any more."""
        self._timer.stop()
        super().hideEvent(event)

    def _leave(self) -> None:
        if self._close.hasFocus() or self._details.hasFocus():
            self._timer.start(_SHOWN)
        else:
            self.hide()

    def _dress(self) -> None:
        ground, edge = self._look.color("over_soft").name(), self._look.color("over").name()
        self.setStyleSheet(f"Notice {{ background: {ground}; border: 1px solid {edge}; border-radius: 6px; }}")
