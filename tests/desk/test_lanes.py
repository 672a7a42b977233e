"""What a presenter sees and does in the lanes."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import chess
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent, QFont, QImage
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.lanes import Lanes
from studyboard.desk.lanes_geometry import RAIL, TEXT
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.model.edits import ChangeLine, ChangeNode, RemoveBranch, add_move
from studyboard.model.node import Place, Telling
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.store.study_file import StudyFile

GAME = (
    "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 (3. Bc4 Be7 4. O-O) 3... exd4) (2... Nf6 3. Nxe5 d6) "
    "3. Bb5 a6 4. Ba4 Nf6 5. O-O Be7 6. Re1 b5 7. Bb3 d6 8. c3 O-O *"
)


def find(session: Session, *sans: str) -> int:
    """The node that these moves lead to."""
    node = session.study.root
    for san in sans:
        children = session.study.nodes[node].children
        node = next(child for child in children if session.positions.san(child) == san)
    return node


def say(session: Session, node: int, text: str) -> None:
    assert session.do(ChangeNode(node, "spoken", SpokenLine(text)))


def open_session(path: Path, study: Study) -> Session:
    return Session(StudyFile.create(path, study))


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    session = open_session(tmp_path / "talk.studyboard", next(read_games(GAME)).study)
    say(session, find(session, "e4", "e5", "Nf3", "Nc6"), "The knight comes out and guards the pawn.")
    yield session
    session.file.close()


@pytest.fixture
def lanes(qtbot: QtBot, session: Session, still_look: Look) -> Lanes:
    return shown(qtbot, Lanes(session, still_look))


def shown(qtbot: QtBot, widget: Lanes) -> Lanes:
    qtbot.addWidget(widget)
    widget.resize(760, 560)
    widget.show()
    qtbot.waitExposed(widget)
    widget.setFocus()
    return widget


def click(qtbot: QtBot, lanes: Lanes, at: QPoint, button: Qt.MouseButton = Qt.MouseButton.LeftButton) -> None:
    qtbot.mouseClick(lanes.viewport(), button, pos=at)


def in_view(lanes: Lanes, key: int | Part) -> bool:
    rect = lanes.row_rect(key)
    return rect is not None and lanes.viewport().rect().contains(rect)


def test_a_side_line_is_level_with_the_move_that_it_replaces_and_to_its_right(session: Session, lanes: Lanes) -> None:
    main = lanes.row_rect(find(session, "e4", "e5", "Nf3", "Nc6"))
    first = lanes.row_rect(find(session, "e4", "e5", "Nf3", "d6"))
    second = lanes.row_rect(find(session, "e4", "e5", "Nf3", "Nf6"))
    assert main is not None
    assert first is not None
    assert second is not None
    assert main.top() == first.top() == second.top()
    assert main.right() < first.left()
    assert first.right() < second.left()


def test_rows_follow_each_other_without_overlapping(session: Session, lanes: Lanes) -> None:
    rows = [lanes.row_rect(key) for key in (Part.GREETING, *session.study.main_line(), Part.CLOSING, Part.THANKS)]
    assert all(
        above is not None and below is not None and above.bottom() < below.top() for above, below in pairwise(rows)
    )


def test_a_side_line_stands_beside_its_move_although_an_earlier_one_has_ended_just_above(
    qtbot: QtBot, session: Session, lanes: Lanes
) -> None:
    tip = find(session, "e4", "e5", "Nf3", "d6", "d4", "exd4")
    replaced = find(session, "e4", "e5", "Nf3", "Nc6", "Bb5", "a6", "Ba4")
    say(session, tip, "Black has won a pawn.")
    edit = add_move(session.study, session.study.nodes[replaced].parent, chess.Move.from_uci("b5c6"))
    session.do(edit)
    above, main, below = lanes.row_rect(tip), lanes.row_rect(replaced), lanes.row_rect(edit.node)
    assert above is not None
    assert main is not None
    assert below is not None
    assert below.left() == above.left(), "in the first lane"
    assert below.top() == main.top()
    session.show(tip)
    heading = lanes.heading_rect(edit.node)
    assert heading is not None
    click(qtbot, lanes, QPoint(heading.left() + 20, heading.center().y()))
    assert session.node == edit.node


def test_a_rail_that_runs_across_interrupts_the_one_that_it_crosses(
    session: Session, lanes: Lanes, still_look: Look
) -> None:
    edit = add_move(session.study, find(session, "e4", "e5", "Nf3", "Nc6"), chess.Move.from_uci("f1c4"))
    session.do(edit)
    session.show(session.study.root)
    far = lanes.row_rect(edit.node)
    crossed = lanes.row_rect(find(session, "e4", "e5", "Nf3", "d6", "d4"))
    assert crossed is not None
    assert far is not None
    assert far.left() > crossed.right(), "its rail passes the lane between"
    image = lanes.viewport().grab().toImage()
    x = crossed.left() - TEXT + 8 + RAIL
    ground = still_look.color("surface").rgb()
    across = max(range(crossed.top() - 16, crossed.top() + 8), key=lambda y: _inked(image, y, x - 8, x + 8, ground))
    assert _inked(image, across, x - 8, x + 8, ground) == 16, "it goes through"
    assert _inked(image, across - 2, x - 8, x + 8, ground) == 0
    assert _inked(image, across + 3, x - 8, x + 8, ground) == 0, "it is two pixels thick"
    assert _inked(image, across + 8, x - 8, x + 8, ground) > 0, "the other rail goes on"


def test_time_bars_grow_with_the_text(qtbot: QtBot, session: Session) -> None:
    font = QApplication.font()
    large = QFont(font)
    large.setPointSizeF(2 * font.pointSizeF())
    node = find(session, "e4", "e5", "Nf3", "Nc6")
    thickness = []
    for used in (font, large):
        QApplication.setFont(used)
        try:
            look = Look()
            lanes = shown(qtbot, Lanes(session, look))
            lanes.resize(2000, 1200)
            session.show(session.study.root)
            session.planned.emit()
            track = look.color("track").rgb()
            image = lanes.viewport().grab().toImage()
            rect = lanes.row_rect(node)
            assert rect is not None
            thickness.append(
                sum(
                    any(image.pixel(x, y) == track for x in range(rect.left(), rect.right()))
                    for y in range(max(0, rect.top()), rect.bottom())
                )
            )
        finally:
            QApplication.setFont(font)
    assert thickness[0] >= 4
    assert thickness[1] == pytest.approx(2 * thickness[0], abs=2)


def test_a_click_shows_the_move(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    node = find(session, "e4", "e5", "Nf3", "d6", "d4")
    rect = lanes.row_rect(node)
    assert rect is not None
    click(qtbot, lanes, rect.center())
    assert session.node == node
    assert lanes.current == node


def test_a_click_on_a_heading_shows_the_first_move_of_its_side_line(
    qtbot: QtBot, session: Session, lanes: Lanes
) -> None:
    start = find(session, "e4", "e5", "Nf3", "Nf6")
    heading = lanes.heading_rect(start)
    assert heading is not None
    click(qtbot, lanes, QPoint(heading.left() + 20, heading.center().y()))
    assert session.node == start


def test_the_arrows_step_along_the_line_and_into_and_out_of_side_lines(
    qtbot: QtBot, session: Session, lanes: Lanes
) -> None:
    main = find(session, "e4", "e5", "Nf3", "Nc6")
    first, second = find(session, "e4", "e5", "Nf3", "d6"), find(session, "e4", "e5", "Nf3", "Nf6")
    session.show(find(session, "e4", "e5", "Nf3"))
    seen = []
    for key in (
        Qt.Key.Key_Down,
        Qt.Key.Key_Right,
        Qt.Key.Key_Right,
        Qt.Key.Key_Down,
        Qt.Key.Key_Left,
        Qt.Key.Key_Left,
        Qt.Key.Key_Left,
        Qt.Key.Key_Up,
    ):
        qtbot.keyClick(lanes, key)
        seen.append(session.node)
    capture = find(session, "e4", "e5", "Nf3", "Nf6", "Nxe5")
    assert seen == [main, first, second, capture, second, first, main, find(session, "e4", "e5", "Nf3")]


def test_right_follows_the_rail_from_the_node_at_which_a_side_line_leaves(
    qtbot: QtBot, session: Session, lanes: Lanes
) -> None:
    session.show(find(session, "e4", "e5", "Nf3"))
    qtbot.keyClick(lanes, Qt.Key.Key_Right)
    assert session.node == find(session, "e4", "e5", "Nf3", "d6")


def test_home_goes_to_the_head_of_the_side_line_and_then_to_the_start(
    qtbot: QtBot, session: Session, lanes: Lanes
) -> None:
    session.show(find(session, "e4", "e5", "Nf3", "d6", "d4", "exd4"))
    qtbot.keyClick(lanes, Qt.Key.Key_Home)
    assert session.node == find(session, "e4", "e5", "Nf3", "d6")
    qtbot.keyClick(lanes, Qt.Key.Key_Home)
    assert session.node == session.study.root
    qtbot.keyClick(lanes, Qt.Key.Key_End)
    assert session.node == list(session.study.main_line())[-1]


def test_greeting_and_thanks_are_reached_with_the_arrows(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    with qtbot.waitSignal(lanes.part_chosen) as chosen:
        qtbot.keyClick(lanes, Qt.Key.Key_Up)
    assert chosen.args == [Part.GREETING]
    assert lanes.current == Part.GREETING
    with qtbot.waitSignal(lanes.node_chosen) as back:
        qtbot.keyClick(lanes, Qt.Key.Key_Down)
    assert back.args == [session.study.root]
    qtbot.keyClick(lanes, Qt.Key.Key_End)
    qtbot.keyClick(lanes, Qt.Key.Key_Down)
    qtbot.keyClick(lanes, Qt.Key.Key_Down)
    assert lanes.current == Part.THANKS


def test_the_closing_is_said_over_the_last_position(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    rect = lanes.row_rect(Part.CLOSING)
    assert rect is not None
    lanes.choose_part(Part.CLOSING)
    assert session.node == list(session.study.main_line())[-1]
    assert lanes.current == Part.CLOSING
    assert in_view(lanes, Part.CLOSING)


def test_folding_hides_the_side_lines_and_their_knob_brings_them_back(
    qtbot: QtBot, session: Session, lanes: Lanes
) -> None:
    branching = find(session, "e4", "e5", "Nf3")
    side_lines = [find(session, "e4", "e5", "Nf3", san) for san in ("d6", "Nf6")]
    knob = lanes.fold_rect(branching)
    assert knob is not None
    before = _ink_right_of(lanes, knob.right() + 4)
    click(qtbot, lanes, knob.center())
    assert [lanes.row_rect(node) for node in side_lines] == [None, None]
    assert lanes.folded == set(side_lines)
    assert before > 0
    assert _ink_right_of(lanes, knob.right() + 4) == 0
    assert lanes.fold_rect(branching) == knob, "it stays under the pointer"
    click(qtbot, lanes, knob.center())
    assert all(lanes.row_rect(node) is not None for node in side_lines)


def test_folding_the_side_line_one_stands_in_steps_out_of_it(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    session.show(_nested(session))
    qtbot.keyClick(lanes, Qt.Key.Key_Minus)
    assert session.node == find(session, "e4", "e5", "Nf3", "d6", "d4")
    qtbot.keyClick(lanes, Qt.Key.Key_Minus)
    assert session.node == find(session, "e4", "e5", "Nf3", "Nc6")
    qtbot.keyClick(lanes, Qt.Key.Key_Plus)
    assert lanes.row_rect(find(session, "e4", "e5", "Nf3", "d6")) is not None


def test_a_move_behind_a_fold_is_unfolded_when_it_is_shown(session: Session, lanes: Lanes) -> None:
    lanes.fold(find(session, "e4", "e5", "Nf3", "d6"))
    node = _nested(session)
    assert lanes.row_rect(node) is None
    session.show(node)
    assert in_view(lanes, node)


def test_the_current_row_is_in_view_after_two_hundred_moves(qtbot: QtBot, tmp_path: Path, still_look: Look) -> None:
    session = open_session(tmp_path / "long.studyboard", shuffling(220))
    lanes = shown(qtbot, Lanes(session, still_look))
    for _ in range(200):
        qtbot.keyClick(lanes, Qt.Key.Key_Down)
        assert in_view(lanes, session.node)
    assert session.study.ply(session.node) == 200
    for _ in range(200):
        qtbot.keyClick(lanes, Qt.Key.Key_Up)
    assert session.node == session.study.root
    assert in_view(lanes, session.study.root)
    session.file.close()


def test_a_glide_brings_the_row_into_view_and_gives_way_to_the_wheel(qtbot: QtBot, tmp_path: Path) -> None:
    session = open_session(tmp_path / "long.studyboard", shuffling(60))
    look = Look()
    lanes = shown(qtbot, Lanes(session, look))
    far = list(session.study.main_line())[24]
    session.show(far)
    assert not in_view(lanes, far), "it glides, so it is not there yet"
    qtbot.waitUntil(lambda: in_view(lanes, far), timeout=1000)
    session.file.close()


def test_page_down_goes_about_a_view_further(qtbot: QtBot, tmp_path: Path, still_look: Look) -> None:
    session = open_session(tmp_path / "long.studyboard", shuffling(120))
    lanes = shown(qtbot, Lanes(session, still_look))
    qtbot.keyClick(lanes, Qt.Key.Key_PageDown)
    there = session.study.ply(session.node)
    assert 5 < there < 30
    assert in_view(lanes, session.node)
    qtbot.keyClick(lanes, Qt.Key.Key_PageUp)
    assert session.node == session.study.root
    session.file.close()


def test_side_lines_beyond_the_edge_are_scrolled_into_view(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    lanes.resize(420, 400)
    node = find(session, "e4", "e5", "Nf3", "Nf6", "Nxe5")
    session.show(node)
    assert in_view(lanes, node)
    assert lanes.horizontalScrollBar().value() > 0


def test_a_side_line_beyond_the_edge_is_scrolled_to_no_further_than_it_takes(session: Session, lanes: Lanes) -> None:
    edit = add_move(session.study, find(session, "e4", "e5", "Nf3"), chess.Move.from_uci("g8e7"))
    session.do(edit)
    lanes.resize(600, 400)
    beyond = find(session, "e4", "e5", "Nf3", "Nf6")
    session.show(beyond)
    main, there = lanes.row_rect(find(session, "e4", "e5", "Nf3", "Nc6")), lanes.row_rect(beyond)
    assert main is not None
    assert there is not None
    assert in_view(lanes, beyond)
    assert lanes.viewport().width() - there.right() < 32
    assert main.right() > main.width() / 4, "the main line is still seen"


def test_a_new_side_line_leaves_the_main_line_in_view_where_both_fit(session: Session, lanes: Lanes) -> None:
    lanes.resize(900, 400)
    edit = add_move(session.study, find(session, "e4", "e5", "Nf3"), chess.Move.from_uci("g8e7"))
    session.do(edit)
    session.show(edit.node)
    assert in_view(lanes, edit.node)
    assert lanes.horizontalScrollBar().value() == 0


def test_coming_back_towards_the_main_line_shows_it_again(session: Session, lanes: Lanes) -> None:
    lanes.resize(600, 400)
    edit = add_move(session.study, find(session, "e4", "e5", "Nf3"), chess.Move.from_uci("g8e7"))
    session.do(edit)
    session.show(edit.node)
    assert lanes.horizontalScrollBar().value() > 0
    session.show(find(session, "e4", "e5", "Nf3", "d6"))
    assert lanes.horizontalScrollBar().value() == 0
    assert in_view(lanes, session.node)


def test_a_new_move_appears_under_the_one_it_follows(session: Session, lanes: Lanes) -> None:
    tip = find(session, "e4", "e5", "Nf3", "d6", "d4", "exd4")
    edit = add_move(session.study, tip, chess.Move.from_uci("f3d4"))
    session.do(edit)
    above, below = lanes.row_rect(tip), lanes.row_rect(edit.node)
    assert above is not None
    assert below is not None
    assert (above.left(), above.width()) == (below.left(), below.width())
    assert 0 < below.top() - above.top() < 60


def test_deleting_the_shown_branch_leaves_a_row_current(session: Session, lanes: Lanes) -> None:
    start = find(session, "e4", "e5", "Nf3", "d6")
    session.show(find(session, "e4", "e5", "Nf3", "d6", "d4"))
    session.do(RemoveBranch(start))
    assert lanes.current == session.node
    assert lanes.row_rect(session.node) is not None
    session.undo()
    assert lanes.row_rect(start) is not None


def test_a_row_grows_when_something_is_said_in_it(session: Session, lanes: Lanes) -> None:
    node = find(session, "e4", "e5", "Nf3", "Nc6", "Bb5", "a6", "Ba4", "Nf6")
    silent = lanes.row_rect(node)
    say(session, node, "Development first.")
    spoken = lanes.row_rect(node)
    assert silent is not None
    assert spoken is not None
    assert spoken.height() > silent.height()


def test_a_double_click_and_return_ask_for_the_line_to_be_edited(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    node = find(session, "e4", "e5")
    rect = lanes.row_rect(node)
    assert rect is not None
    with qtbot.waitSignal(lanes.edit_requested) as asked:
        qtbot.mouseDClick(lanes.viewport(), Qt.MouseButton.LeftButton, pos=rect.center())
    assert asked.args == [node]
    session.show(find(session, "e4"))
    with qtbot.waitSignal(lanes.edit_requested) as asked:
        qtbot.keyClick(lanes, Qt.Key.Key_Return)
    assert asked.args == [find(session, "e4")]


def test_dragging_a_side_line_in_front_of_another_reorders_them(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    first, second = find(session, "e4", "e5", "Nf3", "d6"), find(session, "e4", "e5", "Nf3", "Nf6")
    parent = find(session, "e4", "e5", "Nf3")
    main = session.study.nodes[parent].children[0]
    lanes.resize(1200, 560)
    heading, before = lanes.heading_rect(second), lanes.row_rect(first)
    assert heading is not None
    assert before is not None
    begin = QPoint(heading.left() + 20, heading.center().y())
    end = QPoint(before.left() + 10, begin.y())
    view = lanes.viewport()
    qtbot.mousePress(view, Qt.MouseButton.LeftButton, pos=begin)
    qtbot.mouseMove(view, (begin + end) / 2)
    qtbot.mouseMove(view, end)
    qtbot.mouseRelease(view, Qt.MouseButton.LeftButton, pos=end)
    assert session.study.nodes[parent].children == (main, second, first)
    left, right = lanes.row_rect(second), lanes.row_rect(first)
    assert left is not None
    assert right is not None
    assert left.right() < right.left()


def test_the_context_menu_is_asked_for_at_the_row_under_the_pointer(
    qtbot: QtBot, session: Session, lanes: Lanes
) -> None:
    node = find(session, "e4", "e5", "Nf3", "Nf6")
    rect = lanes.row_rect(node)
    assert rect is not None
    at = rect.center()
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, at, lanes.viewport().mapToGlobal(at))
    with qtbot.waitSignal(lanes.menu_requested) as asked:
        QApplication.sendEvent(lanes.viewport(), event)
    assert asked.args[0] == node


def test_a_screen_reader_is_told_move_line_and_seconds(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    node = find(session, "e4", "e5", "Nf3", "Nc6")
    qtbot.waitUntil(lambda: bool(lanes.accessibleName()) and session.is_planned)
    session.show(node)
    words = lanes.accessibleDescription()
    assert "2, black knight" in words
    assert "The knight comes out and guards the pawn." in words
    assert "seconds" in words


def test_a_line_that_is_too_long_for_its_time_is_shown_in_the_warning_colour(
    qtbot: QtBot, session: Session, lanes: Lanes, still_look: Look
) -> None:
    node = find(session, "e4", "e5", "Nf3", "Nc6")
    session.show(find(session, "e4", "e5", "Nf3", "Nc6", "Bb5", "a6"))
    warning = still_look.color("over").rgb()
    with qtbot.waitSignal(session.planned):
        session.do(ChangeNode(node, "intended", 60.0))
    assert _pixels(lanes, node, warning) == 0
    with qtbot.waitSignal(session.planned):
        session.do(ChangeNode(node, "intended", 0.5))
    assert _pixels(lanes, node, warning) > 20


def test_a_side_line_that_is_not_told_says_so(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    start = find(session, "e4", "e5", "Nf3", "d6")
    heading = lanes.heading_rect(start)
    assert heading is not None
    told = lanes.viewport().grab(heading).toImage()
    with qtbot.waitSignal(session.planned):
        session.do(ChangeNode(start, "telling", Telling(Place.HIDDEN)))
    assert lanes.viewport().grab(heading).toImage() != told
    assert "not told" in lanes.tool_tip_at(heading.center())


def test_the_greeting_shows_the_beginning_of_its_words(qtbot: QtBot, session: Session, lanes: Lanes) -> None:
    rect = lanes.row_rect(Part.GREETING)
    assert rect is not None
    empty = lanes.viewport().grab(rect).toImage()
    session.do(ChangeLine(Part.GREETING, FreeLine(SpokenLine("Good evening."))))
    lanes.choose_part(Part.GREETING)
    assert "Good evening." in lanes.accessibleDescription()
    lanes.choose_part(Part.THANKS)
    assert lanes.viewport().grab(rect).toImage() != empty


def test_another_study_is_shown_from_its_start(qtbot: QtBot, tmp_path: Path, session: Session, lanes: Lanes) -> None:
    session.show(list(session.study.main_line())[-1])
    other = StudyFile.create(tmp_path / "other.studyboard", next(read_games("1. d4 d5 *")).study)
    session.open(other)
    assert lanes.current == session.study.root
    assert in_view(lanes, find(session, "d4", "d5"))


def _nested(session: Session) -> int:
    return find(session, "e4", "e5", "Nf3", "d6", "Bc4", "Be7")


def shuffling(plies: int) -> Study:
    """A game in which the knights go out and home."""
    moves = ("Nf3", "Nf6", "Ng1", "Ng8")
    numbers = (f"{ply // 2 + 1}. " if ply % 2 == 0 else "" for ply in range(plies))
    return next(read_games(" ".join(n + moves[p % 4] for p, n in enumerate(numbers)) + " *")).study


def _ink_right_of(lanes: Lanes, left: int) -> int:
    """How many pixels are not the ground's colour."""
    image = lanes.viewport().grab().toImage()
    ground = image.pixel(image.width() - 2, image.height() - 2)
    return sum(image.pixel(x, y) != ground for x in range(left, image.width(), 2) for y in range(0, image.height(), 2))


