"""The desk at the sizes of small screens and with large text: nothing is pushed off the screen."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QApplication, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeNode
from studyboard.model.script import SpokenLine
from tests.desk.text_size import text_scaled
from tests.sound import virtual_microphone

STAGES = ("write", "rehearse", "record")


def enter(desk: MainWindow, stage: str) -> None:
    """Show this stage and let the window settle."""
    getattr(desk, f"{stage}_stage")()
    settle()


@pytest.fixture(scope="module", autouse=True)
def _sound_before_qt_looks() -> None:
    """Qt looks for a sound server only once; the Record stage makes it look."""
    if not virtual_microphone.missing_packages():
        virtual_microphone.running()


def settle() -> None:
    """Let layouts come to rest."""
    for _ in range(5):
        QApplication.processEvents()


def place(desk: MainWindow, widget: QWidget) -> QRect:
    """Where a widget is in the window."""
    return QRect(widget.mapTo(desk, QPoint(0, 0)), widget.size())


@pytest.mark.parametrize(
    ("factor", "width", "height"), [(1.0, 1024, 700), (1.5, 1024, 700), (2.0, 1366, 768), (2.33, 1366, 768)]
)
@pytest.mark.parametrize("stage", STAGES)
def test_no_stage_asks_for_more_than_the_screen(
    desk: MainWindow, stage: str, factor: float, width: int, height: int
) -> None:
    with text_scaled(desk.look, factor):
        for shown in STAGES:
            enter(desk, shown)
        enter(desk, stage)
        least = desk.minimumSizeHint()
        assert least.width() <= width
        assert least.height() <= height
        desk.resize(width, height)
        settle()
        assert (desk.width(), desk.height()) == (width, height)


@pytest.mark.parametrize(("factor", "width", "height"), [(1.0, 1024, 700), (2.0, 1024, 768)])
@pytest.mark.parametrize("stage", STAGES)
def test_the_stages_of_the_day_and_the_ruler_stay_on_the_screen(
    desk: MainWindow, stage: str, factor: float, width: int, height: int
) -> None:
    with text_scaled(desk.look, factor):
        enter(desk, stage)
        desk.resize(width, height)
        settle()
        buttons = [b for b in desk.top_bar.findChildren(QPushButton) if b.isVisible()]
        assert [b.text() for b in buttons] == ["Write", "Rehearse", "Record", "Deliver"]
        for widget in (*buttons, desk.ruler, desk.board_view):
            assert desk.rect().contains(place(desk, widget))
        for button in buttons:
            assert button.width() >= button.sizeHint().width()


def test_a_long_title_is_elided_and_told_whole(qtbot: QtBot, desk: MainWindow) -> None:
    with text_scaled(desk.look, 2.0):
        desk.resize(1024, 768)
        settle()
        title = desk.top_bar._title
        assert title.text() == "Pell, Imani – Garvey, Anton, Sail Loft Evening League"
        assert title.shown_text.endswith("…")
        assert title.shown_text.startswith("Pell")


def test_what_is_written_can_be_reached_where_the_line_has_to_scroll(qtbot: QtBot, desk: MainWindow) -> None:
    with text_scaled(desk.look, 2.0):
        desk.resize(1024, 740)
        desk.line_editor.intended.setFocus(Qt.FocusReason.TabFocusReason)
        settle()
        assert not desk.line_editor.intended.visibleRegion().isEmpty()


def test_the_board_is_as_high_as_its_card_lets_it_while_names_fit_beside_it(desk: MainWindow) -> None:
    desk.resize(1366, 768)
    settle()
    board, marks, facts = (place(desk, w) for w in (desk.board_view, desk.mark_palette, desk.facts))
    assert not board.intersects(marks)
    assert not board.intersects(facts)
    assert not marks.intersects(facts)
    assert board.width() >= board.height() - 1


def test_a_notice_does_not_move_the_board(qtbot: QtBot, desk: MainWindow) -> None:
    for stage in STAGES:
        enter(desk, stage)
        desk.notice.hide()
        settle()
        before = [place(desk, w) for w in (desk.board_view, desk.ruler, desk.top_bar)]
        desk.tell("The line was stored. " * 6)
        settle()
        assert desk.notice.isVisible()
        assert [place(desk, w) for w in (desk.board_view, desk.ruler, desk.top_bar)] == before


def test_a_notice_covers_neither_board_nor_ruler_at_any_size(qtbot: QtBot, desk: MainWindow) -> None:
    desk.notice.tell("The study was recovered. " * 5, stay=True)
    for size in ((1366, 768), (1024, 700), (1920, 1080)):
        desk.resize(*size)
        settle()
        notice = place(desk, desk.notice)
        assert desk.rect().contains(notice)
        assert not notice.intersects(place(desk, desk.board_view))
        assert not notice.intersects(place(desk, desk.ruler))
        assert notice.height() >= desk.notice.heightForWidth(notice.width())


def test_a_notice_leaves_the_keyboard_where_it_is_and_escape_sends_it_away(qtbot: QtBot, desk: MainWindow) -> None:
    desk.lanes.setFocus()
    desk.tell("Going on.")
    assert QApplication.focusWidget() is desk.lanes
    desk.notice._close.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClick(desk.notice._close, Qt.Key.Key_Escape)
    assert desk.notice.isHidden()


def test_a_notice_is_reached_by_tab(qtbot: QtBot, desk: MainWindow) -> None:
    desk.tell("Going on.")
    at: QWidget | None = desk.lanes
    reached = []
    for _ in range(200):
        at = at.nextInFocusChain() if at is not None else None
        reached.append(at)
    assert desk.notice._close in reached
    assert desk.notice._close.focusPolicy() & Qt.FocusPolicy.TabFocus


def test_a_notice_that_is_being_read_waits(qtbot: QtBot, desk: MainWindow) -> None:
    desk.tell("Going on.")
    assert desk.notice._timer.isActive()
    desk.notice._close.setFocus()
    desk.notice._timer.timeout.emit()
    assert desk.notice.isVisible()
    desk.lanes.setFocus()
    desk.notice._timer.timeout.emit()
    assert desk.notice.isHidden()


def test_what_is_found_in_a_line_does_not_push_its_foot_out_of_view(qtbot: QtBot, desk: MainWindow) -> None:
    desk.resize(1366, 768)
    settle()
    node = desk.session.study.node(desk.session.study.root).children[0]
    desk.session.show(node)
    spoken = SpokenLine("White has a rook on g7 and Black is a queen up.")
    desk.session.do(ChangeNode(node, "spoken", spoken))
    qtbot.waitUntil(lambda: desk.proofreading.bar.isVisible(), timeout=15_000)
    settle()
    for widget in (desk.proofreading.bar, desk.line_editor.intended, desk.line_editor.text):
        assert widget.visibleRegion().boundingRect().size() == widget.size()


def test_the_board_is_as_large_as_before_when_a_query_has_gone(qtbot: QtBot, desk: MainWindow) -> None:
    desk.resize(1366, 768)
    settle()
    node = desk.session.study.node(desk.session.study.root).children[0]
    desk.session.show(node)
    settle()
    size = desk.board_view.size()
    spoken = SpokenLine("White has a rook on g7 and Black is a queen up.")
    desk.session.do(ChangeNode(node, "spoken", spoken))
    qtbot.waitUntil(lambda: desk.proofreading.bar.isVisible(), timeout=15_000)
    settle()
    assert desk.board_view.height() < size.height()
    dividers = desk.dividers()
    desk.session.do(ChangeNode(node, "spoken", SpokenLine("The king's pawn.")))
    qtbot.waitUntil(lambda: not desk.proofreading.bar.isVisible(), timeout=15_000)
    settle()
    assert desk.board_view.size() == size
    desk.set_dividers(dividers)
    settle()
    assert desk.board_view.size() == size
