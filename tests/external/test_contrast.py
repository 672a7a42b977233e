"""Colours of boards, marks and windows against WCAG 2.2: 1.4.3 (text 4.5:1) and 1.4.11 (drawn parts 3:1)."""

from __future__ import annotations

import pytest

from studyboard.board.on_demand import Aspect
from studyboard.model.marks import MarkKind
from studyboard.picture.answers import ANSWER_STYLES
from studyboard.picture.marks import INK, MARK_STYLES, PAPER
from studyboard.picture.palette import (
    blend,
    board_palette,
    board_palette_names,
    contrast_ratio,
    strong,
    theme,
    theme_names,
)

TEXT = 4.5
DRAWN = 3.0

# M. Okabe and K. Ito, Color Universal Design (2008).
OKABE_ITO = {"#000000", "#E69F00", "#56B4E9", "#009E73", "#F0E442", "#0072B2", "#D55E00", "#CC79A7"}

BOARDS = pytest.mark.parametrize(
    "palette", [board_palette(name) for name in board_palette_names()], ids=lambda p: p.name
)
THEMES = pytest.mark.parametrize("look", [theme(name) for name in theme_names()], ids=lambda t: t.name)
KINDS = pytest.mark.parametrize("kind", list(MarkKind))

SURFACES = ("paper", "surface")
TEXT_ON = {
    "ink": (*SURFACES, "accent_soft", "selection", "side_line_soft", "over_soft", "query_soft", "think_soft", "track"),
    "ink_quiet": (*SURFACES, "accent_soft", "side_line_soft"),
    "accent": (*SURFACES, "accent_soft"),
    "on_accent": ("accent",),
    "over": (*SURFACES, "over_soft"),
    "query": (*SURFACES, "query_soft"),
    "think": ("think_soft",),
    "recording": SURFACES,
    "side_line": SURFACES,
}
DRAWN_ON = {
    "rail": (*SURFACES, "accent_soft"),
    "accent": (*SURFACES, "track", "accent_soft"),
    "over": (*SURFACES, "track"),
    "query": SURFACES,
    "spelling": SURFACES,
    "side_line": (*SURFACES, "side_line_soft"),
    "focus": (*SURFACES, "accent_soft"),
    "recording": SURFACES,
    "wave": SURFACES,
}


def test_the_formula_gives_the_published_values():
    # W3C: black on white is 21:1; #767676 on white is 4.54:1, the lightest grey that passes for text.
    assert contrast_ratio("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast_ratio("#767676", "#FFFFFF") == pytest.approx(4.54, abs=0.005)
    assert contrast_ratio("#777777", "#FFFFFF") < TEXT


@THEMES
@pytest.mark.parametrize(("token", "ground"), [(token, on) for token, grounds in TEXT_ON.items() for on in grounds])
def test_text_of_the_windows(look, token, ground):
    assert contrast_ratio(getattr(look, token), getattr(look, ground)) >= TEXT


@THEMES
@pytest.mark.parametrize(("token", "ground"), [(token, on) for token, grounds in DRAWN_ON.items() for on in grounds])
def test_drawn_parts_of_the_windows(look, token, ground):
    assert contrast_ratio(getattr(look, token), getattr(look, ground)) >= DRAWN


@THEMES
def test_more_contrast_is_seven_to_one_for_every_ink(look):
    # WCAG 2.2, 1.4.6 (enhanced contrast).
    more = strong(look)
    for ground in SURFACES:
        assert contrast_ratio(more.ink, getattr(more, ground)) >= 7.0
        assert contrast_ratio(more.ink_quiet, getattr(more, ground)) >= 7.0
        for line in ("rule", "rail"):
            assert contrast_ratio(getattr(more, line), getattr(more, ground)) >= TEXT
    assert contrast_ratio(look.rule, look.paper) < contrast_ratio(more.rule, more.paper)


@BOARDS
def test_coordinates_can_be_read(palette):
    assert contrast_ratio(palette.coordinate_on_light, palette.light) >= TEXT
    assert contrast_ratio(palette.coordinate_on_dark, palette.dark) >= TEXT


@BOARDS
@pytest.mark.parametrize("token", ["last_move", "check"])
def test_indications_stand_out_from_both_kinds_of_square(palette, token):
    for square in (palette.light, palette.dark):
        assert contrast_ratio(getattr(palette, token), square) >= DRAWN


@BOARDS
def test_hatching_stands_out_from_the_paper(palette):
    if palette.hatch:
        assert contrast_ratio(palette.hatch, palette.light) >= DRAWN


def test_the_high_contrast_board_tells_its_squares_apart():
    slate = board_palette("slate")
    assert contrast_ratio(slate.light, slate.dark) >= DRAWN


@KINDS
def test_marks_have_okabe_ito_colours_that_stand_out_from_their_casing(kind):
    # The casing runs along both sides of every line of a mark, so this contrast holds on every square and piece.
    style = MARK_STYLES[kind]
    assert style.colour in OKABE_ITO
    assert contrast_ratio(style.colour, style.casing) >= DRAWN


@BOARDS
def test_coordinates_can_be_read_on_a_key_square(palette):
    tint = MARK_STYLES[MarkKind.KEY_SQUARE].colour
    for text, square in ((palette.coordinate_on_light, palette.light), (palette.coordinate_on_dark, palette.dark)):
        assert contrast_ratio(text, blend(tint, square, 0.3)) >= DRAWN


@pytest.mark.parametrize("aspect", list(Aspect))
def test_answers_on_the_board_stand_out_from_their_paper_casing(aspect: Aspect) -> None:
    assert contrast_ratio(ANSWER_STYLES[aspect].colour, PAPER) >= DRAWN


def test_numbers_of_a_sequence_are_readable_on_their_disc() -> None:
    assert contrast_ratio(INK, PAPER) >= TEXT
