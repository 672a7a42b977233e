"""WebVTT as a player reads it; what the standard asks for is checked in tests/external/test_webvtt.py."""

from __future__ import annotations

from studyboard.delivery.caption_lines import Caption
from studyboard.delivery.webvtt import webvtt_text


def test_a_whole_file():
    cues = (
        Caption(0, 2345, ("Good evening,", "and welcome."), 0),
        Caption(3_661_000, 3_662_005, ("Rook < queen & king > all.",), 1),
    )
    assert webvtt_text(cues, title="Halvorse – Nduka") == (
        "WEBVTT - Halvorse – Nduka\n"
        "\n"
        "1\n"
        "00:00:00.000 --> 00:00:02.345\n"
        "Good evening,\n"
        "and welcome.\n"
        "\n"
        "2\n"
        "01:01:01.000 --> 01:01:02.005\n"
        "Rook &lt; queen &amp; king &gt; all.\n"
    )


def test_a_talk_without_a_word_is_a_file_without_cues():
    assert webvtt_text(()) == "WEBVTT\n"


def test_a_title_cannot_break_the_signature():
    assert webvtt_text((), title="A --> B\n\nC") == "WEBVTT - A → B C\n"


def test_a_talk_of_more_than_a_hundred_hours_keeps_its_hours():
    assert "100:00:00.000 --> 100:00:01.000" in webvtt_text((Caption(360_000_000, 360_001_000, ("Late.",), 0),))
