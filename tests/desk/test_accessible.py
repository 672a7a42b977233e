"""What assistive programs find in the windows: roles, names, and the parts of whatever paints itself."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from pathlib import Path

import chess
import pytest
from PySide6.QtCore import QPoint, QSettings, Qt
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.model.script import Part
from tests.desk.windows import WINDOWS, opened
from tests.sound import virtual_microphone

#: What can be operated: each of these must say what it is.
OPERATED = frozenset(
    {
        QAccessible.Role.Button,
        QAccessible.Role.PushButton,
        QAccessible.Role.CheckBox,
        QAccessible.Role.RadioButton,
        QAccessible.Role.ComboBox,
        QAccessible.Role.EditableText,
        QAccessible.Role.SpinBox,
        QAccessible.Role.Slider,
        QAccessible.Role.List,
        QAccessible.Role.Table,
        QAccessible.Role.Tree,
        QAccessible.Role.MenuItem,
        QAccessible.Role.ButtonMenu,
        QAccessible.Role.ProgressBar,
        QAccessible.Role.Dialog,
        QAccessible.Role.Window,
        QAccessible.Role.Graphic,
    }
)
#: Roles that say nothing: whatever can have the keyboard must have another one.
NOTHING = frozenset({QAccessible.Role.Client, QAccessible.Role.NoRole, QAccessible.Role.Pane})


@pytest.fixture(autouse=True, scope="module")
def _microphone() -> None:
    """Qt looks for a sound server only once; the windows that need one must not come first."""
    if not virtual_microphone.missing_packages():
        virtual_microphone.running()


def tree(of: QAccessibleInterface, depth: int = 0) -> Iterator[QAccessibleInterface]:
    """An interface and all below it that can be seen."""
    yield of
    assert depth < 30
    for index in range(of.childCount()):
        child = of.child(index)
        if child is not None and not child.state().invisible:
            yield from tree(child, depth + 1)


def interface(widget: QWidget) -> QAccessibleInterface:
    found = QAccessible.queryAccessibleInterface(widget)
    assert found is not None
    return found


def told(of: QAccessibleInterface) -> str:
    return of.text(QAccessible.Text.Name)


def where(of: QAccessibleInterface) -> str:
    thing = of.object()
    return f"{type(thing).__name__} {thing.objectName() if thing else ''} below {type(thing.parent()).__name__}"


@pytest.mark.parametrize("name", WINDOWS)
def test_whatever_can_be_operated_has_a_role_and_a_name(
    qtbot: QtBot, desk: MainWindow, still_look: Look, settings: QSettings, tmp_path: Path, name: str
) -> None:
    nameless: list[str] = []
    seen = 0
    with opened(name, desk, tmp_path) as window:
        for one in tree(interface(window)):
            seen += 1
            if one.role() in OPERATED and not told(one).strip():
                nameless.append(f"{one.role().name}: {where(one)}")
            if one.state().focusable and one.role() in NOTHING:
                nameless.append(f"no role: {where(one)}")
    assert seen > 3
    assert nameless == []


def test_the_squares_of_the_board_are_found_one_by_one(desk: MainWindow) -> None:
    desk.session.show(desk.session.study.root)
    board = interface(desk.board_view)
    assert board.role() == QAccessible.Role.Graphic
    squares = [board.child(index) for index in range(64)]
    assert [told(squares[index]) for index in (0, 4, 32, 63)] == [
        "black rook on a8",
        "black king on e8",
        "a4, empty",
        "white rook on h1",
    ]
    e4 = desk.board_view.mapToGlobal(desk.board_view.place.centre(chess.E4).toPoint())
    assert told(board.childAt(e4.x(), e4.y())) == "e4, empty"
    assert board.indexOfChild(squares[40]) == 40
    assert squares[40].parent().object() is desk.board_view
    assert squares[40].rect().contains(desk.board_view.mapToGlobal(desk.board_view.place.centre(chess.A3).toPoint()))


def test_a_square_tells_what_is_on_it_now(desk: MainWindow) -> None:
    desk.session.show(desk.session.study.root)
    e4 = interface(desk.board_view).child(36)
    assert told(e4) == "e4, empty"
    desk.session.show(next(iter(list(desk.session.study.main_line())[1:2])))
    assert told(e4) == "white pawn on e4"


def test_the_square_at_the_keyboards_cursor_has_the_focus(desk: MainWindow) -> None:
    desk.board_view.setFocus()
    QTest.keyClick(desk.board_view, Qt.Key.Key_Return)
    board = interface(desk.board_view)
    focused = [told(board.child(index)) for index in range(64) if board.child(index).state().focused]
    assert len(focused) == 1


def test_the_rows_of_the_lanes_are_found_one_by_one(desk: MainWindow) -> None:
    lanes = interface(desk.lanes)
    assert lanes.role() == QAccessible.Role.List
    first = lanes.child(0)
    assert first.role() == QAccessible.Role.ListItem
    assert told(first).startswith("Greeting. Good evening")
    study = desk.session.study
    assert len(desk.lanes._canvas.layout.cells) <= lanes.childCount()
    desk.lanes.choose_part(Part.GREETING)
    assert first.state().selected
    node = next(iter(list(study.main_line())[1:2]))
    desk.lanes.go_to(node)
    assert not first.state().selected
    rect = desk.lanes.row_rect(node)
    assert rect is not None
    at = desk.lanes.viewport().mapToGlobal(rect.center())
    assert "white pawn from e2 to e4" in told(lanes.childAt(at.x(), at.y()))


def test_folded_rows_are_not_found(desk: MainWindow) -> None:
    lanes = interface(desk.lanes)
    before = lanes.childCount()
    desk.lanes.fold_all()
    assert lanes.childCount() < before
    desk.lanes.unfold_all()
    assert lanes.childCount() == before


def test_the_beats_of_the_ruler_are_found_one_by_one(desk: MainWindow, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: desk.ruler.beats > 0)
    ruler = interface(desk.ruler)
    assert ruler.role() == QAccessible.Role.List
    assert ruler.childCount() == desk.ruler.beats
    second = ruler.child(1)
    assert told(second).startswith("Beat 2 of ")
    desk.ruler.choose_beat(1)
    assert second.state().selected
    at = desk.ruler.mapToGlobal(desk.ruler.block_rect(1).center())
    assert told(ruler.childAt(at.x(), at.y())) == told(second)


def test_parts_outlive_the_rubbish_collector_and_changes_of_the_study(desk: MainWindow) -> None:
    lanes = interface(desk.lanes)
    last = lanes.child(len(desk.lanes._canvas.layout.cells))
    gc.collect()
    desk.session.show(list(desk.session.study.main_line())[2])
    assert told(last)
    QTest.keyClick(desk.lanes, Qt.Key.Key_Delete, Qt.KeyboardModifier.ControlModifier)
    gc.collect()
    assert lanes.childCount() < 20
    assert told(last) == ""
    assert last.state().invisible
    assert last.rect().isEmpty()


def test_a_key_tells_the_whole_position(desk: MainWindow) -> None:
    desk.session.show(desk.session.study.root)
    desk.lanes.setFocus()
    QTest.keyClick(desk.lanes, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    words = interface(desk.notice).text(QAccessible.Text.Description)
    assert desk.notice.isVisible()
    assert words.startswith("White: king e1, queen d1, rooks a1 and h1")
    assert words.endswith("White to move.")
    assert desk.lanes.hasFocus()


def test_lanes_and_ruler_tell_what_has_become_current(desk: MainWindow) -> None:
    QAccessible.setActive(True)
    try:
        desk.lanes.go_to(list(desk.session.study.main_line())[2])
        for widget in (desk.lanes, desk.ruler):
            assert "pawn from" in interface(widget).text(QAccessible.Text.Description)
    finally:
        QAccessible.setActive(False)


def test_nothing_has_the_focus_twice(desk: MainWindow) -> None:
    desk.lanes.setFocus()
    QApplication.processEvents()
    inside = [one for one in tree(interface(desk.lanes)) if one.state().focused]
    assert len(inside) <= 2
    assert interface(desk.lanes).rect().topLeft() == desk.lanes.mapToGlobal(QPoint(0, 0))
