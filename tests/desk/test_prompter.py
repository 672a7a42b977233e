"""The prompter at many sizes: the whole line is read, or the words that are due are in view."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.desk.prompter import Prompter
from studyboard.desk.prompter_line import SMALLEST
from studyboard.model.script import word_spans
from tests.desk.text_size import text_scaled
from tests.sound import virtual_microphone

SIZES = [(1.0, 1024, 700), (1.0, 1366, 768), (1.67, 1366, 768), (1.5, 1920, 1080)]


@pytest.fixture(scope="module", autouse=True)
def _sound_before_qt_looks() -> None:
    """Qt looks for a sound server only once; the Record stage makes it look."""
    if not virtual_microphone.missing_packages():
        virtual_microphone.running()


def settle() -> None:
    """Let layouts come to rest."""
    for _ in range(5):
        QApplication.processEvents()


def whole_line_is_seen(prompter: Prompter) -> bool:
    """True where every pixel of the line's text lies in view and no label of the prompter is cut."""
    line = prompter._now
    document = line.document()
    labels = [label for label in (prompter._where, prompter._press, prompter._elapsed) if label.isVisible()]
    return (
        not line.moves
        and document.size().height() <= line.viewport().height()
        and all(label.height() >= label.minimumSizeHint().height() - 1 for label in labels)
    )


@pytest.mark.parametrize(("factor", "width", "height"), SIZES)
@pytest.mark.parametrize("stage", ["rehearse", "record"])
def test_every_line_of_the_talk_is_seen_whole(
    qtbot: QtBot, desk: MainWindow, stage: str, factor: float, width: int, height: int
) -> None:
    with text_scaled(desk.look, factor):
        getattr(desk, f"{stage}_stage")()
        desk.resize(width, height)
        settle()
        desk.performance.start()
        while not desk.performance.run.finished:
            settle()
            assert whole_line_is_seen(desk.prompter), desk.prompter._where.text()
            desk.performance.advance()
        desk.performance.stop()


