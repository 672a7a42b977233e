"""What goes wrong with the level is told once, with the moment at which it began."""

from __future__ import annotations

import random

from studyboard.sound.level_watch import READINGS, LevelWatch, Trouble, Warned


class Speaker:
    """Feeds a watch with readings as a voice in a room makes them."""

    def __init__(self, room: float = -62.0) -> None:
        self.watch = LevelWatch()
        self.at = 0.0
        self.told: list[Warned] = []
        self._room = room
        self._chance = random.Random(4)

    def speak(self, seconds: float, level: float) -> None:
        """Words at this level (dBFS, RMS), a third of the readings being the gaps between them."""
        for number in range(round(seconds * READINGS)):
            gap = number % 3 == 2
            self._read(self._room if gap else level - self._chance.uniform(0, 6))

    def be_silent(self, seconds: float, level: float | None = None) -> None:
        for _ in range(round(seconds * READINGS)):
            self._read(self._room if level is None else level)

    def _read(self, rms: float) -> None:
        self.at += 1 / READINGS
        self.told += self.watch.read(min(0.0, rms + 12), rms, self.at)


def test_a_voice_of_ordinary_level_is_left_in_peace() -> None:
    speaker = Speaker()
    for _ in range(5):
        speaker.speak(20, -22)
        speaker.be_silent(6)
    assert speaker.told == []


def test_five_seconds_of_a_faint_voice_are_told_with_their_beginning() -> None:
    speaker = Speaker()
    speaker.be_silent(4)
    speaker.speak(4, -45)
    assert speaker.told == []
    speaker.speak(8, -45)
    (warned,) = speaker.told
    assert warned.trouble is Trouble.TOO_QUIET
    assert 3.9 < warned.at < 4.3
    assert speaker.watch.standing == {Trouble.TOO_QUIET}


def test_a_faint_voice_is_told_again_only_after_it_was_louder() -> None:
    speaker = Speaker()
    speaker.be_silent(3)
    speaker.speak(30, -45)
    assert len(speaker.told) == 1
    speaker.speak(3, -20)
    assert speaker.watch.standing == frozenset()
    speaker.speak(12, -45)
    assert [warned.trouble for warned in speaker.told] == [Trouble.TOO_QUIET] * 2


def test_thinking_in_silence_is_no_faint_voice() -> None:
    speaker = Speaker(room=-50)
    speaker.be_silent(60)
    assert speaker.told == []


def test_a_dead_microphone_is_told_after_three_seconds_and_only_once() -> None:
    speaker = Speaker()
    speaker.speak(5, -22)
    speaker.be_silent(2.5, level=-120)
    assert speaker.told == []
    speaker.be_silent(10, level=-120)
    (warned,) = speaker.told
    assert warned.trouble is Trouble.NO_SIGNAL
    assert abs(warned.at - 5.0) < 0.2


def test_a_microphone_that_is_muted_twice_is_told_twice() -> None:
    speaker = Speaker()
    for _ in range(2):
        speaker.be_silent(4, level=-120)
        speaker.speak(2, -22)
    assert [warned.trouble for warned in speaker.told] == [Trouble.NO_SIGNAL] * 2


def test_each_moment_of_clipping_is_told_but_one_moment_only_once() -> None:
    watch = LevelWatch()
    told = [watch.clip(at) for at in (12.0, 12.1, 12.9, 40.0)]
    assert told == [Warned(Trouble.CLIPPED, 12.0), None, None, Warned(Trouble.CLIPPED, 40.0)]
    assert [warned.at for warned in watch.warned] == [12.0, 40.0]
