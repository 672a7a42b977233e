"""Where the windows beside the desk stood, remembered for each set of screens."""

from __future__ import annotations

import hashlib

from PySide6.QtCore import QByteArray, QRect, QSettings, QSize, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

_GROUP = "windows"
#: The desk asks for as much of a large screen (share of each side).
_SHARE = 0.85


def screens() -> str:
    """A name for the screens that are connected now: their models, places and sizes."""
    told = sorted(
        f"{screen.manufacturer()} {screen.model()} {screen.name()} {screen.geometry().getRect()}"
        for screen in QGuiApplication.screens()
    )
    return hashlib.sha256("|".join(told).encode()).hexdigest()[:12]


def keep_window(settings: QSettings, name: str, window: QWidget, choices: dict[str, object]) -> None:
    """Write down where *window* stands on these screens, and what was chosen in it."""
    settings.beginGroup(f"{_GROUP}/{screens()}/{name}")
    settings.setValue("geometry", window.saveGeometry())
    for key, value in choices.items():
        settings.setValue(key, value)
    settings.endGroup()


def bring_window_back(settings: QSettings, name: str, window: QWidget, choices: dict[str, object]) -> dict[str, str]:
    """Put *window* where it stood on these screens; what was chosen in it then, *choices* where nothing was."""
    settings.beginGroup(f"{_GROUP}/{screens()}/{name}")
    geometry = settings.value("geometry")
    chosen = {key: str(settings.value(key, value)) for key, value in choices.items()}
    settings.endGroup()
    if isinstance(geometry, QByteArray):
        window.restoreGeometry(geometry)
    return chosen


def first_place(window: QWidget, available: QRect) -> None:
    """Put *window* on a screen for the first time; where the screen has hardly more room, it takes all of it.

    available: what the panels of the desktop leave of the screen; the frame of the window has to fit in too
    """
    wanted = window.size().expandedTo(QSize(round(available.width() * _SHARE), round(available.height() * _SHARE)))
    place = QRect(available.topLeft(), wanted.boundedTo(available.size() * _SHARE))
    place.moveCenter(available.center())
    window.setGeometry(place)
    if wanted != place.size():
        window.setWindowState(window.windowState() | Qt.WindowState.WindowMaximized)
