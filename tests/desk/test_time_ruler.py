"""What a presenter sees and does on the time ruler."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QWheelEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.desk.time_ruler import TimeRuler
from studyboard.model.edits import ChangeLine, ChangeNode, ChangeRehearsed, ChangeSlot, PutTake, RemoveBranch
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.notation.pgn_reader import read_games
from studyboard.store.study_file import StudyFile

GAME = "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 (3. Bc4 Be7) 3... exd4) 3. Bb5 a6 4. Ba4 Nf6 *"
RATE = 48_000


def find(session: Session, *sans: str) -> int:
    """The node that these moves lead to."""
    node = session.study.root
    for san in sans:
        children = session.study.nodes[node].children
        node = next(child for child in children if session.positions.san(child) == san)
    return node


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    """A talk of 4 seconds a beat, with a greeting: 13 beats of moves and one without, 56 seconds."""
    study = next(read_games(GAME)).study
    for node in list(study.nodes.values()):
        if node.parent is not None:
            study.nodes[node.id] = replace(node, intended=4.0)
    study.lines[Part.GREETING] = FreeLine(SpokenLine("Good evening, everybody."), 4.0)
    session = Session(StudyFile.create(tmp_path / "talk.studyboard", study))
    yield session
    session.file.close()


@pytest.fixture
def ruler(qtbot: QtBot, session: Session, still_look: Look) -> TimeRuler:
    ruler = TimeRuler(session, still_look)
    qtbot.addWidget(ruler)
    ruler.resize(1000, ruler.sizeHint().height())
    ruler.show()
    qtbot.waitExposed(ruler)
    ruler.setFocus()
    session.planned.emit()
    return ruler


def beat_of(session: Session, key: int | Part) -> int:
    return next(index for index, stretch in enumerate(session.timeline.stretches) if stretch.key == key)


def click(qtbot: QtBot, ruler: TimeRuler, at: QPoint) -> None:
    qtbot.mouseClick(ruler, Qt.MouseButton.LeftButton, pos=at)


def pixels(ruler: TimeRuler, color: int) -> int:
    image = ruler.grab().toImage()
    return sum(image.pixel(x, y) == color for x in range(image.width()) for y in range(image.height()))


def near(ruler: TimeRuler, color: QColor) -> int:
    """Pixels that are painted in about this colour: text has soft edges."""
    image = ruler.grab().toImage()
    seen = (image.pixelColor(x, y) for x in range(image.width()) for y in range(image.height()))
    wanted = color.getRgb()[:3]
    return sum(max(abs(a - b) for a, b in zip(pixel.getRgb()[:3], wanted, strict=True)) < 60 for pixel in seen)


def test_blocks_follow_each_other_to_scale(session: Session, ruler: TimeRuler) -> None:
    rects = [ruler.block_rect(index) for index in range(len(session.timeline.stretches))]
    assert len(rects) == 14
    widths = {rect.width() for rect in rects if rect is not None}
    assert max(widths) - min(widths) <= 1, "they all take four seconds"
    assert all(
        a is not None and b is not None and abs(b.left() - a.left() - a.width()) <= 1 for a, b in pairwise(rects)
    )


def test_side_lines_hang_below_the_main_line_by_their_depth(session: Session, ruler: TimeRuler) -> None:
    keys = (
        find(session, "e4", "e5", "Nf3", "Nc6"),
        find(session, "e4", "e5", "Nf3", "d6"),
        find(session, "e4", "e5", "Nf3", "d6", "Bc4"),
    )
    tops = []
    for key in keys:
        rect = ruler.block_rect(beat_of(session, key))
        assert rect is not None
        tops.append(rect.top())
    assert tops == sorted(set(tops))


def test_a_click_on_a_block_shows_its_move(qtbot: QtBot, session: Session, ruler: TimeRuler) -> None:
    node = find(session, "e4", "e5", "Nf3", "d6", "d4")
    index = beat_of(session, node)
    rect = ruler.block_rect(index)
    assert rect is not None
    with qtbot.waitSignal(ruler.beat_chosen) as chosen:
        click(qtbot, ruler, rect.center())
    assert chosen.args == [index]
    assert session.node == node
    assert ruler.current_beat == index


def test_stepping_on_the_board_makes_the_beat_of_that_move_current(session: Session, ruler: TimeRuler) -> None:
    for node in (find(session, "e4"), find(session, "e4", "e5", "Nf3", "d6"), find(session, "e4", "e5")):
        session.show(node)
        assert ruler.current_beat == beat_of(session, node)


def test_the_current_block_is_painted_in_the_accent(session: Session, ruler: TimeRuler, still_look: Look) -> None:
    accent = still_look.color("accent").rgb()
    session.show(find(session, "e4", "e5", "Nf3", "Nc6", "Bb5"))
    rect = ruler.block_rect(beat_of(session, session.node))
    assert rect is not None
    image = ruler.grab().toImage()
    assert image.pixel(rect.right() - 6, rect.top() + 4) == accent
    session.show(find(session, "e4"))
    assert ruler.grab().toImage().pixel(rect.right() - 6, rect.top() + 4) != accent


def test_the_arrows_go_to_the_beat_before_and_after(qtbot: QtBot, session: Session, ruler: TimeRuler) -> None:
    session.show(find(session, "e4", "e5", "Nf3", "Nc6"))
    qtbot.keyClick(ruler, Qt.Key.Key_Right)
    assert session.node == find(session, "e4", "e5", "Nf3", "d6"), "the side-line is told after the main move"
    qtbot.keyClick(ruler, Qt.Key.Key_Left)
    assert session.node == find(session, "e4", "e5", "Nf3", "Nc6")
    qtbot.keyClick(ruler, Qt.Key.Key_Home)
    assert ruler.current_beat == beat_of(session, Part.GREETING)
    qtbot.keyClick(ruler, Qt.Key.Key_End)
    assert session.node == list(session.study.main_line())[-1]


def test_the_slot_says_how_far_the_talk_is_over_or_under(qtbot: QtBot, session: Session, ruler: TimeRuler) -> None:
    assert ruler.slot_label == ""
    for slot, label in ((40.0, "slot 0:40 · 16 s over"), (60.0, "slot 1:00 · 4 s under")):
        with qtbot.waitSignal(session.planned):
            session.do(ChangeSlot(slot))
        assert ruler.slot_label == label


def test_what_is_over_the_slot_has_a_ground_of_its_own(
    qtbot: QtBot, session: Session, ruler: TimeRuler, still_look: Look
) -> None:
    ground = still_look.color("over_soft").rgb()
    with qtbot.waitSignal(session.planned):
        session.do(ChangeSlot(60.0))
    assert pixels(ruler, ground) == 0
    with qtbot.waitSignal(session.planned):
        session.do(ChangeSlot(40.0))
    assert pixels(ruler, ground) > 500


def test_the_talk_is_drawn_anew_when_it_is_timed_anew(qtbot: QtBot, session: Session, ruler: TimeRuler) -> None:
    node = find(session, "e4", "e5")
    before = ruler.block_rect(beat_of(session, node))
    with qtbot.waitSignal(session.planned):
        session.do(ChangeNode(node, "intended", 20.0))
    after = ruler.block_rect(beat_of(session, node))
    assert before is not None
    assert after is not None
    assert after.width() > 2 * before.width()


def test_a_think_pause_is_hatched_at_the_end_of_its_beat(
    qtbot: QtBot, session: Session, ruler: TimeRuler, still_look: Look
) -> None:
    color = still_look.color("think").rgb()
    assert pixels(ruler, color) == 0
    node = find(session, "e4")
    with qtbot.waitSignal(session.planned):
        session.do(ChangeNode(node, "think", 2.0))
    session.show(find(session, "e4", "e5"))
    rect = ruler.block_rect(beat_of(session, node))
    assert rect is not None
    image = ruler.grab(rect).toImage()
    ground = still_look.color("think_soft").rgb()
    hatched = [x for x in range(image.width()) if any(image.pixel(x, y) == ground for y in range(image.height()))]
    assert hatched
    assert min(hatched) >= image.width() / 2 - 2


def test_zooming_keeps_the_second_under_the_pointer_and_fit_shows_all(
    qtbot: QtBot, session: Session, ruler: TimeRuler
) -> None:
    at = QPointF(700.0, ruler.height() / 2)
    second = ruler.scale.seconds(at.x())
    turned = QWheelEvent(
        at,
        ruler.mapToGlobal(at),
        QPoint(),
        QPoint(0, 360),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.ControlModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    fitting = ruler.scale.per_second
    QApplication.sendEvent(ruler, turned)
    assert ruler.scale.per_second > 1.5 * fitting
    assert ruler.scale.seconds(at.x()) == pytest.approx(second, abs=0.05)
    qtbot.keyClick(ruler, Qt.Key.Key_0)
    assert ruler.scale.per_second == pytest.approx(fitting)
    qtbot.keyClick(ruler, Qt.Key.Key_Plus)
    assert ruler.scale.per_second > fitting
    for _ in range(4):
        qtbot.keyClick(ruler, Qt.Key.Key_Minus)
    assert ruler.scale.per_second == pytest.approx(fitting), "it never gets smaller than the whole talk"


def test_dragging_pans_and_chooses_nothing(qtbot: QtBot, session: Session, ruler: TimeRuler) -> None:
    ruler.zoom(4.0, 0.0)
    node, start = session.node, ruler.scale.start
    y = ruler.height() // 2
    qtbot.mousePress(ruler, Qt.MouseButton.LeftButton, pos=QPoint(600, y))
    qtbot.mouseMove(ruler, QPoint(500, y))
    qtbot.mouseMove(ruler, QPoint(400, y))
    qtbot.mouseRelease(ruler, Qt.MouseButton.LeftButton, pos=QPoint(400, y))
    assert (ruler.scale.start - start) * ruler.scale.per_second == pytest.approx(200, abs=2)
    assert session.node == node


def test_the_current_beat_stays_in_view_when_zoomed(qtbot: QtBot, session: Session, ruler: TimeRuler) -> None:
    session.show(find(session, "e4"))
    ruler.zoom(6.0)
    for _ in range(11):
        qtbot.keyClick(ruler, Qt.Key.Key_Right)
        rect = ruler.block_rect(ruler.current_beat or 0)
        assert rect is not None
        assert rect.intersects(ruler.rect())
        assert rect.left() >= 0


def test_the_latest_kept_take_lies_above_its_beats(
    qtbot: QtBot, session: Session, ruler: TimeRuler, still_look: Look
) -> None:
    keys = [find(session, "e4", "e5"), find(session, "e4", "e5", "Nf3")]
    events = tuple(TakeEvent(SoundTime(number * 4 * RATE, RATE), key, key) for number, key in enumerate(keys))
    height = ruler.sizeHint().height()
    assert pixels(ruler, still_look.color("wave").rgb()) == 0
    with qtbot.waitSignal(session.planned):
        session.do(PutTake(Take(1, "Take 1", RATE, 8 * RATE, "2026-01-15T19:30:00+01:00", events)))
    assert ruler.sizeHint().height() > height
    ruler.resize(1000, ruler.sizeHint().height())
    first = ruler.block_rect(beat_of(session, keys[0]))
    assert first is not None
    image = ruler.grab().toImage()
    wave = still_look.color("wave").rgb()
    strip = [x for x in range(image.width()) if any(image.pixel(x, y) == wave for y in range(first.top()))]
    assert min(strip) == pytest.approx(first.left(), abs=2), "it begins where its first beat is planned"
    assert max(strip) - min(strip) == pytest.approx(2 * first.width(), abs=4)


def test_what_a_beat_took_in_rehearsal_is_pointed_at(
    qtbot: QtBot, session: Session, ruler: TimeRuler, still_look: Look
) -> None:
    color = still_look.color("over").rgb()
    assert pixels(ruler, color) == 0
    with qtbot.waitSignal(session.planned):
        session.do(ChangeRehearsed(((find(session, "e4"), 7.0),)))
    assert pixels(ruler, color) > 3


def test_the_playhead_can_be_set_and_taken_away(session: Session, ruler: TimeRuler) -> None:
    without = ruler.grab().toImage()
    ruler.set_playhead(20.0)
    with_it = ruler.grab().toImage()
    x = round(ruler.scale.x(20.0))
    assert with_it != without
    assert any(with_it.pixel(x, y) != without.pixel(x, y) for y in range(with_it.height()))
    ruler.set_playhead(None)
    assert ruler.grab().toImage() == without


def test_a_line_without_a_move_becomes_current_too(session: Session, ruler: TimeRuler) -> None:
    session.show(find(session, "e4"))
    ruler.show_part(Part.GREETING)
    assert ruler.current_beat == beat_of(session, Part.GREETING)
    assert "Greeting" in ruler.accessibleDescription()


def test_a_screen_reader_is_told_which_beat_it_is_and_how_long(session: Session, ruler: TimeRuler) -> None:
    session.do(ChangeSlot(60.0))
    session.show(find(session, "e4", "e5"))
    session.planned.emit()
    words = ruler.accessibleDescription()
    assert words.startswith("Beat 3 of 14")
    assert "e5" in words
    assert "4 seconds" in words
    assert "4 s under" in words


def test_deleting_what_is_shown_leaves_a_ruler_that_can_be_painted(
    qtbot: QtBot, session: Session, ruler: TimeRuler
) -> None:
    start = find(session, "e4", "e5", "Nf3", "d6")
    session.show(start)
    session.do(RemoveBranch(start))
    ruler.repaint()
    rect = ruler.block_rect(beat_of(session, find(session, "e4")))
    assert rect is not None
    with qtbot.waitSignal(session.planned):
        session.do(ChangeLine(Part.THANKS, FreeLine(SpokenLine("Thank you."))))
    assert ruler.current_beat is not None


def test_a_study_without_moves_says_that_there_is_nothing_yet(
    qtbot: QtBot, tmp_path: Path, session: Session, ruler: TimeRuler
) -> None:
    session.open(StudyFile.create(tmp_path / "empty.studyboard"))
    assert ruler.current_beat is None
    for key in (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Home, Qt.Key.Key_End):
        qtbot.keyClick(ruler, key)
    click(qtbot, ruler, QPoint(300, 40))
    assert session.node == session.study.root
    assert ruler.accessibleDescription() == "No beat is told here."


def edge_of(ruler: TimeRuler, index: int) -> QPoint:
    rect = ruler.block_rect(index)
    assert rect is not None
    return QPoint(rect.right() + 1, rect.center().y())


def test_dragging_the_end_of_a_beat_sets_its_length_and_locks_it(
    qtbot: QtBot, session: Session, ruler: TimeRuler
) -> None:
    node = find(session, "e4", "e5")
    index = beat_of(session, node)
    at = edge_of(ruler, index)
    six = QPoint(round(ruler.scale.x(session.timeline.stretches[index].start + 6.0)), at.y())
    qtbot.mouseMove(ruler, at)
    assert ruler.cursor().shape() == Qt.CursorShape.SplitHCursor
    qtbot.mousePress(ruler, Qt.MouseButton.LeftButton, pos=at)
    qtbot.mouseMove(ruler, six)
    before = ruler.grab().toImage()
    qtbot.mouseRelease(ruler, Qt.MouseButton.LeftButton, pos=six)
    assert session.study.nodes[node].intended == pytest.approx(6.0, abs=0.15)
    assert session.study.nodes[node].locked
    assert ruler.grab().toImage() != before, "the length in the hand is not drawn any more"
    assert session.file.undo_label == "Set the intended length"
    session.undo()
    assert (session.study.nodes[node].intended, session.study.nodes[node].locked) == (4.0, False)


def test_escape_lets_go_of_an_end_without_changing_anything(qtbot: QtBot, session: Session, ruler: TimeRuler) -> None:
    at = edge_of(ruler, 3)
    qtbot.mousePress(ruler, Qt.MouseButton.LeftButton, pos=at)
    qtbot.mouseMove(ruler, at + QPoint(60, 0))
    qtbot.keyClick(ruler, Qt.Key.Key_Escape)
    qtbot.mouseRelease(ruler, Qt.MouseButton.LeftButton, pos=at + QPoint(60, 0))
    assert not session.file.can_undo


def test_while_the_talk_is_run_through_no_end_is_taken_hold_of(
    qtbot: QtBot, session: Session, ruler: TimeRuler
) -> None:
    ruler.can_stretch = False
    at = edge_of(ruler, 3)
    qtbot.mousePress(ruler, Qt.MouseButton.LeftButton, pos=at)
    qtbot.mouseMove(ruler, at + QPoint(60, 0))
    qtbot.mouseRelease(ruler, Qt.MouseButton.LeftButton, pos=at + QPoint(60, 0))
    assert not session.file.can_undo


def test_shift_and_the_arrows_make_a_beat_longer_and_shorter(qtbot: QtBot, session: Session, ruler: TimeRuler) -> None:
    node = find(session, "e4", "e5")
    session.show(node)
    qtbot.keyClick(ruler, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(ruler, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert session.study.nodes[node].intended == 5.0
    qtbot.keyClick(ruler, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert session.study.nodes[node].intended == 4.5
    assert session.node == node


def test_a_take_says_how_far_each_beat_was_from_the_plan(
    qtbot: QtBot, session: Session, ruler: TimeRuler, still_look: Look
) -> None:
    keys = [find(session, "e4"), find(session, "e4", "e5")]
    over = still_look.color("over")
    ruler.zoom(4)
    for length, red in ((4, False), (9, True)):
        events = tuple(TakeEvent(SoundTime(n * length * RATE, RATE), key, key) for n, key in enumerate(keys))
        with qtbot.waitSignal(session.planned):
            session.do(PutTake(Take(length, "", RATE, 2 * length * RATE, "2026-01-15T19:30:00+01:00", events)))
        ruler.resize(1000, ruler.sizeHint().height())
        assert (near(ruler, over) > 0) == red
