"""Menus and shortcuts of the desk, made from the table of actions."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path

from PySide6.QtCore import QSettings
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from studyboard.desk.actions import ACTIONS, MENUS, ActionSpec
from studyboard.desk.commands import Commands
from studyboard.desk.language import LANGUAGES, SYSTEM, choose_language, chosen_language
from studyboard.desk.look import Look
from studyboard.picture.palette import PRINT_BOARD, board_palette, board_palette_names
from studyboard.picture.pieces import PIECE_SETS
from studyboard.store.recent import recent_files
from studyboard.translation import tr, tr_later

#: The titles of the board palettes, which stand in their files.
_BOARD_TITLES = (tr_later("Slate, high contrast"), tr_later("Clay"), tr_later("Mist"))


def make_actions(window: QMainWindow, commands: Commands) -> dict[str, QAction]:
    """A QAction for each row of the table, by name, calling the command of its name."""
    made: dict[str, QAction] = {}
    for spec in ACTIONS:
        action = QAction(tr(spec.text), window)
        action.setShortcuts([QKeySequence(keys) for keys in spec.keys])
        action.setStatusTip(tr(spec.help))
        action.setToolTip(tr(spec.help))
        action.setWhatsThis(tr(spec.help))
        action.setCheckable(spec.checkable)
        action.triggered.connect(_without_argument(commands.of(spec.name)))
        window.addAction(action)
        made[spec.name] = action
    return made


def fill_menu_bar(window: QMainWindow, actions: Mapping[str, QAction]) -> dict[str, QMenu]:
    """The menus of the table, in its order; by their titles."""
    menus = {title: window.menuBar().addMenu(tr(title)) for title in MENUS}
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


def _without_argument(method: Callable[[], None]) -> Callable[[bool], None]:
    """A slot for `triggered`, which hands over whether the action is checked."""
    return lambda _: method()


def spec_of(name: str) -> ActionSpec:
    """The row of the table with this name. Raises KeyError where there is none."""
    for spec in ACTIONS:
        if spec.name == name:
            return spec
    raise KeyError(name)


def add_look_menus(view: QMenu, look: Look, settings: QSettings, tell: Callable[[str], None]) -> None:
    """Themes, board colours and languages to choose from."""
    view.addSeparator()
    themes = view.addMenu(tr("&Theme"))
    for name, label in (("system", tr("As the &system")), ("light", tr("&Light")), ("dark", tr("&Dark"))):
        themes.addAction(label, partial(look.choose_theme, name))
    boards = view.addMenu(tr("&Board colours"))
    for name in board_palette_names():
        if name != PRINT_BOARD:
            boards.addAction(tr(board_palette(name).title), partial(look.choose_board, name))
    sets = view.addMenu(tr("P&ieces"))
    for name, title in PIECE_SETS:
        sets.addAction(tr(title), partial(look.choose_pieces, name))
    languages = view.addMenu(tr("Lan&guage"))
    choices = QActionGroup(languages)
    for code, name in ((SYSTEM, tr("As the &system")), *LANGUAGES):
        action = languages.addAction(name, partial(_choose_language, settings, tell, code))
        action.setCheckable(True)
        action.setChecked(code == chosen_language(settings))
        choices.addAction(action)


def _choose_language(settings: QSettings, tell: Callable[[str], None], code: str) -> None:
    choose_language(settings, code)
    tell(tr("The desk speaks the language that was chosen when it is started next."))


def fill_recent(menu: QMenu, open_path: Callable[[Path], None]) -> None:
    """The files that were open last, in a menu that is shown again and again."""
    menu.clear()
    for path in recent_files():
        menu.addAction(path.stem, partial(open_path, path))
    if menu.isEmpty():
        menu.addAction(tr("Nothing yet")).setEnabled(False)
