from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton

from studyboard.desk.look import Look
from studyboard.desk.stage import Stage, StageShape
from tests.desk.small_study import small_session


@pytest.fixture
def small(tmp_path):
    """A session with a side-line, and its nodes."""
    session, nodes = small_session(tmp_path)
    yield session, nodes
    session.file.close()


@pytest.fixture
def stage(qtbot, small):
    """The stage of that session on the screen."""
    stage = Stage(small[0], Look())
    qtbot.addWidget(stage)
    stage.show()
    qtbot.waitExposed(stage)
    yield stage
    stage.close()


@pytest.mark.parametrize(
    ("shape", "ratio"), [(StageShape.WIDE, 16 / 9), (StageShape.TALL, 9 / 16), (StageShape.SQUARE, 1.0)]
)
def test_the_picture_has_its_shape_whatever_the_window_has(stage, shape, ratio):
    stage.set_shape(shape)
    for size in ((900, 500), (500, 900), (600, 600)):
        stage.resize(*size)
        assert stage.picture.width() / stage.picture.height() == pytest.approx(ratio, rel=0.01)
        assert stage.rect().contains(stage.picture)
        assert stage.picture.contains(stage.board.geometry())


def test_a_free_picture_fills_the_window(stage):
    stage.set_shape(StageShape.FREE)
    stage.resize(700, 400)
    assert stage.picture == stage.rect()


def test_the_stage_follows_the_session(stage, small):
    session, nodes = small
    before = stage.grab().toImage()
    session.show(nodes["Bc5"])
    stage.board.motion.finish()
    assert stage.board.board == session.board
    assert stage.grab().toImage() != before


def test_nothing_but_the_board_is_in_the_picture(stage):
    assert stage.findChildren(QAbstractButton) == []
    image = stage.grab().toImage()
    ground = image.pixelColor(stage.picture.topLeft() + QPoint(2, 2))
    corner = image.pixelColor(stage.picture.bottomRight() - QPoint(2, 2))
    assert ground == corner


def test_no_move_can_be_played_on_the_stage(stage, small):
    session, nodes = small
    place = stage.board.place
    for square in (12, 28):
        where = stage.board.mapTo(stage, place.centre(square).toPoint())
        QTest.mouseClick(stage, Qt.MouseButton.LeftButton, pos=where)
    assert session.node == nodes["start"]


def test_f11_and_a_double_click_fill_the_screen_and_escape_leaves_it(stage, qtbot):
    QTest.keyClick(stage, Qt.Key.Key_F11)
    assert stage.isFullScreen()
    QTest.keyClick(stage, Qt.Key.Key_Escape)
    assert not stage.isFullScreen()
    assert stage.isVisible()
    QTest.mouseDClick(stage, Qt.MouseButton.LeftButton, pos=QPoint(20, 20))
    assert stage.isFullScreen()
    QTest.mouseDClick(stage, Qt.MouseButton.LeftButton, pos=QPoint(20, 20))
    assert not stage.isFullScreen()


def test_escape_closes_the_window_and_says_so(stage, qtbot):
    with qtbot.waitSignal(stage.closed):
        QTest.keyClick(stage, Qt.Key.Key_Escape)
    assert not stage.isVisible()


def test_the_menu_offers_the_shapes(stage):
    menu = stage.menu()
    labels = [action.text() for action in menu.actions() if action.text()]
    assert labels[:4] == ["Wide (16:9)", "Tall (9:16)", "Square (1:1)", "Free"]
    tall = menu.actions()[1]
    tall.trigger()
    assert stage.shape is StageShape.TALL
    menu.actions()[5].trigger()
    assert stage.board.flipped
