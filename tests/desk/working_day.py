"""What a presenter does in a working day, as a script of keys and actions."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialog, QWidget

from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeNode
from studyboard.model.script import SpokenLine

Step = tuple[str, Callable[[], object]]


def close_dialogs(desk: MainWindow) -> None:
    """Close whatever stands over the desk."""
    for dialog in desk.findChildren(QDialog):
        dialog.close()


def working_day(desk: MainWindow) -> Iterator[Step]:
    """Stepping, writing, side-lines, marks, timing, read-through, rehearsing, and all of it undone."""
    session = desk.session

    def action(name: str) -> Step:
        return name, desk.commands.of(name)

    def key(
        what: str, widget: QWidget, code: Qt.Key, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier
    ) -> Step:
        return what, lambda: QTest.keyClick(widget, code, held)

    def type_in(text: str) -> Iterator[Step]:
        for letter in text:
            yield "typing", lambda letter=letter: QTest.keyClicks(desk.line_editor.text, letter)

    main = list(session.study.main_line())
    yield action("write")
    for _ in range(15):
        yield key("step forward", desk.lanes, Qt.Key.Key_Down)
    for _ in range(5):
        yield key("step back", desk.lanes, Qt.Key.Key_Up)
    for node in (main[len(main) // 2], main[-1], main[3]):
        yield "jump", lambda node=node: session.show(node)
    yield action("into_side_line")
    yield action("out_of_side_line")
    yield key("fold", desk.lanes, Qt.Key.Key_Minus)
    yield key("unfold", desk.lanes, Qt.Key.Key_Plus)
    yield "jump", lambda: session.show(main[10])
    yield action("edit_line")
    yield from type_in("And here the knight takes on e5, which nobody saw. ")
    yield action("insert_cue")
    yield from type_in("Then comes the queen, and it is a fork. ")

    def play_another_move() -> None:
        board = session.board
        played = {session.study.nodes[child].move for child in session.study.nodes[session.node].children}
        session.play(next(move for move in board.legal_moves if move not in played))

    yield "play a side-line", play_another_move
    yield "play on", lambda: session.play(next(iter(session.board.legal_moves)))
    yield action("promote")
    yield action("undo")
    yield action("hide_side_line")
    yield action("tell_before")
    yield action("copy_branch")
    yield "jump", lambda: session.show(main[4])
    yield action("marking")
    for _ in range(3):
        yield "mark", lambda: session.do(ChangeNode(main[4], "marks", (), "Draw marks"))
    yield action("marking")
    yield action("flip")
    yield "write a line", lambda: session.do(ChangeNode(main[4], "spoken", SpokenLine("The bishop attacks c4.")))
    yield action("next_query")
    yield action("read_through")
    yield "close the list", lambda: close_dialogs(desk)
    yield action("fit_to_slot")
    yield action("lock_length")
    for before, after in pairwise([QPoint(300, 60), QPoint(420, 60), QPoint(520, 60)]):
        yield (
            "over the ruler",
            lambda before=before, after=after: (
                QTest.mouseMove(desk.ruler, before),
                QTest.mouseMove(desk.ruler, after),
            ),
        )
    yield "zoom the ruler", lambda: desk.ruler.zoom(4)
    yield "fit the ruler", desk.ruler.fit
    yield action("rehearse")
    for _ in range(12):
        yield action("advance")
    yield "wander off", lambda: session.play(next(iter(session.board.legal_moves)))
    yield action("come_back")
    yield action("retreat")
    yield action("start_or_stop")
    yield action("write")
    yield action("larger_text")
    yield action("smaller_text")
    yield "dark", lambda: desk.look.choose_theme("dark")
    yield "light", lambda: desk.look.choose_theme("light")
    yield action("copy_pgn")
    yield action("copy_fen")
    for _ in range(12):
        yield action("undo")
    for _ in range(6):
        yield action("redo")
    yield action("delete_branch")
    yield action("undo")
    yield "end of the day", lambda: session.show(session.study.root)
