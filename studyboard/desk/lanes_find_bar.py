"""The find bar over the lanes: a move, words or a position, and from one match to the next."""

from __future__ import annotations

import chess
from PySide6.QtCore import QEvent, QObject, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QComboBox, QHBoxLayout, QLabel, QLineEdit, QToolButton, QWidget

from studyboard.desk.announcing import announce
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.model.reading_order import rows_in_order
from studyboard.model.script import BeatKey
from studyboard.notation.finding import Match, Sought, UnreadablePositionError, find
from studyboard.translation import tr, tr_later

_KINDS = (
    (Sought.ANYTHING, tr_later("Anything")),
    (Sought.MOVE, tr_later("Moves")),
    (Sought.WORDS, tr_later("Words")),
    (Sought.POSITION, tr_later("Positions")),
)
#: From what width on there is room for everything, in heights of a line of text.
_FOR_KIND = 23


class FindBar(QWidget):
    """Looks for what is typed while it is typed; Return and Shift+Return go from match to match.

    State: what was found, in reading order; the match that was gone to last; who had the keyboard before.

    found: other rows match now; carries their keys
    wanted: go to this row; carries its key
    """

    found = Signal(object)
    wanted = Signal(object)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._look = look
        self._matches: tuple[Match, ...] = ()
        self._at: BeatKey | None = None
        self._trouble = ""
        self._before: QWidget | None = None
        self.setAccessibleName(tr("Find"))
        self.field = QLineEdit()
        self.field.setPlaceholderText(tr("A move, words, or a position in FEN"))
        self.field.setAccessibleName(tr("What to find in the lanes"))
        self.field.setClearButtonEnabled(True)
        self.kind = QComboBox()
        self.kind.setAccessibleName(tr("What kind of thing to find"))
        self.kind.addItems([tr(name) for _, name in _KINDS])
        self.count = QLabel()
        self.count.setProperty("quiet", True)
        self.previous = _button(tr("Previous match (Shift+F3)"))
        self.next = _button(tr("Next match (F3)"))
        self.here = _button(tr("Find the position on the board (Ctrl+Shift+F)"))
        self.close_button = _button(tr("Close the find bar (Escape)"))
        layout = QHBoxLayout(self)
        layout.setContentsMargins(4, 2, 4, 4)
        layout.setSpacing(4)
        layout.addWidget(self.field, 1)
        for widget in (self.kind, self.count, self.previous, self.next, self.here, self.close_button):
            layout.addWidget(widget)
        self.field.textChanged.connect(self._search)
        self.kind.currentIndexChanged.connect(self._search)
        self.previous.clicked.connect(lambda: self.step(-1))
        self.next.clicked.connect(lambda: self.step(1))
        self.here.clicked.connect(lambda: self.seek_position(session.board))
        self.close_button.clicked.connect(self.close_bar)
        self.field.installEventFilter(self)
        self.kind.installEventFilter(self)
        session.planned.connect(self._search_again)
        session.opened.connect(self._search_again)
        look.changed.connect(self._dress)
        self._dress()
        self.hide()

    @property
    def matches(self) -> tuple[Match, ...]:
        """What was found, in reading order."""
        return self._matches

    def choose_kind(self, sought: Sought) -> None:
        """Look for this kind of thing."""
        self.kind.setCurrentIndex([kind for kind, _ in _KINDS].index(sought))

    def open_bar(self) -> None:
        """Show the bar, with the keyboard in its field and what stands there chosen to be typed over."""
        if self.isHidden():
            self._before = QApplication.focusWidget()
            self.show()
            self._search()
        self.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.field.selectAll()

    def close_bar(self) -> None:
        """Hide the bar and give the keyboard back; what was typed stays for the next time."""
        had_keyboard = self.isAncestorOf(QApplication.focusWidget() or self.window())
        self.hide()
        self._show_matches(())
        if had_keyboard and self._before is not None:
            self._before.setFocus(Qt.FocusReason.OtherFocusReason)
        self._before = None

    def seek_position(self, board: chess.Board) -> None:
        """Look for every place with this position."""
        if self.isHidden():
            self._before = QApplication.focusWidget()
            self.show()
        self.choose_kind(Sought.POSITION)
        self.field.setText(board.fen())
        self.field.setCursorPosition(0)
        self._search()

    def step(self, step: int, at: BeatKey | None = None) -> None:
        """Go to the next match, or with -1 to the one before, seen from the last one or from the row *at*."""
        if self.isHidden():
            self.show()
            self._search()
        if not self._matches:
            return
        keys = [match.key for match in self._matches]
        here = self._at if at is None else at
        if here in keys:
            place = (keys.index(here) + step) % len(keys)
        else:
            places = {key: place for place, key in enumerate(rows_in_order(self._session.study))}
            before = sum(places[key] < places.get(here, -1) for key in keys) if here is not None else 0
            place = (before if step > 0 else before - 1) % len(keys)
        self._at = keys[place]
        self.wanted.emit(self._at)
        self._show_count()

    def show_row(self, key: BeatKey) -> None:
        """Another row is current: matches are counted from there."""
        self._at = key
        self._show_count()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Return goes on, with Shift back; Escape closes."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and watched is self.field:
                self.step(-1 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1)
                return True
            if event.key() == Qt.Key.Key_Escape:
                self.close_bar()
                return True
        return super().eventFilter(watched, event)

    def minimumSizeHint(self) -> QSize:
        """As much as field, count and arrows need; the rest gives way."""
        return QSize(14 * self.fontMetrics().height(), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow pane what can be done by keys, or is seldom wanted, gives way to what is typed."""
        super().resizeEvent(event)
        lines = event.size().width() / self.fontMetrics().height()
        self.kind.setVisible(lines >= _FOR_KIND)
        self.here.setVisible(lines >= _FOR_KIND)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape closes from its buttons too."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_bar()
        else:
            super().keyPressEvent(event)

    def _search(self) -> None:
        self._trouble = ""
        sought = _KINDS[self.kind.currentIndex()][0]
        try:
            found = find(self._session.study, self._session.positions, self.field.text(), sought)
        except UnreadablePositionError as reason:
            found, self._trouble = (), str(reason)
        self._show_matches(found)

    def _search_again(self) -> None:
        if not self.isHidden():
            self._search()

    def _show_matches(self, found: tuple[Match, ...]) -> None:
        self._matches = found
        self.found.emit(tuple(match.key for match in found))
        self._show_count()

    def _show_count(self) -> None:
        keys = [match.key for match in self._matches]
        if self._trouble:
            text = tr("no position")
        elif not self.field.text().strip():
            text = ""
        elif not keys:
            text = tr("not found")
        elif self._at in keys:
            text = tr("{place} of {count}", place=keys.index(self._at) + 1, count=len(keys))
        else:
            text = tr("{count} found", count=len(keys))
        self.count.setText(text)
        self.count.setToolTip(self._trouble)
        for button in (self.previous, self.next):
            button.setEnabled(bool(keys))
        announce(self.field, self._trouble or text)

    def _dress(self) -> None:
        size = round(1.15 * self.fontMetrics().height())
        for button, icon in (
            (self.previous, "back"),
            (self.next, "forward"),
            (self.here, "stage"),
            (self.close_button, "close"),
        ):
            button.setIcon(self._look.icon(icon, size=size))
            button.setIconSize(QSize(size, size))


def _button(name: str) -> QToolButton:
    button = QToolButton()
    button.setToolTip(name)
    button.setAccessibleName(name)
    button.setAutoRaise(True)
    return button
