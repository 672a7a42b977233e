"""Going back and forth in everything that was done."""

from __future__ import annotations

import chess
import pytest

from studyboard.desk.history_window import HistoryWindow
from studyboard.model.edits import ChangeSlot


@pytest.fixture
def history(qtbot, desk):
    desk.session.play(chess.Move.from_uci("d2d4"))
    desk.session.play(chess.Move.from_uci("d7d5"))
    desk.session.do(ChangeSlot(300.0))
    window = HistoryWindow(desk.session, desk)
    qtbot.addWidget(window)
    window.show()
    return window


def rows(window):
    return [window.list.item(row).text() for row in range(window.list.count())]


def test_every_edit_is_told_in_words_the_newest_first(history):
    told = rows(history)
    assert told[0].startswith("Set the slot")
    assert told[0].endswith("now")
    assert told[1].startswith("Add a move")
    assert told[-1].startswith("As it was at first")


def test_choosing_an_edit_makes_the_study_what_it_was_right_after_it(desk, history):
    nodes = len(desk.session.study.nodes)
    history.list.itemActivated.emit(history.list.item(2))
    assert len(desk.session.study.nodes) == nodes - 1
    assert rows(history)[1].endswith("taken back")
    assert rows(history)[2].endswith("now")


def test_what_was_taken_back_can_be_done_again(desk, history):
    history.list.itemActivated.emit(history.list.item(3))
    assert desk.session.study.slot != 300.0
    history.list.itemActivated.emit(history.list.item(0))
    assert desk.session.study.slot == 300.0
    assert rows(history)[0].endswith("now")