def test_in_little_room_the_next_line_goes_before_the_present_one_gets_small(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    desk.resize(1366, 768)
    settle()
    desk.performance.start()
    settle()
    assert desk.prompter._next.isVisible()
    large = desk.prompter._now.factor
    desk.prompter.setFixedHeight(180)
    settle()
    assert not desk.prompter._next.isVisible()
    assert SMALLEST <= desk.prompter._now.factor < large


def test_the_type_is_no_smaller_than_that_of_controls(desk: MainWindow) -> None:
    assert SMALLEST >= 1.0


def test_a_line_that_does_not_fit_follows_the_talk_to_the_words_that_are_due(qtbot: QtBot, desk: MainWindow) -> None:
    now = [0.0]
    with text_scaled(desk.look, 2.0):
        desk.rehearse_stage()
        desk.prompter.setFixedHeight(desk.prompter.minimumSizeHint().height())
        desk.performance.start(clock=lambda: now[0])
        settle()
        line, run = desk.prompter._now, desk.performance.run
        assert line.moves
        words = len(word_spans(run.beats[run.beat].spoken.text))
        assert line.sees(0)
        assert not line.sees(words - 1)
        for share in (0.25, 0.5, 0.75, 1.0):
            now[0] = share * run.planned[run.beat]
            desk.performance.ticked.emit()
            settle()
            assert line.sees(min(words - 1, int(share * words)))
        desk.performance.stop()


def test_a_line_waits_before_the_cue_that_has_not_been_played(qtbot: QtBot, desk: MainWindow) -> None:
    now = [0.0]
    with text_scaled(desk.look, 2.0):
        desk.rehearse_stage()
        desk.prompter.setFixedHeight(desk.prompter.minimumSizeHint().height())
        desk.performance.start(clock=lambda: now[0])
        run, line = desk.performance.run, desk.prompter._now
        target = next(
            beat
            for beat in range(len(run.beats))
            if sum(stop.beat == beat for stop in run.stops) > 2 and len(word_spans(run.beats[beat].spoken.text)) > 30
        )
        while run.beat < target:
            desk.performance.advance()
        settle()
        upcoming = run.next_stop
        assert upcoming is not None
        assert upcoming.beat == target
        cue = next(cue.word for cue in run.beats[target].spoken.cues if cue.node == upcoming.visit.node)
        now[0] += 10 * run.planned[target]
        desk.performance.ticked.emit()
        settle()
        assert line.sees(cue)
        desk.performance.stop()


def test_the_wheel_looks_ahead_until_the_next_press(qtbot: QtBot, desk: MainWindow) -> None:
    with text_scaled(desk.look, 2.0):
        desk.rehearse_stage()
        desk.prompter.setFixedHeight(desk.prompter.minimumSizeHint().height())
        desk.performance.start()
        settle()
        line = desk.prompter._now
        event = QWheelEvent(
            QPointF(20, 20),
            QPointF(20, 20),
            QPoint(0, 0),
            QPoint(0, -120),
            Qt.MouseButton.NoButton,
            Qt.KeyboardModifier.NoModifier,
            Qt.ScrollPhase.NoScrollPhase,
            False,
        )
        QApplication.sendEvent(desk.prompter, event)
        ahead = line.verticalScrollBar().value()
        assert ahead > 0
        desk.performance.ticked.emit()
        settle()
        assert line.verticalScrollBar().value() == ahead
        desk.performance.stop()


def test_with_motion_the_line_glides_instead_of_jumping(qtbot: QtBot, desk: MainWindow) -> None:
    now = [0.0]
    desk.look.reduce_motion(False)
    with text_scaled(desk.look, 2.0):
        desk.rehearse_stage()
        desk.prompter.setFixedHeight(desk.prompter.minimumSizeHint().height())
        desk.performance.start(clock=lambda: now[0])
        settle()
        line = desk.prompter._now
        now[0] = desk.performance.run.planned[0] * 0.9
        desk.performance.ticked.emit()
        assert line.verticalScrollBar().value() == 0
        words = len(word_spans(desk.performance.run.beats[0].spoken.text))
        qtbot.waitUntil(lambda: line.sees(int(0.9 * words)))
        desk.performance.stop()


def test_a_click_anywhere_in_the_line_goes_on(qtbot: QtBot, desk: MainWindow) -> None:
    desk.rehearse_stage()
    desk.performance.start()
    settle()
    before = desk.performance.run.next_stop
    where = desk.prompter._now.mapTo(desk, desk.prompter._now.rect().center())
    target = desk.childAt(where)
    assert target is not None
    qtbot.mouseClick(target, Qt.MouseButton.LeftButton)
    assert before is not None
    assert desk.session.node == before.visit.node
    desk.performance.stop()


def test_the_clock_row_fits_with_large_text(qtbot: QtBot, desk: MainWindow) -> None:
    with text_scaled(desk.look, 2.0):
        desk.rehearse_stage()
        desk.resize(1024, 768)
        desk.performance.start()
        settle()
        prompter = desk.prompter
        assert prompter._elapsed.width() >= prompter._elapsed.fontMetrics().horizontalAdvance(prompter._elapsed.text())
        assert prompter._late.shown_text in (prompter._late.text(), prompter._late.shorter)
        assert prompter._beat_clock.shown_text.endswith(" s")
        desk.performance.stop()


def test_in_little_room_clock_and_next_line_keep_off_the_frame(qtbot: QtBot, desk: MainWindow) -> None:
    desk.record_stage()
    desk.resize(1024, 600)
    settle()
    prompter = desk.prompter
    assert prompter._elapsed.mapTo(prompter, QPoint()).x() >= 12
    assert prompter._beat_clock.mapTo(prompter, QPoint(prompter._beat_clock.width(), 0)).x() <= prompter.width() - 12
