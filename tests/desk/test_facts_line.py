from __future__ import annotations

import chess
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from studyboard.board.facts import FactKind
from studyboard.desk.facts_line import FactsLine
from studyboard.desk.look import Look
from tests.desk.small_study import open_session, play, small_session

FORK = "4k3/8/3b4/4R3/8/8/8/4K3 w - - 0 1"


@pytest.fixture
def small(tmp_path):
    """A session with a side-line, and its nodes."""
    session, nodes = small_session(tmp_path)
    yield session, nodes
    session.file.close()


def on_screen(qtbot, session) -> FactsLine:
    line = FactsLine(session, Look())
    qtbot.addWidget(line)
    line.resize(400, 120)
    line.show()
    qtbot.waitExposed(line)
    return line


def text_of(line: FactsLine) -> str:
    return line.findChild(QLabel).text()


def test_material_is_told_at_once(qtbot, small):
    line = on_screen(qtbot, small[0])
    assert [fact.words for fact in line.facts] == ["Material is level."]
    assert "Material is level." in text_of(line)


def test_facts_follow_the_board_after_it_has_been_painted(qtbot, tmp_path):
    session = open_session(tmp_path)
    line = on_screen(qtbot, session)
    play(session, "e4", "d5", "exd5")
    assert [fact.words for fact in line.facts] == ["Material is level."]
    qtbot.waitUntil(lambda: len(line.facts) > 1, timeout=2000)
    assert line.facts[0].words == "White is a pawn up."
    assert line.facts[1].kind is FactKind.HANGS
    assert "The pawn on d5 hangs" in line.facts[1].words
    session.file.close()


def test_pointing_at_a_square_tells_which_square_it_is(qtbot, tmp_path):
    session = open_session(tmp_path, FORK)
    line = on_screen(qtbot, session)
    told = []
    line.pointed.connect(told.append)
    label = line.findChild(QLabel)
    label.linkHovered.emit("e5,d6")
    label.linkHovered.emit("")
    assert told == [(chess.E5, chess.D6), ()]
    assert '<a href="e5,d6"' in text_of(line)
    session.file.close()


def test_facts_are_gone_through_with_the_keyboard_and_shown_on_the_board(qtbot, tmp_path):
    session = open_session(tmp_path, FORK)
    line = on_screen(qtbot, session)
    with qtbot.waitActive(line):
        line.activateWindow()
    told = []
    line.pointed.connect(told.append)
    line.setFocus(Qt.FocusReason.TabFocusReason)
    QTest.keyClick(line, Qt.Key.Key_Down)
    QTest.keyClick(line, Qt.Key.Key_Escape)
    assert told[-2:] == [line.facts[1].squares, ()]
    assert {chess.E5, chess.D6} == set(line.facts[1].squares)
    session.file.close()


def test_a_pin_is_told_with_its_pinner(qtbot, tmp_path):
    session = open_session(tmp_path, "4k3/8/5n2/8/1b6/2N5/1P6/4K3 w - - 0 1")
    line = on_screen(qtbot, session)
    assert "The knight on c3 is pinned to its king by the bishop on b4." in [fact.words for fact in line.facts]
    session.file.close()


def test_a_pin_to_the_queen_is_told_after_the_move_that_makes_it(qtbot, tmp_path):
    session = open_session(tmp_path)
    play(session, "d4", "d5", "c4", "e6", "Nc3", "Nf6", "Bg5")
    line = on_screen(qtbot, session)
    assert "The knight on f6 is pinned to the queen on d8 by the bishop on g5." in [fact.words for fact in line.facts]
    assert '<a href="f6,g5,d8"' in text_of(line)
    session.file.close()


def test_facts_can_be_read_out(qtbot, tmp_path):
    session = open_session(tmp_path, FORK)
    line = on_screen(qtbot, session)
    assert line.accessibleName() == "Facts of the position"
    assert "The rook on e5 hangs" in line.accessibleDescription()
    session.file.close()
