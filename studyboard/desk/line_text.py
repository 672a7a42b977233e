"""The text of a spoken line, with its cues as tags inside it."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Sequence

from PySide6.QtCore import QByteArray, QEvent, QMimeData, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QTextBlockFormat,
    QTextCursor,
    QTextFragment,
)
from PySide6.QtWidgets import QTextEdit, QWidget

from studyboard.desk.announcing import announce
from studyboard.desk.line_cues import Cued, Run, line_of, runs_of
from studyboard.desk.line_signs import LineSigns
from studyboard.desk.line_tag_drag import TagDrag, word_near
from studyboard.desk.line_tags import TAG_TYPE, LineTags, Tag, cued_by, tag_format
from studyboard.desk.look import Look
from studyboard.model.script import SpokenLine, word_spans
from studyboard.translation import tr

_OBJECT = "\ufffc"
_LINE_BREAK = "\u2028"
#: Distance of lines (% of the usual).
_LEADING = 125
_MIME = "application/x-studyboard-line"


class LineText(QTextEdit):
    """A spoken line to be written.

    State: the text and its tags, what is underlined and why, and which tag the pointer drags. It has no history of its
    own: undo belongs to the study.

    edited: the user has changed the line
    left: the keyboard has gone elsewhere
    tag_moved: the user has dragged a tag to another word
    menu_opening: a menu is about to be shown; carries the QMenu and the character of the line that it is about
    """

    edited = Signal()
    left = Signal()
    tag_moved = Signal()
    menu_opening = Signal(object, int)

    def __init__(self, look: Look, tag: Callable[[Cued], Tag], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._tag = tag
        self._loading = False
        self._drag: TagDrag | None = None
        self._caret_held = False
        self._signs = LineSigns(look)
        self.setAcceptRichText(False)
        self.setUndoRedoEnabled(False)
        self.setTabChangesFocus(True)
        self.document().setDocumentMargin(2)
        self._tags = LineTags(look, tag, self.document())
        self.document().documentLayout().registerHandler(TAG_TYPE, self._tags)
        self.textChanged.connect(self._on_text_changed)
        self.cursorPositionChanged.connect(self._tell_tag)
        self.dress()

    @property
    def line(self) -> SpokenLine:
        """The line as it is written now."""
        return line_of(self._runs(0, self.document().characterCount() - 1))

    def set_line(self, line: SpokenLine) -> None:
        """Show another line from its beginning, with the cursor at its end where it is being written."""
        self._loading = True
        self.setPlainText("")
        cursor = self.textCursor()
        block = cursor.blockFormat()
        block.setLineHeight(_LEADING, QTextBlockFormat.LineHeightTypes.ProportionalHeight.value)
        cursor.setBlockFormat(block)
        self._insert(cursor, runs_of(line))
        if not self.hasFocus():
            # A cursor at the end would be scrolled to when the editor is next laid out.
            cursor.setPosition(0)
        self.setTextCursor(cursor)
        self.verticalScrollBar().setValue(0)
        self._loading = False

    def change_line(self, line: SpokenLine) -> None:
        """Show the same line after a change from elsewhere, with the cursor where the change was."""
        before = self._flat()
        scrolled = self.verticalScrollBar().value()
        self.set_line(line)
        after = self._flat()
        cursor = self.textCursor()
        cursor.setPosition(_length(after[: _end_of_change(before, after)]))
        self.setTextCursor(cursor)
        self.verticalScrollBar().setValue(scrolled)

    def insert_cued(self, cued: Cued) -> None:
        """Put a tag at the cursor; where the line has one for the same already, that one is taken away."""
        cursor = self.textCursor()
        cursor.beginEditBlock()
        cursor.clearSelection()
        for place, other in reversed(self._places()):
            if other == cued:
                old = QTextCursor(self.document())
                old.setPosition(place)
                old.deleteChar()
        self._insert(cursor, [cued])
        cursor.endEditBlock()
        self.setTextCursor(cursor)

    def underline(self, spans: Sequence[tuple[int, int]], chosen: tuple[int, int] | None = None) -> None:
        """Put a wavy line under these characters of the line, and a ground behind the chosen ones: its queries."""
        self._sign("query", spans, chosen)

    def underline_spelling(self, spans: Sequence[tuple[int, int]]) -> None:
        """Put a dotted line under words that no dictionary has."""
        self._sign("spelling", spans, None)

    def show_found(self, spans: Sequence[tuple[int, int]], chosen: tuple[int, int] | None = None) -> None:
        """Put a ground behind what was searched for, and a frame around the one that is chosen."""
        self._sign("found", spans, chosen)

    def select_characters(self, start: int, end: int) -> None:
        """Select these characters of the line, with the cursor at their end, and bring them into view."""
        cursor = self.textCursor()
        cursor.setPosition(self._place_of(start))
        cursor.setPosition(self._place_of(end), QTextCursor.MoveMode.KeepAnchor)
        self.setTextCursor(cursor)
        self.ensureCursorVisible()

    @property
    def character(self) -> int:
        """The character of the line before which the cursor stands."""
        return self._character_of(self.textCursor().position())

    @property
    def word(self) -> int:
        """The index of the word at which a cue would stand that is put at the cursor."""
        return word_near(self.line.text, self.character)

    def move_cued(self, cued: Cued, word: int) -> None:
        """Put a tag that the line has to another of its words, and select it there."""
        spans = word_spans(self.line.text)
        cursor = self.textCursor()
        cursor.beginEditBlock()
        for at, other in reversed(self._places()):
            if other == cued:
                old = QTextCursor(self.document())
                old.setPosition(at)
                old.deleteChar()
        cursor.setPosition(self._place_of(spans[word][0]) if word < len(spans) else self._place_of(len(self.line.text)))
        self._insert(cursor, [cued])
        cursor.endEditBlock()
        cursor.setPosition(cursor.position() - 1)
        cursor.setPosition(cursor.position() + 1, QTextCursor.MoveMode.KeepAnchor)
        self.setTextCursor(cursor)

    def shift_cue(self, step: int) -> bool:
        """Move the cue that is selected, or at the cursor, by so many words; False where there is none."""
        cursor = self.textCursor()
        near = (cursor.selectionStart(), cursor.position() - 1, cursor.position())
        here = dict(self._places())
        cued = next((here[place] for place in near if place in here), None)
        if cued is None:
            return False
        line = self.line
        word = next(cue.word for cue in line.cues if Cued(cue.node, cue.mark) == cued)
        self.move_cued(cued, max(0, min(len(word_spans(line.text)), word + step)))
        return True

    def put_cursor_behind(self, cued: Cued) -> None:
        """Put the cursor right behind this tag, where the line has it."""
        for place, other in self._places():
            if other == cued:
                cursor = self.textCursor()
                cursor.setPosition(place + 1)
                self.setTextCursor(cursor)
                return

    def hold_caret(self, held: bool) -> None:
        """Show where the cursor is although the keyboard is elsewhere, or not."""
        self._caret_held = held
        self.viewport().update()

    def insert_words(self, words: str) -> None:
        """Put words at the cursor, in the place of what is selected, with a blank where they would touch others."""
        cursor = self.textCursor()
        cursor.beginEditBlock()
        cursor.removeSelectedText()
        at = self._character_of(cursor.position())
        line = self.line.text
        before = " " if line[at - 1 : at].strip() and words[:1].isalnum() and at else ""
        behind = " " if line[at : at + 1].isalnum() else ""
        cursor.insertText(before + words + behind)
        cursor.endEditBlock()
        self.setTextCursor(cursor)

    def replace_characters(self, start: int, end: int, text: str) -> None:
        """Put *text* in the place of these characters of the line; tags between them stay before it."""
        cursor = self.textCursor()
        cursor.setPosition(self._place_of(start))
        cursor.setPosition(self._place_of(end), QTextCursor.MoveMode.KeepAnchor)
        cursor.insertText(text)

    def refresh_tags(self) -> None:
        """Measure and paint the tags again: what they show may have another name now."""
        self.document().markContentsDirty(0, self.document().characterCount())
        self.viewport().update()

    @property
    def cued(self) -> list[Cued]:
        """What the line plays and shows, in its order."""
        return [cued for _, cued in self._places()]

    def dress(self) -> None:
        """Take colours and font of the look."""
        font, look = self._look.spoken_font(1.3), self._look
        surface, focus, quiet = (look.color(token).name() for token in ("surface", "focus", "ink_quiet"))
        # As a style and not by setFont, which a style sheet of the application undoes when the editor gets a parent.
        self.setStyleSheet(
            f'LineText {{ font: {font.pointSizeF():.1f}pt "{font.family()}"; background: {surface}; border: none;'
            f" border-left: 3px solid {surface}; border-radius: 0; padding: 0 4px; placeholder-text-color: {quiet}; }}"
            f"LineText:focus {{ border: none; border-left: 3px solid {focus}; padding: 0 4px; }}"
        )
        self.setExtraSelections(self._signs.selections())
        self.refresh_tags()

    # Copying, pasting and dragging.

    def createMimeDataFromSelection(self) -> QMimeData:
        """See QTextEdit: the words as text, and the cues with them for other lines."""
        cursor = self.textCursor()
        runs = list(self._runs(cursor.selectionStart(), cursor.selectionEnd()))
        plain = [run if isinstance(run, str) else [run.node, run.mark] for run in runs]
        data = QMimeData()
        data.setText("".join(run for run in runs if isinstance(run, str)))
        data.setData(_MIME, QByteArray(json.dumps(plain).encode()))
        return data

    def canInsertFromMimeData(self, source: QMimeData) -> bool:
        """See QTextEdit."""
        return source.hasFormat(_MIME) or source.hasText()

    def insertFromMimeData(self, source: QMimeData) -> None:
        """See QTextEdit."""
        cursor = self.textCursor()
        cursor.beginEditBlock()
        cursor.removeSelectedText()
        if source.hasFormat(_MIME):
            self._insert(cursor, _read_runs(bytes(source.data(_MIME).data())))
        else:
            cursor.insertText(source.text().replace(_OBJECT, ""))
        cursor.endEditBlock()
        self.setTextCursor(cursor)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """See QWidget: a tag is picked up whole."""
        place = self._tag_at(event.position())
        if place is None or event.button() != Qt.MouseButton.LeftButton:
            super().mousePressEvent(event)
            return
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        cursor = self.textCursor()
        cursor.setPosition(place)
        cursor.setPosition(place + 1, QTextCursor.MoveMode.KeepAnchor)
        self.setTextCursor(cursor)
        self._drag = TagDrag(dict(self._places())[place], event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """See QWidget: the tag goes along with the pointer, from word to word."""
        if self._drag is None:
            over = self._tag_at(event.position()) is not None and not event.buttons()
            self.viewport().setCursor(Qt.CursorShape.OpenHandCursor if over else Qt.CursorShape.IBeamCursor)
            super().mouseMoveEvent(event)
        elif self._drag.begins_at(event.position()):
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            self._drag.word = self._word_under(event.position())
            self.viewport().update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """See QWidget: the tag stays at the word under the pointer."""
        drag, self._drag = self._drag, None
        if drag is None:
            super().mouseReleaseEvent(event)
            return
        self.viewport().setCursor(Qt.CursorShape.IBeamCursor)
        self.viewport().update()
        if drag.word is not None:
            self.move_cued(drag.cued, drag.word)
            self.tag_moved.emit()

    def paintEvent(self, event: QPaintEvent) -> None:
        """See QWidget; also where a dragged tag would stay, and the cursor while a move is played for it."""
        super().paintEvent(event)
        self._signs.paint_misspelt(self)
        place = None
        if self._drag is not None and self._drag.word is not None:
            spans, word = word_spans(self.line.text), self._drag.word
            place = self._place_of(spans[word][0]) if word < len(spans) else self._place_of(len(self.line.text))
        elif self._caret_held and not self.hasFocus():
            place = self.textCursor().position()
        if place is not None:
            cursor = QTextCursor(self.document())
            cursor.setPosition(place)
            box = self.cursorRect(cursor)
            painter = QPainter(self.viewport())
            painter.fillRect(box.adjusted(-1, 0, 1, 0), self._look.color("accent"))

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """See QWidget: what can be done with the word, above the usual."""
        cursor = self.textCursor()
        by_pointer = event.reason() == QContextMenuEvent.Reason.Mouse
        if by_pointer and not cursor.hasSelection():
            cursor = self.cursorForPosition(event.pos())
            self.setTextCursor(cursor)
        menu = self.createStandardContextMenu()
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for action in menu.actions():
            if action.objectName() in ("edit-undo", "edit-redo"):
                menu.removeAction(action)
        self.menu_opening.emit(menu, self._character_of(cursor.selectionStart()))
        menu.popup(event.globalPos() if by_pointer else self.viewport().mapToGlobal(self.cursorRect().bottomLeft()))

    # Keys that are not the editor's.

    def event(self, event: QEvent) -> bool:
        """See QWidget: undo and redo belong to the study."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and _is_history(event):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget."""
        if self._drag is not None and event.key() == Qt.Key.Key_Escape:
            self._drag = None
            self.viewport().update()
            return
        if _is_history(event):
            event.ignore()
            return
        super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """See QWidget."""
        super().focusOutEvent(event)
        self.left.emit()

    def minimumSizeHint(self) -> QSize:
        """Room for two lines."""
        return QSize(160, 2 * self.fontMetrics().lineSpacing() + 20)

    def sizeHint(self) -> QSize:
        """Room for four lines."""
        return QSize(360, 4 * self.fontMetrics().lineSpacing() + 20)

    # The document.

    def _insert(self, cursor: QTextCursor, runs: Iterable[Run]) -> None:
        plain = cursor.charFormat()
        plain.clearProperty(plain.Property.ObjectType)
        for run in runs:
            if isinstance(run, Cued):
                cursor.insertText(_OBJECT, tag_format(run))
            else:
                cursor.insertText(run.replace(_OBJECT, ""), plain)

    def _runs(self, start: int, end: int) -> Iterator[Run]:
        """What stands between two places of the cursor."""
        for place, run in self._placed():
            if isinstance(run, Cued):
                if start <= place < end:
                    yield run
                continue
            first, last = max(start - place, 0), end - place
            if last > 0 and (part := _slice(run, first, last)):
                yield part

    def _placed(self) -> Iterator[tuple[int, Run]]:
        """Everything in the document with the place of the cursor before it."""
        block = self.document().begin()
        while block.isValid():
            if block.blockNumber():
                yield block.position() - 1, "\n"
            part = block.begin()
            while not part.atEnd():
                fragment = part.fragment()
                yield from self._fragment(fragment)
                part += 1
            block = block.next()

    @staticmethod
    def _fragment(fragment: QTextFragment) -> Iterator[tuple[int, Run]]:
        place, text = fragment.position(), fragment.text()
        cued = cued_by(fragment.charFormat())
        if cued is None:
            yield place, text.replace(_LINE_BREAK, "\n").replace(_OBJECT, " ")
            return
        for number in range(fragment.length()):
            yield place + number, cued

    def _place_of(self, character: int) -> int:
        """The place of Qt's cursor before this character of the line, behind the tags that stand there."""
        passed = 0
        place = 0
        for start, run in self._placed():
            if isinstance(run, Cued):
                place = start + 1
                continue
            if passed + len(run) > character:
                return start + _length(run[: character - passed])
            passed += len(run)
            place = start + _length(run)
        return place

    def _character_of(self, place: int) -> int:
        """The character of the line before this place of Qt's cursor."""
        passed = 0
        for start, run in self._placed():
            if isinstance(run, Cued):
                continue
            if start + _length(run) > place:
                return passed + (len(_slice(run, 0, place - start)) if place > start else 0)
            passed += len(run)
        return passed

    def _word_under(self, point: QPointF) -> int:
        """The word under the pointer, the one after a gap; their number behind the last."""
        place = self.cursorForPosition(point.toPoint()).position()
        return word_near(self.line.text, self._character_of(place))

    def _sign(self, layer: str, spans: Sequence[tuple[int, int]], chosen: tuple[int, int] | None) -> None:
        placed = [(self._place_of(start), self._place_of_end(end), (start, end) == chosen) for start, end in spans]
        if self._signs.put(layer, self.document(), placed):
            self.setExtraSelections(self._signs.selections())
            self.viewport().update()

    @property
    def misspelt(self) -> list[str]:
        """The words under which there is a dotted line."""
        return self._signs.misspelt

    def _place_of_end(self, character: int) -> int:
        """The place of Qt's cursor behind the character before this one, before the tags that stand there."""
        if character <= 0:
            return self._place_of(character)
        return self._place_of(character - 1) + _length(self.line.text[character - 1 : character])

    def _places(self) -> list[tuple[int, Cued]]:
        return [(place, run) for place, run in self._placed() if isinstance(run, Cued)]

    def _flat(self) -> str:
        """The document with one letter for each tag."""
        return "".join(_OBJECT if isinstance(run, Cued) else run for _, run in self._placed())

    def _tag_at(self, point: QPointF) -> int | None:
        scrolled = QPointF(self.horizontalScrollBar().value(), self.verticalScrollBar().value())
        place = self.document().documentLayout().hitTest(point + scrolled, Qt.HitTestAccuracy.ExactHit)
        return place if any(place == other for other, _ in self._places()) else None

    def _tell_tag(self) -> None:
        place = self.textCursor().position()
        for other, cued in self._places():
            if other == place:
                announce(self.viewport(), tr("Cue: {words}", words=self._tag(cued).words))

    def _on_text_changed(self) -> None:
        if not self._loading:
            self.edited.emit()


def _is_history(event: QKeyEvent) -> bool:
    return event.matches(QKeySequence.StandardKey.Undo) or event.matches(QKeySequence.StandardKey.Redo)


def _length(text: str) -> int:
    """How many places of Qt's cursor a text takes."""
    return len(text.encode("utf-16-le")) // 2


def _slice(text: str, first: int, last: int) -> str:
    """The part of a text between two places of Qt's cursor."""
    return text.encode("utf-16-le")[2 * first : 2 * last].decode("utf-16-le", "ignore")


def _end_of_change(before: str, after: str) -> int:
    """Where in *after* the part ends that is not as *before*; its end where nothing has changed."""
    if before == after:
        return len(after)
    most = min(len(before), len(after))
    same = next((at for at in range(most) if before[-1 - at] != after[-1 - at]), most)
    return len(after) - same


def _read_runs(data: bytes) -> list[Run]:
    """Runs from what was copied; nothing where it cannot be read."""
    try:
        plain = json.loads(data)
        return [run if isinstance(run, str) else Cued(*run) for run in plain]
    except (ValueError, TypeError):
        return []
