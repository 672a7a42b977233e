from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton

from studyboard.desk.look import Look
from studyboard.desk.performance import Performance
from studyboard.desk.stage import Stage
from studyboard.desk.stage_layout import StageGround, StageShape
from studyboard.model.edits import ChangeNode
from studyboard.model.script import SpokenLine
from tests.desk.small_study import small_session


@pytest.fixture
def small(tmp_path):
    """A session with a side-line, and its nodes."""
    session, nodes = small_session(tmp_path)
    yield session, nodes
    session.file.close()


@pytest.fixture
def stage(qtbot, small, settings):
    """The stage of that session on the screen."""
    stage = Stage(small[0], Look(), Performance(small[0]), settings)
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
    next(action for action in menu.actions() if action.text() == "Flip the board").trigger()
    assert stage.board.flipped


def say(session, nodes):
    for name, text in (("e4", "The king's pawn, of course."), ("Bc5", "And the bishop comes out.")):
        session.do(ChangeNode(nodes[name], "spoken", SpokenLine(text)))
    assert session.timeline.seconds > 0


def test_the_ground_can_be_keyed_out(stage):
    stage.set_ground(StageGround.GREEN)
    image = stage.grab().toImage()
    assert image.pixelColor(stage.picture.topLeft() + QPoint(3, 3)).name().upper() == "#00B140"


def test_captions_stand_below_the_board_and_inside_the_safe_part(stage, small):
    session, nodes = small
    session.show(nodes["Bc5"])
    without = stage.plan.board
    stage.show_captions(True)
    assert stage.plan.board.height() < without.height()
    assert not stage.plan.board.intersects(stage.plan.band)
    assert stage.picture.contains(stage.plan.band)
    say(session, nodes)
    session.show(nodes["e4"])
    assert " ".join(stage.caption)[:12] == session.study.nodes[session.node].spoken.text[:12]


def test_captions_follow_the_talk(qtbot, small, settings):
    session, nodes = small
    say(session, nodes)
    performance = Performance(session)
    stage = Stage(session, Look(), performance, settings)
    qtbot.addWidget(stage)
    stage.show_captions(True)
    performance.start()
    first = stage.caption
    seen = {first}
    for _ in range(12):
        performance.advance()
        seen.add(stage.caption)
    performance.stop()
    assert len(seen) > 2


@pytest.mark.parametrize("shape", [StageShape.WIDE, StageShape.TALL, StageShape.SQUARE])
@pytest.mark.parametrize("captions", [True, False])
def test_the_board_keeps_inside_the_part_that_every_screen_shows(stage, shape, captions):
    stage.set_shape(shape)
    stage.show_captions(captions)
    picture, board = stage.picture, stage.plan.board
    for gap, whole in (
        (board.left() - picture.left(), picture.width()),
        (picture.right() - board.right(), picture.width()),
        (board.top() - picture.top(), picture.height()),
        (picture.bottom() - max(board.bottom(), stage.plan.band.bottom()), picture.height()),
    ):
        assert gap >= whole * 0.05 - 2


def test_safe_margins_are_drawn_only_where_they_are_wanted(stage):
    plain = stage.grab().toImage()
    stage.show_margins(True)
    assert stage.grab().toImage() != plain
    stage.show_margins(False)
    assert stage.grab().toImage() == plain


def test_what_was_chosen_comes_back_on_the_same_screens(qtbot, small, settings):
    for expected in (StageShape.WIDE, StageShape.TALL):
        stage = Stage(small[0], Look(), Performance(small[0]), settings)
        qtbot.addWidget(stage)
        assert stage.shape is expected
        assert stage.captions_shown == (expected is StageShape.TALL)
        stage.set_shape(StageShape.TALL)
        stage.set_ground(StageGround.BLUE)
        stage.show_captions(True)
        stage.close()
    assert stage.ground is StageGround.BLUE


def test_a_remote_drives_the_talk_from_the_stage(qtbot, small, settings):
    session, _ = small
    performance = Performance(session)
    stage = Stage(session, Look(), performance, settings)
    qtbot.addWidget(stage)
    performance.start()
    before = session.node
    QTest.keyClick(stage, Qt.Key.Key_PageDown)
    assert session.node != before
    QTest.keyClick(stage, Qt.Key.Key_PageUp)
    assert session.node == before
    performance.stop()


def test_another_set_of_pieces_is_on_the_board_at_once(stage):
    before = stage.grab().toImage()
    look = stage._look
    look.choose_pieces("bold")
    assert stage.grab().toImage() != before
    look.choose_pieces("study")
    assert stage.grab().toImage() == before
