"""SubRip as players read it."""

from __future__ import annotations

import html

import pysubs2
import webvtt
from hypothesis import given
from hypothesis import strategies as st

from studyboard.delivery.caption_lines import Caption
from studyboard.delivery.printable import printable
from studyboard.delivery.srt import srt_text
from studyboard.delivery.webvtt import webvtt_text


def test_a_whole_file():
    cues = (Caption(0, 2345, ("Good evening,", "and welcome."), 0), Caption(2425, 3500, ("Rook & king.",), 1))
    assert srt_text(cues) == (
        "1\n"
        "00:00:00,000 --> 00:00:02,345\n"
        "Good evening,\n"
        "and welcome.\n"
        "\n"
        "2\n"
        "00:00:02,425 --> 00:00:03,500\n"
        "Rook & king.\n"
    )


def test_nothing_that_a_player_would_hide_is_left():
    (event,) = pysubs2.SSAFile.from_string(srt_text((Caption(0, 1000, ("<i>f3</i> --> {f5} a<b",), 0),)), "srt")
    assert event.plaintext == "‹i>f3‹/i> → (f5) a‹b"


def test_the_other_captions_keep_the_signs_themselves():
    (cue,) = webvtt.from_string(webvtt_text((Caption(0, 1000, ("<b>f3</b> {f5} a<b",), 0),))).captions
    assert html.unescape(cue.raw_text) == "<b>f3</b> {f5} a<b"


@given(lines=st.lists(st.lists(st.text(max_size=37), min_size=1, max_size=2), max_size=6))
def test_whatever_is_said_another_reader_finds_the_same_captions(lines):
    cues = [Caption(1000 * n, 1000 * n + 900, tuple(pair), n) for n, pair in enumerate(lines)]
    shown = [cue for cue in cues if any(map(printable, cue.lines))]
    read = pysubs2.SSAFile.from_string(srt_text(cues), "srt")
    assert [(event.start, event.end) for event in read] == [(cue.start, cue.end) for cue in shown]
    assert all(event.plaintext.strip() for event in read)
