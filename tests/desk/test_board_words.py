from __future__ import annotations

import chess
import pytest

from studyboard.desk.board_words import position_words, step_words
from studyboard.model.edits import ChangeNode
from studyboard.model.marks import Mark, MarkKind
from tests.desk.small_study import open_session, play, small_session


@pytest.fixture
def small(qapp, tmp_path):
    """A session with a side-line, and its nodes."""
    session, nodes = small_session(tmp_path)
    yield session, nodes
    session.file.close()


def words_of_step(session, node: int) -> str:
    was = session.node
    session.show(node)
    return step_words(session, was)


def test_a_move_is_told_with_its_number_and_squares(small):
    session, nodes = small
    assert words_of_step(session, nodes["e4"]) == "Move 1, white pawn from e2 to e4."
    assert words_of_step(session, nodes["e5"]) == "Move 1, black pawn from e7 to e5."


def test_a_step_back_says_where_the_board_is_now(small):
    session, nodes = small
    session.show(nodes["e5"])
    assert words_of_step(session, nodes["e4"]) == "Back to move 1, white pawn from e2 to e4."
    assert words_of_step(session, nodes["start"]) == "Back to the start. White to move."


def test_a_return_from_a_side_line_says_whose_move_it_is(small):
    session, nodes = small
    session.show(nodes["d3"])
    assert words_of_step(session, nodes["Bc5"]) == "Back to move 3, black bishop from f8 to c5. White to move."


def test_marks_are_told_with_the_step(small):
    session, nodes = small
    session.do(ChangeNode(nodes["e4"], "marks", (Mark(MarkKind.KEY_SQUARE, (chess.D5,)),)))
    assert words_of_step(session, nodes["e4"]) == "Move 1, white pawn from e2 to e4. Key square d5."
    marks = session.study.node(nodes["e4"]).marks
    assert position_words(session, nodes["e4"], marks).endswith("Last move from e2 to e4. Key square d5.")


def test_mate_and_stalemate_are_told(qapp, tmp_path):
    session = open_session(tmp_path, "7k/8/5QK1/8/8/8/8/8 w - - 0 1")
    start = session.node
    play(session, "Qf7")
    assert step_words(session, start).endswith("white queen from f6 to f7. Black to move is stalemated.")
    session.show(start)
    play(session, "Qg7#")
    assert step_words(session, start) == "Move 1, white queen from f6 to g7, checkmate."
    session.file.close()
