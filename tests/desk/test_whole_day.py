"""The whole day of a presenter, from a file of games to the delivery, by real keys and pointer events alone.

Nothing here calls a command or changes the study: whatever cannot be reached with a key or the pointer fails.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import chess
import pytest
from PySide6.QtCore import QPoint, QPointF, QSettings, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QDialog, QWidget
from pytestqt.qtbot import QtBot

from studyboard.desk.deliver_window import DeliverWindow
from studyboard.desk.game_chooser import GameChooser
from studyboard.desk.headers_dialog import HeadersDialog
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.desk.opening import Opened
from studyboard.desk.slot_dialog import SlotDialog
from studyboard.desk.start_window import StartWindow
from studyboard.example import example_folder
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place
from studyboard.model.script import Cue, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.store.study_file import StudyFile
from tests.desk.presenter import (
    carry,
    centre,
    choose_in_menu,
    click,
    click_action,
    click_in_menu,
    dialogs,
    named_file,
    play_typed,
    press,
    tab_to,
    write,
)
from tests.sound import virtual_microphone

sound_server = virtual_microphone.sound_server

#: One game of the round, by two words of its tags.
FOUND_BY = "garvey 1-0"


class Day:
    """One day at the desk.

    State: the window that is open, and what belongs to it.
    """

    def __init__(self, qtbot: QtBot, look: Look, settings: QSettings) -> None:
        self.qtbot, self.look, self.settings = qtbot, look, settings
        self.desk: MainWindow

    def first_window(self) -> StartWindow:
        start = StartWindow(self.look)
        self.qtbot.addWidget(start)
        start.show()
        start.activateWindow()
        self.qtbot.waitUntil(start.isActiveWindow)
        return start

    def open_desk(self, file: StudyFile) -> None:
        self.desk = MainWindow(file, self.look, self.settings)
        self.qtbot.addWidget(self.desk)
        self.desk.show()
        self.desk.activateWindow()
        self.qtbot.waitUntil(self.desk.isActiveWindow)
        # The read-through and the spelling begin a moment after the desk is on the screen.
        self.qtbot.waitUntil(lambda: self.desk._script_tools is not None)

    @property
    def study(self) -> Study:
        return self.desk.session.study

    def node(self, label: str) -> int:
        """The move with this label, wherever it stands."""
        session = self.desk.session
        return next(node for node in self.study.nodes if move_label(session.positions, node) == label)

    @property
    def shown(self) -> str:
        return move_label(self.desk.session.positions, self.desk.session.node)

    def wait(self, reached: Callable[[], bool], seconds: float = 15.0) -> None:
        self.qtbot.waitUntil(reached, timeout=round(1000 * seconds))


@pytest.fixture
def day(
    qtbot: QtBot,
    sound_server: object,
    still_look: Look,
    settings: QSettings,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> Iterator[Day]:
    monkeypatch.setenv("STUDYBOARD_STUDIES", str(tmp_path / "studies"))
    monkeypatch.setenv("STUDYBOARD_CONFIG_DIR", str(tmp_path / "config"))
    monkeypatch.setenv("STUDYBOARD_STATE_DIR", str(tmp_path / "state"))
    day = Day(qtbot, still_look, settings)
    yield day
    if hasattr(day, "desk"):
        day.desk.close()


def choose_by_filter(chooser: QDialog) -> None:
    assert isinstance(chooser, GameChooser)
    write(FOUND_BY)
    assert chooser.count.text() == "1 of 6 games"
    press("Return")


def is_delivered(folder: Path) -> None:
    assert {path.suffix for path in folder.iterdir()} == {
        ".pdf",
        ".vtt",
        ".srt",
        ".pgn",
        ".png",
        ".txt",
        ".json",
        ".html",
    }
    captions = next(path for path in folder.glob("*.vtt") if "chapters" not in path.name).read_text(encoding="utf-8")
    assert "Good evening" in captions
    game = next(folder.glob("*.pgn")).read_text(encoding="utf-8")
    assert '[Annotator "Ines Marlow"]' in game
    assert "Nb6" in game


def everything_is_there(day: Day) -> None:
    """What the day has made, whichever way it was made."""
    study, session = day.study, day.desk.session
    assert study.headers["Annotator"] == "Ines Marlow"
    fork = day.node("8... Nb6")
    assert study.begins_side_line(fork)
    side_line = [move_label(session.positions, node) for node in study.main_line(fork)]
    assert side_line == ["8... Nb6", "9. Qxd8+", "9... Nxd8"]
    assert study.node(fork).spoken.text == "The knight steps back, and after queen takes d8 the ending is level."
    told = SpokenLine(
        "White takes back and there comes the pawn.",
        (Cue(0, node=day.node("8. dxe5")), Cue(4, node=day.node("8... e6"))),
    )
    assert study.node(day.node("8... e6")).spoken == told
    assert study.node(day.node("20... g6")).think == 12.0
    assert study.node(day.node("7. Bc4")).spoken.text == "White plays bishop c4 here."
    assert study.node(day.node("21. Ng5")).marks == (
        Mark(MarkKind.THREAT, (chess.H5, chess.H7)),
        Mark(MarkKind.TARGET, (chess.H7,)),
    )
    assert study.line(Part.GREETING).spoken.text.startswith("Good evening, and welcome. Tonight: Imani Pell")
    assert study.line(Part.CLOSING).spoken.text == "That was the game of the evening."
    assert study.line(Part.THANKS).spoken.text.startswith("That was Imani Pell against Anton Garvey.")
    assert study.slot == 90.0
    (take,) = study.takes.values()
    assert take.kept
    assert len(take.events) >= 3
    # What was tried while rehearsing stays on the tree, and out of the talk.
    assert [n.move for n in study.nodes.values() if n.telling.place is Place.HIDDEN] == [chess.Move.from_uci("d2d4")]


def test_the_whole_day_by_keyboard_alone(day: Day, tmp_path: Path) -> None:
    start = day.first_window()
    opened: list[Opened] = []
    start.opened.connect(opened.append)
    with dialogs(named_file(example_folder() / "round.pgn"), (GameChooser, choose_by_filter)):
        press("Return")
    day.open_desk(opened[0].file)
    desk, study = day.desk, day.study
    bar = desk.menuBar()

    def choose(menu: str, name: str) -> None:
        choose_in_menu(bar, menu, desk.actions_by_name[name])

    def go_to(label: str) -> None:
        press("Ctrl+1", "Alt+Home")
        for _ in range(60):
            if day.shown == label:
                return
            press("Down")
        raise AssertionError(f"The arrow does not come to {label}.")

    # Headers.
    def annotate(dialog: QDialog) -> None:
        assert isinstance(dialog, HeadersDialog)
        more = button(dialog, "Add a tag")
        tab_to(more)
        press("Space")
        write("Annotator")
        press("Return", "Right")
        write("Ines Marlow")
        press("Return")
        ok = button(dialog, "OK")
        tab_to(ok)
        press("Return")

    with dialogs((HeadersDialog, annotate)):
        press("Ctrl+H")

    # A side-line, by typed moves; its line.
    go_to("8. dxe5")
    for move in ("Nb6", "queen takes d8", "Nxd8"):
        play_typed(move)
    assert day.shown == "9... Nxd8"
    press("Alt+Up", "Alt+Up", "Ctrl+L")
    write("The knight steps back, and after queen takes d8 the ending is level.")

    # A line in which the next move is played at its word.
    go_to("8. dxe5")
    press("Return")
    write("White takes back and ")
    play_typed("e6")
    write("there comes the pawn.")

    # A think pause.
    go_to("20... g6")
    press("Ctrl+L")
    tab_to(desk.line_editor.think)
    write("12")
    press("Return")

    # Marks: a threat, then a target.
    go_to("21. Ng5")
    tab_to(desk.board_view)
    press("1", "Return")
    place_cursor(day, "h5")
    press("Return")
    place_cursor(day, "h7")
    press("Return", "2", "Return")
    press("Ctrl+M")
    assert not desk.board_view.marking

    # Greeting, closing and thanks; two of them are snippets.
    choose("S&cript", "edit_greeting")
    press("Ctrl+Shift+I", "1")
    choose("S&cript", "edit_closing")
    write("That was teh game of the evening.")
    choose("S&cript", "edit_thanks")
    press("Ctrl+Shift+I", "4")

    # Spelling.
    day.wait(lambda: desk.script_tools.spelling.ready)
    choose("S&cript", "edit_closing")
    press("Ctrl+Home", "Shift+F6")
    assert desk.line_editor.text.textCursor().selectedText() == "teh"
    write("the")

    # A slip, found by the read-through and mended with a key.
    go_to("7. Bc4")
    press("Ctrl+L")
    write("White plays bishop c5 here.")
    day.wait(lambda: desk.proofreading.bar.query is not None, 30)
    query = desk.proofreading.bar.query
    assert query is not None
    assert query.fix is not None
    press("Ctrl+.")
    day.wait(lambda: desk.line_editor.text.line.text == "White plays bishop c4 here.")

    # The slot, and the talk fitted to it.
    def minute_and_a_half(dialog: QDialog) -> None:
        write("1:30")
        press("Return")

    with dialogs((SlotDialog, minute_and_a_half)):
        press("Ctrl+T")
    day.wait(lambda: study.slot == 90.0)
    press("Ctrl+Shift+T")
    assert "%" in desk.notice.accessibleDescription()

    # Rehearsing: on, back, off into another line and back again.
    press("Ctrl+2", "Space")
    day.wait(lambda: desk.performance.active)
    press("PgDown", "PgDown", "PgDown", "PgUp")
    shown = day.desk.session.node
    press("Ctrl+J")
    write("d4")
    press("Return")
    assert desk.performance.run.wandering
    press("Backspace")
    assert not desk.performance.run.wandering
    assert day.desk.session.node == shown
    press("Ctrl+Space")
    day.wait(lambda: not desk.performance.active)

    # Recording.
    press("Ctrl+3")
    day.wait(lambda: "Speak to see the level" in desk.booth.status.text())
    press("Space")
    day.wait(lambda: desk.performance.active)
    for _ in range(4):
        press("PgDown")
    day.wait(lambda: desk.booth.recorder.samples >= 48_000)
    press("Ctrl+Space")
    day.wait(lambda: not desk.recording and not desk.performance.active)

    # Delivering.
    folder = tmp_path / "out"

    def deliver(dialog: QDialog) -> None:
        assert isinstance(dialog, DeliverWindow)
        tab_to(dialog.folder)
        press("Ctrl+A")
        write(str(folder))
        press("Return")
        day.wait(lambda: dialog.open_button.isEnabled(), 60)
        press("Escape")

    with dialogs((DeliverWindow, deliver)):
        press("Ctrl+4")
    is_delivered(folder)
    undone_and_done_again(day)
    closed_and_opened_again(day)


def test_the_whole_day_with_the_pointer_and_typing(day: Day, tmp_path: Path) -> None:
    start = day.first_window()
    opened: list[Opened] = []
    start.opened.connect(opened.append)

    def click_the_game(chooser: QDialog) -> None:
        assert isinstance(chooser, GameChooser)
        row = chooser.table.model().index(0, 1)
        QTest.mouseClick(
            chooser.table.viewport(), Qt.MouseButton.LeftButton, pos=chooser.table.visualRect(row).center()
        )
        click(chooser.choose_button)

    with dialogs(named_file(example_folder() / "round.pgn"), (GameChooser, click_the_game)):
        click(start.game_button)
    day.open_desk(opened[0].file)
    desk, board = day.desk, day.desk.board_view
    bar = desk.menuBar()

    def choose(menu: str, name: str) -> None:
        click_action(bar, menu, desk.actions_by_name[name])

    def go_to(label: str) -> None:
        node = day.node(label)
        for _ in range(60):
            rect = desk.lanes.row_rect(node)
            assert rect is not None
            inside = desk.lanes.viewport().rect()
            if inside.contains(rect.center()):
                QTest.mouseClick(desk.lanes.viewport(), Qt.MouseButton.LeftButton, pos=rect.center())
                break
            turn(desk.lanes.viewport(), -120 if rect.top() > inside.bottom() // 2 else 120)
        assert day.shown == label

    def annotate(dialog: QDialog) -> None:
        assert isinstance(dialog, HeadersDialog)
        click(button(dialog, "Add a tag"))
        write("Annotator")
        press("Return")
        table = dialog.table
        cell = table.visualItemRect(table.item(table.rowCount() - 1, 1)).center()
        QTest.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=cell)
        QTest.mouseDClick(table.viewport(), Qt.MouseButton.LeftButton, pos=cell)
        write("Ines Marlow")
        press("Return")
        click(button(dialog, "OK"))

    with dialogs((HeadersDialog, annotate)):
        choose("&Study", "edit_headers")

    # A side-line, by pieces that are carried; its line.
    go_to("8. dxe5")
    for origin, destination in (("d5", "b6"), ("d1", "d8"), ("c6", "d8")):
        carry(board, origin, destination)
    assert day.shown == "9... Nxd8"
    go_to("8... Nb6")
    QTest.mouseClick(desk.line_editor.text.viewport(), Qt.MouseButton.LeftButton)
    write("The knight steps back, and after queen takes d8 the ending is level.")

    # A line in which the next move is played at its word.
    go_to("8. dxe5")
    QTest.mouseClick(desk.line_editor.text.viewport(), Qt.MouseButton.LeftButton)
    write("White takes back and ")
    carry(board, "e7", "e6")
    write("there comes the pawn.")

    # A think pause.
    go_to("20... g6")
    QTest.mouseClick(desk.line_editor.think, Qt.MouseButton.LeftButton)
    write("12")
    press("Return")

    # Marks: a threat, then a target.
    go_to("21. Ng5")
    choose("&Board", "marking")
    carry(board, "h5", "h7")
    click(mark_button(day, "target"))
    QTest.mouseClick(board, Qt.MouseButton.LeftButton, pos=centre(board, "h7"))
    press("Escape")
    assert not board.marking

    # Greeting, closing and thanks; two of them are snippets.
    choose("S&cript", "edit_greeting")
    choose("&Words", "insert_snippet")
    click_in_menu("Greeting")
    choose("S&cript", "edit_closing")
    write("That was the game of the evening.")
    choose("S&cript", "edit_thanks")
    choose("&Words", "insert_snippet")
    click_in_menu("Thanks")

    # A slip, found by the read-through and mended with a click.
    go_to("7. Bc4")
    QTest.mouseClick(desk.line_editor.text.viewport(), Qt.MouseButton.LeftButton)
    write("White plays bishop c5 here.")
    day.wait(lambda: desk.proofreading.bar.query is not None, 30)
    click(button(desk.proofreading.bar, "Fix"))
    day.wait(lambda: desk.line_editor.text.line.text == "White plays bishop c4 here.")

    def minute_and_a_half(dialog: QDialog) -> None:
        write("1:30")
        click(button(dialog, "OK"))

    with dialogs((SlotDialog, minute_and_a_half)):
        choose("S&cript", "set_slot")
    choose("S&cript", "fit_to_slot")
    assert "%" in desk.notice.accessibleDescription()

    # Rehearsing: on, back, off into another line and back again.
    click(button(desk.top_bar, "Rehearse"))
    press("Space")
    day.wait(lambda: desk.performance.active)
    press("PgDown", "PgDown", "PgDown", "PgUp")
    shown = desk.session.node
    carry(board, "d2", "d4")
    assert desk.performance.run.wandering
    press("Backspace")
    assert not desk.performance.run.wandering
    assert desk.session.node == shown
    choose("&Talk", "start_or_stop")
    day.wait(lambda: not desk.performance.active)

    click(button(desk.top_bar, "Record"))
    day.wait(lambda: "Speak to see the level" in desk.booth.status.text())
    click(desk.booth.record_button)
    day.wait(lambda: desk.performance.active)
    for _ in range(4):
        press("PgDown")
    day.wait(lambda: desk.booth.recorder.samples >= 48_000)
    click(desk.booth.record_button)
    day.wait(lambda: not desk.recording and not desk.performance.active)

    folder = tmp_path / "out"

    def deliver(dialog: QDialog) -> None:
        assert isinstance(dialog, DeliverWindow)
        QTest.mouseDClick(dialog.folder, Qt.MouseButton.LeftButton)
        press("Ctrl+A")
        write(str(folder))
        click(dialog.deliver_button)
        day.wait(lambda: dialog.open_button.isEnabled(), 60)
        click(button(dialog, "Close"))

    with dialogs((DeliverWindow, deliver)):
        click(button(desk.top_bar, "Deliver"))
    is_delivered(folder)
    undone_and_done_again(day)
    closed_and_opened_again(day)


def button(within: QWidget, text: str) -> QAbstractButton:
    """The button with this label."""
    return next(b for b in within.findChildren(QAbstractButton) if b.text().replace("&", "") == text and b.isVisible())


def mark_button(day: Day, kind: str) -> QAbstractButton:
    """What chooses this kind of mark, beside the board."""
    found = day.desk.mark_palette.findChildren(QAbstractButton)
    return next(b for b in found if b.accessibleName().lower() == f"draw a {kind}")


def turn(widget: QWidget, angle: int) -> None:
    """Turn the wheel over the middle of a widget."""
    place = QPointF(widget.rect().center())
    event = QWheelEvent(
        place,
        QPointF(widget.mapToGlobal(place.toPoint())),
        QPoint(),
        QPoint(0, angle),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(widget, event)
    QApplication.processEvents()


def place_cursor(day: Day, square: str) -> None:
    """Move the board's cursor with the arrows."""
    hand = day.desk.board_view.hand
    goal = chess.parse_square(square)
    for _ in range(16):
        at = hand.cursor
        assert at is not None
        if chess.square_file(at) != chess.square_file(goal):
            press("Right" if chess.square_file(at) < chess.square_file(goal) else "Left")
        elif chess.square_rank(at) != chess.square_rank(goal):
            press("Up" if chess.square_rank(at) < chess.square_rank(goal) else "Down")
        else:
            return


def undone_and_done_again(day: Day) -> None:
    """Everything is taken back, and done again."""
    press("Ctrl+1")
    before = day.study.snapshot()
    steps = 0
    while day.desk.actions_by_name["undo"].isEnabled():
        press("Ctrl+Z")
        steps += 1
        assert steps < 200
    assert steps > 10
    assert not day.study.line(Part.GREETING).spoken
    assert "Annotator" not in day.study.headers
    for _ in range(steps):
        press("Ctrl+Y")
    assert day.study.nodes == before.nodes
    assert day.study.headers == before.headers
    assert day.study.slot == before.slot
    everything_is_there(day)


def closed_and_opened_again(day: Day) -> None:
    """The next morning everything is there, and the desk stands where it stood."""
    path, shown = day.desk.session.file.path, day.desk.session.node
    press("Ctrl+Q")
    assert not day.desk.isVisible()
    day.open_desk(StudyFile.open(path))
    everything_is_there(day)
    assert day.desk.session.node == shown
