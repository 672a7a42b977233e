"""With text at 200 % on a small laptop nothing of any window is cut or out of reach."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, QSize
from PySide6.QtWidgets import QAbstractButton, QAbstractScrollArea, QApplication, QLabel, QMenu, QWidget
from pytestqt.qtbot import QtBot

from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.main_window import MainWindow
from tests.desk.text_size import text_scaled
from tests.desk.windows import WINDOWS, opened
from tests.sound import virtual_microphone

SCREEN = QSize(1366, 768)


@pytest.fixture(autouse=True, scope="module")
def _microphone() -> None:
    """Qt looks for a sound server only once; the windows that need one must not come first."""
    if not virtual_microphone.missing_packages():
        virtual_microphone.running()


def scrolled(widget: QWidget, window: QWidget) -> bool:
    """True where it lies in something that scrolls to it."""
    above = widget.parentWidget()
    while above is not None and above is not window:
        if isinstance(above, QAbstractScrollArea):
            return True
        above = above.parentWidget()
    return False


def cut(window: QWidget) -> list[str]:
    """Labels and buttons that are smaller than their words, or lie outside the window."""
    found = []
    for one in window.findChildren(QWidget):
        if not one.isVisible() or one.window() is not window or not isinstance(one, QLabel | QAbstractButton):
            continue
        if isinstance(one, ElidedLabel) or not one.text():
            continue
        need = one.minimumSizeHint()
        if isinstance(one, QLabel) and one.wordWrap():
            need = QSize(0, one.heightForWidth(one.width()))
        if one.width() + 1 < need.width() or one.height() + 2 < need.height():
            found.append(f"{type(one).__name__} “{one.text()[:40]}” {one.size().toTuple()} needs {need.toTuple()}")
        place = QRect(one.mapTo(window, QPoint(0, 0)), one.size())
        if not scrolled(one, window) and not window.rect().contains(place):
            found.append(f"{type(one).__name__} “{one.text()[:40]}” lies outside at {place.getRect()}")
    return found


@pytest.mark.parametrize("name", WINDOWS)
def test_nothing_is_cut_at_200_percent(qtbot: QtBot, desk: MainWindow, tmp_path: Path, name: str) -> None:
    with text_scaled(desk.look, 2.0):
        desk.resize(SCREEN)
        with opened(name, desk, tmp_path) as window:
            size = window.size().boundedTo(SCREEN)
            window.resize(size)
            for _ in range(5):
                QApplication.processEvents()
            assert cut(window) == []
            assert window.width() <= SCREEN.width(), "wider than the screen"
            assert window.height() <= SCREEN.height(), "higher than the screen"


def test_every_line_of_every_menu_can_be_reached_at_200_percent(desk: MainWindow) -> None:
    """A menu that is higher than the screen goes on in a second column, or scrolls with the arrows."""
    with text_scaled(desk.look, 2.0):
        for menu in desk.menuBar().findChildren(QMenu):
            if menu.isEmpty():
                continue
            menu.popup(QPoint(0, 0))
            QApplication.processEvents()
            assert menu.width() <= SCREEN.width(), menu.title()
            menu.close()


def test_long_texts_scroll_at_200_percent(qtbot: QtBot, desk: MainWindow, tmp_path: Path) -> None:
    with text_scaled(desk.look, 2.0), opened("keys", desk, tmp_path) as window:
        text = window.findChild(QAbstractScrollArea)
        assert text.verticalScrollBar().maximum() > 0
