"""What helps in writing, for one desk: spelling, pronunciations, snippets, find and replace, the script as one text."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication, QMenu

from studyboard.desk.line_spelling import LineSpelling
from studyboard.desk.shared_keys import IN_SCRIPT, share_keys
from studyboard.desk.snippets import Snippets
from studyboard.desk.spelling import Spelling, put_on_top
from studyboard.desk.style_sheet import style_sheet
from studyboard.model.script import BeatKey, Part
from studyboard.translation import tr
from studyboard.writing.find_replace import Place, script_order, text_of
from studyboard.writing.snippets import Snippet
from studyboard.writing.written_words import word_at

if TYPE_CHECKING:
    from studyboard.desk.find_window import FindWindow
    from studyboard.desk.main_window import MainWindow
    from studyboard.desk.script_window import ScriptWindow


class ScriptTools(QObject):
    """Ties the helps to the panes of one desk; their windows are made when they are first asked for."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._session = window.session
        self._editor = window.line_editor
        self._editor.text.menu_opening.connect(self._line_menu)
        self.spelling = Spelling(window.session, window.settings, self)
        self.snippets = Snippets(window.session, window.settings, lambda: self.spelling.language, self)
        self.snippets.names_changed.connect(self._learn_names)
        self._find: FindWindow | None = None
        self._script: ScriptWindow | None = None
        self.line_spelling = LineSpelling(self._editor, self.spelling)
        self._learn_names()
        self.spelling.refresh()

    def stop(self) -> None:
        """End what goes on in the background, and close the windows."""
        for window in (self._script, self._find):
            if window is not None:
                window.close()
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

    # ---- snippets ---------------------------------------------------------------------------------------------------

    def offer_snippets(self) -> None:
        """Show the snippets at the cursor of the line."""
        self._editor.focus_line()
        menu = QMenu(self._window)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.snippets.menu(menu, self.insert_snippet, self.show_snippets)
        text = self._editor.text
        menu.popup(text.viewport().mapToGlobal(text.cursorRect().bottomLeft()))
        menu.setActiveAction(menu.actions()[0])

    def show_snippets(self) -> None:
        """Open the window in which snippets are written."""
        from studyboard.desk.snippets_window import SnippetsWindow

        window = SnippetsWindow(self.snippets, self._window)
        window.insert_wanted.connect(self.insert_snippet)
        window.exec()

    def insert_snippet(self, snippet: Snippet) -> None:
        """Put a snippet at the cursor, its places filled, and say what is not known."""
        filled = self.snippets.filled(snippet.text)
        self._editor.focus_line()
        self._editor.text.insert_words(filled.text)
        self._editor.flush()
        if filled.missing:
            places = ", ".join(f"{{{place}}}" for place in filled.missing)
            self._window.tell(tr("Not known and left as it is: {places}.", places=places))

    # ---- find and replace -------------------------------------------------------------------------------------------

    def find(self) -> None:
        """Open the window that searches the script, with what is selected in the line."""
        if self._find is None:
            from studyboard.desk.find_window import FindWindow

            self._find = FindWindow(self._session, self._window)
            self._find.flush_wanted.connect(self._editor.flush)
            self._find.shown.connect(self._show_found)
            self._find.found.connect(lambda _: self._mark_found())
            self._editor.line_shown.connect(lambda *_: self._mark_found())
        self._editor.flush()
        text = self._editor.text
        selected = text.textCursor().selectedText().replace("\ufffc", "").replace("\u2029", "\n")
        self._find.show()
        self._find.raise_()
        self._find.activateWindow()
        self._find.begin(selected, self._editor.key, text.character)

    def _show_found(self, place: Place | None) -> None:
        find = self._find
        if place is None or find is None:
            self._mark_found()
            return
        focus = QApplication.focusWidget()
        if place.field == "spoken":
            self.show_place(place.key, place.start, place.end)
        elif isinstance(place.key, int):
            self._window.write_stage()
            self._session.show(place.key)
            self._editor.focus_note()
            self._editor.note.select(place.field, place.start, place.end)
        self._mark_found(place)
        if find.isVisible() and focus is not None and find.isAncestorOf(focus):
            # One goes on with the keys of that window.
            find.activateWindow()
            focus.setFocus()

    def _mark_found(self, chosen: Place | None = None) -> None:
        places = self._find.places if self._find is not None and self._find.isVisible() else ()
        here = [place for place in places if place.key == self._editor.key and place.field == "spoken"]
        span = None if chosen is None else (chosen.start, chosen.end)
        self._editor.text.show_found([(place.start, place.end) for place in here], span)

    # ---- the script as one text -------------------------------------------------------------------------------------

    def show_script(self) -> None:
        """Open the window that shows the whole talk as one text."""
        self._editor.flush()
        if self._script is None:
            from studyboard.desk.script_window import ScriptWindow

            self._script = ScriptWindow(self._session, self._window.look, self.spelling)
            self._script.part_entered.connect(self._enter_part)
            self._script.undo_wanted.connect(self._window.commands.of("undo"))
            self._script.redo_wanted.connect(self._window.commands.of("redo"))
            share_keys(self._script, self._window.actions_by_name, IN_SCRIPT)
            self._window.look.changed.connect(self._dress_script)
        self._dress_script()
        self._script.show()
        self._script.raise_()
        self._script.activateWindow()

    def flush(self) -> None:
        """Store what is being typed in the window with the whole script."""
        if self._script is not None:
            self._script.flush()

    def _dress_script(self) -> None:
        if self._script is not None:
            self._script.setStyleSheet(style_sheet(self._window.look))

    def _enter_part(self, part: Part) -> None:
        self._window.lanes.choose_part(part)
        self._editor.edit_part(part)

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

    def _learn_names(self) -> None:
        self.spelling.learn_names(self.snippets.names)

    def _line_menu(self, menu: QMenu, character: int) -> None:
        word = word_at(self._editor.text.line.text, character)
        if word is None:
            return
        action = QAction(tr("How “{word}” is said…", word=word.text), menu)
        action.triggered.connect(self.pronounce)
        put_on_top(menu, [action])
