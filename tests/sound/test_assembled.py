"""Takes are put together without a click, as long as their pieces, and without holes."""

from __future__ import annotations

import shutil
import subprocess

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.model.assembly import Gap
from studyboard.model.heard_take import Piece
from studyboard.model.takes import Span, Take
from studyboard.sound.assembled import HALF_FADE, REACH, AssembledSound
from studyboard.sound.room_tone import loop, quietest

RATE = 48_000


class Shelf:
    """Takes in memory; the real one is read in tests/sound/test_narration.py and through the desk."""

    def __init__(self, *sounds: np.ndarray) -> None:
        self.sounds = {number: np.rint(sound).astype("<i2") for number, sound in enumerate(sounds, 1)}

    def read_sound(self, take: int, start: int = 0, count: int | None = None) -> bytes:
        assert start >= 0
        return self.sounds[take][start : None if count is None else start + count].tobytes()

    def sound_chunks(self, take: int):
        for start in range(0, len(self.sounds[take]), 36_000):
            yield self.read_sound(take, start, 36_000)

    @property
    def takes(self) -> dict[int, Take]:
        return {number: Take(number, "", RATE, len(sound), "") for number, sound in self.sounds.items()}


def assemble(shelf: Shelf, *sources: Piece | Gap) -> tuple[np.ndarray, AssembledSound]:
    sound = AssembledSound(shelf, shelf.takes, sources, RATE)
    return np.frombuffer(b"".join(sound.chunks()), "<i2").astype(float), sound


def piece(take: int, start: float, end: float) -> Piece:
    return Piece(take, Span(round(start * RATE), round(end * RATE)))


def room(seconds: float, seed: int = 1, level: float = 12.0) -> np.ndarray:
    return np.random.default_rng(seed).normal(0, level, round(seconds * RATE))


def tone(seconds: float, pitch: float, level: float = 6_000.0) -> np.ndarray:
    return level * np.sin(2 * np.pi * pitch * np.arange(round(seconds * RATE)) / RATE)


def bend(sound: np.ndarray) -> float:
    """How sharply a sound bends at most: the largest second difference, which a click makes large."""
    return float(np.abs(np.diff(sound, 2)).max())


def voice(text: str) -> np.ndarray:
    """Spoken by a machine, in a room."""
    if shutil.which("espeak-ng") is None:
        pytest.skip("needs espeak-ng")
    soxr = pytest.importorskip("soxr")
    wave = subprocess.run(["espeak-ng", "--stdout", text], check=True, capture_output=True).stdout
    sound = soxr.resample(np.frombuffer(wave[44:], "<i2").astype(np.float32), 22_050, RATE)
    sound = np.concatenate((np.zeros(RATE), sound, np.zeros(RATE)))
    return sound * 0.5 + room(len(sound) / RATE)


def test_one_take_alone_is_heard_as_it_was_recorded():
    shelf = Shelf(tone(2, 220))
    heard, sound = assemble(shelf, piece(1, 0, 0.7), piece(1, 0.7, 2))
    assert sound.joins == ()
    edge = round(HALF_FADE * RATE)
    assert np.array_equal(heard[edge:-edge], shelf.sounds[1][edge:-edge])
    assert (heard[0], heard[-1]) == (0, 0)


@pytest.mark.parametrize("cut", [0.5, 0.5017, 0.5049, 0.51234])
def test_a_cut_through_the_middle_of_a_tone_makes_no_click(cut):
    shelf = Shelf(tone(2, 220), tone(2, 330))
    hard = np.concatenate((shelf.sounds[1][: round(cut * RATE)], shelf.sounds[2][round(1.3013 * RATE) :])).astype(float)
    heard, _ = assemble(shelf, piece(1, 0, cut), piece(2, 1.3013, 2))
    within = max(bend(tone(2, 220)), bend(tone(2, 330)))
    assert bend(hard) > 10 * within, "the cut itself clicks"
    assert bend(heard) <= within + 2, "two more for rounding to whole numbers"


def test_speech_that_is_cut_anywhere_has_no_bend_that_speech_has_not():
    one = voice("We begin with the king's pawn, and nobody would have thought so.")
    two = voice("There was another way, with the bishop's pawn.")
    shelf = Shelf(one, two)
    rng = np.random.default_rng(4)
    for _ in range(20):
        a, b = rng.uniform(0.2, len(one) / RATE - 0.2), rng.uniform(0.2, len(two) / RATE - 0.2)
        heard, sound = assemble(shelf, piece(1, 0, a), piece(2, b, len(two) / RATE))
        (join,) = sound.joins
        around = heard[join - 1_000 : join + 1_000]
        assert bend(around) <= max(bend(one), bend(two))


