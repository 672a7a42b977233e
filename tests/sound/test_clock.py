"""The clock of a microphone tells the sample of this moment, whatever its deliveries do."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.sound.clock import SoundClock

RATE = 48_000


def test_before_any_sound_it_is_sample_0() -> None:
    assert SoundClock(RATE).sample(1_000.0) == 0


def test_between_two_deliveries_the_clock_goes_on() -> None:
    clock = SoundClock(RATE)
    clock.deliver(4_800, now=100.1)
    assert clock.sample(100.15) == 4_800 + 2_400


def test_a_late_block_does_not_set_the_clock_back() -> None:
    clock = SoundClock(RATE)
    for block in range(20):
        clock.deliver(960, now=100.0 + 0.02 * (block + 1))
    clock.deliver(960, now=100.42 + 0.3)
    assert clock.sample(100.72) == pytest.approx(0.72 * RATE, abs=1)


def test_sound_that_was_lost_by_the_system_is_made_up_for_within_two_seconds() -> None:
    clock = SoundClock(RATE)
    now = 0.0
    for _ in range(100):
        now += 0.02
        clock.deliver(960, now)
    now += 0.5
    for _ in range(round(SoundClock.MEMORY / 0.02) + 1):
        now += 0.02
        clock.deliver(960, now)
    assert clock.sample(now) == clock.delivered


@pytest.mark.parametrize("parts_per_million", [-300, 300])
def test_a_crystal_that_runs_fast_or_slow_moves_no_stamp_even_after_an_hour(parts_per_million: int) -> None:
    jitter = random.Random(7)
    clock = SoundClock(RATE)
    block = 1_024 / RATE * (1 - parts_per_million / 1e6)
    for number in range(1, round(3_600 / block)):
        clock.deliver(1_024, now=number * block + jitter.expovariate(1 / 0.002))
    now = number * block + 0.01
    assert clock.sample(now) / RATE == pytest.approx(now * (1 + parts_per_million / 1e6), abs=0.002)


def test_a_known_latency_lets_the_sound_of_now_come_later() -> None:
    clock = SoundClock(RATE, latency=0.04)
    clock.deliver(960, now=100.0)
    assert clock.sample(100.0) == 960 + 1_920


def test_where_nothing_arrives_any_more_the_clock_stops_at_what_the_system_can_hold() -> None:
    clock = SoundClock(RATE, ahead=4.0)
    clock.deliver(960, now=100.0)
    assert clock.sample(200.0) == 960 + 4 * RATE


def test_a_moment_that_lies_back_is_told_as_it_was_although_more_has_been_delivered() -> None:
    clock = SoundClock(RATE)
    for block in range(50):
        clock.deliver(960, now=100.0 + 0.02 * (block + 1))
    assert clock.sample(100.6) == round(0.6 * RATE)
    assert clock.at(100.3) == round(0.3 * RATE)
    assert clock.sample(100.3) == round(0.6 * RATE), "a stamp never comes before the one that was made last"
    assert clock.at(99.0) == 0


@given(st.lists(st.tuples(st.integers(0, 5_000), st.floats(0, 0.5)), max_size=60), st.floats(0, 0.1))
def test_the_clock_never_runs_back_and_never_behind_what_was_delivered(
    deliveries: list[tuple[int, float]], latency: float
) -> None:
    clock = SoundClock(RATE, latency)
    now, told, delivered = 5.0, 0, 0
    for samples, pause in deliveries:
        now += pause
        clock.deliver(samples, now)
        delivered += samples
        following = clock.sample(now + pause / 2)
        assert following >= told
        assert following >= delivered
        told = following
