"""The wave of a take, in which stretches are chosen."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.look import Look
from studyboard.desk.take_wave import TakeWave
from studyboard.model.takes import Span

RATE = 48_000


@pytest.fixture
def wave(qtbot: QtBot, still_look: Look) -> TakeWave:
    """From second 10 to 14 of a take: two phrases, at 10.5 to 11.5 and at 12.5 to 13.5."""
    widget = TakeWave(still_look)
    qtbot.addWidget(widget)
    widget.resize(400, 100)
    widget.show()
    sound = np.random.default_rng(1).normal(0, 4, 4 * RATE)
    for start in (0.5, 2.5):
        sound[round(start * RATE) : round((start + 1) * RATE)] *= 600
    widget.show_sound(Span(10 * RATE, 14 * RATE), RATE, np.rint(sound).astype("<i2").tobytes())
    return widget


def test_arrows_step_finely_with_control_and_not_beyond_the_ends(wave: TakeWave, qtbot: QtBot) -> None:
    qtbot.keyClick(wave, Qt.Key.Key_Left)
    assert wave.cursor_sample == 10 * RATE
    qtbot.keyClick(wave, Qt.Key.Key_Right)
    qtbot.keyClick(wave, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    assert wave.cursor_sample == pytest.approx(10.055 * RATE, abs=1)
    qtbot.keyClick(wave, Qt.Key.Key_End)
    qtbot.keyClick(wave, Qt.Key.Key_PageDown)
    assert wave.cursor_sample == 14 * RATE


def test_what_is_chosen_is_told_and_escape_leaves_it(wave: TakeWave, qtbot: QtBot) -> None:
    for _ in range(4):
        qtbot.keyClick(wave, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert wave.words == "Chosen: 10.00 to 10.20 s, 0.20 s long."
    assert wave.accessibleDescription() == wave.words
    qtbot.keyClick(wave, Qt.Key.Key_Escape)
    assert wave.chosen is None


def test_a_double_click_chooses_the_phrase(wave: TakeWave, qtbot: QtBot) -> None:
    x = round(wave.width() * (13.0 - 10) / 4)
    qtbot.mouseDClick(wave, Qt.MouseButton.LeftButton, pos=QPoint(x, 40))
    chosen = wave.chosen
    assert chosen is not None
    assert chosen.start / RATE == pytest.approx(12.5, abs=0.1)
    assert chosen.end / RATE == pytest.approx(13.5, abs=0.1)


def test_the_space_bar_wants_it_played(wave: TakeWave, qtbot: QtBot) -> None:
    with qtbot.waitSignal(wave.play_wanted, timeout=5_000):
        qtbot.keyClick(wave, Qt.Key.Key_Space)


def test_what_is_shown_anew_keeps_the_choice_and_another_stretch_forgets_it(wave: TakeWave) -> None:
    wave.choose(Span(11 * RATE, 12 * RATE))
    wave.show_sound(Span(10 * RATE, 14 * RATE), RATE, bytes(8 * RATE), (Span(11 * RATE, 12 * RATE),))
    assert wave.chosen == Span(11 * RATE, 12 * RATE)
    wave.show_sound(Span(0, RATE), RATE, bytes(2 * RATE))
    assert wave.chosen is None
    assert not wave.grab().isNull()
