"""Dragging branches in the lanes to other moves."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.lanes import Lanes
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.store.study_file import StudyFile
from tests.desk.lane_studies import find, study_of

GAME = "1. d4 d5 (1... Nf6 2. c4 e6 3. Nc3 Bb4) 2. c4 e6 3. Nc3 Nf6 4. Bg5 Be7 5. e3 O-O 6. Nf3 h6 7. Bh4 b6 *"


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    session = Session(StudyFile.create(tmp_path / "talk.studyboard", study_of(GAME)))
    yield session
    session.file.close()


@pytest.fixture
def lanes(qtbot: QtBot, session: Session, still_look: Look) -> Lanes:
    lanes = Lanes(session, still_look)
    qtbot.addWidget(lanes)
    lanes.resize(900, 760)
    lanes.show()
    qtbot.waitExposed(lanes)
    lanes.setFocus()
    return lanes


def at(lanes: Lanes, node: int) -> QPoint:
    rect = lanes.row_rect(node)
    assert rect is not None
    return QPoint(rect.left() + 20, rect.top() + 10)


def hold(qtbot: QtBot, lanes: Lanes, branch: int, over: QPoint) -> None:
    begin = at(lanes, branch)
    qtbot.mousePress(lanes.viewport(), Qt.MouseButton.LeftButton, pos=begin)
    qtbot.mouseMove(lanes.viewport(), (begin + over) / 2)
    qtbot.mouseMove(lanes.viewport(), over)


def drag(qtbot: QtBot, lanes: Lanes, branch: int, over: QPoint) -> None:
    hold(qtbot, lanes, branch, over)
    qtbot.mouseRelease(lanes.viewport(), Qt.MouseButton.LeftButton, pos=over)


def test_a_branch_goes_after_the_move_on_which_it_is_dropped(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    study = session.study
    pin = find(study, "d4", "Nf6", "c4", "e6", "Nc3", "Bb4")
    target = find(study, "d4", "d5", "c4", "e6", "Nc3")
    drag(qtbot, lanes, pin, at(lanes, target))
    assert study.nodes[pin].parent == target
    assert study.nodes[target].children[1:] == (pin,)
    assert session.node == pin
    session.undo()
    assert find(study, "d4", "Nf6", "c4", "e6", "Nc3", "Bb4") == pin


def test_where_a_move_is_not_legal_the_drop_is_refused_with_the_reason(
    qtbot: QtBot, session: Session, lanes: Lanes
) -> None:
    study = session.study
    before = dict(study.nodes)
    pin = find(study, "d4", "Nf6", "c4", "e6", "Nc3", "Bb4")
    target = find(study, "d4", "d5", "c4", "e6")
    with qtbot.waitSignal(session.refused) as told:
        drag(qtbot, lanes, pin, at(lanes, target))
    assert "does not fit here" in told.args[0]
    assert study.nodes == before


def test_the_place_is_shown_before_letting_go_and_a_refusal_looks_different(
    qtbot: QtBot, session: Session, lanes: Lanes, still_look: Look
) -> None:
    study = session.study
    pin = find(study, "d4", "Nf6", "c4", "e6", "Nc3", "Bb4")
    colours = {}
    for name, node in (("fits", find(study, "d4", "d5", "c4", "e6", "Nc3")), ("not", find(study, "d4", "d5", "c4"))):
        rect = lanes.row_rect(node)
        assert rect is not None
        hold(qtbot, lanes, pin, at(lanes, node))
        picture = lanes.viewport().grab(rect).toImage()
        colours[name] = {picture.pixelColor(x, 1).name() for x in range(10, rect.width() - 10)}
        qtbot.keyClick(lanes, Qt.Key.Key_Escape)
        qtbot.mouseRelease(lanes.viewport(), Qt.MouseButton.LeftButton, pos=at(lanes, node))
    assert colours["fits"] == {still_look.color("focus").name()}
    assert still_look.color("over").name() in colours["not"]
    assert len(colours["not"]) > 1, "a broken frame"


def test_escape_leaves_everything_where_it_was(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    study = session.study
    before = dict(study.nodes)
    target = find(study, "d4", "d5", "c4", "e6", "Nc3")
    hold(qtbot, lanes, find(study, "d4", "Nf6", "c4", "e6", "Nc3", "Bb4"), at(lanes, target))
    qtbot.keyClick(lanes, Qt.Key.Key_Escape)
    qtbot.mouseRelease(lanes.viewport(), Qt.MouseButton.LeftButton, pos=at(lanes, target))
    assert study.nodes == before


def test_a_branch_dropped_on_a_move_of_its_own_stays(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    study = session.study
    before = dict(study.nodes)
    drag(qtbot, lanes, find(study, "d4", "d5"), at(lanes, find(study, "d4", "d5", "c4")))
    assert study.nodes == before


def test_the_lanes_scroll_on_below_what_is_held_at_their_edge(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    lanes.resize(900, 260)
    session.show(find(session.study, "d4", "Nf6"))
    bar = lanes.verticalScrollBar()
    bar.setValue(0)
    edge = QPoint(100, lanes.viewport().height() - 4)
    hold(qtbot, lanes, find(session.study, "d4", "Nf6"), edge)
    qtbot.waitUntil(lambda: bar.value() == bar.maximum())
    qtbot.keyClick(lanes, Qt.Key.Key_Escape)
