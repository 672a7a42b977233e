from __future__ import annotations

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QSizeF

from studyboard.desk.board_geometry import fit_board
from studyboard.picture.primitives import Bounds

PLAIN = Bounds(0, 0, 8, 8)
MARGIN = Bounds(-0.5, -0.03, 8.53, 8.53)


@given(
    width=st.integers(240, 2000),
    height=st.integers(240, 2000),
    ratio=st.sampled_from([1.0, 1.25, 1.5, 2.0, 3.0]),
    bounds=st.sampled_from([PLAIN, MARGIN]),
    flipped=st.booleans(),
)
def test_the_board_is_whole_pixels_inside_the_widget_and_as_large_as_can_be(width, height, ratio, bounds, flipped):
    place = fit_board(QSizeF(width, height), ratio, bounds, flipped=flipped, rim=4.0)
    assert place.side * ratio == pytest.approx(round(place.side * ratio))
    assert place.left * ratio == pytest.approx(round(place.left * ratio))
    left, top = place.left + bounds.x * place.side, place.top + bounds.y * place.side
    assert left >= 3.0
    assert top >= 3.0
    assert left + bounds.width * place.side <= width - 3.0
    assert top + bounds.height * place.side <= height - 3.0
    assert (place.side + 1 / ratio) * max(bounds.width, bounds.height) > min(width, height) - 8.0


@given(square=st.sampled_from(chess.SQUARES), flipped=st.booleans())
def test_the_centre_of_a_square_is_on_that_square(square, flipped):
    place = fit_board(QSizeF(500, 430), 1.5, PLAIN, flipped=flipped, rim=0.0)
    assert place.square_at(place.centre(square)) == square


def test_beside_the_board_is_no_square():
    place = fit_board(QSizeF(500, 400), 1.0, PLAIN, flipped=False, rim=0.0)
    assert place.square_at(QPointF(2, 200)) is None
    assert place.square_at(QPointF(498, 200)) is None


def test_white_is_below_unless_the_board_is_turned():
    place = fit_board(QSizeF(400, 400), 1.0, PLAIN, flipped=False, rim=0.0)
    turned = fit_board(QSizeF(400, 400), 1.0, PLAIN, flipped=True, rim=0.0)
    assert place.corner(chess.A8) == turned.corner(chess.H1) == QPointF(0, 0)
