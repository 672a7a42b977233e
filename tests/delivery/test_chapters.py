"""Chapters: the first at 0:00, none under ten seconds, no gaps."""

from __future__ import annotations

from itertools import pairwise

import chess.pgn
import webvtt

from studyboard.delivery.chapters import SHORTEST, chapter_lines, chapters
from studyboard.delivery.webvtt import chapter_cues
from studyboard.example import example_study
from studyboard.model.edits import ChangeNode, apply
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Happening, Source, Timeline


def test_chapters_begin_at_zero_follow_without_gaps_and_are_long_enough():
    study = example_study()
    found = chapters(study, Positions(study), plan(study))
    assert len(found) > 5
    assert found[0].start == 0
    assert found[-1].end == plan(study).seconds
    assert all(before.end == after.start for before, after in pairwise(found))
    assert all(one.end - one.start >= SHORTEST for one in found)


def test_side_lines_think_pauses_and_the_finish_have_chapters():
    study = example_study()
    titles = [one.title for one in chapters(study, Positions(study), plan(study))]
    lines = [title for title in titles if title.startswith("Side-line: ")]
    assert lines
    assert len(lines) == len(set(lines)), "coming back into a side-line does not begin it again"
    assert any(title.startswith("Find the move: ") for title in titles)
    assert titles[-1].startswith("The finish: ")


def test_the_first_move_that_is_new_has_a_chapter():
    study = example_study()
    positions = Positions(study)
    node = next(one for one in study.main_line() if move_label(positions, one) == "11. Qc2")
    apply(study, ChangeNode(node, "nags", (chess.pgn.NAG_NOVELTY,)))
    timeline = plan(study)
    (found,) = [one for one in chapters(study, positions, timeline) if "new move" in one.title]
    assert found.title == "The new move: 11. Qc2"
    (played,) = [event.at for event in timeline.events if event.what is Happening.MOVE and event.node == node]
    assert found.start <= played < found.end


def test_the_first_chapter_has_the_opening_for_its_name_by_position_or_by_the_authors_tag():
    study = example_study()
    assert "Opening" not in study.headers
    assert chapters(study, Positions(study), plan(study))[0].title.startswith("Sicilian Defence, Alapin Variation")
    study.headers["Opening"] = "The c3 Sicilian"
    assert chapters(study, Positions(study), plan(study))[0].title == "The c3 Sicilian"


def test_lines_of_text_begin_with_their_time():
    study = example_study()
    lines = chapter_lines(chapters(study, Positions(study), plan(study))).splitlines()
    assert lines[0].startswith("0:00 ")
    assert all(line.split(" ", 1)[0].count(":") == 1 for line in lines)


def test_another_reader_reads_the_chapters(tmp_path):
    study = example_study()
    found = chapters(study, Positions(study), plan(study))
    (tmp_path / "c.vtt").write_text(chapter_cues(found, title="A talk --> B"), encoding="utf-8")
    read = webvtt.read(tmp_path / "c.vtt")
    assert [cue.text for cue in read] == [one.title for one in found]
    assert all(abs(cue.start_in_seconds - one.start) <= 1 for cue, one in zip(read, found, strict=True))


def test_nothing_told_has_no_chapters():
    study = Study()
    empty = Timeline(Source.PLANNED, study.root, ())
    assert chapters(study, Positions(study), empty) == ()
