"""A line goes on over the next move: who has the line then, what plays the moves, and when it cannot."""

from __future__ import annotations

import chess
import pytest

from studyboard.model.beats import beats
from studyboard.model.cueing import play_at_word
from studyboard.model.edits import ChangeNode, add_move, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.order import running_order
from studyboard.model.script import Cue, SpokenLine
from studyboard.model.study import Study

LINE = SpokenLine("White takes the centre and Black answers at once.")


def study_with(*moves: str) -> tuple[Study, list[int]]:
    """A study with these moves (UCI) and the ids of its nodes, the root first."""
    study = Study()
    nodes = [study.root]
    for uci in moves:
        edit = add_move(study, nodes[-1], chess.Move.from_uci(uci))
        apply(study, edit)
        nodes.append(edit.node)
    return study, nodes


def content(study: Study) -> object:
    return (study.nodes, study.lines, study.next_id, running_order(study))


def test_the_line_goes_over_to_the_move_that_is_played_and_both_moves_have_cues() -> None:
    study, (_, e4) = study_with("e2e4")
    apply(study, ChangeNode(e4, "spoken", LINE))
    apply(study, ChangeNode(e4, "intended", 6.0))
    edit, e5 = play_at_word(study, e4, chess.Move.from_uci("e7e5"), LINE, 5)
    apply(study, edit)
    assert study.node(e5).spoken == SpokenLine(LINE.text, (Cue(0, node=e4), Cue(5, node=e5)))
    assert not study.node(e4).spoken
    assert (study.node(e4).intended, study.node(e5).intended) == (None, 6.0)
    assert [beat.key for beat in beats(study, running_order(study))] == [e5]


def test_taking_it_back_leaves_everything_as_it_was() -> None:
    study, (_, e4, e5) = study_with("e2e4", "e7e5")
    apply(study, ChangeNode(e4, "spoken", LINE))
    nodes, order = dict(study.nodes), running_order(study)
    edit, node = play_at_word(study, e4, chess.Move.from_uci("e7e5"), LINE, 5)
    assert node == e5
    inverse, _ = apply(study, edit)
    apply(study, inverse)
    assert (study.nodes, running_order(study)) == (nodes, order)


def test_several_moves_stand_in_one_line_one_after_the_other() -> None:
    study, (_, e4) = study_with("e2e4")
    line, node = LINE, e4
    for uci, word in (("e7e5", 5), ("g1f3", 7)):
        edit, node = play_at_word(study, node, chess.Move.from_uci(uci), line, word)
        apply(study, edit)
        line = study.node(node).spoken
    assert [cue.word for cue in line.cues] == [0, 5, 7]
    (beat,) = beats(study, running_order(study))
    assert [visit.node for visit in beat.visits] == [cue.node for cue in line.cues]


def test_words_said_at_the_start_position_play_the_first_move() -> None:
    study, (root,) = study_with()
    edit, e4 = play_at_word(study, root, chess.Move.from_uci("e2e4"), LINE, 1)
    apply(study, edit)
    assert study.node(e4).spoken.cues == (Cue(1, node=e4),)
    assert [beat.key for beat in beats(study, running_order(study))] == [e4]


def refused(study: Study, node: int, uci: str, line: SpokenLine = LINE) -> str:
    before = dict(study.nodes)
    with pytest.raises(EditRefusedError) as reason:
        play_at_word(study, node, chess.Move.from_uci(uci), line, 1)
    assert study.nodes == before
    return str(reason.value)


def test_it_is_refused_where_the_next_move_needs_a_line_of_its_own() -> None:
    study, (_, e4, e5) = study_with("e2e4", "e7e5")
    apply(study, ChangeNode(e4, "spoken", LINE))
    assert "side-line" in refused(study, e4, "c7c5")
    assert "no words" in refused(study, e4, "e7e5", SpokenLine(" "))
    marked = SpokenLine(LINE.text, (Cue(1, mark=0),))
    apply(study, ChangeNode(e4, "marks", (Mark(MarkKind.TARGET, (chess.E5,)),)))
    assert "marks" in refused(study, e4, "e7e5", marked)
    apply(study, ChangeNode(e5, "spoken", SpokenLine("Black answers.")))
    assert "line of its own" in refused(study, e4, "e7e5")
    apply(study, ChangeNode(e4, "think", 5.0))
    assert "think pause" in refused(study, e4, "e7e5")


def test_it_is_refused_where_a_side_line_is_told_in_between() -> None:
    study, (_, e4, _e5) = study_with("e2e4", "e7e5")
    apply(study, add_move(study, study.root, chess.Move.from_uci("d2d4")))
    assert "not told right after" in refused(study, e4, "e7e5")
