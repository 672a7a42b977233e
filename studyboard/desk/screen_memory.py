"""Where the windows beside the desk stood, remembered for each set of screens."""

from __future__ import annotations

import hashlib

from PySide6.QtCore import QByteArray, QSettings
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

_GROUP = "windows"


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
