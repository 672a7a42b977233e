from __future__ import annotations

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction, QGuiApplication, QKeySequence, QTextCursor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from studyboard.desk.line_cues import Cued, cueable, line_of, runs_of
from studyboard.desk.line_editor import LineEditor
from studyboard.desk.line_figures import LineFigures, count_words
from studyboard.desk.line_tags import Tag
from studyboard.desk.line_text import LineText
from studyboard.desk.look import Look
from studyboard.model.edits import ChangeNode, RemoveBranch
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.script import Cue, FreeLine, Part, SpokenLine, words
from studyboard.timing.pace import estimate
from tests.desk.small_study import small_session
from tests.desk.text_size import text_scaled


@pytest.fixture
def small(tmp_path):
    """A session with a side-line, and its nodes; the knight's move to f3 is shown."""
    session, nodes = small_session(tmp_path)
    session.show(nodes["Nf3"])
    yield session, nodes
    session.file.close()


@pytest.fixture
def editor(qtbot, small):
    """The line editor of that session in a window, with the keyboard in the line."""
    session, _ = small
    window = QWidget()
    layout = QVBoxLayout(window)
    editor = LineEditor(session, Look())
    layout.addWidget(editor)
    qtbot.addWidget(window)
    window.resize(620, 300)
    with qtbot.waitActive(window):
        window.show()
        window.activateWindow()
    editor.focus_line()
    yield editor
    window.close()


def spoken(session, node: int) -> SpokenLine:
    return session.study.node(node).spoken


def type_in(editor: LineEditor, text: str) -> None:
    QTest.keyClicks(editor.text, text)


# ---- lines and runs -----------------------------------------------------------------------------------------------

some_text = st.text(alphabet=st.sampled_from("ab ,.\n\u00a0é♞😀-"), max_size=40)


@st.composite
def lines(draw: st.DrawFn) -> SpokenLine:
    text = draw(some_text)
    last = len(words(text))
    cue = st.one_of(
        st.builds(Cue, st.integers(0, last), node=st.integers(0, 9)),
        st.builds(Cue, st.integers(0, last), mark=st.integers(0, 3)),
    )
    return SpokenLine(text, tuple(draw(st.lists(cue, max_size=6)))).sorted()


@given(lines())
def test_a_line_and_its_runs_are_the_same(line):
    assert line_of(runs_of(line)) == line


def test_a_cue_inside_a_word_belongs_to_that_word_and_one_after_it_to_the_next():
    assert line_of(["the kni", Cued(node=1), "ght jumps"]).cues == (Cue(1, node=1),)
    assert line_of(["the knight", Cued(node=1), " jumps"]).cues == (Cue(2, node=1),)
    assert line_of(["the knight ", Cued(node=1), "jumps"]).cues == (Cue(2, node=1),)
    assert line_of(["the end", Cued(node=1)]).cues == (Cue(2, node=1),)
    assert line_of([Cued(node=1)]).cues == (Cue(0, node=1),)


@given(line=lines())
def test_what_is_shown_is_what_was_stored(qapp, line):
    text = LineText(Look(), lambda cued: Tag("x"))
    text.set_line(line)
    assert text.line == line


# ---- writing ------------------------------------------------------------------------------------------------------


def test_the_heading_names_the_move(editor, small):
    session, nodes = small
    assert editor.heading == "Spoken line at 2. Nf3"
    session.show(nodes["e5"])
    assert editor.heading == "Spoken line at 1... e5"
    session.show(nodes["start"])
    assert "start" in editor.heading.lower()


def test_typing_is_stored_when_it_rests(editor, small, qtbot):
    session, nodes = small
    type_in(editor, "The knight comes out.")
    assert not spoken(session, nodes["Nf3"])
    qtbot.waitUntil(lambda: spoken(session, nodes["Nf3"]).text == "The knight comes out.", timeout=3000)
    assert editor.text.textCursor().position() == len("The knight comes out.")


def test_a_long_line_is_shown_from_its_beginning_and_written_on_at_its_end(editor, small):
    session, nodes = small
    session.do(ChangeNode(nodes["Nc6"], "spoken", SpokenLine("A long line goes on and on. " * 40)))
    session.show(nodes["Nc6"])
    bar = editor.text.verticalScrollBar()
    assert bar.maximum() > 0
    assert bar.value() == 0
    type_in(editor, "End.")
    assert bar.value() > 0
    assert editor.text.viewport().rect().intersects(editor.text.cursorRect())
    assert editor.text.line.text.endswith("on. End.")