def test_a_join_is_moved_into_the_pause_beside_it():
    """Two milliseconds too late: the next word has begun."""
    one = np.concatenate((tone(1, 200), room(0.04), tone(1, 300)))
    two = np.concatenate((tone(1, 250), room(0.04), tone(1, 350)))
    shelf = Shelf(one, two)
    heard, sound = assemble(shelf, piece(1, 0, 1.042), piece(2, 1.042, 2.04))
    (join,) = sound.joins
    assert 1.0 * RATE <= join <= 1.04 * RATE
    assert np.array_equal(heard[round(1.05 * RATE) : round(1.9 * RATE)], shelf.sounds[2][50_400:91_200])
    assert len(heard) == round(2.04 * RATE)


def test_takes_that_end_where_the_next_begins_go_over_through_the_sound_of_the_room():
    """Beat by beat, with nothing recorded before the first word and behind the last."""
    one = np.concatenate((room(1), tone(0.5, 220) + room(0.5, 2)))
    two = np.concatenate((tone(0.5, 330) + room(0.5, 3), room(1, 4)))
    shelf = Shelf(one, two)
    heard, sound = assemble(shelf, piece(1, 0, 1.5), piece(2, 0, 1.5))
    assert sound.joins == (72_000,)
    around = heard[72_000 - 600 : 72_000 + 600]
    assert bend(around) <= max(bend(one), bend(two))


def test_a_gap_is_filled_with_the_room_of_the_take_before_it():
    shelf = Shelf(np.concatenate((tone(1, 220), room(1), tone(1, 300))))
    heard, _ = assemble(shelf, piece(1, 0, 1), Gap(3 * RATE), piece(1, 2, 3))
    assert len(heard) == 5 * RATE
    gap = heard[round(1.1 * RATE) : round(3.9 * RATE)]
    levels = np.sqrt(np.mean(gap[: len(gap) // 2_400 * 2_400].reshape(-1, 2_400) ** 2, axis=1))
    assert levels.min() > 8.0, "no hole of digital silence"
    assert levels.max() < 16.0, "nothing louder than the room"


def test_a_take_that_is_loud_all_the_time_has_no_room_and_the_gap_is_silent():
    shelf = Shelf(tone(2, 220))
    heard, _ = assemble(shelf, piece(1, 0, 1), Gap(RATE), piece(1, 1, 2))
    assert np.abs(heard[round(1.1 * RATE) : round(1.9 * RATE)]).max() == 0
    assert bend(heard) <= bend(tone(2, 220)) + 3, "a hard cut bends by more than a hundred"


def test_the_room_that_the_presenter_has_shown_is_taken():
    shelf = Shelf(np.concatenate((room(1, 1, 40.0), room(1, 2, 5.0))))
    takes = {1: Take(1, "", RATE, 2 * RATE, "", room_tone=Span(0, RATE))}
    sound = AssembledSound(shelf, takes, (Gap(RATE), piece(1, 1, 2)), RATE)
    gap = np.frombuffer(sound.read(0, RATE // 2), "<i2").astype(float)[2_000:]
    assert 30 < gap.std() < 50


@settings(max_examples=40, deadline=None)
@given(st.data())
def test_any_pieces_are_as_long_together_as_each_alone_and_can_be_read_from_anywhere(data):
    shelf = Shelf(tone(0.6, 220) + room(0.6), tone(0.6, 400) + room(0.6, 2))
    ends = st.tuples(st.integers(0, 28_799), st.integers(1, 6_000))
    pieces = st.builds(lambda take, at: Piece(take, Span(at[0], min(28_800, sum(at)))), st.integers(1, 2), ends)
    sources = data.draw(st.lists(pieces | st.builds(Gap, st.integers(1, 3_000)), min_size=1, max_size=8))
    sound = AssembledSound(shelf, shelf.takes, sources, RATE)
    whole = b"".join(sound.chunks())
    assert len(whole) == 2 * sound.samples == 2 * sum(source.samples for source in sources)
    start, count = data.draw(st.integers(0, sound.samples)), data.draw(st.integers(0, 20_000))
    assert (
        AssembledSound(shelf, shelf.takes, sources, RATE).read(start, count) == whole[2 * start : 2 * (start + count)]
    )
    for join, end in zip(sound.joins, np.cumsum([one.samples for one in sound._sources]), strict=False):
        assert abs(join - end) <= REACH * RATE


def test_the_quietest_stretch_is_found_wherever_chunks_end():
    sound = np.concatenate((tone(1, 220), room(1.0), tone(1, 220)))
    shelf = Shelf(sound)
    span = quietest(shelf.sound_chunks(1), RATE)
    assert span is not None
    assert RATE <= span.start < span.end <= 2 * RATE
    assert quietest(iter([bytes(2_000)]), RATE) is None


def test_a_stretch_of_room_goes_on_into_its_beginning():
    sound = room(0.6).astype(np.float32)
    made = loop(sound, 4_800)
    twice = np.concatenate((made, made))
    assert bend(twice) <= 1.3 * bend(sound)
    assert twice.std() == pytest.approx(sound.std(), rel=0.1)
