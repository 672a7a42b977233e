"""What rows of the lanes say."""

from __future__ import annotations

from dataclasses import replace

import pytest

from studyboard.desk.lanes_rows import glyphs, node_row, row_tool_tip, seconds_in_words, short_seconds
from studyboard.desk.lanes_times import RowTime
from studyboard.model.positions import Positions
from studyboard.model.script import SpokenLine
from studyboard.notation.pgn_reader import read_games


@pytest.mark.parametrize(
    ("nags", "shown"),
    [((), ""), ((1,), "!"), ((6,), "?!"), ((18, 3), "!! +−"), ((10,), " ="), ((0,), ""), ((201,), " $201")],
)
def test_judgement_of_the_move_comes_first_and_no_number_is_lost(nags: tuple[int, ...], shown: str) -> None:
    assert glyphs(nags) == shown


def test_a_row_shows_its_move_and_the_beginning_of_its_line_without_line_breaks() -> None:
    study = next(read_games("1. e4 e5 *")).study
    *_, last = study.main_line()
    study.nodes[last] = replace(
        study.nodes[last], spoken=SpokenLine("And Black\n\nreplies at once."), note="[%clk 1:00]", nags=(1,), think=3.0
    )
    row = node_row(study, Positions(study), last)
    assert (row.label, row.glyphs, row.words) == ("1... e5", "!", "And Black replies at once.")
    assert row.white is False
    assert row.think == 3.0
    assert not row.note, "a clock reading is nothing to print"


@pytest.mark.parametrize(
    ("seconds", "shown"), [(0.0, ""), (0.2, "1 s"), (13.6, "14 s"), (59.7, "1:00"), (65.0, "1:05")]
)
def test_seconds_are_short(seconds: float, shown: str) -> None:
    assert short_seconds(seconds) == shown


def test_a_line_is_over_only_where_it_does_not_fit_its_time() -> None:
    assert RowTime(10.0, None).over == 0.0
    assert RowTime(10.0, 12.0).over == 0.0
    assert RowTime(10.0, 9.8).over == 0.0, "half a second is not worth a warning"
    assert RowTime(10.0, 6.0).over == pytest.approx(4.0)
    assert seconds_in_words(RowTime(10.0, 6.0)) == "6 seconds, 4 over"
    assert seconds_in_words(None) == ""


def test_the_tool_tip_has_the_whole_line_and_the_note() -> None:
    study = next(read_games("1. e4 {For <print>.} *")).study
    *_, last = study.main_line()
    line = "word " * 100 + "& end"
    study.nodes[last] = replace(study.nodes[last], spoken=SpokenLine(line))
    row = node_row(study, Positions(study), last)
    tip = row_tool_tip(study, last, row, RowTime(30.0, 20.0))
    assert "&amp; end" in tip
    assert "For &lt;print&gt;." in tip
    assert "20 s intended, 30.0 s estimated" in tip
