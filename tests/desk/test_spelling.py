"""Misspelt words of the script are marked while one writes, with real dictionaries, and answered from the menu."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor, QContextMenuEvent, QTextCursor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from studyboard.desk.line_text import LineText
from studyboard.desk.main_window import MainWindow
from studyboard.desk.pronunciation_dialog import PronunciationDialog
from studyboard.desk.spelling_dialog import SpellingDialog
from studyboard.model.edits import ChangeHeaders, ChangeLanguage, ChangeNode, ChangePronunciations
from studyboard.model.script import Part, SpokenLine
from studyboard.writing.kept_text import CONFIG_DIR
from studyboard.writing.spelling import own_words


@pytest.fixture
def writing(qtbot: QtBot, desk: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> MainWindow:
    """The desk with the cursor in the line of the first move, the American dictionary read in."""
    monkeypatch.setenv(CONFIG_DIR, str(tmp_path / "config"))
    desk.session.do(ChangeLanguage("en_US"))
    qtbot.waitUntil(lambda: desk.script_tools.spelling.ready)
    desk.session.show(desk.session.study.node(desk.session.study.root).children[0])
    desk.line_editor.focus_line()
    desk.line_editor.text.selectAll()
    return desk


def marked(desk: MainWindow) -> list[str]:
    """The words with a dotted line."""
    return desk.line_editor.text.misspelt


def write(desk: MainWindow, text: str) -> None:
    QTest.keyClicks(desk.line_editor.text, text)


def menu_at_word(qtbot: QtBot, desk: MainWindow, word: str, act: Callable[[QMenu], None]) -> None:
    """Open the menu of a word with the right button, and do something in it."""
    text = desk.line_editor.text
    text.select_characters(start := text.line.text.index(word), start + 1)
    box = text.cursorRect()
    text.moveCursor(text.textCursor().MoveOperation.Start)
    where = QPoint(box.left(), box.center().y())
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, where, text.viewport().mapToGlobal(where))
    QApplication.sendEvent(text.viewport(), event)
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    act(menu)
    menu.close()


def choose(label: str) -> Callable[[QMenu], None]:
    def act(menu: QMenu) -> None:
        next(action for action in menu.actions() if label in action.text()).trigger()

    return act


def test_a_misspelt_word_is_marked_when_it_is_finished(qtbot: QtBot, writing: MainWindow) -> None:
    write(writing, "The knihgt")
    QTest.qWait(0)
    assert marked(writing) == []
    write(writing, " jumps.")
    qtbot.waitUntil(lambda: marked(writing) == ["knihgt"])
    QTest.keyClick(writing.line_editor.text, Qt.Key.Key_Home)
    write(writing, "Now: ")
    assert marked(writing) == ["knihgt"]


def test_the_dots_are_painted_under_the_word_and_nowhere_else(qtbot: QtBot, writing: MainWindow) -> None:
    text = writing.line_editor.text
    write(writing, "The knihgt jumps.")

    def dots() -> list[int]:
        image, colour = text.viewport().grab().toImage(), writing.look.color("spelling")
        return [x for x in range(image.width()) for y in range(image.height()) if _near(image.pixelColor(x, y), colour)]

    qtbot.waitUntil(lambda: bool(dots()))
    text.select_characters(4, 10)
    edges = [text.cursorRect(cursor).left() for cursor in _ends(text)]
    text.moveCursor(QTextCursor.MoveOperation.End)
    assert edges[0] - 2 <= min(dots()) < max(dots()) <= edges[1] + 2


def _near(one: QColor, other: QColor) -> bool:
    pairs = zip(one.getRgb()[:3], other.getRgb()[:3], strict=True)
    return all(abs(a - b) < 40 for a, b in pairs)


def _ends(text: LineText) -> list[QTextCursor]:
    cursor = text.textCursor()
    made = []
    for place in (cursor.selectionStart(), cursor.selectionEnd()):
        one = QTextCursor(text.document())
        one.setPosition(place)
        made.append(one)
    return made


def test_moves_and_names_of_the_headers_are_not_marked(qtbot: QtBot, writing: MainWindow) -> None:
    write(writing, "Garvey plays Nxe5, Qvortrup O-O-O at c6 and zzyx. ")
    qtbot.waitUntil(lambda: marked(writing) == ["Qvortrup", "zzyx"])
    headers = {**writing.session.study.headers, "Annotator": "Ane Qvortrup"}
    writing.session.do(ChangeHeaders(tuple(headers.items())))
    qtbot.waitUntil(lambda: marked(writing) == ["zzyx"])


def test_a_suggestion_takes_the_place_of_the_word_and_undo_brings_it_back(qtbot: QtBot, writing: MainWindow) -> None:
    node = writing.session.node
    write(writing, "The knihgt jumps.")
    qtbot.waitUntil(lambda: marked(writing) == ["knihgt"])
    menu_at_word(qtbot, writing, "knihgt", choose("knight"))
    assert writing.session.study.node(node).spoken.text == "The knight jumps."
    qtbot.waitUntil(lambda: marked(writing) == [])


def test_a_word_is_added_to_the_study_and_undo_takes_it_back(qtbot: QtBot, writing: MainWindow) -> None:
    write(writing, "What a zzyx! ")
    qtbot.waitUntil(lambda: marked(writing) == ["zzyx"])
    menu_at_word(qtbot, writing, "zzyx", choose("words of this study"))
    assert writing.session.study.words == {"zzyx"}
    qtbot.waitUntil(lambda: marked(writing) == [])
    writing.actions_by_name["undo"].trigger()
    qtbot.waitUntil(lambda: marked(writing) == ["zzyx"])


def test_a_word_is_added_to_my_words_for_all_studies(qtbot: QtBot, writing: MainWindow) -> None:
    write(writing, "What a zzyx! ")
    qtbot.waitUntil(lambda: marked(writing) == ["zzyx"])
    menu_at_word(qtbot, writing, "zzyx", choose("my words"))
    assert own_words() == {"zzyx"}
    qtbot.waitUntil(lambda: marked(writing) == [])
    dialog = SpellingDialog(writing.session, writing.script_tools.spelling, writing)
    qtbot.addWidget(dialog)
    dialog.own_words.setCurrentRow(0)
    dialog._forget_own_words()
    assert own_words() == frozenset()
    assert marked(writing) == ["zzyx"]


def test_one_key_goes_from_one_misspelt_word_to_the_next(qtbot: QtBot, writing: MainWindow) -> None:
    session = writing.session
    later = list(session.study.main_line())[5]
    session.do(ChangeNode(later, "spoken", SpokenLine("Anton thinsk and wiats.")))
    write(writing, "All is well here. ")
    for node, word in ((later, "thinsk"), (later, "wiats")):
        qtbot.keyClick(writing, Qt.Key.Key_F6, Qt.KeyboardModifier.ShiftModifier)
        while writing.line_editor.text.textCursor().selectedText() in ("colour", "centre"):
            qtbot.keyClick(writing, Qt.Key.Key_F6, Qt.KeyboardModifier.ShiftModifier)
        assert session.node == node
        assert writing.line_editor.text.textCursor().selectedText() == word


def test_the_language_is_chosen_for_the_study(qtbot: QtBot, writing: MainWindow) -> None:
    dialog = SpellingDialog(writing.session, writing.script_tools.spelling, writing)
    qtbot.addWidget(dialog)
    dialog.show()
    write(writing, "Der Turm zieht. ")
    qtbot.waitUntil(lambda: "zieht" in marked(writing))
    dialog.language.setCurrentIndex(dialog.language.findData("de_DE"))
    dialog.language.activated.emit(dialog.language.currentIndex())
    qtbot.waitUntil(lambda: marked(writing) == [])
    assert writing.session.study.language == "de_DE"
    assert "Deutsch" in dialog.language.currentText()


def test_a_language_without_a_dictionary_says_what_to_install(qtbot: QtBot, writing: MainWindow) -> None:
    spelling = writing.script_tools.spelling
    writing.session.do(ChangeLanguage("xx_YY"))
    qtbot.waitUntil(lambda: bool(spelling.problem))
    assert spelling.problem.endswith("apt install hunspell-xx-yy")
    writing.actions_by_name["next_misspelling"].trigger()
    assert "apt install" in writing.notice.text
    dialog = SpellingDialog(writing.session, spelling, writing)
    qtbot.addWidget(dialog)
    assert dialog.problem.text() == spelling.problem
    writing.session.undo()
    qtbot.waitUntil(lambda: spelling.ready)


def test_it_can_be_turned_off(qtbot: QtBot, writing: MainWindow) -> None:
    write(writing, "The knihgt jumps.")
    qtbot.waitUntil(lambda: marked(writing) == ["knihgt"])
    dialog = SpellingDialog(writing.session, writing.script_tools.spelling, writing)
    qtbot.addWidget(dialog)
    dialog.on.click()
    assert marked(writing) == []
    dialog.on.click()
    assert marked(writing) == ["knihgt"]


# ---- pronunciations -----------------------------------------------------------------------------------------------


def test_the_word_at_the_cursor_gets_a_pronunciation_and_the_prompter_shows_it(
    qtbot: QtBot, writing: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    def answer(dialog: PronunciationDialog) -> int:
        qtbot.addWidget(dialog)
        assert dialog.word.text() == "Garvey"
        QTest.keyClicks(dialog.said, "GAR-vee")
        dialog.accept()
        return dialog.result()

    monkeypatch.setattr(PronunciationDialog, "exec", answer)
    writing.edit_part(Part.GREETING)
    text = writing.line_editor.text
    at = text.line.text.index("Garvey")
    text.select_characters(at, at + 2)
    cursor = text.textCursor()
    cursor.clearSelection()
    text.setTextCursor(cursor)
    qtbot.keyClick(writing, Qt.Key.Key_H, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert writing.session.study.pronunciations == {"Garvey": "GAR-vee"}
    writing.rehearse_stage()
    assert "Garvey [GAR-vee]" in writing.prompter._now.text()


def test_a_hint_counts_as_no_word_of_the_line(qtbot: QtBot, writing: MainWindow) -> None:
    session = writing.session
    session.do(ChangePronunciations((("Garvey", "GAR vee"), ("welcome", "WEL come"))))
    writing.rehearse_stage()
    beat = writing.performance.run.beats[0]
    runs = writing.prompter._runs(beat)
    assert sum(len(run.words) for run in runs) == len(beat.spoken.text.split())
    for run in runs:
        for start in run.words:
            assert run.text[start - 1 : start] in ("", " ", "\n")


def test_a_pronunciation_is_changed_and_forgotten_in_the_dialog(qtbot: QtBot, writing: MainWindow) -> None:
    session = writing.session
    session.do(ChangePronunciations((("Pell", "PELL"), ("Garvey", "GAR-vee"))))
    dialog = PronunciationDialog(session, "", writing)
    qtbot.addWidget(dialog)
    assert dialog.list.count() == 2
    assert not dialog.forget_button.isEnabled()
    QTest.keyClicks(dialog.word, "Pell")
    assert dialog.said.text() == "PELL"
    qtbot.mouseClick(dialog.forget_button, Qt.MouseButton.LeftButton)
    assert session.study.pronunciations == {"Garvey": "GAR-vee"}
    session.undo()
    assert session.study.pronunciations["Pell"] == "PELL"
