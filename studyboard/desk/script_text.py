"""The whole script as one continuous text that is edited in place."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QMimeData, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QDropEvent,
    QFocusEvent,
    QInputMethodEvent,
    QKeyEvent,
    QKeySequence,
    QPaintEvent,
    QTextCharFormat,
    QTextCursor,
)
from PySide6.QtWidgets import QMenu, QTextEdit, QWidget

from studyboard.desk.line_cues import Cued
from studyboard.desk.line_signs import LineSigns
from studyboard.desk.line_tags import Tag
from studyboard.desk.look import Look
from studyboard.desk.script_document import ScriptDocument, is_heading, section_of
from studyboard.model.script import SpokenLine
from studyboard.translation import tr

#: How long typing must rest before it is told (ms).
_REST = 300
_Key = QKeySequence.StandardKey
_Operation = QTextCursor.MoveOperation
#: What is deleted by each key where nothing is selected.
_DELETES = (
    (_Key.DeleteEndOfWord, _Operation.NextWord),
    (_Key.DeleteStartOfWord, _Operation.PreviousWord),
    (_Key.DeleteEndOfLine, _Operation.EndOfBlock),
)
_MOVING = frozenset(
    {
        Qt.Key.Key_Left,
        Qt.Key.Key_Right,
        Qt.Key.Key_Up,
        Qt.Key.Key_Down,
        Qt.Key.Key_Home,
        Qt.Key.Key_End,
        Qt.Key.Key_PageUp,
        Qt.Key.Key_PageDown,
    }
)


class ScriptText(QTextEdit):
    """Edits the lines below their headings; the headings themselves cannot be changed.

    State: which sections were changed since that was last told. It has no history of its own: undo belongs to the
    study.

    rested: typing rests, or the keyboard has gone elsewhere; carries the numbers of the changed sections
    section_entered: the cursor is in another section; carries its number
    undo_wanted, redo_wanted: the keys for them were pressed
    menu_opening: a menu is about to be shown; carries the QMenu, the number of the section and the character
    """

    rested = Signal(object)
    section_entered = Signal(int)
    undo_wanted = Signal()
    redo_wanted = Signal()
    menu_opening = Signal(object, int, int)

    def __init__(self, look: Look, tag: Callable[[Cued, int], Tag], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._changed: set[int] = set()
        self._section = -1
        self._writing = False
        self._signs = LineSigns(look)
        self._script = ScriptDocument(look, tag)
        self._script.setParent(self)
        self.setDocument(self._script)
        self.setAcceptRichText(False)
        self.setTabChangesFocus(True)
        self.setAcceptDrops(False)
        self.setAccessibleName(tr("The whole script"))
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST)
        self._rest.timeout.connect(self.settle)
        self.cursorPositionChanged.connect(self._on_cursor)

    @property
    def script(self) -> ScriptDocument:
        """The document."""
        return self._script

    @property
    def section(self) -> int:
        """The number of the section in which the cursor stands."""
        return section_of(self.textCursor().block())

    def write(self, parts: list[tuple[str, int, SpokenLine]]) -> None:
        """Show another script; the caller puts the cursor back."""
        self._writing = True
        font = self._look.spoken_font(1.15)
        # As a style and not by setFont, which the style sheet of the window undoes.
        self.setStyleSheet(f'ScriptText {{ font: {font.pointSizeF():.1f}pt "{font.family()}"; }}')
        self._script.write(parts)
        self._changed.clear()
        self._section = -1
        self._writing = False

    def settle(self) -> None:
        """Tell at once which sections were changed."""
        self._rest.stop()
        changed, self._changed = self._changed, set()
        if changed:
            self.rested.emit(changed)

    def try_again(self, numbers: set[int]) -> None:
        """These sections could not be stored: tell of them again with the next change."""
        self._changed |= numbers

    def put_cursor(self, number: int, character: int, until: int | None = None) -> None:
        """Put the cursor before a character of a section's line, or select up to another one, and show it."""
        cursor = self.textCursor()
        cursor.setPosition(self._script.place_of(number, character))
        if until is not None:
            cursor.setPosition(self._script.place_of(number, until), QTextCursor.MoveMode.KeepAnchor)
        self.setTextCursor(cursor)
        self.ensureCursorVisible()

    def show_misspelt(self, words: list[tuple[int, int]]) -> None:
        """Put dots under these words, given as places of the cursor."""
        if self._signs.put("spelling", self._script, [(start, end, False) for start, end in words]):
            self.viewport().update()

    @property
    def misspelt(self) -> list[str]:
        """The words under which there are dots."""
        return self._signs.misspelt

    def put_words(self, number: int, start: int, end: int, words: str) -> None:
        """Put words in the place of these characters of a section's line."""
        cursor = self.textCursor()
        cursor.setPosition(self._script.place_of(number, start))
        cursor.setPosition(self._script.place_of(number, end), QTextCursor.MoveMode.KeepAnchor)
        cursor.insertText(words)
        self._touch({number})
        self.settle()

    # ---- keys -------------------------------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget: what would change a heading changes nothing."""
        if event.matches(_Key.Undo):
            self.undo_wanted.emit()
        elif event.matches(_Key.Redo):
            self.redo_wanted.emit()
        elif event.matches(_Key.Cut):
            self._cut()
        elif event.matches(_Key.Paste):
            self.paste()
        elif event.key() in _MOVING or event.matches(_Key.Copy) or event.matches(_Key.SelectAll):
            super().keyPressEvent(event)
        elif event.matches(_Key.InsertParagraphSeparator) or event.matches(_Key.InsertLineSeparator):
            self._into_body()
            self.textCursor().insertBlock()
            self._touch({self.section})
            self.ensureCursorVisible()
        elif not self._deleted_by(event):
            if event.text().isprintable() and event.text() and not _is_command(event):
                self._into_body()
                super().keyPressEvent(event)
                self._touch({self.section})
            else:
                event.ignore()

    def inputMethodEvent(self, event: QInputMethodEvent) -> None:
        """See QWidget."""
        if event.commitString() or event.preeditString():
            self._into_body()
        super().inputMethodEvent(event)
        if event.commitString():
            self._touch({self.section})

    def createMimeDataFromSelection(self) -> QMimeData:
        """See QTextEdit: words without the characters that stand for tags."""
        data = QMimeData()
        text = self.textCursor().selectedText()
        data.setText(text.replace("\u2029", "\n").replace("\u2028", "\n").replace("\ufffc", ""))
        return data

    def insertFromMimeData(self, source: QMimeData) -> None:
        """See QTextEdit."""
        self._into_body()
        cursor = self.textCursor()
        self._script.insert(cursor, [source.text().replace("\r\n", "\n")])
        self.setTextCursor(cursor)
        self._touch({self.section})

    def dropEvent(self, event: QDropEvent) -> None:
        """See QWidget: nothing is dropped here, since what is dragged away could take headings along."""
        event.ignore()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """See QWidget."""
        by_pointer = event.reason() == QContextMenuEvent.Reason.Mouse
        if by_pointer and not self.textCursor().hasSelection():
            self.setTextCursor(self.cursorForPosition(event.pos()))
        cursor = self.textCursor()
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.addAction(tr("Cu&t"), self._cut).setEnabled(cursor.hasSelection())
        menu.addAction(tr("&Copy"), self.copy).setEnabled(cursor.hasSelection())
        menu.addAction(tr("&Paste"), self.paste).setEnabled(self.canPaste())
        if not is_heading(cursor.block()):
            place = cursor.selectionStart()
            self.menu_opening.emit(menu, self.section, self._script.character_of(place))
        menu.popup(event.globalPos() if by_pointer else self.viewport().mapToGlobal(self.cursorRect().bottomLeft()))

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """See QWidget."""
        super().focusOutEvent(event)
        self.settle()

    def paintEvent(self, event: QPaintEvent) -> None:
        """See QWidget; also the dots under misspelt words."""
        super().paintEvent(event)
        self._signs.paint_misspelt(self)

    def sizeHint(self) -> QSize:
        """A page."""
        line = self.fontMetrics().lineSpacing()
        return QSize(40 * line, 34 * line)

    # ---- within -----------------------------------------------------------------------------------------------------

    def _deleted_by(self, event: QKeyEvent) -> bool:
        """Delete what a key deletes, inside one section; False where it is no such key."""
        operation = next((operation for key, operation in _DELETES if event.matches(key)), None)
        # Not every platform has a standard key for these two.
        if operation is None and not _is_command(event):
            plain = {Qt.Key.Key_Delete: _Operation.NextCharacter, Qt.Key.Key_Backspace: _Operation.PreviousCharacter}
            operation = plain.get(Qt.Key(event.key()))
        if operation is None:
            return event.matches(_Key.DeleteCompleteLine)
        cursor = self.textCursor()
        if cursor.hasSelection():
            self._delete_selection()
        elif not is_heading(cursor.block()):
            number, here = self.section, cursor.position()
            first, last = self._script.body(number)
            cursor.movePosition(operation)
            there = min(max(cursor.position(), first), last)
            if there != here:
                self._touch(self._script.remove(min(here, there), max(here, there)))
        return True

    def _cut(self) -> None:
        self.copy()
        self._delete_selection()

    def _delete_selection(self) -> None:
        cursor = self.textCursor()
        if cursor.hasSelection():
            start, end = cursor.selectionStart(), cursor.selectionEnd()
            self._touch(self._script.remove(start, end))
            cursor.setPosition(start)
            self.setTextCursor(cursor)

    def _into_body(self) -> None:
        """Delete what is selected, and leave a heading for what is said below it."""
        self._delete_selection()
        cursor = self.textCursor()
        if is_heading(cursor.block()):
            cursor.setPosition(self._script.body(self.section)[0])
            self.setTextCursor(cursor)
        # What is typed beside a tag is no tag.
        self.setCurrentCharFormat(QTextCharFormat())

    def _touch(self, numbers: set[int]) -> None:
        self._changed |= numbers
        self._rest.start()

    def _on_cursor(self) -> None:
        if not self._writing and self.section != self._section:
            self._section = self.section
            self.settle()
            self.section_entered.emit(self._section)


def _is_command(event: QKeyEvent) -> bool:
    """True for Ctrl or Alt with a letter; AltGr is both of them on Windows, and types."""
    held = event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
    both = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
    return bool(held) and held != both
