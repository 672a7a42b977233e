"""Which take is heard, and what is left out of one, can be said and taken back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.assembly import holders
from studyboard.model.edits import PutTake, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.model.take_edits import (
    ChangeTake,
    ChooseTake,
    bring_back,
    discard,
    leave_out,
    rename,
    set_room_tone,
    take_back,
    trim,
    without_sound,
    write_note,
)
from studyboard.model.takes import Span, Take

RATE = 48_000


@pytest.fixture
def study() -> Study:
    """A study with one take of ten seconds."""
    made = Study()
    apply(made, PutTake(Take(1, "Take 1", RATE, 10 * RATE, "2031-03-04T20:00:00+00:00")))
    return made


def seconds(*spans: Span) -> list[tuple[float, float]]:
    return [(span.start / RATE, span.end / RATE) for span in spans]


def span(start: float, end: float) -> Span:
    return Span(round(start * RATE), round(end * RATE))


def test_a_cough_is_left_out_and_brought_back(study):
    apply(study, leave_out(study.takes[1], span(2, 3)))
    apply(study, leave_out(study.takes[1], span(2.5, 4)))
    apply(study, leave_out(study.takes[1], span(8, 9)))
    assert seconds(*study.takes[1].left_out) == [(2, 4), (8, 9)]
    apply(study, bring_back(study.takes[1], span(3, 8.5)))
    assert seconds(*study.takes[1].left_out) == [(2, 3), (8.5, 9)]
    with pytest.raises(EditRefusedError, match="All of this stretch is heard"):
        bring_back(study.takes[1], span(4, 5))


def test_trimming_keeps_what_is_left_out_inside_and_can_be_widened_again(study):
    apply(study, leave_out(study.takes[1], span(4, 5)))
    apply(study, trim(study.takes[1], span(1, 9)))
    assert seconds(*study.takes[1].left_out) == [(0, 1), (4, 5), (9, 10)]
    apply(study, trim(study.takes[1], span(0, 10)))
    assert seconds(*study.takes[1].left_out) == [(0, 1), (4, 5), (9, 10)]
    apply(study, bring_back(study.takes[1], span(0, 2)))
    assert seconds(*study.takes[1].left_out) == [(4, 5), (9, 10)]


def test_a_take_of_which_nothing_would_be_left_is_not_cut(study):
    with pytest.raises(EditRefusedError, match="Discard it instead"):
        leave_out(study.takes[1], span(0, 12))
    with pytest.raises(EditRefusedError, match="behind the end"):
        trim(study.takes[1], span(10, 12))
    with pytest.raises(EditRefusedError, match="no sense"):
        apply(study, ChangeTake(1, "left_out", (Span(0, 480_000),)))
    with pytest.raises(EditRefusedError, match="no sense"):
        apply(study, ChangeTake(1, "left_out", (Span(5, 6), Span(1, 2))))
    with pytest.raises(EditRefusedError, match="could be set"):
        apply(study, ChangeTake(1, "rate", 8_000))
    assert study.takes[1].left_out == ()


def test_every_edit_of_a_take_is_taken_back_by_its_inverse(study):
    for edit in (
        write_note(study.takes[1], "a lorry"),
        rename(study.takes[1], " The good one "),
        leave_out(study.takes[1], span(1, 2)),
        set_room_tone(study.takes[1], span(3, 4)),
        discard(study.takes[1]),
        ChooseTake(Part.GREETING, 1),
    ):
        before = study.takes[1], dict(study.chosen)
        inverse, changed = apply(study, edit)
        assert changed
        assert (study.takes[1], study.chosen) != before
        apply(study, inverse)
        assert (study.takes[1], study.chosen) == before
    apply(study, discard(study.takes[1]))
    assert not study.takes[1].kept
    apply(study, take_back(study.takes[1]))
    assert study.takes[1].kept


def test_what_was_cut_can_be_undone_although_the_sound_is_deleted(study):
    cut, _ = apply(study, leave_out(study.takes[1], span(1, 2)))
    thrown, _ = apply(study, discard(study.takes[1]))
    edit = without_sound(study)
    assert edit is not None
    apply(study, edit)
    assert study.takes[1].samples == 0
    assert without_sound(study) is None
    apply(study, thrown)
    apply(study, cut)
    assert study.takes[1].kept
    assert holders(study) == {}


def test_a_take_that_is_not_there_cannot_be_chosen_or_changed(study):
    with pytest.raises(EditRefusedError, match="no such take"):
        apply(study, ChooseTake(Part.GREETING, 7))
    with pytest.raises(EditRefusedError, match="no such take"):
        apply(study, ChangeTake(7, "note", ""))
    with pytest.raises(EditRefusedError, match="needs a name"):
        rename(study.takes[1], "  ")


_SPAN = st.tuples(st.integers(0, 98), st.integers(1, 99)).filter(lambda ends: ends[0] < ends[1]).map(lambda e: Span(*e))


@given(st.lists(st.tuples(st.booleans(), _SPAN), max_size=8))
def test_what_is_left_out_is_what_was_left_out_and_not_brought_back(steps):
    take = Take(1, "one", RATE, 100, "2031-03-04T20:00:00+00:00")
    out: set[int] = set()
    for leaving, one in steps:
        samples = set(range(one.start, one.end))
        try:
            edit = leave_out(take, one) if leaving else bring_back(take, one)
        except EditRefusedError:
            assert not leaving
            assert not samples & out
            continue
        out = out | samples if leaving else out - samples
        study = Study()
        study.takes[1] = take
        apply(study, edit)
        take = study.takes[1]
        assert {sample for span in take.left_out for sample in range(span.start, span.end)} == out
        assert all(a.end < b.start for a, b in zip(take.left_out, take.left_out[1:], strict=False))
