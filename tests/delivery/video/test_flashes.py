"""Flashes as WCAG 2.2, success criterion 2.3.1, counts them: no more than three in any one second."""

from __future__ import annotations

import numpy as np

from studyboard.delivery.video.flashes import CELLS, first_flashing


def blinking(times, *, low=0, high=255, area=1.0, channel=slice(0, 3)):
    """A picture whose upper part goes from dark to light and back at these seconds."""
    for number, at in enumerate(times):
        picture = np.zeros((*CELLS, 4), np.uint8)
        picture[: round(CELLS[0] * area), :, channel] = high if number % 2 else low
        yield at, picture


def test_three_flashes_in_a_second_are_allowed_and_four_are_not():
    # Three flashes are six changes after the first picture.
    assert first_flashing(blinking([i / 6.5 for i in range(7)])) is None
    found = first_flashing(blinking([i / 9 for i in range(10)]))
    assert found is not None
    assert found.at <= 1.0
    assert not found.red


def test_slow_changes_are_no_flashes_however_many():
    assert first_flashing(blinking([i * 0.4 for i in range(60)])) is None


def test_a_change_of_less_than_a_tenth_of_the_light_is_none():
    # sRGB 100 and 120 are 0.127 and 0.188 of full light: six hundredths apart.
    assert first_flashing(blinking([i / 12 for i in range(40)], low=100, high=120)) is None


def test_two_light_pictures_are_no_flash():
    # sRGB 232 is 0.807 of full light: the darker picture must be below 0.80.
    assert first_flashing(blinking([i / 12 for i in range(40)], low=232, high=255)) is None


def test_a_small_area_may_flicker():
    small = [(at, _corner(picture)) for at, picture in blinking([i / 12 for i in range(40)])]
    assert first_flashing(small) is None


def test_saturated_red_counts_where_its_light_alone_would_not():
    found = first_flashing(blinking([i / 12 for i in range(20)], high=90, channel=2))
    assert found is not None
    assert found.red


def _corner(picture):
    kept = np.zeros_like(picture)
    # A twelfth of a third by a third of the picture.
    kept[:5, :9] = picture[:5, :9]
    return kept
