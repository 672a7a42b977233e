"""Menus and shortcuts of the desk, made from the table of actions."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from studyboard.desk.actions import ACTIONS, MENUS, ActionSpec
from studyboard.desk.look import Look


def make_actions(window: QMainWindow, commands: object) -> dict[str, QAction]:
    """A QAction for each row of the table, by name, calling the method of *commands* that has its name."""
    made: dict[str, QAction] = {}
    for spec in ACTIONS:
        action = QAction(spec.text, window)
        action.setShortcuts([QKeySequence(keys) for keys in spec.keys])
        action.setStatusTip(spec.help)
        action.setToolTip(spec.help)
        action.setCheckable(spec.checkable)
        method: Callable[[], None] = getattr(commands, spec.name)
        action.triggered.connect(lambda _=False, method=method: method())
        window.addAction(action)
        made[spec.name] = action
    return made


def fill_menu_bar(window: QMainWindow, actions: Mapping[str, QAction]) -> dict[str, QMenu]:
    """The menus of the table, in its order; by their titles."""
    menus = {title: window.menuBar().addMenu(title) for title in MENUS}
    for spec in ACTIONS:
        if spec.apart:
            menus[spec.menu].addSeparator()
        menus[spec.menu].addAction(actions[spec.name])
    return menus


def dress_menu(title: str, actions: Mapping[str, QAction], look: Look) -> None:
    """Give the actions of one menu their icons in the theme's colours."""
    for spec in ACTIONS:
        if spec.icon and spec.menu == title:
            actions[spec.name].setIcon(look.icon(spec.icon))


def spec_of(name: str) -> ActionSpec:
    """The row of the table with this name. Raises KeyError where there is none."""
    for spec in ACTIONS:
        if spec.name == name:
            return spec
    raise KeyError(name)
