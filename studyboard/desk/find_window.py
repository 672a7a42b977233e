"""The window that finds words in the whole script and puts others in their place."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import QCheckBox, QDialog, QFormLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.announcing import announce
from studyboard.desk.rows_layout import RowsLayout
from studyboard.desk.session import Session
from studyboard.model.script import BeatKey
from studyboard.translation import tr
from studyboard.writing.find_replace import Place, Search, find, replace_places, script_order

#: How long typing must rest before the script is searched (ms).
_REST = 120


class FindWindow(QDialog):
    """Takes what is searched for and what shall stand there.

    State: the places that were found, and which of them is shown. It stays beside the desk, which can be worked on
    meanwhile.

    shown: a place is shown; carries it, or None
    found: other places are known; carries them all
    flush_wanted: what is being typed on the desk has to be stored before the script is changed
    """

    shown = Signal(object)
    found = Signal(object)
    flush_wanted = Signal()

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Tool)
        self._session = session
        self._places: tuple[Place, ...] = ()
        self._at = -1
        self._replacing = False
        self.setWindowTitle(tr("Find and replace in the script"))
        self.wanted, self.by = QLineEdit(), QLineEdit()
        self.match_case = QCheckBox(tr("Match &case"))
        self.whole_words = QCheckBox(tr("Whole &words"))
        self.notes = QCheckBox(tr("Also in n&otes for print"))
        self.count = QLabel()
        self.count.setWordWrap(True)
        self.count.setAccessibleName(tr("How many were found"))
        self.next_button, self.previous_button = ActingButton(tr("&Next")), ActingButton(tr("&Previous"))
        self.replace_button, self.all_button = ActingButton(tr("&Replace")), ActingButton(tr("Replace &all"))
        close = ActingButton(tr("Close"))
        form = QFormLayout()
        form.addRow(tr("&Find"), self.wanted)
        form.addRow(tr("Replace &by"), self.by)
        options, buttons = QWidget(), QWidget()
        row = RowsLayout(options)
        for box in (self.match_case, self.whole_words, self.notes):
            row.add(box)
            box.toggled.connect(self._search_again)
        row = RowsLayout(buttons)
        for button, act in (
            (self.previous_button, lambda: self.step(-1)),
            (self.next_button, lambda: self.step(1)),
            (self.replace_button, self.replace_one),
            (self.all_button, self.replace_all),
            (close, self.close),
        ):
            button.clicked.connect(act)
            row.add(button)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(options)
        layout.addWidget(self.count)
        layout.addStretch(1)
        layout.addWidget(buttons)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST)
        self._rest.timeout.connect(self._search)
        self.wanted.textChanged.connect(self._search_soon)
        for keys, step in (("F3", 1), ("Shift+F3", -1)):
            shortcut = QShortcut(QKeySequence(keys), self)
            shortcut.setContext(Qt.ShortcutContext.WindowShortcut)
            shortcut.activated.connect(lambda step=step: self.step(step))
        session.changed.connect(lambda _: self._search_again())
        session.opened.connect(self._search_again)
        self._tell()

    @property
    def search(self) -> Search:
        """What is searched for now."""
        return Search(
            self.wanted.text(), self.match_case.isChecked(), self.whole_words.isChecked(), self.notes.isChecked()
        )

    @property
    def places(self) -> tuple[Place, ...]:
        """Where it was found."""
        return self._places

    def begin(self, text: str, key: BeatKey, character: int) -> None:
        """Search from here: *text* is what was selected on the desk, if it was one line."""
        if text and "\n" not in text:
            self.wanted.setText(text)
        self.wanted.selectAll()
        self.wanted.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self._search()
        order = {other: number for number, other in enumerate(script_order(self._session.study))}
        here = (order.get(key, -1), character)
        ahead = (n for n, p in enumerate(self._places) if (order.get(p.key, -1), p.end) >= here)
        self._at = next(ahead, 0) - 1

    def step(self, by: int) -> None:
        """Show the next place, or the one before; after the last comes the first."""
        self._settle()
        if self._places:
            self._at = (self._at + by) % len(self._places) if self._at >= 0 or by > 0 else len(self._places) - 1
            self._tell()
            self.shown.emit(self._places[self._at])

    def replace_one(self) -> None:
        """Put the new text in the place that is shown, and show the next one."""
        self._settle()
        if not 0 <= self._at < len(self._places):
            self.step(1)
            return
        place = self._places[self._at]
        if self._do((place,)):
            behind = place.start + len(self.by.text())
            at = self._at if self._at < len(self._places) else 0
            while at < len(self._places) - 1 and self._same_text(self._places[at], place, behind):
                at += 1
            self._at = at - 1
            self.step(1)

    def replace_all(self) -> None:
        """Put the new text in every place, as one step of the history."""
        self._settle()
        count = len(self._places)
        if count and self._do(self._places):
            self._at = -1
            self._tell(
                tr("Replaced once. Ctrl+Z takes it back.")
                if count == 1
                else tr("Replaced {count} times. Ctrl+Z takes it back in one step.", count=count)
            )
            self.shown.emit(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return goes on, with Shift back; in the second field it replaces."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.by.hasFocus():
                self.replace_one()
            else:
                self.step(-1 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1)
            return
        super().keyPressEvent(event)

    def showEvent(self, event: QShowEvent) -> None:
        """Show again what is found, in a window that has room for all of it."""
        super().showEvent(event)
        width = min(36 * self.fontMetrics().height(), round(0.95 * self.screen().availableSize().width()))
        layout = self.layout()
        if layout is not None and self.width() < width:
            self.resize(width, layout.totalHeightForWidth(width))
        self._search_again()

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing is marked any more."""
        super().hideEvent(event)
        self.found.emit(())

    @staticmethod
    def _same_text(other: Place, place: Place, behind: int) -> bool:
        """True for a place inside the text that has just been put there."""
        return (other.key, other.field) == (place.key, place.field) and place.start <= other.start < behind

    def _do(self, places: tuple[Place, ...]) -> bool:
        self._replacing = True
        done = self._session.attempt(replace_places, places, self.search, self.by.text())
        self._replacing = False
        self._search()
        return done

    def _settle(self) -> None:
        self.flush_wanted.emit()
        if self._rest.isActive():
            self._search()

    def _search_again(self) -> None:
        if self.isVisible() and not self._replacing:
            self._search_soon()

    def _search_soon(self) -> None:
        # The buttons search at once what has not been searched yet.
        self._enable(bool(self.wanted.text()))
        self._rest.start()

    def _search(self) -> None:
        self._rest.stop()
        before = self._places[self._at] if 0 <= self._at < len(self._places) else None
        self._places = find(self._session.study, self.search)
        if before in self._places:
            self._at = self._places.index(before)
        else:
            self._at = min(self._at, len(self._places) - 1) if before is not None else -1
        self._tell()
        self.found.emit(self._places)

    def _enable(self, enabled: bool) -> None:
        for button in (self.next_button, self.previous_button, self.replace_button, self.all_button):
            button.setEnabled(enabled)

    def _tell(self, said: str = "") -> None:
        count = len(self._places)
        self._enable(count > 0)
        if not said:
            if not self.wanted.text():
                said = tr("The whole script is searched, in the order of the talk.")
            elif not count:
                said = tr("Not found")
            elif self._at < 0:
                said = tr("Found once") if count == 1 else tr("Found {count} times", count=count)
            else:
                said = tr("{number} of {count}", number=self._at + 1, count=count)
        self.count.setText(said)
        announce(self.wanted, said)