def _inked(image: QImage, y: int, left: int, right: int, ground: int) -> int:
    """How many pixels of a piece of one row are not the ground's colour."""
    return sum(image.pixel(x, y) != ground for x in range(left, right))


def _pixels(lanes: Lanes, key: int, color: int) -> int:
    rect = lanes.row_rect(key)
    assert rect is not None
    image = lanes.viewport().grab(rect).toImage()
    return sum(image.pixel(x, y) == color for x in range(image.width()) for y in range(image.height()))


def test_the_current_row_stays_in_view_while_others_are_folded_and_unfolded(
    qtbot: QtBot, tmp_path: Path, still_look: Look
) -> None:
    moves = " ".join(f"{n}. Nf3 (" + f"{n}. Nc3 Nc6 " + ") Nf6 " + f"{n + 1}. Ng1 Ng8" for n in range(1, 60, 2))
    session = open_session(tmp_path / "long.studyboard", next(read_games(f"{moves} *")).study)
    lanes = shown(qtbot, Lanes(session, still_look))
    for node in list(session.study.nodes):
        if session.study.begins_side_line(node):
            say(session, node, "Another knight.")
    main = list(session.study.main_line())
    for node in main[-5:]:
        session.show(node)
        lanes.fold_all()
        assert in_view(lanes, node)
        lanes.unfold_all()
        assert in_view(lanes, node)
    session.file.close()
