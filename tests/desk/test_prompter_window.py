"""The prompter as a window of its own."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest

from studyboard.desk.look import Look
from studyboard.desk.performance import Performance
from studyboard.desk.prompter_window import LEAST, PrompterWindow
from studyboard.desk.session import Session
from studyboard.example import example_study
from studyboard.store.study_file import StudyFile


@pytest.fixture
def session(tmp_path):
    session = Session(StudyFile.create(tmp_path / "talk.studyboard", example_study()))
    yield session
    session.file.close()


@pytest.fixture
def make(qtbot, session, settings):
    look = Look()
    look.reduce_motion(True)

    def make_window() -> PrompterWindow:
        window = PrompterWindow(session, look, Performance(session), settings)
        qtbot.addWidget(window)
        window.resize(900, 600)
        window.show()
        qtbot.waitExposed(window)
        window.prompter.refresh()
        return window

    return make_window


def difference(one, other):
    """The share of pixels that differ by more than a shade."""
    greys = [image.convertToFormat(QImage.Format.Format_Grayscale8) for image in (one, other)]
    pixels = [np.frombuffer(g.constBits(), np.uint8).reshape(g.height(), g.bytesPerLine()).astype(int) for g in greys]
    return float((np.abs(pixels[0] - pixels[1]) > 40).mean())


def test_mirrored_it_shows_everything_with_left_and_right_exchanged(qtbot, make):
    window = make()
    plain = window.grab().toImage()
    QTest.keyClick(window.prompter, Qt.Key.Key_M)
    assert window.mirrored
    mirrored = window.grab().toImage()
    assert mirrored != plain
    # Glyphs are smoothed for where they stand, so pictures of one text differ by a shade at its edges.
    assert difference(mirrored.flipped(Qt.Orientation.Horizontal), plain) < 0.01 < difference(mirrored, plain)
    QTest.keyClick(window.prompter, Qt.Key.Key_M)
    assert window.grab().toImage() == plain


def test_larger_type_is_kept_and_the_line_moves_along_instead(make):
    window = make()
    line = window.prompter._now
    before = line.factor
    for _ in range(9):
        QTest.keyClick(window.prompter, Qt.Key.Key_Plus)
    assert line.factor > before
    assert line.moves
    for _ in range(12):
        QTest.keyClick(window.prompter, Qt.Key.Key_Minus)
    assert window.type_size == LEAST
    assert line.factor == before


def test_the_remaining_time_is_told_while_the_talk_goes_on(qtbot, make, session):
    window = make()
    performance = window.prompter._performance
    performance.start()
    window.prompter.refresh()
    assert "left" in window.prompter._late.text()
    assert performance.run.left == pytest.approx(session.timeline.seconds, abs=0.5)
    performance.stop()


def test_page_down_of_a_remote_goes_on_and_page_up_goes_back(make, session):
    window = make()
    performance = window.prompter._performance
    QTest.keyClick(window.prompter, Qt.Key.Key_PageDown)
    assert performance.active
    for _ in range(3):
        QTest.keyClick(window.prompter, Qt.Key.Key_PageDown)
    there = session.node
    QTest.keyClick(window.prompter, Qt.Key.Key_PageDown)
    QTest.keyClick(window.prompter, Qt.Key.Key_PageUp)
    assert session.node == there
    performance.stop()


def test_what_was_chosen_comes_back_on_the_same_screens(make):
    window = make()
    window.mirror(True)
    window.set_size(2.0)
    window.resize(700, 500)
    window.close()
    again = make()
    assert again.mirrored
    assert again.type_size == 2.0
