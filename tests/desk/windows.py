"""Every window of the desk, opened as it is by its action, one at a time."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from studyboard.board.set_up import set_up_of
from studyboard.delivery.product import Item
from studyboard.delivery.sheet_options import SheetOptions
from studyboard.delivery.still_options import StillOptions
from studyboard.delivery.video.options import VideoOptions
from studyboard.desk.action_finder import ActionFinder
from studyboard.desk.cuts_window import CutsWindow
from studyboard.desk.delay_window import DelayWindow
from studyboard.desk.deliver_window import DeliverWindow
from studyboard.desk.game_chooser import GameChooser
from studyboard.desk.headers_dialog import HeadersDialog
from studyboard.desk.help_texts import keys, quick_start, text_window
from studyboard.desk.history_window import HistoryWindow
from studyboard.desk.main_window import MainWindow
from studyboard.desk.plan_voice_window import PlanVoiceWindow
from studyboard.desk.position_window import PositionWindow
from studyboard.desk.product_dialog import ProductDialog
from studyboard.desk.pronunciation_dialog import PronunciationDialog
from studyboard.desk.rehearsals_window import RehearsalsWindow
from studyboard.desk.room_window import RoomWindow
from studyboard.desk.slot_dialog import SlotDialog
from studyboard.desk.snippets_window import SnippetsWindow
from studyboard.desk.sound_import import SoundImport
from studyboard.desk.spelling_dialog import SpellingDialog
from studyboard.desk.start_window import StartWindow
from studyboard.desk.takes_window import TakesWindow
from studyboard.example import example_folder
from studyboard.notation.pgn_games import index_games

Maker = Callable[[MainWindow], QWidget]


def _chooser(desk: MainWindow) -> QWidget:
    path = example_folder() / "round.pgn"
    return GameChooser(path, index_games(path), desk)


def _position(desk: MainWindow) -> QWidget:
    return PositionWindow(desk.look, set_up_of(desk.session.board.fen()), "Position", "Begin here", desk)


#: Dialogs that hold the program up while they are open are made here; the others are opened by their action.
_MADE: dict[str, Maker] = {
    "start": lambda desk: StartWindow(desk.look),
    "chooser": _chooser,
    "headers": lambda desk: HeadersDialog(desk.session, desk),
    "slot": lambda desk: SlotDialog(desk.session.study.slot, desk.session.timeline.seconds, desk),
    "deliver": lambda desk: DeliverWindow(desk.session, desk.settings, desk),
    "sheet_options": lambda desk: ProductDialog(Item.SHEET, SheetOptions(), desk.session, desk),
    "video_options": lambda desk: ProductDialog(Item.VIDEO, VideoOptions(), desk.session, desk),
    "still_options": lambda desk: ProductDialog(Item.STILL, StillOptions(), desk.session, desk),
    "position": _position,
    "snippets": lambda desk: SnippetsWindow(desk.script_tools.snippets, desk),
    "spelling": lambda desk: SpellingDialog(desk.session, desk.script_tools.spelling, desk),
    "history": lambda desk: HistoryWindow(desk.session, desk),
    "find_action": lambda desk: ActionFinder(desk.actions_by_name, desk),
    "quick_start": lambda desk: text_window(desk, "Quick start", quick_start()),
    "keys": lambda desk: text_window(desk, "Keys", keys()),
    "room_check": lambda desk: RoomWindow(desk.look, None, desk.settings, desk),
    "delay": lambda desk: DelayWindow(desk.look, desk.settings, None, "Microphone", desk),
    "cuts": lambda desk: CutsWindow(desk.session, desk),
    "takes": lambda desk: TakesWindow(desk.session, desk.booth, desk.look, desk),
    "sound_import": lambda desk: SoundImport(desk.session, Path("telephone.mov"), desk.session.beats[0].key, desk),
    "rehearsals": lambda desk: RehearsalsWindow(desk.session, desk.look, desk),
    "plan_voice": lambda desk: PlanVoiceWindow(desk.session, desk),
    "pronunciation": lambda desk: PronunciationDialog(desk.session, "Garvey", desk),
}
_BY_ACTION = ("show_script", "replace_in_script", "read_through", "show_stage", "show_prompter", "follow_voice")
#: The desk itself, in each of its states.
_STATES = ("write", "show_wave", "edit_note", "find", "marking", "rehearse", "record")

WINDOWS = (*_STATES, *_MADE, *_BY_ACTION)


@contextmanager
def opened(name: str, desk: MainWindow, folder: Path) -> Iterator[QWidget]:
    """One of WINDOWS, to be seen and active."""
    window = _open(name, desk)
    window.show()
    window.activateWindow()
    QTest.qWaitForWindowActive(window)
    QApplication.processEvents()
    try:
        yield window
    finally:
        if window is not desk:
            window.close()
            if name in _MADE:
                window.deleteLater()
        elif desk.stage == "record":
            desk.booth.close_down()


def _open(name: str, desk: MainWindow) -> QWidget:
    if name in _MADE:
        return _MADE[name](desk)
    before = set(map(id, _visible()))
    desk.commands.of(name)()
    QApplication.processEvents()
    if name in _STATES:
        return desk
    found = [window for window in _visible() if id(window) not in before]
    assert found, f"{name} opened nothing"
    return found[0]


def _visible() -> list[QWidget]:
    return [w for w in QApplication.topLevelWidgets() if w.isVisible()]


def dialog_of(window: QWidget) -> QDialog:
    """The same, where it is known to be a dialog."""
    assert isinstance(window, QDialog)
    return window
