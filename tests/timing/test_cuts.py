"""Side-lines to leave out, by the seconds they take and by what depends on them."""

from __future__ import annotations

import pytest

from studyboard.model.edits import ChangeSlot, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.positions import Positions
from studyboard.timing.cuts import Cut, Dependence, suggested_cuts, tie_words
from studyboard.timing.plan import plan

LONG = "Here is a plan that would take too long tonight, though it is a good one and worth an evening at home. " * 2
SHORT = "This is how it went on."


@pytest.fixture
def talk(author):
    """1.e4 e5 2.Nf3 Nc6 3.Bb5 with a long, a middling and a short side-line; ids are in `author.ids`."""
    ids = {}
    ids["e4"] = author.play("e2e4")
    ids["e5"] = author.play("e7e5", after=ids["e4"])
    ids["Nf3"] = author.play("g1f3", after=ids["e5"])
    ids["Nc6"] = author.play("b8c6", after=ids["Nf3"])
    ids["Bb5"] = author.play("f1b5", after=ids["Nc6"])
    for name in ("e4", "e5", "Nf3", "Nc6", "Bb5"):
        author.say(ids[name], SHORT)
    ids["c5"] = author.play("c7c5", after=ids["e4"])
    author.say(ids["c5"], LONG)
    ids["f4"] = author.play("f2f4", after=ids["e5"])
    author.say(ids["f4"], LONG[: len(LONG) // 2])
    ids["Bc4"] = author.play("f1c4", after=ids["Nc6"])
    author.say(ids["Bc4"], SHORT)
    author.ids = ids
    return author


def cut_of(author, name) -> Cut:
    return next(cut for cut in suggested_cuts(author.study) if cut.start == author.ids[name])


def order(author) -> list[str]:
    names = {node: name for name, node in author.ids.items()}
    return [names[cut.start] for cut in suggested_cuts(author.study)]


def test_the_line_that_takes_longest_comes_first_where_nothing_depends_on_any(talk):
    assert order(talk) == ["c5", "f4", "Bc4"]


def test_each_cut_shortens_the_talk_by_just_what_it_says(talk):
    before = plan(talk.study).seconds
    cuts = suggested_cuts(talk.study)
    assert plan(talk.study).seconds == before, "looking changes nothing"
    for cut in cuts:
        inverse, _ = apply(talk.study, cut.edit)
        assert before - plan(talk.study).seconds == pytest.approx(cut.seconds, abs=1e-6)
        apply(talk.study, inverse)
    assert plan(talk.study).seconds == before


def test_as_few_as_possible_are_chosen_to_meet_the_slot(talk):
    whole = plan(talk.study).seconds
    talk.edit(ChangeSlot(whole - cut_of(talk, "f4").seconds + 0.5))
    chosen = [cut for cut in suggested_cuts(talk.study) if cut.enough]
    assert [cut.start for cut in chosen] == [talk.ids["c5"]]
    talk.edit(ChangeSlot(whole - cut_of(talk, "c5").seconds - 1.0))
    chosen = [cut for cut in suggested_cuts(talk.study) if cut.enough]
    assert {cut.start for cut in chosen} == {talk.ids["c5"], talk.ids["f4"]}
    for cut in chosen:
        talk.edit(cut.edit)
    assert plan(talk.study).seconds <= talk.study.slot


def test_within_the_slot_nothing_is_chosen(talk):
    talk.edit(ChangeSlot(plan(talk.study).seconds + 10))
    assert not any(cut.enough for cut in suggested_cuts(talk.study))


def test_a_line_that_answers_a_think_pause_is_left_in_before_others(talk):
    talk.change(talk.ids["e4"], think=8.0)
    cut = cut_of(talk, "c5")
    assert [tie.why for tie in cut.ties] == [Dependence.SOLUTION]
    assert order(talk)[0] == "f4"


def test_a_line_to_which_another_refers_is_left_in_before_others(talk):
    knight = talk.play("g1f3", "d7d6", "d2d4", "c5d4", "f3d4", "g8f6", after=talk.ids["c5"])
    talk.say(knight, "And the knight comes out.")
    assert cut_of(talk, "c5").ties == ()
    talk.say(talk.ids["Bb5"], "Remember the knight on f6? Nothing of that here.")
    (tie,) = cut_of(talk, "c5").ties
    assert (tie.why, tie.node) == (Dependence.REFERRED, talk.ids["Bb5"])
    assert tie_words(Positions(talk.study), tie) == "The line at 3. Bb5 refers to it."
    assert order(talk)[0] == "f4"
    talk.say(talk.ids["Bb5"], "The knight will come to f6 soon.")
    assert cut_of(talk, "c5").ties == (), "this only says what will be"


def test_a_line_that_is_named_elsewhere_is_referred_to(talk):
    talk.change(talk.ids["f4"], name="The gambit")
    talk.say(talk.ids["Bb5"], "As in the gambit that we saw, white is quick.")
    assert [tie.why for tie in cut_of(talk, "f4").ties] == [Dependence.REFERRED]


def test_marks_think_pauses_and_transpositions_inside_count(talk):
    talk.change(talk.ids["c5"], marks=(Mark(MarkKind.TARGET, (28,)),))
    talk.change(talk.ids["f4"], think=5.0)
    assert [tie.why for tie in cut_of(talk, "c5").ties] == [Dependence.MARKS]
    assert [tie.why for tie in cut_of(talk, "f4").ties] == [Dependence.THINK]
    nf3 = talk.play("b8c6", "g1f3", "e7e5", after=talk.ids["e4"])
    talk.say(nf3, LONG)
    start = talk.study.line_start(nf3)
    cut = next(cut for cut in suggested_cuts(talk.study) if cut.start == start)
    assert [(tie.why, tie.node) for tie in cut.ties] == [(Dependence.REPEATS, talk.ids["Nc6"])]


def test_a_line_inside_another_goes_with_it_and_is_not_cut_twice(talk):
    inner = talk.play("b1c3", after=talk.ids["c5"])
    talk.say(inner, SHORT)
    aside = talk.play("c2c3", after=talk.ids["c5"])
    talk.say(aside, LONG)
    outer, nested = cut_of(talk, "c5"), next(c for c in suggested_cuts(talk.study) if c.start == aside)
    assert outer.seconds > nested.seconds
    talk.edit(ChangeSlot(plan(talk.study).seconds - outer.seconds + 1))
    chosen = {cut.start for cut in suggested_cuts(talk.study) if cut.enough}
    assert not {talk.ids["c5"], aside} <= chosen


def test_hidden_lines_are_no_cuts_and_without_any_that_is_said(talk):
    for name in ("c5", "f4", "Bc4"):
        talk.change(talk.ids[name], telling=Telling(Place.HIDDEN))
    with pytest.raises(EditRefusedError, match="No side-line is told"):
        suggested_cuts(talk.study)
