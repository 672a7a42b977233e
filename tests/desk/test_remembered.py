"""A study comes back as it was left."""

from __future__ import annotations

import chess
import pytest
from PySide6.QtCore import QSettings

from studyboard.desk import remembered
from studyboard.desk.main_window import MainWindow
from studyboard.desk.opening import Opened
from studyboard.model.study import Study
from studyboard.store.study_file import StudyFile


@pytest.fixture
def settings(tmp_path):
    return QSettings(str(tmp_path / "remembered.ini"), QSettings.Format.IniFormat)


@pytest.fixture
def open_desk(qtbot, tmp_path, still_look, settings):
    def open_it(name: str = "evening") -> MainWindow:
        path = tmp_path / f"{name}.studyboard"
        file = StudyFile.open(path) if path.exists() else StudyFile.create(path, Study())
        window = MainWindow(file, still_look, settings)
        qtbot.addWidget(window)
        window.resize(1366, 768)
        window.show()
        return window

    return open_it


def test_the_move_and_the_side_of_the_board_come_back(open_desk):
    desk = open_desk()
    for move in ("e2e4", "e7e5", "g1f3"):
        desk.session.play(chess.Move.from_uci(move))
    desk.commands.of("back")()
    shown = desk.session.node
    desk.board_view.flip()
    desk.close()
    again = open_desk()
    assert again.session.node == shown
    assert again.board_view.flipped


def test_the_size_of_the_board_comes_back_with_each_study(qtbot, open_desk):
    desk = open_desk()
    middle, right = desk.centralWidget()._dividers
    middle.setSizes([400, 900])
    right.setSizes([430, 150])
    qtbot.wait(20)
    width = desk.board_view.width()
    desk.close()
    other = open_desk("morning")
    assert other.board_view.width() != width
    other.show_opened(Opened(StudyFile.open(desk.session.file.path)))
    qtbot.wait(20)
    assert other.board_view.width() == pytest.approx(width, abs=2)


def test_a_move_that_is_gone_is_no_trouble(open_desk, settings):
    desk = open_desk()
    desk.session.play(chess.Move.from_uci("e2e4"))
    desk.close()
    with StudyFile.open(desk.session.file.path) as file:
        file.undo()
    assert open_desk().session.node == 0


def test_no_more_than_some_studies_are_remembered(open_desk, settings, monkeypatch):
    monkeypatch.setattr(remembered, "MOST", 2)
    for name in ("a", "b", "c"):
        open_desk(name).close()
    settings.beginGroup("studies")
    assert len(settings.childGroups()) == 2