def test_stepping_stores_what_was_typed_where_it_was_typed(editor, small):
    session, nodes = small
    type_in(editor, "The knight comes out")
    session.show(nodes["Nc6"])
    assert spoken(session, nodes["Nf3"]).text == "The knight comes out"
    assert not spoken(session, nodes["Nc6"])
    assert editor.text.line.text == ""
    session.show(nodes["Nf3"])
    assert editor.text.line.text == "The knight comes out"


def test_leaving_the_field_and_hiding_the_editor_store_too(editor, small):
    session, nodes = small
    type_in(editor, "One")
    editor.intended.setFocus()
    assert spoken(session, nodes["Nf3"]).text == "One"
    editor.focus_line()
    type_in(editor, " two")
    editor.window().hide()
    assert spoken(session, nodes["Nf3"]).text == "One two"


def test_nothing_is_stored_where_nothing_was_typed(editor, small):
    session, nodes = small
    before = session.file.undo_label
    for node in nodes.values():
        session.show(node)
        editor.flush()
    assert session.file.undo_label == before


def test_words_and_seconds_are_counted_while_typing(editor, small):
    session, _ = small
    assert editor.figures == "0 words · 0.0 s"
    line = "hitting the rook, and suddenly every black piece looks one way - at the king."
    type_in(editor, line)
    seconds = estimate(session.study.pace, line)
    assert editor.figures == f"14 words · {seconds:.1f} s"
    editor.intended.setText("10")
    editor.intended.commit()
    assert editor.figures.endswith("· set to 10 s")


def test_a_line_too_long_for_its_time_says_by_how_much():
    assert str(LineFigures(13, 5.1, 10.0, 0.0)) == "13 words · 5.1 s · set to 10 s"
    assert str(LineFigures(1, 5.1, 4.5, 3.0)) == "1 word · 5.1 s · set to 4.5 s, 0.6 s too short · think 3 s"
    assert LineFigures(13, 5.1, 4.5, 0.0).over == 0.6
    assert count_words("one – two, three … four") == 4


def test_undo_takes_typing_back_and_leaves_the_cursor_where_it_changed(editor, small):
    session, nodes = small
    session.do(ChangeNode(nodes["Nf3"], "spoken", SpokenLine("The knight comes out early.")))
    cursor = editor.text.textCursor()
    cursor.setPosition(len("The knight"))
    editor.text.setTextCursor(cursor)
    type_in(editor, " quietly")
    editor.flush()
    assert spoken(session, nodes["Nf3"]).text == "The knight quietly comes out early."
    session.undo()
    assert editor.text.line.text == "The knight comes out early."
    assert editor.text.textCursor().position() == len("The knight")
    session.redo()
    assert editor.text.line.text == "The knight quietly comes out early."
    assert editor.text.textCursor().position() == len("The knight quietly")


