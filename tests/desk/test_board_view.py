from __future__ import annotations

import chess
import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QAccessible, QAction, QImage, QKeyEvent, QKeySequence, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from studyboard.desk.board_mark_palette import MarkPalette
from studyboard.desk.board_motion import RETURN, SLIDE
from studyboard.desk.board_view import BoardView
from studyboard.desk.look import Look
from studyboard.model.edits import ChangeNode
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.script import Cue, SpokenLine
from tests.desk.small_study import open_session, play, small_session

PROMOTION = "8/4P1k1/8/8/8/8/8/4K3 w - - 0 1"


@pytest.fixture
def look(qtbot):
    """A look in which things move."""
    return Look()


@pytest.fixture
def small(tmp_path):
    """A session with a side-line, and its nodes."""
    session, nodes = small_session(tmp_path)
    yield session, nodes
    session.file.close()


@pytest.fixture
def board(qtbot, small, look):
    """The board of that session on the screen."""
    return on_screen(qtbot, small[0], look)


def on_screen(qtbot, session, look) -> BoardView:
    view = BoardView(session, look)
    qtbot.addWidget(view)
    view.resize(408, 408)
    view.show()
    qtbot.waitExposed(view)
    view.motion.finish()
    return view


def point(view: BoardView, name: str):
    return view.place.centre(chess.parse_square(name)).toPoint()


def click(view: BoardView, name: str) -> None:
    QTest.mouseClick(view, Qt.MouseButton.LeftButton, pos=point(view, name))


def drag(view: BoardView, *names: str, release: bool = True) -> None:
    first, *others = names
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=point(view, first))
    for name in others:
        move_pointer(view, point(view, name))
    if release:
        QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=point(view, names[-1]))


