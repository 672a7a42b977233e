"""Starting the desk."""

from __future__ import annotations

import gc
import signal
import sys
from pathlib import Path

from PySide6.QtCore import QSettings, Qt, QTimer
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication, QMessageBox

from studyboard import __version__
from studyboard.desk.language import language_in_use, speak
from studyboard.desk.look import Look
from studyboard.desk.main_window import GEOMETRY, MainWindow
from studyboard.desk.opening import Opened, open_path
from studyboard.desk.screen_memory import first_place
from studyboard.desk.start_window import StartWindow, tour_file
from studyboard.model.errors import StudyboardError
from studyboard.resources_path import resource
from studyboard.store.recent import recent_files

#: When the desk is on the screen for certain (ms).
_SETTLED = 1000
#: Objects made, and rounds, after which the young, the middle and the old ones are looked through (gc.set_threshold).
_GARBAGE = (700, 10, 100)
#: How long one thread may keep the others waiting (s).
_GIVE_WAY = 0.0005


def run(file: Path | None) -> int:
    """Open the desk on this study or PGN file, else on the last study, else with the window of the first start.

    Raises StudyboardError where a file that was named cannot be opened. Returns the exit status.
    """
    application = make_application()
    settings = make_settings()
    look = Look(settings, application)
    if file is not None:
        opened = open_path(file)
        if opened is None:
            return 0
    else:
        try:
            opened = _last() or _ask(look)
        except StudyboardError as reason:
            opened = _ask(look, str(reason))
        if opened is None:
            return 0
    return _show(application, opened, look, settings)


def run_from_menu(file: Path | None) -> int:
    """As `run`, for a start by a double click: what is wrong is shown, and the window of the first start follows."""
    application = make_application()
    try:
        return run(file)
    except StudyboardError as reason:
        QMessageBox.warning(None, "Studyboard", str(reason))
    settings = make_settings()
    look = Look(settings, application)
    opened = _ask(look)
    return 0 if opened is None else _show(application, opened, look, settings)


def run_tour() -> int:
    """Open the desk on the example."""
    application = make_application()
    settings = make_settings()
    return _show(application, Opened(tour_file()), Look(settings, application), settings)


def make_application() -> QApplication:
    """The Qt application with the program's name, version and icon."""
    # The threads beside the window's give way sooner than Python has them do by itself (5 ms).
    sys.setswitchinterval(_GIVE_WAY)
    existing = QApplication.instance()
    if isinstance(existing, QApplication):
        return existing
    QApplication.setHighDpiScaleFactorRoundingPolicy(Qt.HighDpiScaleFactorRoundingPolicy.PassThrough)
    application = QApplication(sys.argv[:1])
    application.setApplicationName("Studyboard")
    application.setOrganizationName("Studyboard")
    application.setApplicationVersion(__version__)
    application.setDesktopFileName("studyboard")
    application.setStyle("Fusion")
    application.setWindowIcon(QIcon(str(resource("icon.svg"))))
    speak(application, language_in_use(make_settings()))
    return application


def make_settings() -> QSettings:
    """The program's settings in the platform's place."""
    return QSettings("Studyboard", "Studyboard")


def _show(application: QApplication, opened: Opened, look: Look, settings: QSettings) -> int:
    window = MainWindow(opened.file, look, settings)
    window.scale_text(0)
    if not settings.contains(GEOMETRY):
        first_place(window, window.screen().availableGeometry())
    window.show()
    window.tell_problems(opened)
    _quit_on_signals(application, window)
    QTimer.singleShot(_SETTLED, collect_garbage)
    return application.exec()


def _last() -> Opened | None:
    """The study of the last session, if it is still there. Raises StudyboardError where it cannot be opened."""
    for path in recent_files()[:1]:
        return open_path(path)
    return None


def _ask(look: Look, problem: str = "") -> Opened | None:
    """Let the user choose what to begin with, told why it is not the last study where there was one."""
    chosen: list[Opened] = []
    start = StartWindow(look, problem)
    start.opened.connect(chosen.append)
    start.exec()
    return chosen[0] if chosen else None


def collect_garbage() -> None:
    """What the start has made stays; only what comes after it is looked through for garbage, the old of it seldom.

    Looking through everything takes longer than a key may wait, and finds next to nothing: what the desk makes goes
    when nobody has it any more.
    """
    gc.freeze()
    gc.set_threshold(*_GARBAGE)
    gc.enable()


def _quit_on_signals(application: QApplication, window: MainWindow) -> None:
    """Ctrl+C in the terminal and a polite kill close the window as the user would."""
    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, lambda *_: window.close())
    # Python runs its signal handlers only between its own instructions: wake it now and then.
    wake = QTimer(application)
    wake.timeout.connect(lambda: None)
    wake.start(300)