def test_undo_keys_reach_the_window_from_inside_the_text(editor, small):
    session, nodes = small
    undo = QAction(editor.window())
    undo.setShortcut(QKeySequence("Ctrl+Z"))
    undo.triggered.connect(lambda: (editor.flush(), session.undo()))
    editor.window().addAction(undo)
    type_in(editor, "abc")
    QTest.keyClick(editor.text, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert editor.text.line.text == ""
    assert not spoken(session, nodes["Nf3"])


def test_a_change_from_elsewhere_keeps_what_was_typed_meanwhile(editor, small):
    session, nodes = small
    type_in(editor, "Half a sen")
    session.do(ChangeNode(nodes["Nf3"], "marks", (Mark(MarkKind.TARGET, (chess.E5,)),)))
    assert editor.text.line.text == "Half a sen"
    assert spoken(session, nodes["Nf3"]).text == "Half a sen"


def test_what_was_typed_at_a_move_that_is_deleted_does_no_harm(editor, small):
    session, nodes = small
    refused = []
    session.refused.connect(refused.append)
    type_in(editor, "Gone")
    session.do(RemoveBranch(nodes["Nf3"]))
    editor.flush()
    assert session.node != nodes["Nf3"]
    assert refused == []


# ---- cues ---------------------------------------------------------------------------------------------------------


def test_a_cue_is_put_at_the_word_of_the_cursor_and_moves_when_put_again(editor, small):
    session, nodes = small
    type_in(editor, "and the knight jumps")
    cursor = editor.text.textCursor()
    cursor.setPosition(len("and "))
    editor.text.setTextCursor(cursor)
    editor.insert_cue(nodes["Nf3"])
    assert spoken(session, nodes["Nf3"]) == SpokenLine("and the knight jumps", (Cue(1, node=nodes["Nf3"]),))
    editor.text.moveCursor(QTextCursor.MoveOperation.End)
    editor.insert_cue(nodes["Nf3"])
    assert spoken(session, nodes["Nf3"]) == SpokenLine("and the knight jumps", (Cue(4, node=nodes["Nf3"]),))


def test_backspace_takes_a_cue_away_and_leaves_the_words(editor, small):
    session, nodes = small
    session.do(ChangeNode(nodes["Nf3"], "spoken", SpokenLine("the knight", (Cue(1, node=nodes["Nf3"]),))))
    cursor = editor.text.textCursor()
    cursor.setPosition(len("the ") + 1)
    editor.text.setTextCursor(cursor)
    QTest.keyClick(editor.text, Qt.Key.Key_Backspace)
    editor.flush()
    assert spoken(session, nodes["Nf3"]) == SpokenLine("the knight")


def test_cutting_and_pasting_takes_the_cues_along(editor, small):
    session, nodes = small
    line = SpokenLine("first the pawn then the knight", (Cue(2, node=nodes["e4"]), Cue(5, node=nodes["Nf3"])))
    session.do(ChangeNode(nodes["Nf3"], "spoken", line))
    cursor = editor.text.textCursor()
    cursor.setPosition(0)
    cursor.setPosition(len("first the ") + 1 + len("pawn "), QTextCursor.MoveMode.KeepAnchor)
    editor.text.setTextCursor(cursor)
    editor.text.cut()
    assert QGuiApplication.clipboard().text() == "first the pawn "
    editor.text.moveCursor(QTextCursor.MoveOperation.End)
    type_in(editor, " ")
    editor.text.paste()
    editor.flush()
    assert spoken(session, nodes["Nf3"]) == SpokenLine(
        "then the knight first the pawn ", (Cue(2, node=nodes["Nf3"]), Cue(5, node=nodes["e4"]))
    )


def test_text_from_elsewhere_is_pasted_plain(editor, small):
    session, nodes = small
    QGuiApplication.clipboard().setText("a\ufffc plain line")
    editor.text.paste()
    editor.flush()
    assert spoken(session, nodes["Nf3"]) == SpokenLine("a plain line")


def test_letters_outside_the_basic_plane_do_not_shift_cues(editor, small):
    session, nodes = small
    line = SpokenLine("😀 the 🏰 falls here", (Cue(3, node=nodes["Nf3"]),))
    session.do(ChangeNode(nodes["Nf3"], "spoken", line))
    editor.text.moveCursor(QTextCursor.MoveOperation.End)
    type_in(editor, "!")
    editor.flush()
    assert spoken(session, nodes["Nf3"]) == SpokenLine("😀 the 🏰 falls here!", line.cues)


def test_the_next_cue_is_for_the_first_silent_move_that_has_none(editor, small):
    session, nodes = small
    session.do(ChangeNode(nodes["e4"], "spoken", SpokenLine("Off we go.")))
    session.do(ChangeNode(nodes["Nf3"], "marks", (Mark(MarkKind.TARGET, (chess.E5,)),)))
    type_in(editor, "one two three")
    told = []
    session.refused.connect(told.append)
    for _ in range(4):
        editor.insert_next_cue()
    assert editor.text.cued == [Cued(node=nodes["e5"]), Cued(node=nodes["Nf3"]), Cued(mark=0)]
    assert told == ["Every move and mark of this beat has its cue already."]


def test_a_cue_can_play_the_silent_moves_told_before_it_in_one_go(small):
    session, nodes = small
    assert cueable(session.study, nodes["Nf3"]) == [Cued(node=nodes[san]) for san in ("e4", "e5", "Nf3")]
    assert cueable(session.study, nodes["d3"]) == [Cued(node=nodes[san]) for san in ("Nf6", "d3")]
    session.do(ChangeNode(nodes["e5"], "think", 5.0))
    assert cueable(session.study, nodes["Nf3"]) == [Cued(node=nodes["Nf3"])]


def test_a_tag_is_picked_up_whole_by_the_pointer(editor, small):
    session, nodes = small
    session.do(ChangeNode(nodes["Nf3"], "spoken", SpokenLine("the knight", (Cue(0, node=nodes["Nf3"]),))))
    start = editor.text.cursorRect(_at(editor, 0)).center()
    QTest.mousePress(editor.text.viewport(), Qt.MouseButton.LeftButton, pos=start + QPoint(12, 0))
    cursor = editor.text.textCursor()
    assert (cursor.selectionStart(), cursor.selectionEnd()) == (0, 1)
    QTest.mouseRelease(editor.text.viewport(), Qt.MouseButton.LeftButton, pos=start + QPoint(12, 0))


def drag_tag(editor: LineEditor, tag: int, to: int) -> None:
    """Drag the tag at this place of the cursor to that one, with the pointer."""
    view = editor.text.viewport()
    start = editor.text.cursorRect(_at(editor, tag)).center() + QPoint(12, 0)
    end = editor.text.cursorRect(_at(editor, to)).center() + QPoint(3, 0)
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(view, (start + end) / 2)
    QTest.mouseMove(view, end)
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=end)


