"""What helps in writing, for one desk: spelling, pronunciations, snippets, find and replace, the script as one text."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from studyboard.desk.line_spelling import LineSpelling
from studyboard.desk.spelling import Spelling, put_on_top
from studyboard.model.script import BeatKey, Part
from studyboard.translation import tr
from studyboard.writing.find_replace import script_order, text_of
from studyboard.writing.written_words import word_at

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow


class ScriptTools(QObject):
    """Ties the helps to the panes of one desk; their windows are made when they are first asked for."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._session = window.session
        self._editor = window.line_editor
        self._editor.text.menu_opening.connect(self._line_menu)
        self.spelling = Spelling(window.session, window.settings, self)
        self.line_spelling = LineSpelling(self._editor, self.spelling)
        self.spelling.refresh()

    def stop(self) -> None:
        """End what goes on in the background."""
        self.spelling.stop()

    # ---- spelling ---------------------------------------------------------------------------------------------------

    def show_spelling(self) -> None:
        """Open the dialog about spelling."""
        from studyboard.desk.spelling_dialog import SpellingDialog

        SpellingDialog(self._session, self.spelling, self._window).exec()

    def next_misspelling(self) -> None:
        """Select the next misspelt word: of this line behind the cursor, then of the talk."""
        self._editor.flush()
        if not self.spelling.ready:
            reason = self.spelling.problem or tr("Spelling is turned off: Words › Spelling turns it on.")
            self._window.tell(reason)
            return
        order = list(script_order(self._session.study))
        here = order.index(self._editor.key) if self._editor.key in order else 0
        keys = [*order[here:], *order[:here], order[here]]
        for number, key in enumerate(keys):
            after = self._editor.text.character if number == 0 else -1
            for word in self.spelling.unknown(text_of(self._session.study, key)):
                if word.start >= after:
                    self.show_place(key, word.start, word.end)
                    return
        self._window.tell(tr("No word of the script is misspelt."))

    # ---- pronunciations ---------------------------------------------------------------------------------------------

    def pronounce(self) -> None:
        """Ask how the word at the cursor is said."""
        from studyboard.desk.pronunciation_dialog import PronunciationDialog

        self._editor.flush()
        text = self._editor.text
        selected = text.textCursor().selectedText().replace("\ufffc", "").strip()
        word = word_at(text.line.text, text.character)
        known = "" if word is None else word.text.removesuffix("'s").removesuffix("’s")
        PronunciationDialog(self._session, selected or known, self._window).exec()

    # ---- within -----------------------------------------------------------------------------------------------------

    def show_place(self, key: BeatKey, start: int, end: int) -> None:
        """Show a line of the script with these characters selected."""
        if isinstance(key, Part):
            if self._editor.key != key:
                self._window.edit_part(key)
        else:
            self._window.write_stage()
            self._session.show(key)
            if self._editor.key != key:
                self._editor.edit_node()
        self._editor.focus_line()
        self._editor.text.select_characters(start, end)

    def _line_menu(self, menu: QMenu, character: int) -> None:
        word = word_at(self._editor.text.line.text, character)
        if word is None:
            return
        action = QAction(tr("How “{word}” is said…", word=word.text), menu)
        action.triggered.connect(self.pronounce)
        put_on_top(menu, [action])
