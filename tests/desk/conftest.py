"""The desk on real studies: a session, a look, and the whole window."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.example import example_study
from studyboard.store.study_file import StudyFile


@pytest.fixture
def settings(tmp_path: Path) -> QSettings:
    """Settings of this test alone."""
    return QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat)


@pytest.fixture
def still_look(qtbot: QtBot) -> Look:
    """A look in which nothing moves by itself, so that what is shown is there at once."""
    look = Look()
    look.reduce_motion(True)
    return look


@pytest.fixture
def example_file(tmp_path: Path) -> Iterator[StudyFile]:
    """The example talk as a study file of its own."""
    file = StudyFile.create(tmp_path / "example.studyboard", example_study())
    yield file
    file.close()


@pytest.fixture
def desk(
    qtbot: QtBot,
    example_file: StudyFile,
    still_look: Look,
    settings: QSettings,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> Iterator[MainWindow]:
    """The whole window on the example talk."""
    monkeypatch.setenv("STUDYBOARD_STUDIES", str(tmp_path / "studies"))
    window = MainWindow(example_file, still_look, settings)
    qtbot.addWidget(window)
    window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    yield window
    window.close()
