"""The whole script as one text: edited in place by keys, headings and cues kept, every stop stored as elsewhere."""

from __future__ import annotations

import time
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QGuiApplication, QTextCursor
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.desk.script_document import ScriptDocument, is_heading
from studyboard.desk.script_sections import sections
from studyboard.desk.script_window import ScriptWindow
from studyboard.model.edits import ChangeNode, ChangeSlot
from studyboard.model.script import Cue, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.store.study_file import StudyFile


@pytest.fixture
def script(qtbot: QtBot, desk: MainWindow) -> ScriptWindow:
    """The window on the example talk, opened by its key."""
    qtbot.keyClick(desk, Qt.Key.Key_5, Qt.KeyboardModifier.ControlModifier)
    window = desk.script_tools._script
    assert window is not None
    qtbot.waitUntil(window.text.hasFocus)
    return window


def key(window: ScriptWindow, name: str, modifiers: str = "") -> None:
    held = Qt.KeyboardModifier.NoModifier
    for modifier in modifiers.split():
        held |= getattr(Qt.KeyboardModifier, f"{modifier}Modifier")
    QTest.keyClick(window.text, getattr(Qt.Key, f"Key_{name}"), held)


def headings(window: ScriptWindow) -> list[str]:
    block = window.text.document().begin()
    found = []
    while block.isValid():
        if is_heading(block):
            found.append(block.text())
        block = block.next()
    return found


def lines(window: ScriptWindow) -> list[SpokenLine]:
    return [window.text.script.line(number) for number in range(len(window._sections))]


def node_at(window: ScriptWindow, number: int) -> int:
    """The node of a section; the test needs one that is no part."""
    found = window._sections[number].key
    assert isinstance(found, int)
    return found


def test_it_holds_every_stop_of_the_talk_in_its_order(desk: MainWindow, script: ScriptWindow) -> None:
    told = sections(desk.session, {}, silent=False)
    assert lines(script) == [section.spoken for section in told]
    assert told[0].key is Part.GREETING
    assert told[-1].key is Part.THANKS
    titles = headings(script)
    assert len(titles) == len(told)
    assert titles[0].startswith("Greeting · ")
    assert any("side-line" in title for title in titles)
    assert f"planned {desk.top_bar._slot.text().split('planned ')[1].split(' ')[0]}" in script.figures.text()


def test_what_is_typed_is_stored_at_its_stop_with_the_cues_kept(
    qtbot: QtBot, desk: MainWindow, script: ScriptWindow
) -> None:
    number = next(n for n, s in enumerate(script._sections) if len(s.spoken.cues) >= 2)
    node, before = node_at(script, number), script._sections[number].spoken
    script.text.put_cursor(number, 0)
    QTest.keyClicks(script.text, "Well, ")
    qtbot.waitUntil(lambda: desk.session.study.node(node).spoken.text == "Well, " + before.text)
    moved = {cue.node: cue.word for cue in desk.session.study.node(node).spoken.cues}
    for cue in before.cues:
        assert moved[cue.node] in (cue.word, cue.word + 1)
        assert cue.word == 0 or moved[cue.node] == cue.word + 1
    assert f"{len(('Well, ' + before.text).split())} words" in headings(script)[number]
    key(script, "Z", "Control")
    assert desk.session.study.node(node).spoken == before
    assert script.text.script.line(number) == before


def test_leaving_a_stop_and_closing_the_window_store_too(desk: MainWindow, script: ScriptWindow) -> None:
    script.text.put_cursor(1, 0)
    QTest.keyClicks(script.text, "One. ")
    script.text.put_cursor(3, 0)
    assert desk.session.study.node(node_at(script, 1)).spoken.text.startswith("One. ")
    QTest.keyClicks(script.text, "Three. ")
    third = node_at(script, 3)
    script.close()
    assert desk.session.study.node(third).spoken.text.startswith("Three. ")


