"""Recurring texts are inserted at the cursor by menu and key, and written in their own window."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.desk.snippets_window import SnippetsWindow
from studyboard.model.script import Part
from studyboard.writing.kept_text import CONFIG_DIR
from studyboard.writing.snippets import Snippet, read_snippets, snippets_file


@pytest.fixture
def writing(desk: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> MainWindow:
    """The desk with the cursor in the thanks, which are empty, and no snippets of its own yet."""
    monkeypatch.setenv(CONFIG_DIR, str(tmp_path / "config"))
    desk.edit_part(Part.THANKS)
    desk.line_editor.text.selectAll()
    QTest.keyClick(desk.line_editor.text, Qt.Key.Key_Delete)
    return desk


def thanks(desk: MainWindow) -> str:
    return desk.session.study.line(Part.THANKS).spoken.text


def open_menu(qtbot: QtBot, desk: MainWindow) -> QMenu:
    qtbot.keyClick(desk, Qt.Key.Key_I, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    return menu


def test_a_snippet_is_inserted_with_two_keys_and_filled_from_the_headers(qtbot: QtBot, writing: MainWindow) -> None:
    menu = open_menu(qtbot, writing)
    QTest.keyClick(menu, Qt.Key.Key_4)
    assert thanks(writing) == "That was Imani Pell against Anton Garvey. Thank you for watching."
    assert writing.line_editor.text.hasFocus()
    QTest.keyClicks(writing.line_editor.text, " Bye.")
    writing.line_editor.flush()
    assert thanks(writing).endswith("watching. Bye.")


def test_a_snippet_does_not_touch_the_words_beside_it(qtbot: QtBot, writing: MainWindow) -> None:
    QTest.keyClicks(writing.line_editor.text, "One.")
    writing.script_tools.insert_snippet(Snippet("x", "Two"))
    assert thanks(writing) == "One. Two"


def test_what_is_not_known_is_told(qtbot: QtBot, writing: MainWindow) -> None:
    writing.script_tools.insert_snippet(Snippet("x", "Thanks to {names}."))
    assert thanks(writing) == "Thanks to {names}."
    assert "{names}" in writing.notice.text


def test_names_come_from_a_file_and_are_no_misspelt_words(qtbot: QtBot, writing: MainWindow, tmp_path: Path) -> None:
    (tmp_path / "crew.csv").write_text("Name,Role\nAda Qvist,camera\nBo Zsombory,sound\n", encoding="utf-8")
    tools = writing.script_tools
    window = SnippetsWindow(tools.snippets, writing)
    qtbot.addWidget(window)
    window.use_names(tmp_path / "crew.csv")
    assert window.names_file.text() == "2 names from crew.csv"
    window.insert_wanted.connect(tools.insert_snippet)
    window.list.setCurrentRow(4)
    assert window.preview.text() == "My thanks go to Ada Qvist and Bo Zsombory."
    qtbot.mouseClick(window.insert_button, Qt.MouseButton.LeftButton)
    assert thanks(writing) == "My thanks go to Ada Qvist and Bo Zsombory."
    qtbot.waitUntil(lambda: tools.spelling.ready)
    assert tools.spelling.unknown("Ada Qvist and Bo Zsombory, Qwzx") != ()
    assert [word.text for word in tools.spelling.unknown("Ada Qvist and Bo Zsombory, Qwzx.")] == ["Qwzx"]
    assert str(writing.settings.value("script/names_file")) == str(tmp_path / "crew.csv")
    window.use_names(tmp_path / "gone.csv")
    assert window.names_file.text().startswith("There is no file")


def test_snippets_are_written_added_and_removed_and_kept_for_all_studies(qtbot: QtBot, writing: MainWindow) -> None:
    window = SnippetsWindow(writing.script_tools.snippets, writing)
    qtbot.addWidget(window)
    window.show()
    before = window.list.count()
    window._add()
    QTest.keyClicks(window.name, "Farewell")
    QTest.keyClicks(window.text, "Good night, {white}!")
    assert window.preview.text() == "Good night, Imani Pell!"
    window.list.setCurrentRow(0)
    qtbot.mouseClick(window.remove_button, Qt.MouseButton.LeftButton)
    window.reject()
    kept = read_snippets()
    assert len(kept) == before
    assert kept[-1] == Snippet("Farewell", "Good night, {white}!")
    assert snippets_file().is_file()
    menu = open_menu(qtbot, writing)
    labels = [action.text() for action in menu.actions()]
    menu.close()
    assert labels[before - 1] == f"&{before}  Farewell"


def test_a_file_that_holds_no_snippets_is_told(qtbot: QtBot, writing: MainWindow) -> None:
    snippets_file().parent.mkdir(parents=True, exist_ok=True)
    snippets_file().write_text("{", encoding="utf-8")
    menu = open_menu(qtbot, writing)
    menu.close()
    assert "holds no snippets" in writing.notice.text
