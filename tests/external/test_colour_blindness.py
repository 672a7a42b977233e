"""Marks as colour-blind viewers see them.

Matrices for the full deficiency: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A physiologically-based model for
simulation of color vision deficiency", IEEE TVCG 15(6), 2009 (severity 1.0, from memory; each of their rows must keep
grey grey, which is checked below), applied to linear light. Differences are those of CIE 1976 L*a*b*.
"""

from __future__ import annotations

import io
from itertools import combinations

import cairosvg
import chess
import numpy as np
import pytest
from PIL import Image

from studyboard.model.marks import Mark, MarkKind
from studyboard.picture.marks import MARK_STYLES
from studyboard.picture.palette import board_palette, board_palette_names
from studyboard.picture.svg import board_svg

DEFICIENCIES = {
    "protanopia": [
        [0.152286, 1.052583, -0.204868],
        [0.114503, 0.786281, 0.099216],
        [-0.003882, -0.048116, 1.051998],
    ],
    "deuteranopia": [
        [0.367322, 0.860646, -0.227968],
        [0.280085, 0.672501, 0.047413],
        [-0.011820, 0.042940, 0.968881],
    ],
    "tritanopia": [
        [1.255528, -0.076749, -0.178779],
        [-0.078411, 0.930809, 0.147602],
        [0.004733, 0.691367, 0.303900],
    ],
}
SEES = pytest.mark.parametrize("deficiency", DEFICIENCIES)
#: One mark of each kind, all between the same two squares where they have two.
MARKS = {
    kind: Mark(kind, (chess.D4,) if kind in (MarkKind.TARGET, MarkKind.KEY_SQUARE) else (chess.D2, chess.D4))
    for kind in MarkKind
}
#: A difference that is seen at a glance (CIE 1976; just noticeable is about 2.3, common practice).
CLEAR = 10.0
#: Side of a square in the pictures (px).
SQUARE = 60


def linear(rgb):
    values = np.asarray(rgb, dtype=float) / 255.0
    return np.where(values <= 0.04045, values / 12.92, ((values + 0.055) / 1.055) ** 2.4)


def seen(rgb, deficiency):
    """Linear light as somebody with this deficiency sees it."""
    return np.clip(linear(rgb) @ np.array(DEFICIENCIES[deficiency]).T, 0.0, 1.0)


def lab(light):
    """L*a*b* of linear sRGB light (D65, IEC 61966-2-1)."""
    to_xyz = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
    xyz = light @ to_xyz.T / np.array([0.9505, 1.0, 1.089])
    f = np.where(xyz > 0.008856, np.cbrt(xyz), 7.787 * xyz + 16 / 116)
    return np.stack([116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])], axis=-1)


def hex_rgb(colour):
    return [int(colour[at : at + 2], 16) for at in (1, 3, 5)]


def picture(palette, *marks):
    board = chess.Board(None)
    svg = board_svg(board, marks=marks, palette=palette, coordinates=False)
    return np.asarray(Image.open(io.BytesIO(cairosvg.svg2png(svg.encode(), output_width=8 * SQUARE))).convert("RGB"))


@SEES
def test_the_matrices_leave_grey_as_it_is(deficiency):
    assert np.array(DEFICIENCIES[deficiency]).sum(axis=1) == pytest.approx([1, 1, 1], abs=1e-5)


@SEES
@pytest.mark.parametrize("palette", [board_palette(name) for name in board_palette_names()], ids=lambda p: p.name)
@pytest.mark.parametrize("kind", MarkKind)
def test_every_mark_is_seen_on_every_board(deficiency, palette, kind):
    without, with_it = (lab(seen(picture(palette, *marks), deficiency)) for marks in ((), (MARKS[kind],)))
    difference = np.linalg.norm(with_it - without, axis=-1)
    # What stands out clearly from what lies under it covers an eighth of a square at least.
    assert (difference > CLEAR).sum() > SQUARE**2 / 8


@SEES
@pytest.mark.parametrize("pair", list(combinations(MarkKind, 2)), ids=lambda pair: f"{pair[0]}-{pair[1]}")
def test_two_kinds_are_told_apart_by_more_than_their_colour(deficiency, pair):
    """Drawn at the same place they differ clearly over most of what they cover, whatever colours are seen."""
    palette = board_palette("mist")
    one, other = (lab(seen(picture(palette, MARKS[kind]), deficiency)) for kind in pair)
    empty = lab(seen(picture(palette), deficiency))
    # Lightness alone, as on a grey printer: what is left is the shape.
    shapes = [np.abs(drawn[..., 0] - empty[..., 0]) > 5.0 for drawn in (one, other)]
    covered = shapes[0] | shapes[1]
    assert covered.sum() > 400
    assert (shapes[0] ^ shapes[1])[covered].mean() > 0.25


@SEES
def test_colours_that_collapse_belong_to_marks_of_other_shapes(deficiency):
    styles = {kind: lab(seen(hex_rgb(style.colour), deficiency)) for kind, style in MARK_STYLES.items()}
    for one, other in combinations(MARK_STYLES, 2):
        if np.linalg.norm(styles[one] - styles[other]) < CLEAR:
            assert MARK_STYLES[one].shape != MARK_STYLES[other].shape
            assert MARK_STYLES[one].dash != MARK_STYLES[other].dash