def test_headings_cannot_be_changed(desk: MainWindow, script: ScriptWindow) -> None:
    titles, before = headings(script), lines(script)
    cursor = script.text.textCursor()
    cursor.setPosition(script.text.script.body(2)[0])
    script.text.setTextCursor(cursor)
    for name, modifiers in (("Backspace", ""), ("Backspace", "Control")):
        key(script, name, modifiers)
    script.text.put_cursor(2, len(before[2].text))
    for name, modifiers in (("Delete", ""), ("Delete", "Control")):
        key(script, name, modifiers)
    assert (headings(script), lines(script)) == (titles, before)
    script.text.moveCursor(QTextCursor.MoveOperation.Start)
    QTest.keyClicks(script.text, "Hello. ")
    script.flush()
    assert headings(script)[1:] == titles[1:]
    assert desk.session.study.line(Part.GREETING).spoken.text == "Hello. " + before[0].text


def test_deleting_over_several_stops_leaves_their_headings(desk: MainWindow, script: ScriptWindow) -> None:
    before = lines(script)
    count = len(headings(script))
    text = script.text
    cursor = text.textCursor()
    cursor.setPosition(text.script.place_of(1, 5))
    cursor.setPosition(text.script.place_of(3, 4), QTextCursor.MoveMode.KeepAnchor)
    text.setTextCursor(cursor)
    keys = [node_at(script, number) for number in (1, 2, 3)]
    QTest.keyClicks(text, "X")
    script.flush()
    spoken = [desk.session.study.node(node).spoken.text for node in keys]
    assert spoken == [before[1].text[:5] + "X", "", before[3].text[4:]]
    desk.session.undo()
    desk.session.undo()
    assert lines(script) == before
    assert len(headings(script)) == count


def test_lines_are_broken_and_joined_inside_a_stop(desk: MainWindow, script: ScriptWindow) -> None:
    before = script._sections[0].spoken
    script.text.put_cursor(0, len("Good evening,"))
    key(script, "Return")
    script.flush()
    text = desk.session.study.line(Part.GREETING).spoken.text
    assert text == before.text.replace("Good evening,", "Good evening,\n", 1)
    key(script, "Backspace")
    script.flush()
    assert desk.session.study.line(Part.GREETING).spoken == before


def test_pasting_brings_words_and_no_headings(qtbot: QtBot, desk: MainWindow, script: ScriptWindow) -> None:
    QGuiApplication.clipboard().setText("pasted\nwords ")
    titles = len(headings(script))
    script.text.put_cursor(0, 0)
    key(script, "V", "Control")
    script.flush()
    assert desk.session.study.line(Part.GREETING).spoken.text.startswith("pasted\nwords Good evening")
    assert len(headings(script)) == titles


def test_the_board_follows_the_cursor_and_the_cursor_follows_the_board(
    qtbot: QtBot, desk: MainWindow, script: ScriptWindow
) -> None:
    script.text.put_cursor(4, 0)
    assert desk.session.node == node_at(script, 4)
    script.text.put_cursor(0, 0)
    assert desk.line_editor.key is Part.GREETING
    desk.activateWindow()
    desk.lanes.setFocus()
    qtbot.waitUntil(desk.lanes.hasFocus)
    desk.session.show(node_at(script, 6))
    assert script.text.section == 6


def test_it_opens_where_the_board_is_also_inside_a_stop(qtbot: QtBot, desk: MainWindow, script: ScriptWindow) -> None:
    number = next(n for n, s in enumerate(script._sections) if n > 2 and len(s.spoken.cues) >= 2)
    inside = script._sections[number].spoken.cues[0].node
    script.close()
    desk.session.show(inside)
    desk.actions_by_name["show_script"].trigger()
    assert script.text.section == number