def test_a_tag_is_dragged_to_another_word_and_undo_brings_it_back(editor, small):
    session, nodes = small
    line = SpokenLine("first the pawn then the knight", (Cue(0, node=nodes["e4"]), Cue(4, node=nodes["Nf3"])))
    session.do(ChangeNode(nodes["Nf3"], "spoken", line))
    drag_tag(editor, 0, len("first the pa") + 1)
    assert spoken(session, nodes["Nf3"]) == SpokenLine(line.text, (Cue(2, node=nodes["e4"]), line.cues[1]))
    assert editor.text.line == spoken(session, nodes["Nf3"])
    assert editor.text.textCursor().selectedText() == "\ufffc"
    session.undo()
    assert spoken(session, nodes["Nf3"]) == line


def test_a_tag_is_dragged_back_and_behind_the_last_word(editor, small):
    session, nodes = small
    line = SpokenLine("first the pawn\nthen the knight", (Cue(3, node=nodes["Nf3"]),))
    session.do(ChangeNode(nodes["Nf3"], "spoken", line))
    drag_tag(editor, len("first the pawn\n"), 3)
    assert spoken(session, nodes["Nf3"]).cues == (Cue(0, node=nodes["Nf3"]),)
    drag_tag(editor, 0, len(line.text) + 1)
    assert spoken(session, nodes["Nf3"]) == SpokenLine(line.text, (Cue(6, node=nodes["Nf3"]),))


def test_escape_leaves_a_dragged_tag_where_it_was(editor, small):
    session, nodes = small
    line = SpokenLine("the knight jumps", (Cue(0, node=nodes["Nf3"]),))
    session.do(ChangeNode(nodes["Nf3"], "spoken", line))
    view = editor.text.viewport()
    start = editor.text.cursorRect(_at(editor, 0)).center() + QPoint(12, 0)
    end = editor.text.cursorRect(_at(editor, 14)).center()
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(view, end)
    QTest.keyClick(editor.text, Qt.Key.Key_Escape)
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=end)
    editor.flush()
    assert spoken(session, nodes["Nf3"]) == line


def test_keys_move_the_cue_at_the_cursor_word_by_word(editor, small):
    session, nodes = small
    session.do(ChangeNode(nodes["Nf3"], "spoken", SpokenLine("the knight jumps", (Cue(0, node=nodes["Nf3"]),))))
    editor.text.moveCursor(QTextCursor.MoveOperation.Start)
    for step, word in ((1, 1), (1, 2), (1, 3), (1, 3), (-1, 2)):
        editor.shift_cue(step)
        assert spoken(session, nodes["Nf3"]).cues == (Cue(word, node=nodes["Nf3"]),)
    assert editor.text.viewport().accessibleDescription() == "Cue at “jumps”"


def test_a_key_for_a_cue_where_there_is_none_says_so(editor):
    told = []
    editor.told.connect(told.append)
    type_in(editor, "the knight")
    editor.shift_cue(1)
    assert told == ["There is no cue at the cursor."]


@given(line=lines(), word=st.integers(0, 12))
def test_moving_a_tag_changes_nothing_but_its_word(qapp, line, word):
    text = LineText(Look(), lambda cued: Tag("x"))
    text.set_line(line)
    for cue in line.cues[:1]:
        cued = Cued(cue.node, cue.mark)
        to = min(word, len(words(line.text)))
        text.move_cued(cued, to)
        others = [other for other in line.cues if Cued(other.node, other.mark) != cued]
        assert text.line.text == line.text
        assert [c for c in text.line.cues if Cued(c.node, c.mark) != cued] == others
        assert {c.word for c in text.line.cues if Cued(c.node, c.mark) == cued} == {to}


def test_the_line_can_be_narrow_at_200_percent(editor):
    with text_scaled(editor._look, 2.0):
        assert editor.minimumSizeHint().width() <= 400
        editor.window().resize(420, 600)
        for _ in range(3):
            QApplication.processEvents()
        for widget in (editor.intended, editor.think, editor._foot.cue, editor._foot.note, editor._figures):
            place = widget.mapTo(editor, widget.rect().topLeft())
            assert editor.rect().contains(place)
            assert place.x() + widget.width() <= editor.width()
        assert editor._foot.height() > 2 * editor.intended.height()


