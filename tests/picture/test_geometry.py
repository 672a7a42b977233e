"""Squares lie where a player of either side sees them."""

from __future__ import annotations

import chess
import pytest

from studyboard.picture.geometry import centre, corner, is_light, square_at


def test_white_has_a1_at_the_bottom_left_and_black_at_the_top_right():
    assert corner(chess.A1) == (0, 7)
    assert corner(chess.A1, flipped=True) == (7, 0)
    assert corner(chess.H8) == (7, 0)


@pytest.mark.parametrize("flipped", [False, True])
def test_the_square_under_its_own_centre_is_itself(flipped):
    for square in chess.SQUARES:
        assert square_at(*centre(square, flipped=flipped), flipped=flipped) == square


@pytest.mark.parametrize("point", [(-0.01, 3), (8.0, 3), (3, -1), (3, 8.5)])
def test_there_is_no_square_off_the_board(point):
    assert square_at(*point) is None


def test_the_corner_at_the_right_of_each_player_is_light():
    # FIDE Laws of Chess (2023), 2.1.
    assert is_light(chess.H1)
    assert is_light(chess.A8)
    assert not is_light(chess.A1)
