"""Whoever works by keyboard sees where it is: every stop of Tab looks different with the keyboard there."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from tests.desk.windows import WINDOWS, opened
from tests.sound import virtual_microphone

#: Smaller differences of a pixel are not seen (of 255).
_FAINT = 24
#: As many pixels must differ, a short line's worth.
_LEAST = 20
#: How far around a widget its sign may be (px).
_AROUND = 4


@pytest.fixture(autouse=True, scope="module")
def _microphone() -> None:
    """Qt looks for a sound server only once; the windows that need one must not come first."""
    if not virtual_microphone.missing_packages():
        virtual_microphone.running()


def picture(window: QWidget, of: QWidget) -> NDArray[np.int16]:
    """A widget and what is right around it, as its window shows it, without a blinking cursor."""
    window.repaint()
    place = of.mapTo(window, QPoint(0, 0))
    rect = of.rect().translated(place).adjusted(-_AROUND, -_AROUND, _AROUND, _AROUND) & window.rect()
    image = window.grab(rect).toImage().convertToFormat(QImage.Format.Format_RGB32)
    pixels = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.bytesPerLine() // 4, 4)
    return pixels[:, : image.width(), :3].astype(np.int16)


def stops(window: QWidget) -> list[QWidget]:
    """Where Tab comes to, one after the other."""
    found: list[QWidget] = []
    for _ in range(80):
        QTest.keyClick(QApplication.focusWidget() or window, Qt.Key.Key_Tab)
        QApplication.processEvents()
        here = QApplication.focusWidget()
        if here is None or here in found:
            break
        found.append(here)
    return found


@pytest.fixture
def steady_cursor(qapp: QApplication) -> Iterator[None]:
    """The cursor of text does not blink, so that it is in every picture with the keyboard."""
    before = qapp.cursorFlashTime()
    qapp.setCursorFlashTime(0)
    yield
    qapp.setCursorFlashTime(before)


@pytest.mark.parametrize("name", WINDOWS)
def test_every_stop_of_tab_is_seen(
    qtbot: QtBot, desk: MainWindow, tmp_path: Path, steady_cursor: None, name: str
) -> None:
    unseen: list[str] = []
    with opened(name, desk, tmp_path) as window:
        found = [one for one in stops(window) if one.window() is window]
        # Where there is but one place for it, the keyboard is there.
        for one in found if len(found) > 1 else ():
            one.setFocus(Qt.FocusReason.TabFocusReason)
            QApplication.processEvents()
            with_it = picture(window, one)
            one.clearFocus()
            QApplication.processEvents()
            without = picture(window, one)
            if with_it.shape == without.shape:
                differ = (np.abs(with_it - without).max(axis=2) > _FAINT).sum()
                if differ < _LEAST:
                    unseen.append(f"{type(one).__name__} “{one.accessibleName()}”, {differ} pixels")
    assert found or name == "show_stage"
    assert unseen == []
