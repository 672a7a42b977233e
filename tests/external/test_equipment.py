"""The drawn pieces against FIDE, Standards of Chess Equipment (2022), 2.3 to 2.5, measured from rendered pictures."""

from __future__ import annotations

import io

import cairosvg
import chess
import numpy as np
import pytest
from PIL import Image

from studyboard.picture.pieces import piece_svg

SIDE = 1000
"""Pixels across one square in the measured pictures."""

# 2.3: heights in cm, each within 10 %, order kept; the base measures 40 to 50 % of the height.
HEIGHTS_CM = {
    chess.KING: 9.5,
    chess.QUEEN: 8.5,
    chess.BISHOP: 7.0,
    chess.KNIGHT: 6.0,
    chess.ROOK: 5.5,
    chess.PAWN: 5.0,
}
SIDES = pytest.mark.parametrize("side", chess.COLORS, ids=["white", "black"])
KINDS = pytest.mark.parametrize("kind", HEIGHTS_CM, ids=chess.piece_name)


def silhouette(kind: chess.PieceType, side: chess.Color) -> np.ndarray:
    """True where the piece covers the square, SIDE × SIDE."""
    svg = piece_svg(chess.Piece(kind, side)).encode()
    png = cairosvg.svg2png(bytestring=svg, output_width=SIDE, output_height=SIDE)
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGBA"))[..., 3] > 127


def height(drawn: np.ndarray) -> int:
    rows = np.flatnonzero(drawn.any(axis=1))
    return int(rows[-1] - rows[0] + 1)


def base_width(drawn: np.ndarray) -> int:
    """Widest row of the lowest tenth of the piece."""
    rows = np.flatnonzero(drawn.any(axis=1))
    foot = drawn[rows[-1] - height(drawn) // 10 : rows[-1] + 1]
    columns = np.flatnonzero(foot.any(axis=0))
    return int(columns[-1] - columns[0] + 1)


@SIDES
@KINDS
def test_heights_stand_to_the_king_as_in_the_standard(kind, side):
    king = height(silhouette(chess.KING, side))
    drawn_cm = 9.5 * height(silhouette(kind, side)) / king
    assert drawn_cm == pytest.approx(HEIGHTS_CM[kind], rel=0.10)


@SIDES
def test_the_order_of_heights_is_kept(side):
    heights = [height(silhouette(kind, side)) for kind in HEIGHTS_CM]
    assert heights == sorted(heights, reverse=True)
    assert len(set(heights)) == 6


@SIDES
@KINDS
def test_the_base_is_40_to_50_percent_of_the_height(kind, side):
    drawn = silhouette(kind, side)
    assert 0.40 <= base_width(drawn) / height(drawn) <= 0.50


@SIDES
def test_the_tops_of_king_and_queen_are_clearly_distinct(side):
    # 2.4: told apart here by their outlines alone, tops laid on each other.
    tops = []
    for kind in (chess.KING, chess.QUEEN):
        drawn = silhouette(kind, side)
        first = int(np.flatnonzero(drawn.any(axis=1))[0])
        tops.append(drawn[first : first + height(drawn) // 5])
    rows = min(len(top) for top in tops)
    king, queen = (top[:rows] for top in tops)
    assert np.logical_xor(king, queen).sum() / np.logical_or(king, queen).sum() > 0.4


@KINDS
def test_both_sides_have_the_same_shapes(kind):
    assert np.array_equal(silhouette(kind, chess.WHITE), silhouette(kind, chess.BLACK))
