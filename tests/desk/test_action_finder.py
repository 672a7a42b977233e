"""Finding an action by typing what it does."""

from __future__ import annotations

import chess
import pytest
from PySide6.QtCore import Qt

from studyboard.desk.action_finder import ActionFinder, answering, plain_label
from studyboard.desk.actions import ACTIONS


@pytest.fixture
def finder(qtbot, desk):
    finder = ActionFinder(desk.actions_by_name, desk)
    qtbot.addWidget(finder)
    finder.show()
    finder.field.setFocus()
    return finder


@pytest.mark.parametrize(
    ("typed", "first"),
    [("flip", "flip"), ("lock length", "lock_length"), ("FEN", "copy_fen"), ("dark stage", None), ("undo", "undo")],
)
def test_what_is_typed_is_looked_for_in_labels_and_helps(typed, first):
    found = answering(typed)
    assert (found[0].name if found else None) == first


def test_nothing_typed_lists_everything():
    assert answering("") == list(ACTIONS)


def test_return_chooses_the_first_answer(qtbot, finder):
    qtbot.keyClicks(finder.field, "flip the board")
    qtbot.keyClick(finder.field, Qt.Key.Key_Return)
    assert finder.chosen is not None
    assert finder.chosen.text() == "&Flip the board"


def test_the_arrows_go_through_the_answers_while_one_types(qtbot, finder):
    qtbot.keyClicks(finder.field, "text")
    names = [finder.list.item(row).data(Qt.ItemDataRole.UserRole) for row in range(finder.list.count())]
    qtbot.keyClick(finder.field, Qt.Key.Key_Down)
    qtbot.keyClick(finder.field, Qt.Key.Key_Return)
    assert finder.chosen.toolTip() == next(spec.help for spec in ACTIONS if spec.name == names[1])


def test_what_makes_no_sense_now_is_shown_but_cannot_be_chosen(qtbot, desk, finder):
    assert desk.session.node == desk.session.study.root
    qtbot.keyClicks(finder.field, "delete branch")
    assert finder.list.count() >= 1
    qtbot.keyClick(finder.field, Qt.Key.Key_Return)
    assert finder.chosen is None or finder.chosen.isEnabled()


def test_the_action_is_done_when_the_finder_has_closed(qtbot, desk):
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication

    def choose() -> None:
        dialog = QApplication.activeModalWidget()
        qtbot.keyClicks(dialog.field, "forward main move")
        qtbot.keyClick(dialog.field, Qt.Key.Key_Return)

    QTimer.singleShot(0, choose)
    desk.actions_by_name["find_action"].trigger()
    assert desk.session.board != chess.Board()


def test_labels_are_shown_without_the_signs_of_menus():
    assert all("&" not in plain_label(spec) and "…" not in plain_label(spec) for spec in ACTIONS)


def test_every_pane_and_every_action_can_be_explained(desk):
    from studyboard.desk.explanations import explain

    explain(desk)
    panes = (desk.lanes, desk.board_view, desk.facts, desk.mark_palette, desk.line_editor, desk.ruler, desk.top_bar)
    assert all(pane.whatsThis() for pane in panes)
    assert all(action.whatsThis() for action in desk.actions_by_name.values())
