"""The hands of a presenter in a test: real keys and pointer events, and nothing else."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import chess
import shiboken6
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QDialog, QFileDialog, QMainWindow, QMenu, QMenuBar, QWidget

_MODIFIERS = {
    "Ctrl": Qt.KeyboardModifier.ControlModifier,
    "Shift": Qt.KeyboardModifier.ShiftModifier,
    "Alt": Qt.KeyboardModifier.AltModifier,
}
_NAMED = {".": Qt.Key.Key_Period, "PgDown": Qt.Key.Key_PageDown, "PgUp": Qt.Key.Key_PageUp}
#: As often it is looked whether a dialog has opened (ms), and as long it is waited for (ms).
_LOOK, _PATIENCE = 20, 15_000

Script = tuple[type[QDialog], Callable[[QDialog], object]]


def keyboard() -> QWidget:
    """Whatever the keys go to now."""
    popup = QApplication.activePopupWidget()
    if popup is not None:
        return popup
    found = QApplication.focusWidget() or QApplication.activeModalWidget() or QApplication.activeWindow()
    if found is None or not found.window().isVisible():
        # A window manager's part, which the platform without a screen leaves out: the window below is in front again.
        below = [w for w in QApplication.topLevelWidgets() if w.isVisible() and isinstance(w, QMainWindow | QDialog)]
        for _ in range(100):
            below[-1].activateWindow()
            QTest.qWait(_LOOK)
            if QApplication.activeWindow() is below[-1]:
                return QApplication.focusWidget() or below[-1]
        raise AssertionError(f"“{below[-1].windowTitle()}” does not come to the front.")
    return found


def press(*combinations: str) -> None:
    """Press keys one after the other, each as `"Ctrl+Shift+T"` or `"PgDown"`, wherever the keyboard is."""
    for combination in combinations:
        *held, name = combination.split("+")
        modifiers = Qt.KeyboardModifier.NoModifier
        for one in held:
            modifiers |= _MODIFIERS[one]
        key = _NAMED.get(name) or getattr(Qt.Key, f"Key_{name}")
        QTest.keyClick(keyboard(), key, modifiers)
        # Nobody presses two keys within one turn of the event loop.
        QApplication.processEvents()


def write(text: str) -> None:
    """Type letters wherever the keyboard is, sign by sign: it may go elsewhere meanwhile."""
    for sign in text:
        QTest.keyClicks(keyboard(), sign)
    QApplication.processEvents()


def tab_to(widget: QWidget) -> None:
    """Press Tab until the keyboard is there."""
    for _ in range(60):
        if widget.hasFocus():
            return
        press("Tab")
    raise AssertionError(f"Tab does not reach {widget.accessibleName() or widget}.")


def play_typed(move: str) -> None:
    """Type a move into the field that the key of “Type the next move” opens."""
    press("Ctrl+J")
    write(move)
    press("Return")


def choose_in_menu(bar: QMenuBar, menu: str, action: QAction) -> None:
    """Choose an action by the letters that are underlined in the menus."""
    press(f"Alt+{_letter(menu)}")
    popup = QApplication.activePopupWidget()
    assert isinstance(popup, QMenu), menu
    assert QTest.qWaitForWindowActive(popup)
    press(_letter(action.text()))
    assert QApplication.activePopupWidget() is None, f"“{action.text()}” is not chosen by its letter"


def click(button: QAbstractButton) -> None:
    """Click a button that can be seen."""
    assert button.isVisible(), button.text()
    assert button.isEnabled(), button.text()
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    QApplication.processEvents()


def click_action(bar: QMenuBar, menu: str, action: QAction) -> None:
    """Click a menu, then one of its lines."""
    title = next(one for one in bar.actions() if one.text() == menu)
    QTest.mouseClick(bar, Qt.MouseButton.LeftButton, pos=bar.actionGeometry(title).center())
    popup = QApplication.activePopupWidget()
    assert isinstance(popup, QMenu), menu
    _click_line(popup, action)


def click_in_menu(text: str) -> None:
    """Click the line of the menu that has popped up which has this text."""
    popup = QApplication.activePopupWidget()
    assert isinstance(popup, QMenu), text
    _click_line(popup, next(action for action in popup.actions() if action.text().endswith(text)))


def _click_line(popup: QMenu, action: QAction) -> None:
    assert QTest.qWaitForWindowActive(popup)
    where = popup.actionGeometry(action).center()
    # A menu takes no notice of a pointer that rests where it was pressed last.
    QTest.mouseMove(popup, where + QPoint(3, 2))
    QTest.mouseMove(popup, where)
    QTest.mouseClick(popup, Qt.MouseButton.LeftButton, pos=where)
    QApplication.processEvents()
    keyboard()


def carry(board: QWidget, origin: str, destination: str) -> None:
    """Press on one square of a board, move to another and let go there."""
    start, end = (centre(board, name) for name in (origin, destination))
    QTest.mousePress(board, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(board, (start + end) / 2)
    QTest.mouseMove(board, end)
    QTest.mouseRelease(board, Qt.MouseButton.LeftButton, pos=end)


def centre(board: QWidget, square: str) -> QPoint:
    """The middle of a square on the screen of a board."""
    return board.place.centre(chess.parse_square(square)).toPoint()  # type: ignore[attr-defined, no-any-return]


@contextmanager
def dialogs(*scripts: Script) -> Iterator[None]:
    """While something in the block opens dialogs: as each appears, its script is done in it.

    A dialog holds up what opened it, so what its script should do must be known beforehand.
    """
    waiting: list[Script] = list(scripts)
    seen: list[tuple[str, int]] = []
    troubles: list[BaseException] = []
    left = [_PATIENCE // _LOOK]

    def look() -> None:
        left[0] -= 1
        dialog = QApplication.activeModalWidget()
        if waiting or dialog is not None:
            QTimer.singleShot(_LOOK, look)
        if not isinstance(dialog, QDialog) or not dialog.isVisible():
            return
        # Dialogs that Qt itself makes have another wrapper each time that they are asked for.
        which = (dialog.metaObject().className(), shiboken6.getCppPointer(dialog)[0])
        if left[0] < 0:
            troubles.append(AssertionError(f"“{dialog.windowTitle()}” was not closed"))
            dialog.reject()
        elif which not in seen and dialog.isActiveWindow():
            seen.append(which)
            try:
                kind, script = waiting.pop(0)
                assert isinstance(dialog, kind), f"“{dialog.windowTitle()}” was not expected"
                script(dialog)
            except BaseException as reason:
                troubles.append(reason)
                waiting.clear()
                dialog.reject()

    QTimer.singleShot(_LOOK, look)
    yield
    if troubles:
        raise troubles[0]
    assert not waiting, f"{waiting[0][0].__name__} did not open"


def named_file(path: Path) -> Script:
    """In the dialog that asks for a file: write its name."""

    def name(dialog: QDialog) -> None:
        press("Ctrl+A")
        write(str(path))
        press("Return")

    return QFileDialog, name


def _letter(text: str) -> str:
    return text[text.index("&") + 1].upper()
