"""Talks are read from plain text, lines with times, WebVTT and SRT."""

from hypothesis import given
from hypothesis import strategies as st

from studyboard.notation.narration.transcripts import transcript

VTT = """WEBVTT

STYLE
::cue { color: lime }

NOTE no words of the talk

1
00:00:01.000 --> 00:00:03.500 align:start
<v Imani>Pawn to e4,</v> and

00:00:03.500 --> 00:00:05.000
Black &amp; co. reply c5.

00:00:08.000 --> 00:00:09.250
Knight f3.
"""

SRT = """1
00:00:01,000 --> 00:00:03,500
<i>Pawn to e4,</i>
and c5.

2
00:00:04,000 --> 00:00:05,000
Knight f3.
"""


def paragraphs(text: str) -> list[tuple[float | None, float | None, str]]:
    talk = transcript(text)
    return [(p.at, p.until, talk.text[p.start : p.end]) for p in talk.paragraphs]


def test_blank_lines_part_the_paragraphs_of_plain_text() -> None:
    assert paragraphs("One.\nStill one.\n\n  \nTwo.\r\n\r\nThree.") == [
        (None, None, "One.\nStill one."), (None, None, "Two."), (None, None, "Three."),
    ]  # fmt: skip


def test_lines_with_times_last_until_the_next_one() -> None:
    assert paragraphs("[0:00] Hello.\n[0:07] e4\ngoes on\n[1:02:03.5] The end.") == [
        (0.0, 7.0, "Hello."), (7.0, 3723.5, "e4\ngoes on"), (3723.5, None, "The end."),
    ]  # fmt: skip


def test_captions_are_joined_until_a_sentence_ends() -> None:
    assert paragraphs(VTT) == [
        (1.0, 8.0, "Pawn to e4, and Black & co. reply c5."), (8.0, 9.25, "Knight f3."),
    ]  # fmt: skip


def test_srt_is_read_like_webvtt() -> None:
    assert paragraphs(SRT) == [(1.0, 4.0, "Pawn to e4, and c5."), (4.0, 5.0, "Knight f3.")]


def test_captions_without_full_stops_are_parted_now_and_then() -> None:
    cues = "\n\n".join(f"00:00:{s:02d}.000 --> 00:00:{s + 5:02d}.000\nwords" for s in range(0, 50, 5))
    found = paragraphs("WEBVTT\n\n" + cues)
    assert 2 <= len(found) <= 5
    assert sum(text.count("words") for _, _, text in found) == 10


@given(st.text(max_size=300))
def test_any_text_is_a_talk_whose_paragraphs_lie_in_it(text: str) -> None:
    talk = transcript(text)
    end = 0
    for paragraph in talk.paragraphs:
        assert end <= paragraph.start < paragraph.end <= len(talk.text)
        end = paragraph.end
