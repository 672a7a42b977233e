"""Words that were found in the sound stand where they are said; the others lie between them."""

from __future__ import annotations

from dataclasses import replace

import chess
import pytest

from studyboard.delivery.caption_lines import captions
from studyboard.model.edits import ChangeNode, PutTake, add_move, apply
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.script import Cue, SpokenLine
from studyboard.model.study import Study
from studyboard.model.takes import SaidLine, SoundTime, Take, TakeEvent
from studyboard.timing.recorded import assembled_timeline, put_together, recorded, talk
from studyboard.timing.timeline import Happening

TEXT = "White opens with the pawn in front of her king."
STARTS = (1000, 1400, 2500, None, 3000, None, None, 6000, 6300, 6500)


@pytest.fixture
def study() -> Study:
    """One move with a line, a mark at its fifth word, and a take of ten seconds in which most words are known."""
    study = Study()
    apply(study, add_move(study, 0, chess.Move.from_uci("e2e4")))
    apply(study, ChangeNode(1, "marks", (Mark(MarkKind.TARGET, (28,)),)))
    apply(study, ChangeNode(1, "spoken", SpokenLine(TEXT, (Cue(0, node=1), Cue(4, mark=0)))))
    ends = tuple(None if start is None else start + 150 for start in STARTS)
    events = (TakeEvent(SoundTime(1000, 1000), 1, 1),)
    take = Take(1, "one", 1000, 10_000, "2030-05-17T21:30:00+02:00", events, said=(SaidLine(1, TEXT, STARTS, ends),))
    apply(study, PutTake(take))
    return study


def test_words_that_were_found_are_where_they_are_said(study: Study) -> None:
    (stretch,) = recorded(study, study.takes[1]).stretches
    assert [word.at for word in stretch.words if STARTS[word.word] is not None] == pytest.approx(
        [start / 1000 for start in STARTS if start is not None]
    )
    assert stretch.speech_end == pytest.approx(6.65)


def test_the_others_lie_between_them_in_order(study: Study) -> None:
    (stretch,) = recorded(study, study.takes[1]).stretches
    times = [time for word in stretch.words for time in (word.at, word.until)]
    assert times == sorted(times)
    assert 2.65 <= stretch.words[3].at < 3.0


def test_a_mark_appears_at_its_word(study: Study) -> None:
    (stretch,) = recorded(study, study.takes[1]).stretches
    (mark,) = [event for event in stretch.events if event.what is Happening.MARK]
    assert mark.at == pytest.approx(3.0)


def test_the_talk_that_is_put_together_has_the_same_words(study: Study) -> None:
    assert assembled_timeline(study, put_together(study)).stretches == recorded(study, study.takes[1]).stretches


def test_captions_begin_with_the_voice(study: Study) -> None:
    assert captions(talk(study))[0].start == pytest.approx(1000, abs=50)


def test_a_line_that_was_rewritten_keeps_the_words_that_stayed(study: Study) -> None:
    text = "White opens boldly with the pawn in front of the king."
    apply(study, ChangeNode(1, "spoken", SpokenLine(text, (Cue(0, node=1),))))
    (stretch,) = recorded(study, study.takes[1]).stretches
    said = {word.text: word.at for word in stretch.words}
    assert said["opens"] == pytest.approx(1.4)
    assert said["with"] == pytest.approx(2.5)
    assert 1.4 < said["boldly"] < 2.5
    assert said["king."] == pytest.approx(6.5)


def test_without_times_the_words_are_spread_as_before(study: Study) -> None:
    take = replace(study.takes[1], said=())
    (stretch,) = recorded(study, take).stretches
    assert stretch.words[0].at == pytest.approx(0.0)
