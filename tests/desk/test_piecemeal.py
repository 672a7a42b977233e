"""Long work beside the keys."""

from __future__ import annotations

import time

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtGui import QGuiApplication

from studyboard.desk.piecemeal import Piecemeal


def counting(to: int):
    for _ in range(to):
        until = time.thread_time() + 0.001
        while time.thread_time() < until:
            pass
        yield
    return f"counted to {to}"


def test_what_takes_a_moment_is_done_at_once(qtbot):
    owner, told = QObject(), []
    work = Piecemeal(owner)
    work.start(counting(1), told.append)
    assert told == ["counted to 1"]
    assert not work.busy
    assert QGuiApplication.overrideCursor() is None


def test_long_work_lets_the_desk_listen_and_shows_that_it_is_busy(qtbot):
    owner, told, heard = QObject(), [], []
    work = Piecemeal(owner)
    work.start(counting(60), told.append)
    QTimer.singleShot(0, owner, lambda: heard.append(work.busy))
    assert QGuiApplication.overrideCursor().shape() == Qt.CursorShape.BusyCursor
    qtbot.waitUntil(lambda: bool(told))
    assert heard == [True]
    assert told == ["counted to 60"]
    assert QGuiApplication.overrideCursor() is None


def test_new_work_takes_the_place_of_the_old(qtbot):
    owner, told = QObject(), []
    work = Piecemeal(owner)
    work.start(counting(500), told.append)
    work.start(counting(40), told.append)
    qtbot.waitUntil(lambda: bool(told))
    assert told == ["counted to 40"]
    assert QGuiApplication.overrideCursor() is None
