"""Captions as a viewer reads them."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.delivery.caption_lines import CaptionRule, captions
from studyboard.model.script import words
from studyboard.timing.timeline import Source, Timeline

SENTENCES = (
    "Tonight we have a game that took all of nineteen moves, and the loser did not make a single move that looks "
    "like a mistake. Is that possible? Count the pieces that look at the king: three, four, five."
)


@pytest.fixture
def lines_of(talk):
    """The lines of the captions of a talk that says these texts."""
    return lambda *texts, **rule: [caption.lines for caption in captions(talk(*texts), CaptionRule(**rule))]


def test_a_short_sentence_is_one_line(lines_of):
    assert lines_of("She takes the pawn.") == [("She takes the pawn.",)]


def test_a_line_is_broken_at_punctuation_first(lines_of):
    assert lines_of("Good evening, and welcome to the Harbour Club.") == [
        ("Good evening,", "and welcome to the Harbour Club.")
    ]


def test_without_punctuation_the_lines_are_balanced_and_no_article_is_left_behind(lines_of):
    ((top, bottom),) = lines_of("the loser did not make a single move that looks like a mistake")
    assert abs(len(top) - len(bottom)) <= 12
    assert top.split()[-1] not in {"a", "the", "that", "not"}


def test_sentences_that_do_not_fit_together_get_captions_of_their_own(lines_of):
    found = [" ".join(lines) for lines in lines_of(SENTENCES)]
    assert "Is that possible?" in found
    assert all(text[-1] in ".,:?" or len(text) > 30 for text in found)


def test_a_move_is_not_torn_from_its_number(lines_of):
    found = lines_of("After the bishop comes back to e7 at last 14. Nf3 would have been much better for the attack")
    lines = [line for caption in found for line in caption]
    assert any("14. Nf3" in line for line in lines)


def test_no_caption_reaches_from_one_beat_into_the_next(talk):
    timeline = talk("White takes, of course,", "the knight comes back,", "and now what?")
    found = captions(timeline)
    assert [caption.beat for caption in found] == [0, 1, 2]
    for caption, beat in zip(found, timeline.stretches, strict=True):
        assert beat.start * 1000 - 1 <= caption.start < caption.end <= beat.end * 1000 + 1


def test_a_silent_beat_has_no_caption_and_the_screen_is_empty_during_it(talk):
    found = captions(talk("One.", "", "Two."))
    assert [caption.lines for caption in found] == [("One.",), ("Two.",)]


def test_a_think_pause_is_not_covered_by_the_words_before_it(stretch):
    beat = stretch(0, 0.0, "Black to move. What would you play here?", think=8.0)
    (*_, last) = captions(Timeline(Source.PLANNED, 0, (beat,)))
    assert last.end <= 1000 * (beat.speech_end + 2.0)


def test_a_short_word_stays_long_enough_to_be_read(stretch):
    (found,) = captions(Timeline(Source.PLANNED, 0, (replace(stretch(0, 5.0, "Check!", rate=0.2), end=9.0),)))
    assert (found.start, found.end) == (5000, 6000)


def test_the_first_word_is_seen_when_it_is_heard(talk):
    found = captions(talk(SENTENCES))
    said = [word for beat in talk(SENTENCES).stretches for word in beat.words]
    counts = [len(" ".join(caption.lines).split()) for caption in found]
    firsts = [said[sum(counts[:place])] for place in range(len(found))]
    assert [caption.lines[0].split()[0] for caption in found] == [word.text for word in firsts]
    assert [caption.start for caption in found] == [round(word.at * 1000) for word in firsts]


def test_a_word_longer_than_a_line_is_cut_and_nothing_of_it_lost(lines_of):
    long = "https://example.org/" + "x" * 100
    ((*lines,),) = [sum(lines_of(f"See {long} now."), ())]
    assert "".join(lines).replace(" ", "") == f"See{long}now."
    assert max(map(len, lines)) <= 37


def test_a_broad_caption_may_be_asked_for(lines_of):
    assert lines_of("the loser did not make a single move at all", characters=60) == [
        ("the loser did not make a single move at all",)
    ]
    assert all(len(lines) == 1 for lines in lines_of(SENTENCES, lines=1))


def test_a_line_that_holds_no_sentence_is_refused():
    with pytest.raises(ValueError, match="less than 8"):
        CaptionRule(characters=3)


WORD = st.text(st.characters(exclude_categories=("Cs", "Zs", "Zl", "Zp", "Cc")), min_size=1, max_size=12)
TEXT = st.lists(WORD | st.sampled_from(["and", "the", "14.", "Nf3,", "now.", "why?", "–", "a"]), max_size=60).map(
    " ".join
)


@settings(max_examples=150, deadline=None)
@given(texts=st.lists(TEXT, min_size=1, max_size=4), rate=st.floats(0.0, 1.0))
def test_whatever_is_said_the_captions_say_it_once_in_order_and_never_overlap(talk, texts, rate):
    timeline = talk(*texts, rate=rate)
    rule = CaptionRule()
    found = captions(timeline, rule)
    said = "".join(word for text in texts for word in words(text))
    assert "".join("".join(caption.lines).replace(" ", "") for caption in found) == said
    for caption in found:
        assert 0 <= caption.start < caption.end
        assert caption.end - caption.start <= rule.longest * 1000
        assert 1 <= len(caption.lines) <= 2
        assert all(0 < len(line) <= rule.characters for line in caption.lines)
    for before, after in pairwise(found):
        assert before.end <= after.start


@settings(max_examples=60, deadline=None)
@given(texts=st.lists(TEXT, min_size=1, max_size=3))
def test_at_an_ordinary_pace_captions_keep_their_distance_and_leave_time_to_read(talk, texts):
    found = captions(talk(*texts, rate=0.35))
    for before, after in pairwise(found):
        assert after.start - before.end >= 79
    for caption in found:
        # At 0.35 s a word the voice itself is slow enough; only the distance to the next caption is taken off.
        assert caption.end - caption.start >= 1000 * 0.3 * len(" ".join(caption.lines).split()) - 81


@given(times=st.lists(st.floats(-5, 50), min_size=1, max_size=20))
def test_a_clumsy_alignment_is_survived(stretch, times):
    beat = stretch(0, 0.0, " ".join("word" for _ in times))
    clumsy = replace(beat, said=tuple(replace(w, at=t, until=t) for w, t in zip(beat.words, times, strict=True)))
    found = captions(Timeline(Source.RECORDED, 0, (clumsy,)))
    assert all(before.end <= after.start for before, after in pairwise(found))
    assert sum(len(" ".join(caption.lines).split()) for caption in found) == len(times)


def test_a_line_without_timed_words_is_spread_over_its_speech(stretch):
    beat = replace(stretch(0, 2.0, "She takes the pawn and the game is over. Or is it?"), said=())
    found = captions(Timeline(Source.PLANNED, 0, (beat,)))
    assert found[0].start == 2000
    assert found[-1].end <= beat.end * 1000 + 1