def move_pointer(view: BoardView, where) -> None:
    """Move the pointer with the button pressed (QTest.mouseMove presses none)."""
    event = QMouseEvent(
        QEvent.Type.MouseMove,
        QPointF(where),
        QPointF(view.mapToGlobal(where)),
        Qt.MouseButton.NoButton,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    QApplication.sendEvent(view, event)


def picture(view: BoardView) -> QImage:
    return view.grab().toImage()


def square_picture(view: BoardView, name: str) -> QImage:
    return picture(view).copy(view.place.square_rect(chess.parse_square(name)).toRect())


# ---- showing -----------------------------------------------------------------------------------------------------


def test_the_board_is_square_crisp_and_never_tiny(board):
    board.resize(500, 420)
    side = board.place.side * board.devicePixelRatioF()
    assert side == int(side)
    assert board.place.rect.width() <= 420
    assert board.minimumSize().width() == board.minimumSize().height() == 240


def test_a_step_puts_the_piece_where_it_goes(board, small):
    session, nodes = small
    empty = square_picture(board, "e4")
    session.show(nodes["e4"])
    board.motion.finish()
    assert square_picture(board, "e4") != empty
    assert board.board.piece_at(chess.E4) == chess.Piece.from_symbol("P")


def test_flipping_turns_the_board_round_and_says_so(board, qtbot):
    before = board.place.centre(chess.A1)
    with qtbot.waitSignal(board.flipped_changed) as told:
        board.flip()
    assert told.args == [True]
    assert board.place.centre(chess.H8) == before


def test_marks_are_drawn_and_those_not_cued_yet_are_not(board, small):
    session, nodes = small
    bare = square_picture(board, "e5")
    marks = (Mark(MarkKind.KEY_SQUARE, (chess.A5,)), Mark(MarkKind.TARGET, (chess.E5,)))
    session.do(ChangeNode(session.node, "marks", marks))
    assert square_picture(board, "e5") != bare
    board.set_cued_marks(1)
    assert square_picture(board, "e5") == bare
    assert board.shown_marks == marks[:1]
    board.set_cued_marks({1})
    assert board.shown_marks == marks[1:]
    session.show(nodes["e4"])
    session.show(nodes["start"])
    assert board.shown_marks == marks


def test_squares_that_are_spoken_of_are_outlined_until_no_longer(board):
    bare = square_picture(board, "c6")
    board.point_at((chess.C6,))
    assert square_picture(board, "c6") != bare
    board.point_at(())
    assert square_picture(board, "c6") == bare


def test_another_board_palette_is_used_at_once(board, look):
    before = square_picture(board, "e5")
    look.choose_board("clay")
    assert square_picture(board, "e5") != before


def test_the_position_is_described_in_words(board, small):
    session, nodes = small
    session.show(nodes["e4"])
    assert board.accessibleName() == "Board"
    assert "pawns a2, b2, c2, d2, e4, f2, g2 and h2" in board.accessibleDescription()
    assert "Last move from e2 to e4." in board.accessibleDescription()


def test_assistive_programs_find_a_picture_with_what_stands_over_it(board, small):
    session, nodes = small
    found = QAccessible.queryAccessibleInterface(board)
    assert found.role() == QAccessible.Role.Graphic
    assert found.text(QAccessible.Text.Name) == "Board"
    session.show(nodes["e4"])
    assert "Last move from e2 to e4." in found.text(QAccessible.Text.Description)
    assert found.childCount() == 64
    board.begin_entry()
    assert found.childCount() == 65
    assert found.child(64).object() is board.entry
    board.entry.close_entry()


# ---- motion ------------------------------------------------------------------------------------------------------


def test_a_move_slides_for_two_hundred_milliseconds(board, small):
    session, nodes = small
    session.show(nodes["e4"])
    assert board.motion.running
    assert board.motion.clock.duration() == SLIDE == 200
    assert not board.motion.returning
    board.motion.clock.pause()
    board.motion.clock.setCurrentTime(100)
    (figure,) = board.motion.figures(board.place)
    top, bottom = board.place.corner(chess.E4).y(), board.place.corner(chess.E2).y()
    assert top < figure.corner.y() < bottom


def test_a_step_back_slides_the_piece_back(board, small):
    session, nodes = small
    session.show(nodes["e4"])
    session.show(nodes["start"])
    board.motion.clock.pause()
    board.motion.clock.setCurrentTime(0)
    (figure,) = board.motion.figures(board.place)
    assert figure.corner == board.place.corner(chess.E4)
    assert not board.motion.returning


def test_a_new_step_jumps_to_the_end_of_the_last_one(board, small):
    session, nodes = small
    session.show(nodes["e4"])
    session.show(nodes["e5"])
    figures = list(board.motion.figures(board.place))
    assert [figure.piece.symbol() for figure in figures] == ["p"]
    assert board.motion.hidden == {chess.E5}


def test_coming_back_from_a_side_line_looks_different_from_a_move(board, small, look):
    session, nodes = small
    session.show(nodes["Bc4"])
    session.show(nodes["Nf6"])
    assert not board.motion.returning
    session.show(nodes["d3"])
    session.show(nodes["Bc5"])
    assert board.motion.returning
    assert board.motion.clock.duration() == RETURN
    board.motion.clock.pause()
    board.motion.clock.setCurrentTime(RETURN // 4)
    place = board.place
    edge = picture(board).pixelColor(int(place.left + place.side / 2), int(place.top + 1))
    accent = look.color("accent")
    assert max(abs(edge.red() - accent.red()), abs(edge.green() - accent.green())) < 12


def test_a_motion_that_goes_on_ends_by_itself_as_the_position_at_rest(board, small, qtbot):
    session, nodes = small
    session.show(nodes["e4"])
    qtbot.waitUntil(lambda: not board.motion.running, timeout=2000)
    assert board.motion.hidden == frozenset()
    arrived = picture(board)
    board.motion.finish()
    assert picture(board) == arrived


def test_nothing_moves_where_motion_is_reduced(board, small, look):
    session, nodes = small
    look.reduce_motion(True)
    session.show(nodes["e4"])
    assert not board.motion.running
    session.show(nodes["d3"])
    assert not board.motion.running


def test_motion_that_is_reduced_meanwhile_ends_at_once(board, small, look):
    session, nodes = small
    session.show(nodes["e4"])
    assert board.motion.running
    look.reduce_motion(True)
    assert not board.motion.running
    assert board.motion.hidden == frozenset()


def test_a_key_in_the_middle_of_a_motion_shows_the_new_position_with_the_next_painting(board, small):
    session, nodes = small
    session.show(nodes["e4"])
    board.motion.clock.pause()
    board.motion.clock.setCurrentTime(100)
    halfway = square_picture(board, "e3")
    session.show(nodes["start"])
    session.show(nodes["e4"])
    session.show(nodes["e5"])
    board.motion.clock.pause()
    board.motion.clock.setCurrentTime(0)
    assert square_picture(board, "e3") != halfway
    arrived = square_picture(board, "e4")
    board.motion.finish()
    assert square_picture(board, "e4") == arrived


def test_castling_moves_king_and_rook_together(qtbot, tmp_path, look):
    session = open_session(tmp_path, "4k3/8/8/8/8/8/8/4K2R w K - 0 1")
    view = on_screen(qtbot, session, look)
    play(session, "O-O")
    assert {figure.piece.symbol() for figure in view.motion.figures(view.place)} == {"K", "R"}
    session.file.close()


# ---- moving pieces ------------------------------------------------------------------------------------------------


def test_a_piece_is_dragged_to_a_legal_square(board, small):
    session, nodes = small
    drag(board, "e2", "e3", "e4")
    assert session.node == nodes["e4"]
    assert not board.motion.running


def test_two_clicks_play_a_move_that_slides(board, small):
    session, nodes = small
    click(board, "e2")
    assert board.hand.targets == {chess.E3, chess.E4}
    click(board, "e4")
    assert session.node == nodes["e4"]
    assert board.motion.running


def test_a_new_move_is_added_to_the_tree(board, small):
    session, _ = small
    drag(board, "d2", "d4")
    assert session.positions.san(session.node) == "d4"
    assert session.file.can_undo


def test_legal_targets_are_shown_while_a_piece_is_held(board):
    bare = square_picture(board, "f3")
    drag(board, "g1", "g2", release=False)
    assert square_picture(board, "f3") != bare
    QTest.mouseRelease(board, Qt.MouseButton.LeftButton, pos=point(board, "g1"))
    board.hand.drop()
    assert square_picture(board, "f3") == bare


def test_a_piece_put_where_it_may_not_go_glides_back(board, small, qtbot):
    session, nodes = small
    drag(board, "g1", "g3", "g4")
    assert session.node == nodes["start"]
    assert board.motion.running
    assert board.motion.hidden == {chess.G1}
    qtbot.waitUntil(lambda: not board.motion.running, timeout=2000)
    assert board.hand.held is None


def test_a_piece_dropped_beside_the_board_goes_back(board, small):
    session, nodes = small
    drag(board, "g1", "f3", release=False)
    QTest.mouseRelease(board, Qt.MouseButton.LeftButton, pos=board.rect().bottomRight())
    assert session.node == nodes["start"]
    assert board.hand.held is None


def test_a_second_click_on_a_piece_puts_it_down_and_another_piece_takes_its_place(board):
    click(board, "g1")
    click(board, "b1")
    assert board.hand.held == chess.B1
    click(board, "b1")
    assert board.hand.held is None


def test_the_other_sides_pieces_cannot_be_picked_up(board):
    click(board, "e7")
    assert board.hand.held is None


def test_a_step_takes_the_held_piece_out_of_the_hand(board, small):
    session, nodes = small
    click(board, "g1")
    session.show(nodes["e4"])
    assert board.hand.held is None


# ---- promotion ----------------------------------------------------------------------------------------------------


@pytest.fixture
def promoting(qtbot, tmp_path, look):
    session = open_session(tmp_path, PROMOTION)
    view = on_screen(qtbot, session, look)
    drag(view, "e7", "e8")
    yield view, session
    session.file.close()


def test_a_promotion_is_asked_for_and_chosen_by_mouse(promoting):
    view, session = promoting
    assert view.promotion.isVisible()
    assert session.node == session.study.root
    QTest.mouseClick(view.promotion.button(chess.KNIGHT), Qt.MouseButton.LeftButton)
    assert session.positions.san(session.node) == "e8=N+"
    assert not view.promotion.isVisible()


def test_a_promotion_is_chosen_by_its_letter(promoting):
    view, session = promoting
    QTest.keyClick(view.promotion.button(chess.QUEEN), Qt.Key.Key_R)
    assert session.positions.san(session.node) == "e8=R"


def test_a_promotion_is_chosen_by_arrows_and_enter(promoting):
    view, session = promoting
    QTest.keyClick(view.promotion.button(chess.QUEEN), Qt.Key.Key_Down)
    QTest.keyClick(view.promotion.button(chess.ROOK), Qt.Key.Key_Down)
    QTest.keyClick(view.promotion.button(chess.BISHOP), Qt.Key.Key_Return)
    assert session.positions.san(session.node) == "e8=B"


def test_escape_cancels_a_promotion(promoting):
    view, session = promoting
    QTest.keyClick(view.promotion.button(chess.QUEEN), Qt.Key.Key_Escape)
    assert session.node == session.study.root
    assert not view.promotion.isVisible()
    assert view.hand.held is None


def test_a_click_elsewhere_cancels_a_promotion(promoting):
    view, session = promoting
    click(view, "a4")
    assert session.node == session.study.root
    assert not view.promotion.isVisible()


def test_the_choice_lies_on_the_board_whichever_way_round_it_is(promoting):
    view, _ = promoting
    view.promotion.cancel()
    for flipped in (True, False):
        view.set_flipped(flipped)
        view.begin_picking()
        view.hand.choose(chess.E7)
        view.hand.choose(chess.E8)
        assert view.rect().contains(view.promotion.geometry())
        view.promotion.cancel()


# ---- the keyboard -------------------------------------------------------------------------------------------------


def test_enter_shows_a_cursor_that_arrows_move_and_enter_plays(board, small):
    session, nodes = small
    board.setFocus()
    QTest.keyClick(board, Qt.Key.Key_Return)
    assert board.hand.cursor == chess.E1
    QTest.keyClick(board, Qt.Key.Key_Up)
    QTest.keyClick(board, Qt.Key.Key_Return)
    assert board.hand.held == chess.E2
    QTest.keyClick(board, Qt.Key.Key_Up)
    QTest.keyClick(board, Qt.Key.Key_Up)
    QTest.keyClick(board, Qt.Key.Key_Return)
    assert session.node == nodes["e4"]
    assert board.hand.cursor == chess.E4


def test_the_cursor_moves_as_it_is_seen_on_a_turned_board(board):
    board.set_flipped(True)
    board.setFocus()
    QTest.keyClick(board, Qt.Key.Key_Return)
    QTest.keyClick(board, Qt.Key.Key_Down)
    QTest.keyClick(board, Qt.Key.Key_Left)
    assert board.hand.cursor == chess.F2


def test_escape_leaves_step_by_step(board):
    board.setFocus()
    board.set_marking(True)
    QTest.keyClick(board, Qt.Key.Key_Return)
    QTest.keyClick(board, Qt.Key.Key_Escape)
    assert board.hand.cursor is None
    assert board.marking
    QTest.keyClick(board, Qt.Key.Key_Escape)
    assert not board.marking


def test_arrows_belong_to_others_until_the_keyboard_picks(qtbot, small, look):
    session, _ = small
    window = QWidget()
    qtbot.addWidget(window)
    layout = QVBoxLayout(window)
    view = BoardView(session, look)
    layout.addWidget(view)
    stepped = []
    action = QAction(window)
    action.setShortcut(QKeySequence(Qt.Key.Key_Down))
    action.triggered.connect(lambda: stepped.append(1))
    window.addAction(action)
    window.show()
    qtbot.waitExposed(window)
    with qtbot.waitActive(window):
        window.activateWindow()
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_Down)
    assert stepped == [1]
    QTest.keyClick(view, Qt.Key.Key_Return)
    cursor = view.hand.cursor
    QTest.keyClick(view, Qt.Key.Key_Up)
    QTest.keyClick(view, Qt.Key.Key_Down)
    assert view.hand.cursor == cursor
    assert stepped == [1]


def test_a_move_is_typed_and_played(board, small):
    session, _ = small
    board.setFocus()
    QTest.keyClick(board, "N", Qt.KeyboardModifier.ShiftModifier)
    assert board.entry.isVisible()
    QTest.keyClicks(board.entry.field, "f3")
    QTest.keyClick(board.entry.field, Qt.Key.Key_Return)
    assert session.positions.san(session.node) == "Nf3"
    assert not board.entry.isVisible()
    assert board.hasFocus()


def test_a_move_that_cannot_be_played_says_why_and_can_be_mended(board, small):
    session, _ = small
    board.begin_entry("Nf6")
    QTest.keyClick(board.entry.field, Qt.Key.Key_Return)
    assert board.entry.reason.startswith("No white knight can go to f6. The knight on b1 can go to a3 or c3;")
    assert session.node == session.study.root
    QTest.keyClick(board.entry.field, Qt.Key.Key_Backspace)
    assert board.entry.reason == ""
    QTest.keyClicks(board.entry.field, "3")
    QTest.keyClick(board.entry.field, Qt.Key.Key_Return)
    assert session.positions.san(session.node) == "Nf3"


def test_escape_puts_the_field_for_moves_away(board, small):
    session, nodes = small
    board.begin_entry("e4")
    QTest.keyClick(board.entry.field, Qt.Key.Key_Escape)
    assert not board.entry.isVisible()
    assert session.node == nodes["start"]


def test_a_typed_move_is_shown_before_it_is_played(board):
    bare = square_picture(board, "e4")
    board.begin_entry("e4")
    assert square_picture(board, "e4") != bare


# ---- marking ------------------------------------------------------------------------------------------------------


def marks(session) -> tuple[Mark, ...]:
    return session.study.node(session.node).marks


def test_a_drag_while_marking_draws_a_threat_and_the_same_again_wipes_it(board, small):
    session, _ = small
    board.set_marking(True)
    drag(board, "d1", "f3", "h5")
    assert marks(session) == (Mark(MarkKind.THREAT, (chess.D1, chess.H5)),)
    drag(board, "d1", "h5")
    assert marks(session) == ()
    session.undo()
    assert len(marks(session)) == 1


def test_while_marking_no_piece_is_moved(board, small):
    session, nodes = small
    board.set_marking(True)
    drag(board, "e2", "e4")
    assert session.node == nodes["start"]
    board.set_marking(False)
    drag(board, "e2", "e4")
    assert session.node == nodes["e4"]


def test_a_click_marks_a_square_and_a_click_draws_no_line(board, small):
    session, _ = small
    board.set_marking(True)
    click(board, "d5")
    assert marks(session) == ()
    board.set_mark_kind(MarkKind.TARGET)
    click(board, "d5")
    board.set_mark_kind(MarkKind.KEY_SQUARE)
    click(board, "e4")
    assert marks(session) == (Mark(MarkKind.TARGET, (chess.D5,)), Mark(MarkKind.KEY_SQUARE, (chess.E4,)))


def test_a_route_is_drawn_on_from_its_end_and_shortened_by_its_last_leg(board, small):
    session, _ = small
    board.set_marking(True)
    board.set_mark_kind(MarkKind.ROUTE)
    drag(board, "b1", "c3")
    drag(board, "c3", "d5")
    assert marks(session) == (Mark(MarkKind.ROUTE, (chess.B1, chess.C3, chess.D5)),)
    drag(board, "c3", "d5")
    assert marks(session) == (Mark(MarkKind.ROUTE, (chess.B1, chess.C3)),)


def test_the_mark_is_seen_while_it_is_being_drawn(board):
    board.set_marking(True)
    bare = square_picture(board, "e5")
    drag(board, "e2", "e7", release=False)
    assert square_picture(board, "e5") != bare


def test_number_keys_choose_the_kind_and_m_turns_marking_on(board, qtbot):
    board.setFocus()
    with qtbot.waitSignal(board.mark_kind_changed) as told:
        QTest.keyClick(board, Qt.Key.Key_5)
    assert told.args == [MarkKind.GUARD]
    assert board.marking
    QTest.keyClick(board, Qt.Key.Key_M)
    assert not board.marking
    QTest.keyClick(board, Qt.Key.Key_M)
    assert board.marking
    assert board.mark_kind is MarkKind.GUARD


def test_marks_are_drawn_with_the_keyboard_too(board, small):
    session, _ = small
    board.setFocus()
    QTest.keyClick(board, Qt.Key.Key_1)
    for key in (Qt.Key.Key_Return, Qt.Key.Key_Return, Qt.Key.Key_Up, Qt.Key.Key_Up, Qt.Key.Key_Return):
        QTest.keyClick(board, key)
    assert marks(session) == (Mark(MarkKind.THREAT, (chess.E1, chess.E3)),)
    QTest.keyClick(board, Qt.Key.Key_2)
    QTest.keyClick(board, Qt.Key.Key_Return)
    assert marks(session)[1:] == (Mark(MarkKind.TARGET, (chess.E3,)),)


def test_wiping_a_mark_takes_its_cue_along_and_leaves_the_others_right(board, small):
    session, _ = small
    node = session.node
    drawn = tuple(Mark(MarkKind.TARGET, (square,)) for square in (chess.A3, chess.B3, chess.C3))
    session.do(ChangeNode(node, "marks", drawn))
    session.do(
        ChangeNode(node, "spoken", SpokenLine("one two three", (Cue(0, mark=0), Cue(1, mark=1), Cue(2, mark=2))))
    )
    board.set_marking(True)
    board.set_mark_kind(MarkKind.TARGET)
    click(board, "b3")
    assert session.study.node(node).spoken.cues == (Cue(0, mark=0), Cue(2, mark=1))
    session.undo()
    assert session.study.node(node).marks == drawn
    assert len(session.study.node(node).spoken.cues) == 3


def test_the_palette_shows_and_sets_what_is_drawn(board, look, qtbot):
    palette = MarkPalette(board, look)
    qtbot.addWidget(palette)
    palette.show()
    QTest.mouseClick(palette.button(MarkKind.ROUTE), Qt.MouseButton.LeftButton)
    assert board.marking
    assert board.mark_kind is MarkKind.ROUTE
    board.set_mark_kind(MarkKind.GUARD)
    assert palette.button(MarkKind.GUARD).isChecked()
    assert not palette.button(MarkKind.ROUTE).isChecked()
    QTest.mouseClick(palette.button(MarkKind.GUARD), Qt.MouseButton.LeftButton)
    assert not board.marking
    assert not palette.button(MarkKind.GUARD).isChecked()
    assert palette.button(MarkKind.THREAT).text() == "Threat"
    assert palette.button(MarkKind.THREAT).accessibleName() == "Draw a threat"


def test_all_marks_are_wiped_at_once_and_come_back_by_undo(board, small):
    session, _ = small
    board.set_marking(True)
    drag(board, "d1", "h5")
    drag(board, "c1", "g5")
    board.clear_marks()
    assert marks(session) == ()
    session.undo()
    assert len(marks(session)) == 2


def test_shortcuts_with_modifiers_are_left_to_the_window(board):
    event = QKeyEvent(QEvent.Type.ShortcutOverride, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier, "b")
    event.ignore()
    QApplication.sendEvent(board, event)
    assert not event.isAccepted()


def test_a_move_is_typed_in_words_too(board, small):
    session, _ = small
    board.setFocus()
    QTest.keyClick(board, "k")
    QTest.keyClicks(board.entry.field, "night f3")
    QTest.keyClick(board.entry.field, Qt.Key.Key_Return)
    assert session.positions.san(session.node) == "Nf3"
