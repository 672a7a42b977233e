"""Which edits are one burst of typing."""

from __future__ import annotations

import pytest

from studyboard.model.edits import ChangeLine, ChangeNode, ChangeSlot
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.store.burst import Burst, begun_by


def said(text):
    return FreeLine(SpokenLine(text))


@pytest.mark.parametrize("field", ["spoken", "note", "note_before", "name"])
def test_text_at_a_node_is_typed(clock, field):
    edit = ChangeNode(1, field, SpokenLine("a") if field == "spoken" else "a")
    assert isinstance(begun_by(edit, clock()), Burst)


@pytest.mark.parametrize("edit", [ChangeNode(1, "think", 5.0), ChangeNode(1, "nags", (1,)), ChangeSlot(60.0)])
def test_times_and_glyphs_are_not_typed(clock, edit):
    assert begun_by(edit, clock()) is None


def test_a_burst_goes_on_for_as_long_as_no_rest_is_longer_than_two_seconds(clock):
    burst = begun_by(ChangeLine(Part.GREETING, said("G")), clock())
    for rest, goes_on in [(0.0, True), (2.0, True), (1.9, True), (2.1, False)]:
        clock.wait(rest)
        following = burst.joined_by(ChangeLine(Part.GREETING, said("Go")), clock())
        assert (following is not None) is goes_on
        burst = following or burst


def test_a_burst_ends_after_half_a_minute_so_that_one_undo_never_takes_a_page_back(clock):
    burst = begun_by(ChangeNode(1, "note", "a"), clock())
    for _ in range(30):
        clock.wait(1.0)
        burst = burst.joined_by(ChangeNode(1, "note", "ab"), clock())
    clock.wait(1.0)
    assert burst.joined_by(ChangeNode(1, "note", "abc"), clock()) is None


def test_another_node_field_part_or_purpose_is_another_burst(clock):
    burst = begun_by(ChangeNode(1, "note", "a"), clock())
    others = (
        ChangeNode(2, "note", "a"),
        ChangeNode(1, "note_before", "a"),
        ChangeNode(1, "note", "a", "Clear the note"),
        ChangeLine(Part.THANKS, said("a")),
    )
    assert [burst.joined_by(edit, clock()) for edit in others] == [None] * 4
    greeting = begun_by(ChangeLine(Part.GREETING, said("a")), clock())
    assert greeting.joined_by(ChangeLine(Part.CLOSING, said("a")), clock()) is None


def test_a_clock_that_was_set_back_ends_the_burst(clock):
    burst = begun_by(ChangeNode(1, "note", "a"), clock())
    clock.wait(-3600)
    assert burst.joined_by(ChangeNode(1, "note", "ab"), clock()) is None
