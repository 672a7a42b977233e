"""Side-lines are taken out of the talk by one key, until it meets its slot, and brought back by undo."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.cuts_window import CutsWindow
from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeSlot
from studyboard.model.node import Place


@pytest.fixture
def window(desk: MainWindow, qtbot: QtBot) -> Iterator[CutsWindow]:
    """Open on the example, which is a minute over its slot."""
    desk.session.do(ChangeSlot(round(desk.session.timeline.seconds - 60)))
    window = CutsWindow(desk.session, desk)
    qtbot.addWidget(window)
    window.show()
    qtbot.waitUntil(lambda: window.list.count() > 3, timeout=15_000)
    yield window
    window.close()


def test_enter_leaves_the_chosen_line_out_and_undo_brings_it_back(
    window: CutsWindow, desk: MainWindow, qtbot: QtBot
) -> None:
    lines, before = window.list.count(), desk.session.timeline.seconds
    assert "1:00 over" in window.told.text()
    window.list.setFocus()
    qtbot.keyClick(window.list, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: 0 < window.list.count() < lines, timeout=15_000)
    assert desk.session.timeline.seconds < before - 5
    qtbot.mouseClick(window.undo_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.list.count() == lines, timeout=15_000)
    assert desk.session.timeline.seconds == pytest.approx(before)


def test_one_button_leaves_out_what_it_takes_in_one_step(window: CutsWindow, desk: MainWindow, qtbot: QtBot) -> None:
    stars = sum(window.list.item(row).text().startswith("★") for row in range(window.list.count()))
    assert stars > 1
    qtbot.mouseClick(window.all_button, Qt.MouseButton.LeftButton)
    study = desk.session.study
    assert desk.session.timeline.seconds <= study.slot
    assert sum(node.telling.place is Place.HIDDEN for node in study.nodes.values()) >= stars
    qtbot.waitUntil(lambda: not window.all_button.isEnabled(), timeout=15_000)
    assert "under" in window.told.text()
    desk.session.undo()
    assert desk.session.timeline.seconds > study.slot + 55


def test_without_a_slot_it_says_so_and_lists_them_all_the_same(
    window: CutsWindow, desk: MainWindow, qtbot: QtBot
) -> None:
    desk.session.do(ChangeSlot(None))
    qtbot.waitUntil(lambda: "No slot is set" in window.told.text(), timeout=15_000)
    assert window.list.count() > 3
