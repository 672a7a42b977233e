"""Marks on a printer without colours."""

from __future__ import annotations

import io
import re
from itertools import combinations

import cairosvg
import chess
import numpy as np
import pytest
from PIL import Image

from studyboard.model.marks import Mark, MarkKind
from studyboard.picture.grey import GREY_MARKS, grey, grey_svg
from studyboard.picture.palette import PRINT_BOARD, board_palette, contrast_ratio
from studyboard.picture.svg import board_svg

#: One mark of each kind, all between the same two squares where they have two.
MARKS = {
    kind: Mark(kind, (chess.D4,) if kind in (MarkKind.TARGET, MarkKind.KEY_SQUARE) else (chess.D2, chess.D4))
    for kind in MarkKind
}
SQUARE = 40


def drawn(*marks: Mark) -> np.ndarray:
    """The empty board as it is printed, with these marks: lightness of each pixel, 0 to 255."""
    svg = board_svg(chess.Board(None), marks=marks, palette=board_palette(PRINT_BOARD), coordinates=False)
    picture = cairosvg.svg2png(bytestring=grey_svg(svg).encode(), output_width=8 * SQUARE)
    pixels = np.asarray(Image.open(io.BytesIO(picture)).convert("RGB")).astype(int)
    assert (pixels.max(axis=2) == pixels.min(axis=2)).all(), "there is colour in it"
    return pixels[:, :, 0]


def test_every_colour_of_a_picture_becomes_a_grey():
    svg = board_svg(chess.Board(), marks=MARKS.values(), palette=board_palette(PRINT_BOARD))
    assert any(len(set(re.findall("..", colour))) > 1 for colour in re.findall(r"#([0-9A-Fa-f]{6})", svg))
    for colour in re.findall(r"#([0-9A-Fa-f]{6})", grey_svg(svg)):
        assert len(set(re.findall("..", colour.upper()))) == 1


@pytest.mark.parametrize(("colour", "same"), [("#000000", "#000000"), ("#FFFFFF", "#FFFFFF"), ("#777777", "#777777")])
def test_greys_stay_what_they_are(colour, same):
    assert grey(colour) == same


@pytest.mark.parametrize("kind", list(MarkKind))
def test_the_greys_of_marks_stand_out_on_paper_as_text_does(kind):
    # WCAG 2.2, 1.4.3
    assert contrast_ratio(GREY_MARKS[kind], "#FFFFFF") >= 4.5


@pytest.mark.parametrize("kind", list(MarkKind))
def test_every_mark_is_seen_in_grey(kind):
    assert (np.abs(drawn(MARKS[kind]) - drawn()) > 60).sum() > 0.04 * SQUARE**2


@pytest.mark.parametrize(("one", "other"), list(combinations(MarkKind, 2)))
def test_marks_of_two_meanings_differ_in_grey_by_their_lines_and_shapes(one, other):
    """Both are drawn in the same black, so that only line and shape are left to tell them apart."""

    def ink(kind: MarkKind) -> np.ndarray:
        return np.abs(drawn(MARKS[kind]) - drawn()) > 60

    first, second = ink(one), ink(other)
    assert (first ^ second).sum() > 0.35 * min(first.sum(), second.sum())
