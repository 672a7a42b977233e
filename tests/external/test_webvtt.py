"""Captions against the W3C's WebVTT standard, and read by readers that are not ours.

Source: W3C, "WebVTT: The Web Video Text Tracks Format", section 4.1 (file structure), quoted from memory. Readers:
webvtt-py and pysubs2, general-purpose libraries.
"""

from __future__ import annotations

import html
import re
from io import StringIO
from itertools import pairwise

import pysubs2
import pytest
import webvtt
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.delivery.caption_lines import Caption, captions
from studyboard.delivery.printable import printable
from studyboard.delivery.webvtt import webvtt_text
from studyboard.model.script import SpokenLine, words
from studyboard.timing.timeline import Source, Stretch, Timeline, WordTime

TIMING = re.compile(r"(?:\d{2,}):[0-5]\d:[0-5]\d\.\d{3} --> (?:\d{2,}):[0-5]\d:[0-5]\d\.\d{3}")
ENTITY = re.compile(r"&(?!amp;|lt;|gt;)")


def keeps_to_the_standard(text: str) -> None:
    """Section 4.1: the signature, blank lines between blocks, a timing line, cue text free of what ends a cue."""
    assert text.startswith("WEBVTT")
    head, *blocks = text.rstrip("\n").split("\n\n")
    assert re.fullmatch(r"WEBVTT(?:[ \t][^\r\n]*)?", head)
    assert "-->" not in head
    assert "\r" not in text
    assert "\x00" not in text
    for block in blocks:
        identifier, timing, *payload = block.split("\n")
        assert "-->" not in identifier
        assert TIMING.fullmatch(timing)
        assert payload
        for line in payload:
            assert line
            assert "-->" not in line
            assert "<" not in line
            assert ">" not in line
            assert not ENTITY.search(line)


def talk(text: str, each: float) -> Timeline:
    """A talk of one beat that says *text*, *each* seconds a word."""
    timed = tuple(WordTime(n * each, (n + 1) * each, n, word) for n, word in enumerate(words(text)))
    end = len(timed) * each
    return Timeline(Source.PLANNED, 0, (Stretch(1, 0.0, end, end + 1, 0.0, 1, 0, SpokenLine(text), timed, ()),))


@settings(deadline=None)
@given(text=st.text(max_size=300), title=st.text(max_size=40), each=st.floats(0.01, 1.0))
def test_any_talk_keeps_to_the_standard_and_is_read_back(text, title, each):
    cues = captions(talk(text, each))
    written = webvtt_text(cues, title=title)
    keeps_to_the_standard(written)
    read = webvtt.WebVTT.from_buffer(StringIO(written)).captions
    shown = [cue for cue in cues if any(map(printable, cue.lines))]
    assert [(cue.start_in_seconds, cue.end_in_seconds) for cue in read] == [
        (cue.start // 1000, cue.end // 1000) for cue in shown
    ]
    assert [[html.unescape(line) for line in cue.lines] for cue in read] == [
        [line for line in map(printable, cue.lines) if line] for cue in shown
    ]


@pytest.mark.parametrize(
    "line", ["R < Q & K > all", "a --> b", "&amp; already", "<v Speaker>voice", "NOTE this", "STYLE", "14"]
)
def test_signs_that_mean_something_to_a_player_come_out_as_they_were_said(line):
    written = webvtt_text([Caption(0, 1000, (line,), 1)])
    keeps_to_the_standard(written)
    (read,) = webvtt.WebVTT.from_buffer(StringIO(written)).captions
    assert html.unescape(read.text) == line


def test_a_second_reader_finds_the_same_times():
    cues = captions(talk("Count the pieces that look at the king. Three, four, five! What would you play here?", 0.3))
    read = pysubs2.SSAFile.from_string(webvtt_text(cues), "vtt")
    assert [(event.start, event.end) for event in read] == [(cue.start, cue.end) for cue in cues]
    assert all(before.end <= after.start for before, after in pairwise(read))
