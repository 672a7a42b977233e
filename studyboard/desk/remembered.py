"""Where the work on each study stood: the move, the board's size and side, come back when it is opened again."""

from __future__ import annotations

import hashlib
import time
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QSettings

from studyboard.model.script import Part

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow

#: As many studies are remembered.
MOST = 100
_GROUP = "studies"


def keep(window: MainWindow) -> None:
    """Write down where the study on the desk stands now."""
    settings, session = window.settings, window.session
    settings.beginGroup(study_group(session.file.path))
    current = window.lanes.current
    settings.setValue("node", session.node)
    settings.setValue("part", current.value if isinstance(current, Part) else "")
    settings.setValue("flipped", window.board_view.flipped)
    settings.setValue("dividers", window.dividers())
    settings.setValue("at", int(time.time()))
    settings.endGroup()
    _forget_oldest(settings)


def bring_back(window: MainWindow) -> bool:
    """Let the desk stand as it stood when this study was last closed; False where nothing is known of it."""
    settings, session = window.settings, window.session
    settings.beginGroup(study_group(session.file.path))
    known = settings.contains("node")
    node, part = int(str(settings.value("node", -1))), str(settings.value("part", ""))
    flipped = str(settings.value("flipped", False)).lower() == "true"
    dividers = settings.value("dividers")
    settings.endGroup()
    if not known:
        return False
    session.show(node)
    if part in {p.value for p in Part}:
        window.lanes.choose_part(Part(part))
    window.board_view.set_flipped(flipped)
    if isinstance(dividers, QByteArray):
        window.set_dividers(dividers)
    return True


def study_group(path: Path) -> str:
    """Where the settings have what is remembered of the study in this file."""
    return f"{_GROUP}/{_name(path)}"


def _forget_oldest(settings: QSettings) -> None:
    settings.beginGroup(_GROUP)
    known = sorted(settings.childGroups(), key=lambda name: int(str(settings.value(f"{name}/at", 0))))
    for name in known[:-MOST]:
        settings.remove(name)
    settings.endGroup()


def _name(path: Path) -> str:
    """A name for the settings that says nothing about the user's folders."""
    return hashlib.sha256(str(path.resolve()).encode()).hexdigest()[:16]
