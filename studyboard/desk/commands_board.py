"""What the actions of the menu “Board” do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut

from studyboard.board.marking import copy_marks
from studyboard.desk.arrangement import Arrangement
from studyboard.desk.board_announce import announce
from studyboard.desk.board_words import position_words
from studyboard.desk.command_group import CommandGroup
from studyboard.model import stepping
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.board_only import BoardOnly
    from studyboard.desk.main_window import MainWindow

_TARGETS = "board/legal_targets"
_FURTHER = "board/further_facts"


class BoardCommands(CommandGroup):
    """One method for each action of that menu, named as it.

    State: whether the board is alone on the screen. Escape ends what the board shows because somebody asked, then
    brings the desk back.
    """

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._only: BoardOnly | None = None
        board = window.board_view
        board.show_targets(str(window.settings.value(_TARGETS, "true")) == "true")
        window.facts.show_further(str(window.settings.value(_FURTHER, "false")) == "true")
        self._escape = QShortcut(QKeySequence(Qt.Key.Key_Escape), window, self._leave)
        self._escape.setEnabled(False)
        board.answers.changed.connect(self._on_answers)

    def flip(self) -> None:
        """Show the board from the other side."""
        self._window.board_view.flip()

    def legal_targets(self) -> None:
        """Show where a held piece may go, or do not."""
        board = self._window.board_view
        board.show_targets(not board.targets_shown)
        self._window.settings.setValue(_TARGETS, "true" if board.targets_shown else "false")
        self._window.actions_by_name["legal_targets"].setChecked(board.targets_shown)

    def board_only(self) -> None:
        """The board alone on the whole screen, or the desk again."""
        if self._only is None:
            from studyboard.desk.board_only import BoardOnly

            self._only = BoardOnly(self._window)
        self._only.turn(not self._only.on)
        self._enable_escape()

    def further_facts(self) -> None:
        """Tell everything that can be counted beside the board, or only what presses."""
        facts = self._window.facts
        facts.show_further(not facts.further)
        self._window.settings.setValue(_FURTHER, "true" if facts.further else "false")
        self._window.actions_by_name["further_facts"].setChecked(facts.further)

    def ask_piece(self) -> None:
        """What the piece at the board's cursor does, or the one that moved last."""
        board = self._window.board_view
        board.ask_square(board.asked_square)

    def ask_move(self) -> None:
        """What the last move has changed."""
        if not self._window.board_view.ask_move():
            self._window.tell(tr("No move has led to this position yet."))

    def describe_position(self) -> None:
        """Tell the whole position, to eyes and ears, until the next sentence."""
        board = self._window.board_view
        words = position_words(self._session, self._session.node, board.shown_marks)
        self._window.notice.tell(words, stay=True)

    def marking(self) -> None:
        """Draw marks, or stop drawing them."""
        on = self._window.board_view.marking
        # The stage may change, which ends marking.
        self._window.write_stage()
        self._window.board_view.set_marking(not on)

    def number_marks(self) -> None:
        """Number all marks of this position, or take their numbers off."""
        self._window.board_view.pen.number_all()

    def copy_marks_on(self) -> None:
        """Draw these marks on the next move too, and go there."""
        there = stepping.forward(self._session.study, self._session.node)
        targets = () if there is None else (there,)
        if self._session.attempt(copy_marks, self._session.node, targets):
            self._session.show(there)
            self._window.tell(tr("The marks are drawn here too."))

    def copy_marks_here(self) -> None:
        """Draw the marks of the move before here too."""
        before = stepping.back(self._session.study, self._session.node)
        if before is None:
            self._window.tell(tr("There is no move before this position."))
        elif self._session.attempt(copy_marks, before, (self._session.node,)):
            self._window.tell(tr("The marks of the move before are drawn here too."))

    def copy_marks_along(self) -> None:
        """Draw these marks on all moves that follow in this line."""
        following = tuple(self._session.study.main_line(self._session.node))[1:]
        if self._session.attempt(copy_marks, self._session.node, following):
            count = len(following)
            moves = tr("1 move") if count == 1 else tr("{size} moves", size=count)
            self._window.tell(tr("The marks are drawn on {moves} more. Ctrl+Z takes them back.", moves=moves))

    def wipe_marks(self) -> None:
        """Wipe all marks of this position."""
        self._window.board_view.clear_marks()

    def _leave(self) -> None:
        if self._window.board_view.answers.shown:
            self._window.board_view.answers.end()
        elif self._only is not None and self._only.on:
            self.board_only()

    def _on_answers(self) -> None:
        answers = self._window.board_view.answers
        self._window.facts.show_answers(answers.shown)
        arrangement = self._window.centralWidget()
        if isinstance(arrangement, Arrangement):
            arrangement.show_answers(bool(answers.shown))
        self._enable_escape()
        announce(self._window.board_view, lambda: answers.words)

    def _enable_escape(self) -> None:
        alone = self._only is not None and self._only.on
        self._escape.setEnabled(alone or bool(self._window.board_view.answers.shown))
