"""Spoken lines, their words, and the cues that hang on them."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.script import SILENT, Cue, Pace, Part, SpokenLine, word_spans, words


@given(st.text())
def test_words_are_where_their_spans_say(text):
    assert [text[start:end] for start, end in word_spans(text)] == words(text)


def test_punctuation_belongs_to_its_word():
    assert words(" He plays  Nf3, of course!\n") == ["He", "plays", "Nf3,", "of", "course!"]


def test_a_line_of_nothing_but_space_is_silent():
    assert not SILENT
    assert not SpokenLine("  \n")
    assert SpokenLine("x")


def test_cues_are_put_in_the_order_of_their_words_and_inside_the_line():
    line = SpokenLine("one two", (Cue(9, node=1), Cue(1, mark=0), Cue(0, node=3), Cue(1, node=4)))
    assert line.sorted().cues == (Cue(0, node=3), Cue(1, mark=0), Cue(1, node=4), Cue(2, node=1))


@pytest.mark.parametrize("arguments", [(0, None, None), (0, 1, 1), (-1, 1, None)])
def test_a_cue_plays_a_move_or_shows_a_mark(arguments):
    with pytest.raises(ValueError, match="cue"):
        Cue(*arguments)


@pytest.mark.parametrize(
    "figures", [{"syllables_per_second": 0}, {"syllables_per_second": math.nan}, {"move_time": -1}]
)
def test_a_pace_that_nobody_can_speak_at_is_refused(figures):
    with pytest.raises(ValueError, match=r"pace|pause"):
        Pace(**figures)


def test_only_the_greeting_comes_before_the_first_move():
    assert [part.opens for part in Part] == [True, False, False]
