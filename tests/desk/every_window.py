"""Pictures of every window and state, to be looked at: `python tests/desk/every_window.py FOLDER`.

Light and dark; on a laptop's screen (1366 × 768), the same with text at 200 %, and on a 4K screen at 200 %. Each state
is the real window on the example talk, drawn into memory; a sheet of all of them is made for each look. The pictures of
README and DEVELOPERS.md are made by pictures.py.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEventLoop, QPoint, QRect, QSettings, QSize, Qt, QTimer
from PySide6.QtGui import QContextMenuEvent, QGuiApplication, QPainter, QPixmap
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QMenu, QWidget

from studyboard.desk.application import make_application
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.example import example_folder, example_study
from studyboard.model.edits import ChangeNode
from studyboard.model.script import SpokenLine
from studyboard.store.study_file import StudyFile


@dataclass(frozen=True)
class Screen:
    """One screen: its size in px as Qt counts them, what a px is worth, and the size of text (share of the usual)."""

    name: str
    size: QSize
    scale: float
    text: float


SCREENS = (
    Screen("laptop", QSize(1366, 768), 1.0, 1.0),
    Screen("large-text", QSize(1366, 768), 1.0, 2.0),
    Screen("4k", QSize(1920, 1080), 2.0, 1.0),
)
THEMES = ("light", "dark")
_SHOWN = 41
_WAIT = 250


def main() -> None:
    """Make every picture, each screen in a process of its own: Qt takes the scale at its start."""
    to = Path(sys.argv[1])
    to.mkdir(parents=True, exist_ok=True)
    if len(sys.argv) > 2:
        _picture(to, next(screen for screen in SCREENS if screen.name == sys.argv[2]))
        return
    for screen in SCREENS:
        with tempfile.NamedTemporaryFile("w", suffix=".json") as described:
            # Dialogs take no more room than the screen has, and the one in memory is small and square by itself.
            pixels = screen.size * screen.scale
            place = {"name": screen.name, "x": 0, "y": 0, "width": pixels.width(), "height": pixels.height()}
            json.dump({"screens": [place | {"logicalDpi": 96, "logicalBaseDpi": 96, "dpr": 1}]}, described)
            described.flush()
            platform = {"QT_QPA_PLATFORM": f"offscreen:configfile={described.name}"}
            environment = {**os.environ, **platform, "QT_SCALE_FACTOR": str(screen.scale)}
            subprocess.run([sys.executable, __file__, str(to), screen.name], env=environment, check=True)


def _picture(to: Path, screen: Screen) -> None:
    for theme in THEMES:
        with tempfile.TemporaryDirectory() as folder:
            os.environ["STUDYBOARD_STATE_DIR"] = folder
            make_application()
            font = QGuiApplication.font()
            usual = font.pointSizeF()
            font.setPointSizeF(usual * screen.text)
            QGuiApplication.setFont(font)
            look = Look()
            look.reduce_motion(True)
            look.choose_theme(theme)
            made: list[tuple[str, QPixmap]] = []
            for name, window in _states(Path(folder), look, screen):
                _wait(_WAIT)
                picture = window.grab()
                picture.save(str(to / f"{screen.name}-{theme}-{name}.png"))
                made.append((name, picture))
            _sheet(made).save(str(to / f"{screen.name}-{theme}.png"))
            print(to / f"{screen.name}-{theme}.png", len(made), "states")
            font.setPointSizeF(usual)
            QGuiApplication.setFont(font)


def _states(folder: Path, look: Look, screen: Screen) -> Iterator[tuple[str, QWidget]]:
    from studyboard.desk.start_window import StartWindow

    start = StartWindow(look)
    start.show()
    yield "start", start
    start.close()
    settings = QSettings(str(folder / "settings.ini"), QSettings.Format.IniFormat)
    desk = MainWindow(StudyFile.create(folder / "Sail Loft.studyboard", example_study()), look, settings)
    desk.resize(screen.size)
    desk.show()
    session = desk.session
    _wait(600)
    yield "greeting", desk
    session.show(list(session.study.main_line())[_SHOWN])
    yield "write", desk
    desk.board_view.set_marking(True)
    yield "marking", desk
    desk.board_view.set_marking(False)
    desk.commands.of("edit_note")()
    yield "note", desk
    desk.commands.of("edit_line")()
    node = session.node
    was = session.study.nodes[node].spoken
    wrong = SpokenLine("The knight on g5 attacks the king on e8, and White is a queen up.")
    session.do(ChangeNode(node, "spoken", wrong))
    _until(desk.proofreading.bar.isVisible)
    yield "query", desk
    session.do(ChangeNode(node, "spoken", was))
    desk.commands.of("fit_to_slot")()
    yield "notice", desk
    desk.commands.of("undo")()
    yield from _on_the_board(desk)
    yield from _in_the_lanes(desk)
    yield from _helps_in_writing(desk)
    for name in (
        *("edit_headers", "set_slot", "show_history", "find_action", "quick_start", "shortcuts", "check_setup"),
        *("deliver", "new_from_position", "edit_snippets", "spelling"),
    ):
        yield from _modal(desk, name)
    word = desk.line_editor.text.textCursor()
    word.setPosition(4)
    desk.line_editor.text.setTextCursor(word)
    yield from _modal(desk, "pronounce")
    for title, menu in desk._menus.items():
        menu.aboutToShow.emit()
        menu.popup(QPoint(0, 0))
        yield f"menu-{title.replace('&', '').lower()}", menu
        menu.close()
    yield from _run_through(desk)
    yield from _windows_beside(desk)
    yield from _chooser(desk)
    desk.close()


def _on_the_board(desk: MainWindow) -> Iterator[tuple[str, QWidget]]:
    """What can be asked about a piece and about a move, numbered marks, and the board alone."""
    board, session, size = desk.board_view, desk.session, desk.size()
    move = session.study.node(session.node).move
    assert move is not None
    board.ask_square(move.to_square)
    yield "facts-of-a-piece", desk
    board.ask_move()
    yield "facts-of-a-move", desk
    board.ask_move()
    desk.commands.of("number_marks")()
    board.set_marking(True)
    yield "marks-with-numbers", desk
    board.set_marking(False)
    desk.commands.of("undo")()
    desk.notice.hide()
    board.begin_entry("Qh9")
    QTest.keyClick(QApplication.focusWidget() or desk, Qt.Key.Key_Return)
    yield "move-that-cannot-be-played", desk
    QTest.keyClick(QApplication.focusWidget() or desk, Qt.Key.Key_Escape)
    desk.commands.of("board_only")()
    yield "board-only", desk
    desk.commands.of("board_only")()
    desk.resize(size)


def _in_the_lanes(desk: MainWindow) -> Iterator[tuple[str, QWidget]]:
    """Rows chosen together, the bar that finds, and folded side-lines."""
    session = desk.session
    session.choose(list(session.study.main_line())[_SHOWN - 3 : _SHOWN + 1])
    yield "chosen-rows", desk
    session.choose(())
    desk.commands.of("find")()
    QTest.keyClicks(QApplication.focusWidget() or desk, "knight")
    yield "find", desk
    QTest.keyClick(QApplication.focusWidget() or desk, Qt.Key.Key_Escape)
    desk.commands.of("fold_all")()
    yield "folded", desk
    desk.commands.of("unfold_all")()


def _helps_in_writing(desk: MainWindow) -> Iterator[tuple[str, QWidget]]:
    """The read-through of the whole, the script as one text, find and replace, a misspelt word and the snippets."""
    session, node = desk.session, desk.session.node
    was = session.study.nodes[node].spoken
    session.do(ChangeNode(node, "spoken", SpokenLine("The rok on g7 hangs, and White is a queen up.")))
    desk.line_editor.focus_line()
    _until(lambda: bool(desk.line_editor.text.misspelt))
    yield "misspelt", desk
    yield from _popped_up(lambda: _ask_for_menu(desk), "spelling-menu")
    yield from _popped_up(desk.commands.of("insert_snippet"), "snippets-menu")
    for name in ("read_through", "show_script", "replace_in_script"):
        yield from _by_action(desk, name)
    session.do(ChangeNode(node, "spoken", was))


def _ask_for_menu(desk: MainWindow) -> None:
    """A right click on the misspelt word of the line."""
    text = desk.line_editor.text
    cursor = text.textCursor()
    cursor.setPosition(6)
    spot = text.cursorRect(cursor).center()
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, spot, text.viewport().mapToGlobal(spot))
    QApplication.sendEvent(text.viewport(), event)


def _popped_up(open_it: Callable[[], object], name: str) -> Iterator[tuple[str, QWidget]]:
    """A menu, whether or not it holds the program up."""
    pictures: list[QPixmap] = []

    def take() -> None:
        menu = QApplication.activePopupWidget()
        if menu is not None:
            pictures.append(menu.grab())
            menu.close()

    QTimer.singleShot(_WAIT, take)
    open_it()
    _wait(2 * _WAIT)
    if pictures:
        yield name, _Shown(pictures[0])


def _wait(milliseconds: int) -> None:
    """Let the desk run; unlike QTest.qWait this lets the threads beside it run too."""
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def _until(told: Callable[[], bool], most: int = 60) -> None:
    for _ in range(most):
        if told():
            return
        _wait(_WAIT)


def _run_through(desk: MainWindow) -> Iterator[tuple[str, QWidget]]:
    desk.rehearse_stage()
    yield "rehearse-ready", desk
    desk.performance.start()
    for _ in range(9):
        desk.performance.advance()
    yield "rehearse", desk
    desk.session.play(next(iter(desk.session.board.legal_moves)))
    yield "wandering", desk
    desk.performance.stop()
    desk.record_stage()
    yield "record", desk
    desk.write_stage()


def _windows_beside(desk: MainWindow) -> Iterator[tuple[str, QWidget]]:
    from studyboard.desk.stage_layout import StageGround, StageShape

    desk.session.show(list(desk.session.study.main_line())[_SHOWN])
    desk.show_stage()
    stage = desk._stage_window
    assert stage is not None
    yield "stage", stage
    stage.show_captions(True)
    stage.show_margins(True)
    yield "stage-captions", stage
    stage.set_shape(StageShape.TALL)
    stage.set_ground(StageGround.GREEN)
    yield "stage-tall", stage
    desk.show_prompter()
    prompter = desk._prompter_window
    assert prompter is not None
    yield "prompter", prompter
    prompter.mirror(True)
    yield "prompter-mirrored", prompter
    stage.close()
    prompter.close()


def _chooser(desk: MainWindow) -> Iterator[tuple[str, QWidget]]:
    seen: list[QWidget] = []
    yield from _while_modal(lambda: desk.open_path(example_folder() / "round.pgn"), "chooser", seen)


def _by_action(desk: MainWindow, name: str) -> Iterator[tuple[str, QWidget]]:
    """What an action shows beside the desk or in it; nothing where there is no such action."""
    if name not in desk.actions_by_name:
        return
    before = {id(window) for window in QApplication.topLevelWidgets() if window.isVisible()}
    desk.commands.of(name)()
    _wait(_WAIT)
    if name == "read_through":
        _until(lambda: bool(desk.proofreading.proofreader.found.confirmed))
    opened = [w for w in QApplication.topLevelWidgets() if w.isVisible() and id(w) not in before]
    opened = [w for w in opened if not isinstance(w, QMenu)]
    yield name, opened[0] if opened else desk
    if opened:
        opened[0].close()
    else:
        QTest.keyClick(QApplication.focusWidget() or desk, Qt.Key.Key_Escape)


def _modal(desk: MainWindow, name: str) -> Iterator[tuple[str, QWidget]]:
    if name in desk.actions_by_name:
        yield from _while_modal(desk.commands.of(name), name, [])


def _while_modal(open_it: Callable[[], object], name: str, seen: list[QWidget]) -> Iterator[tuple[str, QWidget]]:
    """A dialog that holds the program up: its picture is taken while it does."""
    pictures: list[QPixmap] = []

    def take() -> None:
        dialog = QApplication.activeModalWidget()
        if dialog is None:
            return
        _wait(_WAIT)
        pictures.append(dialog.grab())
        if isinstance(dialog, QDialog):
            dialog.reject()
        else:
            dialog.close()

    timer = QTimer()
    timer.setSingleShot(True)
    timer.timeout.connect(take)
    timer.start(_WAIT)
    open_it()
    if pictures:
        yield name, _Shown(pictures[0])


class _Shown(QWidget):
    """A picture that was taken already, in the shape of a window."""

    def __init__(self, picture: QPixmap) -> None:
        super().__init__()
        self._picture = picture

    def grab(self, rectangle: QRect | None = None) -> QPixmap:
        return self._picture


def _sheet(pictures: list[tuple[str, QPixmap]], columns: int = 5, width: int = 480) -> QPixmap:
    """All pictures small, in rows, with their names."""
    for _, picture in pictures:
        picture.setDevicePixelRatio(1.0)
    rows: list[list[tuple[str, QPixmap]]] = [pictures[at : at + columns] for at in range(0, len(pictures), columns)]
    small = [
        [
            (name, p.scaled(width, 400, Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode.SmoothTransformation))
            for name, p in row
        ]
        for row in rows
    ]
    heights = [max(p.height() for _, p in row) + 24 for row in small]
    sheet = QPixmap(columns * (width + 10), sum(heights))
    sheet.fill(Qt.GlobalColor.gray)
    painter = QPainter(sheet)
    top = 0
    for row, height in zip(small, heights, strict=True):
        for column, (name, picture) in enumerate(row):
            painter.drawText(column * (width + 10), top + 16, name)
            painter.drawPixmap(column * (width + 10), top + 22, picture)
        top += height
    painter.end()
    return sheet


if __name__ == "__main__":
    main()
