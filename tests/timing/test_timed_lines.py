"""Lines with times come from transcripts of every kind, and from takes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from studyboard.model.edits import PutTake
from studyboard.model.script import Part
from studyboard.model.takes import SaidLine, SoundTime, Take, TakeEvent
from studyboard.timing.timed_lines import TimedLine, recorded_lines, timed_lines

_CUES = [
    (0.0, 2.4, "Good evening, all."),
    (2.4, 5.0, "The pawn goes"),
    (5.0, 7.1, "to e4, and nobody"),
    (7.5, 9.0, "is surprised."),
]


def vtt(cues: list[tuple[float, float, str]]) -> str:
    """Captions as WebVTT."""
    times = (f"00:{at // 60:02.0f}:{at % 60:06.3f} --> 00:{to // 60:02.0f}:{to % 60:06.3f}" for at, to, _ in cues)
    return "WEBVTT\n\n" + "\n\n".join(f"{time}\n{cue[2]}" for time, cue in zip(times, cues, strict=True))


def test_lines_are_read_from_a_transcript_with_times():
    first, second = timed_lines("[0:00] Good evening, all.\n[0:08] The pawn goes to e4.\n[0:15] And so on.")
    assert (first.text, first.seconds, first.whole, first.closes) == ("Good evening, all.", 8.0, True, True)
    assert (second.text, second.seconds) == ("The pawn goes to e4.", 7.0)


def test_captions_of_a_few_words_are_joined_to_paragraphs():
    cues = [(30 * n + at, 30 * n + to, text) for n in range(20) for at, to, text in _CUES]
    lines = timed_lines(vtt(cues))
    assert 15 <= len(lines) <= 24
    assert all(line.closes for line in lines)
    assert not any(line.whole for line in lines)
    assert sum(len(line.text.split()) for line in lines) == 20 * 12


def test_the_silence_until_the_next_caption_counts():
    lines = timed_lines(vtt([(0.0, 3.0, "One."), (5.0, 8.0, "Two."), (9.0, 11.0, "Three.")]))
    assert [line.seconds for line in lines] == pytest.approx([5.0, 4.0, 2.0])


def test_captions_that_roll_up_are_said_once():
    rolling = [
        (0.0, 4.0, "the pawn goes to e4"),
        (2.0, 6.0, "the pawn goes to e4\nand then the knight"),
        (4.0, 8.0, "and then the knight\ncomes to f3."),
    ]
    lines = timed_lines(vtt(rolling))
    assert " ".join(line.text for line in lines) == "the pawn goes to e4 and then the knight comes to f3."
    assert sum(line.seconds for line in lines) == pytest.approx(8.0)


def test_a_line_that_is_said_twice_is_said_twice():
    lines = timed_lines(vtt([(0.0, 2.0, "Check."), (2.0, 4.0, "Check."), (4.0, 6.0, "And mate.")]))
    assert " ".join(line.text for line in lines) == "Check. Check. And mate."


def test_sounds_in_brackets_are_not_speech():
    (line,) = timed_lines("[0:00] Good evening [applause] to all of you. (laughter)\n[0:09] End")
    assert line.text == "Good evening to all of you."


def test_a_transcript_without_commas_is_seen_to_be_one():
    bare = "\n".join(f"[0:{n * 8:02}] and then the knight comes to f3 and nobody is surprised" for n in range(6))
    marked = bare.replace("f3", "f3,").replace("surprised", "surprised.")
    assert all(line.unmarked for line in timed_lines(bare))
    assert not any(line.unmarked for line in timed_lines(marked))


def test_takes_give_their_beats_without_think_pauses_and_with_what_the_board_did(author):
    e4 = author.play("e2e4")
    author.say(e4, "The pawn goes to e4.")
    author.change(e4, think=3.0)
    d4 = author.play("d2d4")
    author.say(d4, "Or to d4.")
    c5 = author.play("c7c5", after=e4)
    author.say_part(Part.CLOSING, "Good night.")
    rate = 1000
    at = {e4: 0, d4: 6000, c5: 8000, Part.CLOSING: 9500}
    events = tuple(
        TakeEvent(SoundTime(samples, rate), node if isinstance(node, int) else c5, node) for node, samples in at.items()
    )
    author.edit(PutTake(Take(1, "one", rate, 11000, "2031-03-05T20:00:00+00:00", events)))
    assert recorded_lines(author.study) == (
        TimedLine("The pawn goes to e4.", 3.0, False),
        TimedLine("Or to d4.", 2.0, False, returns=1, side_line=True),
        TimedLine("", 1.5, False, silent_moves=1, returns=1),
        TimedLine("Good night.", 1.5, False),
    )


def test_beats_that_were_only_spread_over_a_sound_teach_nothing_until_it_was_listened_to(author):
    e4 = author.play("e2e4")
    author.say(e4, "The pawn goes to e4.")
    e5 = author.play("e7e5")
    author.say(e5, "And so does the other one.")
    events = (TakeEvent(SoundTime(0, 1000), e4, e4), TakeEvent(SoundTime(3000, 1000), e5, e5))
    take = Take(1, "one", 1000, 6000, "2031-03-05T20:00:00+00:00", events, origin="telephone.wav")
    author.edit(PutTake(take))
    assert recorded_lines(author.study) == ()
    heard = SaidLine(e4, "The pawn goes to e4.", (0, 400, 800, 1200, 1600), (300, 700, 1100, 1500, 2000))
    author.edit(PutTake(replace(take, id=2, said=(heard,))))
    assert [line.text for line in recorded_lines(author.study)] == ["The pawn goes to e4."]
