"""Misspelt words of the line that is being written."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QMenu

from studyboard.desk.line_editor import LineEditor
from studyboard.desk.spelling import Spelling

#: How long the keyboard must rest before a line is checked (ms).
_REST = 150


class LineSpelling(QObject):
    """Marks the misspelt words of the line editor, but not the one that is being written.

    State: the key of the line that was checked last.
    """

    def __init__(self, editor: LineEditor, spelling: Spelling) -> None:
        super().__init__(editor)
        self._editor = editor
        self._spelling = spelling
        self._shown: object = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST)
        self._rest.timeout.connect(self.check)
        editor.line_shown.connect(self._line_shown)
        editor.text.cursorPositionChanged.connect(self._rest.start)
        editor.text.menu_opening.connect(self._offer)
        spelling.renewed.connect(self.check)

    def check(self) -> None:
        """Look at the line as it is written now."""
        text = self._editor.text
        line = text.line.text
        writing = text.character if text.hasFocus() and not text.textCursor().hasSelection() else -1
        wrong = self._spelling.unknown(line)
        text.underline_spelling([(word.start, word.end) for word in wrong if word.end != writing])

    def _line_shown(self, key: object, _: object) -> None:
        if key == self._shown:
            self._rest.start()
        else:
            self._shown = key
            self.check()

    def _offer(self, menu: QMenu, character: int) -> None:
        def put(start: int, end: int, by: str) -> None:
            self._editor.text.replace_characters(start, end, by)
            self._editor.flush()

        self._spelling.offer(menu, self._editor.text.line.text, character, put)