def test_a_change_from_the_desk_is_shown_at_once_and_the_cursor_stays(
    qtbot: QtBot, desk: MainWindow, script: ScriptWindow
) -> None:
    script.text.put_cursor(3, 7)
    node = node_at(script, 1)
    desk.session.do(ChangeNode(node, "spoken", SpokenLine("Another line here.", (Cue(1, node=node),))))
    assert script.text.script.line(1) == SpokenLine("Another line here.", (Cue(1, node=node),))
    assert (script.text.section, script.text.script.character_of(script.text.textCursor().position())) == (3, 7)
    desk.session.do(ChangeSlot(60.0))
    qtbot.waitUntil(lambda: "over" in script.figures.text())


def test_silent_stops_are_shown_on_demand_and_can_be_written(desk: MainWindow, script: ScriptWindow) -> None:
    desk.session.do(ChangeNode(node_at(script, 2), "spoken", SpokenLine()))
    spoken = len(script._sections)
    script.silent.click()
    silent = next(n for n, s in enumerate(script._sections) if not s.spoken)
    assert len(script._sections) > spoken
    node = node_at(script, silent)
    script.text.setFocus()
    script.text.put_cursor(silent, 0)
    QTest.keyClicks(script.text, "Something after all.")
    script.flush()
    assert desk.session.study.node(node).spoken.text == "Something after all."


def test_misspelt_words_have_dots_here_too(qtbot: QtBot, desk: MainWindow, script: ScriptWindow) -> None:
    script.text.put_cursor(1, 0)
    QTest.keyClicks(script.text, "Casltes zzyx. ")
    script.flush()
    qtbot.waitUntil(lambda: script.text.misspelt[:2] == ["Casltes", "zzyx"])


def test_a_long_talk_opens_and_takes_letters_quickly(
    qtbot: QtBot, desk: MainWindow, script: ScriptWindow, tmp_path: Path
) -> None:
    words = SpokenLine("The knight on f3 looks at the centre, and the bishop behind it waits for its diagonal. " * 3)
    document = ScriptDocument(desk.look, lambda cued, number: script._tag(cued, number))
    begun = time.perf_counter()
    document.write([(f"{number}. Nf3", number % 3, words) for number in range(500)])
    assert time.perf_counter() - begun < 5
    assert document.line(499) == words
    assert document.line(250) == words


def test_keys_of_the_desk_hold_there_too_and_escape_leaves(
    qtbot: QtBot, desk: MainWindow, script: ScriptWindow
) -> None:
    key(script, "R", "Control")
    find = desk.script_tools._find
    assert find is not None
    qtbot.waitUntil(find.isVisible)
    find.close()
    script.activateWindow()
    script.text.setFocus()
    key(script, "Escape")
    assert not script.isVisible()


def test_the_script_of_an_empty_study_is_begun_in_it(
    qtbot: QtBot, still_look: Look, settings: QSettings, tmp_path: Path
) -> None:
    desk = MainWindow(StudyFile.create(tmp_path / "empty.studyboard", Study()), still_look, settings)
    qtbot.addWidget(desk)
    desk.show()
    desk.commands.of("show_script")()
    window = desk.script_tools._script
    assert window is not None
    assert "Tick" in window.text.placeholderText()
    window.silent.click()
    root = desk.session.study.root
    assert [section.key for section in window._sections] == [Part.GREETING, root, Part.CLOSING, Part.THANKS]
    window.text.setFocus()
    for number, words in enumerate(("Good evening.", "The board is set.", "That was it.", "Thank you.")):
        window.text.put_cursor(number, 0)
        QTest.keyClicks(window.text, words)
        window.flush()
    study = desk.session.study
    assert study.line(Part.GREETING).spoken.text == "Good evening."
    assert study.node(root).spoken.text == "The board is set."
    assert study.line(Part.CLOSING).spoken.text == "That was it."
    assert study.line(Part.THANKS).spoken.text == "Thank you."
    assert [section.key for section in window._sections] == [Part.GREETING, root, Part.CLOSING, Part.THANKS]
    desk.close()
