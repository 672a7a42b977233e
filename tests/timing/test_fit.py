"""Fitting the talk to its slot."""

from __future__ import annotations

import pytest

from studyboard.model.edits import ChangeNode, ChangeSlot, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.script import Part
from studyboard.timing.fit import FASTEST, SLOWEST, all_locked, fit_to_slot, lock, lock_several
from studyboard.timing.plan import plan

_LINE = "She takes the centre with both pawns, and nobody in the room is surprised by that."


@pytest.fixture
def talk(author):
    """Four beats of about the same length, and a greeting."""
    author.say_part(Part.GREETING, "Good evening, and welcome to all of you who have come in out of the rain.")
    node = None
    for move in ("e2e4", "e7e5", "g1f3", "b8c6"):
        node = author.play(move, after=node)
        author.say(node, _LINE)
    return author


def intended(study):
    return [node.intended for node in study.nodes.values() if node.spoken]


@pytest.mark.parametrize("share", [0.85, 1.0, 1.25])
def test_the_talk_takes_exactly_the_slot(talk, share):
    talk.edit(ChangeSlot(round(plan(talk.study).seconds * share, 1)))
    fit = fit_to_slot(talk.study)
    talk.edit(fit.edit)
    assert plan(talk.study).seconds == pytest.approx(talk.study.slot, abs=1e-6)
    assert fit.left == 0.0
    assert fit.beats == 5
    assert fit.factor == pytest.approx(share, abs=0.01)


def test_every_beat_gives_the_same_share(talk):
    talk.change(4, think=6.0)
    before = {stretch.key: stretch.seconds - stretch.think for stretch in plan(talk.study).stretches}
    talk.edit(ChangeSlot(plan(talk.study).seconds * 0.9))
    talk.edit(fit_to_slot(talk.study).edit)
    after = {stretch.key: stretch.seconds - stretch.think for stretch in plan(talk.study).stretches}
    shares = [after[key] / before[key] for key in before]
    assert max(shares) - min(shares) < 0.03
    assert talk.study.nodes[4].think == 6.0


def test_locked_beats_keep_their_length(talk):
    talk.change(2, intended=9.0, locked=True)
    talk.edit(ChangeSlot(plan(talk.study).seconds * 0.9))
    talk.edit(fit_to_slot(talk.study).edit)
    assert talk.study.nodes[2].intended == 9.0
    assert plan(talk.study).seconds == pytest.approx(talk.study.slot, abs=1e-6)


def test_what_was_fitted_once_is_fitted_again(talk):
    natural = plan(talk.study).seconds
    for share in (0.85, 1.1):
        talk.edit(ChangeSlot(natural * share))
        talk.edit(fit_to_slot(talk.study).edit)
        assert plan(talk.study).seconds == pytest.approx(natural * share, abs=1e-6)


@pytest.mark.parametrize(("share", "bound"), [(0.4, FASTEST), (3.0, SLOWEST)])
def test_a_slot_that_asks_too_much_is_met_half_way_and_the_rest_is_told(talk, share, bound):
    natural = plan(talk.study).seconds
    talk.edit(ChangeSlot(natural * share))
    fit = fit_to_slot(talk.study)
    talk.edit(fit.edit)
    assert fit.factor == bound
    assert fit.left == pytest.approx(plan(talk.study).seconds - talk.study.slot, abs=0.01)
    assert (fit.left > 0) == (share < 1)


def test_without_a_slot_there_is_nothing_to_fit_to(talk):
    with pytest.raises(EditRefusedError, match="Set the slot first"):
        fit_to_slot(talk.study)


def test_where_all_is_locked_nothing_can_give(talk):
    talk.edit(ChangeSlot(60.0))
    for node in (1, 2, 3, 4):
        talk.edit(lock(talk.study, node, True))
    talk.edit(lock(talk.study, Part.GREETING, True))
    with pytest.raises(EditRefusedError, match="Every beat is locked"):
        fit_to_slot(talk.study)


def test_locking_keeps_what_the_plan_says(talk):
    before = plan(talk.study).seconds
    for key in (Part.GREETING, 1, 2, 3, 4):
        talk.edit(lock(talk.study, key, True))
    assert all(seconds is not None for seconds in intended(talk.study))
    assert plan(talk.study).seconds == pytest.approx(before, abs=0.3)
    talk.edit(lock(talk.study, 2, False))
    assert not talk.study.nodes[2].locked


def test_what_is_not_told_has_no_length(talk):
    talk.edit(ChangeNode(1, "spoken", talk.study.nodes[1].spoken))
    with pytest.raises(EditRefusedError, match="not told"):
        lock(talk.study, 0, True)


def test_several_lengths_are_locked_together_and_unlocked_again(talk):
    before = dict(talk.study.nodes)
    rows = [Part.GREETING, 1, 3]
    assert not all_locked(talk.study, rows)
    inverse, _ = apply(talk.study, lock_several(talk.study, rows, True))
    assert [talk.study.nodes[node].locked for node in (1, 2, 3)] == [True, False, True]
    assert talk.study.line(Part.GREETING).locked
    assert talk.study.nodes[1].intended is not None
    assert all_locked(talk.study, rows)
    with pytest.raises(EditRefusedError, match="locked already"):
        lock_several(talk.study, rows, True)
    apply(talk.study, inverse)
    assert talk.study.nodes == before


def test_what_is_not_told_has_no_length_to_lock(talk):
    with pytest.raises(EditRefusedError, match="not told"):
        lock_several(talk.study, [Part.THANKS], True)
