"""Listening to a talk: each word is found where the synthesiser put it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest

from studyboard.sound.alignment.aligned import Alignment, Departure
from studyboard.sound.alignment.listening import ListeningStoppedError, listen
from studyboard.sound.alignment.script_words import ScriptWord, line_words
from tests.sound.known_words import KnownSpeech, in_a_room, joined, speak, with_noise

LINES = (
    "Good evening, and welcome to the harbour club. Tonight's game was decided by a single square.",
    "White opens with the queen's pawn, and after d5 and c4 we have the oldest gambit there is.",
    "Black does not take. He supports his centre with e6, and the bishop on c8 is shut in for now.",
    "Here Nf3 was natural, but Imani chose Bg5 and pinned the knight against the queen.",
    "And what can Black do about it? Watch the rook on a8, which never moves in this game.",
    "The king has no square left. After 27 moves it is checkmate, and the crowd was silent.",
)


def script(lines: Sequence[str] = LINES) -> list[ScriptWord]:
    return [word for number, line in enumerate(lines) for word in line_words(number, line)]


def spoken(lines: Sequence[str] = LINES, voice: str = "en-gb", speed: int = 160) -> KnownSpeech:
    return joined([speak(line, voice, speed) for line in lines])


def share_found(found: Alignment, speech: KnownSpeech) -> float:
    return share_near([word.start for word in found.words], speech)


def share_near(starts: Sequence[float], speech: KnownSpeech) -> float:
    off = np.abs(np.array(starts) - np.array(speech.words))
    return float(np.mean(off[~np.isnan(off)] <= 0.15))


@pytest.mark.parametrize(("voice", "speed"), [("en-us", 140), ("en-gb", 175), ("en-gb-x-rp", 160), ("en-us+f3", 160)])
def test_nearly_every_word_is_found_within_a_seventh_of_a_second(voice: str, speed: int) -> None:
    speech = spoken(voice=voice, speed=speed)
    found = listen(script(), speech.sound)
    assert share_found(found, speech) >= 0.95
    assert not [one for one in found.unmatched if one.kind is not Departure.DOUBTFUL]
    assert found.sure > 0.9


def test_words_are_found_in_noise_and_in_a_room() -> None:
    speech = spoken()
    found = listen(script(), with_noise(in_a_room(speech.sound)))
    assert share_found(found, speech) >= 0.95


def test_a_line_that_was_left_out_is_told_and_the_others_are_found() -> None:
    speech = spoken([line for number, line in enumerate(LINES) if number != 2])
    found = listen(script(), speech.sound)
    skipped = [one for one in found.unmatched if one.kind is Departure.SKIPPED]
    assert [one.text for one in skipped if one.beat == 2] == [LINES[2]]
    assert not any(word.sure for word in found.words if word.beat == 2)
    beside = sum(one.words for one in skipped if one.beat != 2)
    assert beside <= 3, "a word or two right beside what was left out may be missed with it, no more"
    told = [word.start for word in found.words if word.beat != 2]
    assert share_near(told, speech) >= 0.95


def test_what_is_said_besides_the_script_is_told_and_does_not_move_the_words() -> None:
    aside = "By the way, the coffee here is excellent, and the hall was full of people tonight."
    before, after = spoken(LINES[:3]), spoken(LINES[3:])
    between = joined([speak(aside, "en-gb", 160)], 0.3)
    speech = joined([before, between, after], 0.1)
    found = listen(script(), speech.sound)
    starts = [word.start for word in found.words]
    told = len(" ".join(LINES[:3]).split())
    extra = len(aside.split())
    known = KnownSpeech(speech.sound, speech.words[:told] + speech.words[told + extra :])
    assert share_near(starts, known) >= 0.95
    first, last = speech.words[told], speech.words[told + extra - 1]
    added = [one for one in found.unmatched if one.kind is Departure.AD_LIBBED]
    # The end of its last word is not known; what belongs to the lines beside it must not be called added.
    inside = sum(max(0.0, min(one.end, last) - max(one.start, first)) for one in added)
    assert inside > 0.6 * (last - first)
    assert all(one.start > first - 2.0 and one.end < last + 2.5 for one in added)


def test_what_is_said_twice_is_told_and_the_line_is_found_all_the_same() -> None:
    again = "Here Nf3 was natural, but Imani"
    lines = [*LINES[:3], again, *LINES[3:]]
    speech = spoken(lines)
    found = listen(script(), speech.sound)
    told = len(" ".join(LINES[:3]).split())
    rest = speech.words[told + len(again.split()) :]
    after = [word.start for word in found.words[told + 6 :]]
    assert share_near(after, KnownSpeech(speech.sound, rest[6:])) >= 0.95
    repeated = [one for one in found.unmatched if one.kind in (Departure.REPEATED, Departure.AD_LIBBED)]
    assert repeated
    assert any(one.beat == 3 for one in repeated)


def test_another_talk_than_the_script_is_not_taken_for_it() -> None:
    other = (
        "The recipe begins with two onions and a little butter in a heavy pan.",
        "Stir until everything is golden, then add the rice and some stock, and wait for twenty minutes.",
    )
    found = listen(script(), spoken(other).sound)
    assert found.sure < 0.1


def test_silence_has_no_words() -> None:
    found = listen(script(), np.zeros(16_000 * 8, np.int16))
    assert found.sure == 0.0
    assert not any(word.sure for word in found.words)


def test_it_tells_how_far_it_is_and_can_be_stopped() -> None:
    speech = spoken(LINES[:3])
    told: list[float] = []
    listen(script(LINES[:3]), speech.sound, told.append)
    assert told == sorted(told)
    assert told[-1] == pytest.approx(1.0)
    with pytest.raises(ListeningStoppedError):
        listen(script(), speech.sound, stopped=lambda: True)
