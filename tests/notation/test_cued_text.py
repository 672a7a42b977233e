"""A spoken line written with its cues in braces, and read back."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.errors import StudyboardError
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.positions import Positions
from studyboard.model.script import Cue, SpokenLine, words
from studyboard.model.study import Study
from studyboard.notation.cued_text import parse_cued, write_cued
from studyboard.notation.pgn_reader import read_games


def story() -> tuple[Study, Positions]:
    """A knight goes out and back and out again, with a check; the last position has two marks."""
    study = next(read_games("1. Nf3 e5 2. Ng1 Qh4 3. Nf3 Qxf2+ *")).study
    marks = (Mark(MarkKind.TARGET, (13,)), Mark(MarkKind.THREAT, (13, 4)))
    study.nodes[6] = replace(study.nodes[6], marks=marks)
    return study, Positions(study)


def test_a_cue_stands_before_the_word_at_which_its_move_is_played():
    study, positions = story()
    line = parse_cued(study, positions, 6, "Out {Ng1}and back, {Qxf2+}and {mark 2}now this.")
    assert line == SpokenLine("Out and back, and now this.", (Cue(1, node=3), Cue(3, node=6), Cue(4, mark=1)))


def test_of_a_move_that_was_played_twice_the_latest_is_meant_unless_it_has_its_number():
    study, positions = story()
    assert parse_cued(study, positions, 6, "{Nf3}Go").cues == (Cue(0, node=5),)
    assert parse_cued(study, positions, 6, "{1.Nf3}Go").cues == (Cue(0, node=1),)
    assert parse_cued(study, positions, 6, "{1. Nf3}Go").cues == (Cue(0, node=1),)
    assert parse_cued(study, positions, 6, "{1...e5}Go").cues == (Cue(0, node=2),)
    study.nodes[6] = replace(study.nodes[6], spoken=SpokenLine("Out and out", (Cue(0, node=1), Cue(2, node=5))))
    assert write_cued(study, positions, 6) == "{1.Nf3}Out and {Nf3}out"


@pytest.mark.parametrize("written", ["Qxf2+", "Qxf2", "Qxf2#", "Qxf2!?", " Qxf2 ", "3...Qxf2+"])
def test_a_check_need_not_be_written(written):
    study, positions = story()
    assert parse_cued(study, positions, 6, f"{{{written}}}Go").cues == (Cue(0, node=6),)


def test_castling_may_be_written_with_zeros():
    study = next(read_games("1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O *")).study
    assert parse_cued(study, Positions(study), 7, "{0-0}Safe.").cues == (Cue(0, node=7),)


def test_a_cue_after_the_last_word_comes_with_the_end_of_the_line():
    study, positions = story()
    assert parse_cued(study, positions, 6, "There it goes. {Qxf2+}") == SpokenLine("There it goes.", (Cue(3, node=6),))


def test_a_cue_inside_a_word_belongs_to_that_word():
    study, positions = story()
    assert parse_cued(study, positions, 6, "Never{Qxf2+}theless it is") == SpokenLine(
        "Nevertheless it is", (Cue(0, node=6),)
    )


def test_a_brace_that_is_said_is_written_twice():
    study, positions = story()
    assert parse_cued(study, positions, 6, "{{e5}} {Qxf2+}now") == SpokenLine("{e5} now", (Cue(1, node=6),))


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("{Nc6}x", "“{Nc6}” is no move on the way to this position"),
        ("{}x", "no move on the way"),
        ("{7.Nf3}x", "no move on the way"),
        ("{mark 3}x", "There is no mark 3 here: this position has 2 marks."),
        ("{mark 0}x", "no mark 0"),
        ("one { two", "A brace stands alone in “one { two”"),
        ("one } two", "A brace stands alone"),
        ("{Nf3", "A brace stands alone"),
    ],
)
def test_a_cue_that_names_nothing_is_refused_in_a_sentence(text, sentence):
    study, positions = story()
    with pytest.raises(StudyboardError) as refused:
        parse_cued(study, positions, 6, text)
    assert sentence in str(refused.value)


def test_a_position_without_marks_says_so():
    study, positions = story()
    with pytest.raises(StudyboardError, match="this position has no marks"):
        parse_cued(study, positions, 5, "{mark 1}x")


def test_a_later_move_cannot_be_cued():
    study, positions = story()
    with pytest.raises(StudyboardError):
        parse_cued(study, positions, 3, "{Qh4}x")


def test_cues_that_name_nothing_any_more_are_left_out_when_written():
    study, positions = story()
    line = SpokenLine("One two", (Cue(0, node=6), Cue(1, mark=4), Cue(1, node=3)))
    study.nodes[3] = replace(study.nodes[3], spoken=line)
    assert write_cued(study, positions, 3) == "One {Ng1}two"


_TEXT = st.text(st.sampled_from("ab{} \n\t.é"), max_size=30)
_NAMED = st.one_of(st.integers(1, 6).map(lambda node: (node, None)), st.integers(0, 1).map(lambda mark: (None, mark)))
_CUES = st.lists(st.tuples(st.integers(0, 12), _NAMED), max_size=5)


@given(_TEXT, _CUES)
def test_any_line_is_read_back_as_it_was_written(text, cues):
    study, positions = story()
    line = SpokenLine(text, tuple(Cue(word, node, mark) for word, (node, mark) in cues)).sorted()
    study.nodes[6] = replace(study.nodes[6], spoken=line)
    assert parse_cued(study, positions, 6, write_cued(study, positions, 6)) == line


@given(st.text(st.sampled_from("ab {}Nf31.markQxh4+"), max_size=30))
def test_any_text_is_a_line_or_refused(text):
    study, positions = story()
    with suppress(StudyboardError):
        line = parse_cued(study, positions, 6, text)
        assert all(cue.word <= len(words(line.text)) for cue in line.cues)
