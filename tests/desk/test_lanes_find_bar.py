"""Finding moves, words and positions in the lanes."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.lanes_find_bar import FindBar
from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeNode
from studyboard.model.script import Part, SpokenLine
from studyboard.notation.finding import Sought


@pytest.fixture
def bar(qtbot: QtBot, desk: MainWindow) -> FindBar:
    """The open bar; the keyboard was in the lanes before, at the start position."""
    desk.lanes.setFocus()
    desk.lanes.go_to(desk.session.study.root)
    qtbot.keyClick(desk, Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
    assert desk.find_bar.isVisible()
    assert desk.find_bar.field.hasFocus()
    return desk.find_bar


def test_return_goes_from_match_to_match_and_round_again(qtbot: QtBot, desk: MainWindow, bar: FindBar) -> None:
    qtbot.keyClicks(bar.field, "knight f6")
    count = len(bar.matches)
    assert count > 1
    assert bar.count.text() == f"{count} found"
    assert desk.session.node == desk.session.study.root, "typing moves nothing"
    seen = []
    for place in range(count):
        qtbot.keyClick(bar.field, Qt.Key.Key_Return)
        assert bar.count.text() == f"{place + 1} of {count}"
        assert desk.lanes.current == bar.matches[place].key
        assert bar.field.hasFocus()
        seen.append(desk.lanes.current)
    assert len(set(seen)) == count
    qtbot.keyClick(bar.field, Qt.Key.Key_Return)
    assert bar.count.text() == f"1 of {count}"
    qtbot.keyClick(bar.field, Qt.Key.Key_Return, Qt.KeyboardModifier.ShiftModifier)
    assert bar.count.text() == f"{count} of {count}"


def test_matches_are_marked_in_the_lanes_until_the_bar_is_closed(qtbot: QtBot, desk: MainWindow, bar: FindBar) -> None:
    first = next(desk.session.study.main_line(desk.session.study.nodes[0].children[0]))
    desk.lanes.go_to(desk.session.study.main_line().__next__())
    rect = desk.lanes.row_rect(first)
    assert rect is not None
    before = desk.lanes.viewport().grab(rect).toImage()
    bar.field.setText(desk.session.positions.san(first))
    assert first in {match.key for match in bar.matches}
    assert desk.lanes.viewport().grab(rect).toImage() != before
    qtbot.keyClick(bar.field, Qt.Key.Key_Escape)
    assert not bar.isVisible()
    assert desk.lanes.hasFocus()
    rect = desk.lanes.row_rect(first)
    assert rect is not None
    assert desk.lanes.viewport().grab(rect).toImage() == before


def test_the_next_match_is_sought_from_where_one_stands(qtbot: QtBot, desk: MainWindow, bar: FindBar) -> None:
    bar.field.setText("knight f6")
    keys = [match.key for match in bar.matches]
    desk.lanes.setFocus()
    end = list(desk.session.study.main_line())[-1]
    desk.lanes.go_to(end)
    qtbot.keyClick(desk, Qt.Key.Key_F3)
    assert desk.lanes.current == keys[0]
    qtbot.keyClick(desk, Qt.Key.Key_F3, Qt.KeyboardModifier.ShiftModifier)
    assert desk.lanes.current == keys[-1]


def test_what_was_found_in_a_folded_side_line_is_unfolded(qtbot: QtBot, desk: MainWindow, bar: FindBar) -> None:
    study = desk.session.study
    side = next(node.children[1] for node in study.nodes.values() if len(node.children) > 1)
    desk.lanes.fold_all()
    assert desk.lanes.row_rect(side) is None
    number = desk.session.positions.board(study.nodes[side].parent or 0).fullmove_number
    dots = "." if desk.session.positions.board(study.nodes[side].parent or 0).turn else "..."
    bar.choose_kind(Sought.MOVE)
    bar.field.setText(f"{number}{dots} {desk.session.positions.san(side)}")
    while desk.lanes.current != side:
        qtbot.keyClick(bar.field, Qt.Key.Key_Return)
    assert desk.lanes.row_rect(side) is not None


def test_words_of_the_greeting_are_found(qtbot: QtBot, desk: MainWindow, bar: FindBar) -> None:
    words = desk.session.study.line(Part.GREETING).spoken.text.split()
    bar.field.setText(" ".join(words[:4]).upper())
    qtbot.keyClick(bar.field, Qt.Key.Key_Return)
    assert desk.lanes.current is Part.GREETING


def test_words_that_are_written_later_are_found_then(qtbot: QtBot, desk: MainWindow, bar: FindBar) -> None:
    bar.field.setText("a lighthouse keeper")
    assert bar.count.text() == "not found"
    with qtbot.waitSignal(desk.session.planned):
        desk.session.do(ChangeNode(desk.session.study.root, "spoken", SpokenLine("Said a lighthouse keeper.")))
    assert [match.key for match in bar.matches] == [desk.session.study.root]


def test_the_position_on_the_board_is_sought_elsewhere(qtbot: QtBot, desk: MainWindow) -> None:
    desk.lanes.go_to(list(desk.session.study.main_line())[4])
    qtbot.keyClick(desk, Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert desk.find_bar.isVisible()
    assert desk.find_bar.count.text().startswith("1 of")
    assert "nowhere else" in desk.notice.text


def test_what_is_no_position_is_told(desk: MainWindow, bar: FindBar) -> None:
    bar.choose_kind(Sought.POSITION)
    bar.field.setText("the bishop")
    assert bar.count.text() == "no position"
    assert "One looks like" in bar.count.toolTip()


def test_find_next_with_nothing_sought_opens_the_bar(qtbot: QtBot, desk: MainWindow) -> None:
    qtbot.keyClick(desk, Qt.Key.Key_F3)
    assert desk.find_bar.field.hasFocus()


def test_in_a_narrow_pane_the_field_keeps_its_room(qtbot: QtBot, desk: MainWindow, bar: FindBar) -> None:
    line = bar.fontMetrics().height()
    wide = bar.width()
    assert bar.kind.isVisible()
    bar.resize(16 * line, bar.height())
    assert not bar.kind.isVisible()
    qtbot.waitUntil(lambda: bar.field.width() > 4 * line)
    bar.resize(wide, bar.height())
    assert bar.kind.isVisible()
