"""Cues put into the line by playing their moves while the cursor is in it."""

from __future__ import annotations

import chess
from PySide6.QtCore import QObject, QSettings
from PySide6.QtWidgets import QApplication, QWidget

from studyboard.desk.line_cues import Cued
from studyboard.desk.line_editor import LineEditor
from studyboard.desk.session import Session
from studyboard.model.cueing import play_at_word
from studyboard.model.errors import EditRefusedError
from studyboard.model.script import Part, words
from studyboard.notation.labels import move_label
from studyboard.translation import tr

_KEY = "script/played_cues"


class PlayedCues(QObject):
    """Stands between the board and the session: a move that is played from inside a line becomes a cue of it.

    State: whether that is wanted, and whether the cursor is in the line: the keyboard is there, or it was there before
    the board took it for the move.
    """

    def __init__(self, session: Session, editor: LineEditor, board: QWidget, settings: QSettings) -> None:
        super().__init__(editor)
        self._session = session
        self._editor = editor
        self._board = board
        self._settings = settings
        self._writing = False
        self._on = str(settings.value(_KEY, "true")) == "true"
        session.before_playing = self._play
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self._follow_focus)

    @property
    def on(self) -> bool:
        """True where moves that are played from inside a line become its cues."""
        return self._on

    def turn(self, on: bool) -> None:
        """Let played moves become cues, or only step; it is remembered."""
        self._on = on
        self._settings.setValue(_KEY, "true" if on else "false")
        self._editor.text.hold_caret(on and self._writing)

    def _follow_focus(self, before: QWidget | None, now: QWidget | None) -> None:
        if now is None:
            return
        text = self._editor.text
        at_board = now is self._board or self._board.isAncestorOf(now)
        self._writing = now is text or (self._writing and at_board)
        text.hold_caret(self._on and self._writing and at_board)

    def _play(self, move: chess.Move) -> bool:
        """Play the move at the cursor; False where it should be played as usual."""
        editor, session = self._editor, self._session
        if not self._on or not self._writing or isinstance(editor.key, Part) or editor.key != session.node:
            return False
        line, word = editor.text.line, editor.text.word
        if not line:
            return False
        editor.flush()
        try:
            edit, child = play_at_word(session.study, session.node, move, line, word)
        except EditRefusedError as reason:
            editor.told.emit(str(reason))
            return False
        if not session.do(edit):
            return True
        session.show(child)
        editor.put_cursor_behind(Cued(node=child))
        said = words(line.text)
        label = move_label(session.positions, child)
        if word < len(said):
            sentence = tr("{label} is played at “{word}”. Ctrl+Z takes it back.", label=label, word=said[word])
        else:
            sentence = tr("{label} is played after the last word. Ctrl+Z takes it back.", label=label)
        editor.told.emit(sentence)
        return True
