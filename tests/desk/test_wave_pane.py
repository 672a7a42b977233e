"""The wave of a take under the ruler: one goes through it by key and pointer, and the board follows."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from studyboard.desk.main_window import MainWindow
from studyboard.desk.wave_pane import WavePane
from studyboard.model.edits import ChangeLine, PutTake
from studyboard.model.script import FreeLine, Part, SpokenLine, words
from studyboard.model.takes import SaidLine, SoundTime, TakeEvent
from studyboard.timing.timeline import Happening

RATE = 48_000


@pytest.fixture
def pane(qtbot, desk: MainWindow) -> WavePane:
    """The wave of a take that tells the first beats as they are planned; the words of the greeting were found."""
    session = desk.session
    stretches = session.timeline.stretches[:6]
    events = tuple(
        TakeEvent(SoundTime(round(event.at * RATE), RATE), event.node, stretch.key)
        for stretch in stretches
        for event in stretch.events
        if event.what in (Happening.MOVE, Happening.BACK, Happening.CARD)
    )
    number = session.file.sound.begin_take("Evening", RATE, "2030-05-17T21:30:00+02:00")
    noise = np.random.default_rng(1).integers(-9000, 9000, round(stretches[-1].end * RATE)).astype("<i2")
    session.file.sound.append_sound(number, noise.tobytes(), events)
    take = session.file.sound.finish_take(number)
    greeting = stretches[0]
    said = SaidLine(
        greeting.key,
        greeting.spoken.text,
        tuple(round(word.at * RATE) for word in greeting.words),
        tuple(round(word.until * RATE) for word in greeting.words),
    )
    session.keep(PutTake(replace(take, said=(said,))))
    desk.actions_by_name["show_wave"].trigger()
    qtbot.waitUntil(lambda: desk.wave.view._peaks is not None, timeout=30_000)
    return desk.wave


def test_the_action_shows_and_hides_it(desk, pane) -> None:
    assert pane.isVisible()
    assert desk.actions_by_name["show_wave"].isChecked()
    desk.actions_by_name["show_wave"].trigger()
    assert not pane.isVisible()
    assert not desk.actions_by_name["show_wave"].isChecked()


def test_page_keys_go_from_move_to_move_and_the_board_follows(desk, pane) -> None:
    view = pane.view
    moves = [event for event in pane.take.events if event.at.samples > 0]
    for event in moves[:4]:
        QTest.keyClick(view, Qt.Key.Key_PageDown)
        shown = [one.node for one in pane.take.events if one.at.samples <= round(view.at * RATE)]
        assert view.at >= event.at.seconds - 1e-3
        assert desk.session.node == shown[-1]
    QTest.keyClick(view, Qt.Key.Key_Home)
    assert view.at == 0.0


def test_ctrl_and_arrows_go_from_word_to_word(pane) -> None:
    view = pane.view
    QTest.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    second = words(pane._session.timeline.stretches[0].spoken.text)[2]
    assert f"“{second}”" in view.accessibleDescription()
    before = view.at
    QTest.keyClick(view, Qt.Key.Key_Left, Qt.KeyboardModifier.ControlModifier)
    assert view.at < before


def test_arrows_go_by_seconds_and_tenths(pane) -> None:
    view = pane.view
    QTest.keyClick(view, Qt.Key.Key_Right)
    assert view.at == pytest.approx(1.0)
    QTest.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert view.at == pytest.approx(1.1)
    QTest.keyClick(view, Qt.Key.Key_End)
    assert view.at == pytest.approx(pane.take.length.seconds)


def test_dragging_scrubs_and_the_board_follows(desk, pane) -> None:
    view = pane.view
    last = pane.take.events[-1]
    x = round(view.scale.x(last.at.seconds + 0.2))
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=QPoint(30, 60))
    QTest.mouseMove(view, QPoint(x, 60))
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=QPoint(x, 60))
    assert desk.session.node == last.node
    assert pane.place.text() == view.accessibleDescription()


def test_zooming_keeps_the_place_in_view(pane) -> None:
    view = pane.view
    view.go_to(12.0)
    for _ in range(12):
        QTest.keyClick(view, Qt.Key.Key_Plus)
    assert view.scale.start <= 12.0 <= view.scale.end
    assert view.scale.end - view.scale.start < 8.0
    QTest.keyClick(view, Qt.Key.Key_0)
    assert view.scale.start == 0.0


def test_the_wave_is_painted_where_there_is_sound(pane) -> None:
    view = pane.view
    picture = view.grab().toImage()
    color = view._look.color("wave").rgb()
    painted = sum(picture.pixel(x, y) == color for x in range(100, 400, 7) for y in range(picture.height()))
    assert painted > 100


def test_listening_is_asked_for_this_take(qtbot, pane) -> None:
    with qtbot.waitSignal(pane.asked_to_listen) as asked:
        pane.listen_button.click()
    assert asked.args == [pane.take.id]


def test_without_a_take_it_says_so(desk) -> None:
    desk.actions_by_name["show_wave"].trigger()
    assert desk.wave.take is None
    assert not desk.wave.play_button.isEnabled()
    assert "No take" in desk.wave.view.accessibleDescription()


def test_words_that_are_rewritten_are_seen_when_writing_rests(qtbot, desk, pane) -> None:
    desk.session.do(ChangeLine(Part.GREETING, FreeLine(SpokenLine("Welcome to another evening."))))
    qtbot.waitUntil(lambda: pane.view._talk.words[0].text == "Welcome", timeout=10_000)


def test_a_place_shortly_before_a_second_is_told_by_the_nearest_tenth(pane) -> None:
    pane.view.go_to(2.97)
    assert pane.place.text().startswith("0:03.0")


def test_playing_goes_on_from_where_one_goes_and_tells_the_place(qtbot, desk, pane) -> None:
    last = pane.take.events[-1]
    pane.play_button.click()
    qtbot.waitUntil(lambda: 0.2 < pane.view.at < 5.0, timeout=10_000)
    assert pane.play_button.text() == "Pause"
    assert not pane.place.text().startswith("0:00.0")
    pane.view.go_to(last.at.seconds)
    qtbot.waitUntil(lambda: pane.view.at > last.at.seconds + 0.1, timeout=10_000)
    assert desk.session.node == last.node
    pane.play_button.click()
    assert pane.play_button.text() == "Play"