def _at(editor: LineEditor, place: int) -> QTextCursor:
    cursor = QTextCursor(editor.text.document())
    cursor.setPosition(place)
    return cursor


def test_the_cue_menu_offers_the_moves_and_marks_of_the_beat(editor, small):
    session, nodes = small
    session.do(ChangeNode(nodes["Nf3"], "marks", (Mark(MarkKind.TARGET, (chess.E5,)),)))
    labels = [editor._tag(cued).words for cued in cueable(session.study, nodes["Nf3"])]
    assert labels[-2:] == ["2. Nf3", "target e5"]
    gone = editor._tag(Cued(node=9999))
    assert gone.gone
    assert gone.words == "move not there"


# ---- times, notes, parts ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "seconds"),
    [("10", 10.0), ("7,5", 7.5), ("7.5 s", 7.5), ("1:20", 80.0), ("", None), ("0", None), ("soon", None)],
)
def test_the_intended_length_is_typed_as_seconds_or_minutes(editor, small, typed, seconds):
    session, nodes = small
    editor.intended.setFocus()
    QTest.keyClicks(editor.intended, typed)
    QTest.keyClick(editor.intended, Qt.Key.Key_Return)
    assert session.study.node(nodes["Nf3"]).intended == seconds


def test_up_and_down_change_a_length_by_half_a_second(editor, small):
    session, nodes = small
    for _ in range(3):
        QTest.keyClick(editor.think, Qt.Key.Key_Up)
    QTest.keyClick(editor.think, Qt.Key.Key_Down)
    assert session.study.node(nodes["Nf3"]).think == 1.0
    assert editor.figures.endswith("think 1 s")


def test_a_length_that_is_being_typed_is_kept_when_the_board_steps(editor, small):
    session, nodes = small
    editor.intended.setFocus()
    QTest.keyClicks(editor.intended, "12")
    session.show(nodes["Nc6"])
    assert session.study.node(nodes["Nf3"]).intended == 12.0
    assert session.study.node(nodes["Nc6"]).intended is None
    assert editor.intended.text() == ""


def test_a_note_is_written_beside_the_line(editor, small):
    session, nodes = small
    editor.focus_note()
    assert editor.heading == "Note for print at 2. Nf3"
    QTest.keyClicks(editor.note.after_field, "The usual move.")
    QTest.keyClicks(editor.note.before_field, "Now")
    session.show(nodes["Nc6"])
    node = session.study.node(nodes["Nf3"])
    assert (node.note_before, node.note) == ("Now", "The usual move.")


def test_choosing_a_glyph_keeps_the_note_that_is_being_typed(editor, small, qtbot):
    session, nodes = small
    editor.focus_note()
    QTest.keyClicks(editor.note.after_field, "Bold.")
    choice = editor.note.move_glyph
    choice.setCurrentIndex(choice.findData(5))
    choice.activated.emit(choice.currentIndex())
    node = session.study.node(nodes["Nf3"])
    assert node.nags == (5,)
    assert node.note == "Bold."
    assert editor.note.after == "Bold."


def test_the_greeting_is_written_and_stepping_comes_back_to_the_moves(editor, small):
    session, nodes = small
    editor.edit_part(Part.GREETING)
    assert editor.heading == "Greeting: said before the first move"
    assert not editor.think.isEnabled()
    type_in(editor, "Good evening.")
    editor.intended.setText("4")
    editor.intended.commit()
    session.show(nodes["Nc6"])
    assert session.study.line(Part.GREETING) == FreeLine(SpokenLine("Good evening."), 4.0, locked=True)
    assert editor.heading == "Spoken line at 2... Nc6"
    assert editor.think.isEnabled()


def test_the_keyboard_goes_from_the_line_to_its_times(editor):
    QTest.keyClick(editor.text, Qt.Key.Key_Tab)
    assert editor.intended.hasFocus()
    QTest.keyClick(editor.intended, Qt.Key.Key_Tab)
    assert editor.think.hasFocus()
    QTest.keyClick(editor.think, Qt.Key.Key_Backtab)
    assert editor.intended.hasFocus()


def test_the_figures_stand_in_one_row_while_there_is_room(qtbot, editor, small):
    height = editor._figures.height()
    editor.intended.setText("9")
    editor.intended.commit()
    editor.think.setText("8")
    editor.think.commit()
    QApplication.processEvents()
    assert "set to 9 s" in editor.figures
    assert "think 8 s" in editor.figures
    assert editor._figures.height() == height
