"""The note of a node, for print: words before and after the move, and its annotation glyphs."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QTextCursor
from PySide6.QtWidgets import QComboBox, QFormLayout, QPlainTextEdit, QWidget

from studyboard.board.assessments import MOVE_GLYPHS, POSITION_GLYPHS, glyph_words, with_glyph
from studyboard.desk.look import Look
from studyboard.desk.rows_layout import RowsLayout
from studyboard.model.node import Node
from studyboard.translation import tr


class NoteEditor(QWidget):
    """Takes the note of one node.

    State: what is written, and the glyphs that are chosen.

    edited: the user has changed the words
    nags_chosen: another glyph was chosen; carries all of the node's
    left: the keyboard has gone elsewhere
    """

    edited = Signal()
    nags_chosen = Signal(object)
    left = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._loading = False
        self._nags: tuple[int, ...] = ()
        self._before = _NoteText(tr("Note before the move"), tr("Before the move: what leads up to it"))
        self._after = _NoteText(tr("Note"), tr("What should stand in print, not in the talk?"))
        for text in (self._before, self._after):
            text.textChanged.connect(self._on_edited)
            text.installEventFilter(self)
        self._move = _glyphs(tr("The move"), MOVE_GLYPHS)
        self._position = _glyphs(tr("The position"), POSITION_GLYPHS)
        self._move.activated.connect(self._on_chosen)
        self._position.activated.connect(self._on_chosen)
        glyphs = QWidget()
        rows = RowsLayout(glyphs)
        rows.add(self._move, stretch=True)
        rows.add(self._position, stretch=True)
        layout = QFormLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setVerticalSpacing(6)
        layout.addRow(tr("Before"), self._before)
        layout.addRow(tr("Note"), self._after)
        layout.addRow(tr("Glyphs"), glyphs)
        look.changed.connect(self._dress)
        self._dress()

    @property
    def before(self) -> str:
        """The note before the move."""
        return self._before.toPlainText()

    @property
    def after(self) -> str:
        """The note after the move."""
        return self._after.toPlainText()

    @property
    def after_field(self) -> QPlainTextEdit:
        """Where the note after the move is written."""
        return self._after

    @property
    def before_field(self) -> QPlainTextEdit:
        """Where the note before the move is written."""
        return self._before

    @property
    def move_glyph(self) -> QComboBox:
        """The choice of what is thought of the move."""
        return self._move

    @property
    def position_glyph(self) -> QComboBox:
        """The choice of what is thought of the position."""
        return self._position

    def select(self, field: str, start: int, end: int) -> None:
        """Put the keyboard into one of the two notes ("note_before", "note"), with these characters selected."""
        text = self._before if field == "note_before" else self._after
        cursor = text.textCursor()
        written = text.toPlainText()
        cursor.setPosition(_length(written[:start]))
        cursor.setPosition(_length(written[:end]), QTextCursor.MoveMode.KeepAnchor)
        text.setTextCursor(cursor)
        text.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_node(self, node: Node) -> None:
        """Show what is kept at this node; the cursor stays where nothing has changed."""
        self._loading = True
        for field, text in ((self._before, node.note_before), (self._after, node.note)):
            if field.toPlainText() != text:
                field.setPlainText(text)
        self._nags = node.nags
        for choice, glyphs in ((self._move, MOVE_GLYPHS), (self._position, POSITION_GLYPHS)):
            chosen = next((nag for nag in node.nags if nag in glyphs), 0)
            choice.setCurrentIndex(choice.findData(chosen))
            choice.setEnabled(choice is self._position or node.move is not None)
        self._before.setEnabled(node.move is not None)
        self._loading = False

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The keyboard leaving a field."""
        if event.type() == QEvent.Type.FocusOut:
            self.left.emit()
        return super().eventFilter(watched, event)

    def _on_edited(self) -> None:
        if not self._loading:
            self.edited.emit()

    def _on_chosen(self) -> None:
        nags = with_glyph(self._nags, int(self._move.currentData()), MOVE_GLYPHS)
        nags = with_glyph(nags, int(self._position.currentData()), POSITION_GLYPHS)
        if nags != self._nags:
            self._nags = nags
            self.nags_chosen.emit(nags)

    def _dress(self) -> None:
        self._before.setFont(self._look.spoken_font(1.0))
        self._after.setFont(self._look.spoken_font(1.0))
        self._before.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._before.setFixedHeight(self._before.fontMetrics().lineSpacing() + 18)


class _NoteText(QPlainTextEdit):
    """A field of plain words whose undo belongs to the study."""

    def __init__(self, name: str, placeholder: str) -> None:
        super().__init__()
        self.setUndoRedoEnabled(False)
        self.setTabChangesFocus(True)
        self.setAccessibleName(name)
        self.setPlaceholderText(placeholder)

    def event(self, event: QEvent) -> bool:
        """See QWidget."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and _is_history(event):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget."""
        if _is_history(event):
            event.ignore()
            return
        super().keyPressEvent(event)

    def minimumSizeHint(self) -> QSize:
        """Room for one line."""
        return QSize(120, self.fontMetrics().lineSpacing() + 16)


def _length(text: str) -> int:
    """How many places of Qt's cursor a text takes."""
    return len(text.encode("utf-16-le")) // 2


def _glyphs(name: str, glyphs: tuple[int, ...]) -> QComboBox:
    choice = QComboBox()
    choice.setAccessibleName(tr("{name}: annotation glyph", name=name))
    choice.setToolTip(tr("{name}, as a numeric annotation glyph of the PGN standard", name=name))
    choice.addItem(tr("{name}: no sign", name=name), 0)
    for nag in glyphs:
        choice.addItem(glyph_words(nag), nag)
    choice.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    choice.setMinimumContentsLength(10)
    return choice


def _is_history(event: QKeyEvent) -> bool:
    return event.matches(QKeySequence.StandardKey.Undo) or event.matches(QKeySequence.StandardKey.Redo)
