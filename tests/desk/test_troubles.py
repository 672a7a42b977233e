"""What the desk does when the disk is full, the folder is read only, or somebody is in a hurry."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QMessageBox
from pytestqt.qtbot import QtBot

from studyboard.desk import application
from studyboard.desk.deliver_window import DeliverWindow
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.desk.opening import Opened, open_path
from studyboard.example import example_study
from studyboard.store.study_file import StudyFile


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A real file system of two megabytes."""
    folder = tmp_path / "small"
    folder.mkdir()
    mounted = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", str(folder)], capture_output=True, check=False
    )
    if mounted.returncode:
        pytest.skip("a small file system cannot be mounted here: it takes root")
    yield folder
    subprocess.run(["umount", "--lazy", str(folder)], check=True)


def fill_up(filler: Path) -> None:
    """Write until nothing more goes onto the disk."""
    with filler.open("wb", buffering=0) as file, suppress(OSError):
        while True:
            file.write(bytes(4096))


def test_a_line_typed_on_a_full_disk_is_kept_and_stored_later(
    qtbot: QtBot, small_disk: Path, still_look: Look, settings: QSettings
) -> None:
    path = small_disk / "full.studyboard"
    desk = MainWindow(StudyFile.create(path, example_study()), still_look, settings)
    qtbot.addWidget(desk)
    desk.show()
    desk.commands.of("forward")()
    node = desk.session.node
    filler = small_disk / "filler"
    fill_up(filler)
    desk.line_editor.focus_line()
    words = "Words that must not be lost. " * 300
    desk.line_editor.text.insertPlainText(words)
    desk.commands.of("forward")()
    assert "full" in desk.notice.text
    desk.commands.of("back")()
    assert desk.line_editor.text.line.text == words
    filler.unlink()
    desk.commands.of("forward")()
    assert desk.session.study.node(node).spoken.text == words
    desk.close()
    with StudyFile.open(path) as again:
        assert again.study.node(node).spoken.text == words


def test_a_study_in_a_read_only_folder_is_shown_and_says_how_to_go_on(
    qtbot: QtBot, desk: MainWindow, small_disk: Path, tmp_path: Path
) -> None:
    StudyFile.create(small_disk / "shown.studyboard", example_study()).close()
    subprocess.run(["mount", "-o", "remount,ro", str(small_disk)], check=True)
    opened = open_path(small_disk / "shown.studyboard")
    assert opened is not None
    desk.show_opened(opened)
    assert "read only" in desk.notice.text
    desk.save_as(str(tmp_path / "mine.studyboard"))
    assert desk.session.file.path == tmp_path / "mine.studyboard"
    assert not desk.session.file.read_only


def test_leaving_the_delivery_in_a_hurry_leaves_nothing_behind(qtbot: QtBot, desk: MainWindow, tmp_path: Path) -> None:
    window = DeliverWindow(desk.session, None, desk)
    window.folder.setText(str(tmp_path / "out"))
    window.show()
    window.deliver()
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert not window.isVisible()
    assert window._work is not None
    assert window._work.isFinished()
    left = os.listdir(tmp_path / "out") if (tmp_path / "out").exists() else []
    assert not [name for name in left if name.startswith(".")]


def test_what_is_wrong_after_a_double_click_is_shown(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "junk.studyboard").write_text("no study", encoding="utf-8")
    shown: list[str] = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *words: shown.append(words[-1]))
    monkeypatch.setattr(application, "_ask", lambda look: None)
    assert application.run_from_menu(tmp_path / "junk.studyboard") == 0
    assert "junk.studyboard" in shown[0]


def test_another_study_waits_until_a_take_is_over(
    qtbot: QtBot, desk: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(MainWindow, "recording", property(lambda _: True))
    other = StudyFile.create(tmp_path / "other.studyboard")
    desk.show_opened(Opened(other))
    assert desk.session.file.path.name == "example.studyboard"
    assert "being recorded" in desk.notice.text
    StudyFile.open(tmp_path / "other.studyboard").close()
