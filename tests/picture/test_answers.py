"""Every aspect of an answer is told from the others without its colour, and frames of one square do not meet."""

from __future__ import annotations

import io
import itertools

import cairosvg
import chess
import numpy as np
import pytest
from PIL import Image

from studyboard.board.on_demand import Answer, Aspect
from studyboard.picture.answers import ANSWER_STYLES, answers_scene
from studyboard.picture.palette import board_palette, board_palette_names
from studyboard.picture.scene import board_bounds, squares_scene
from studyboard.picture.svg import scene_svg


def answer(aspect: Aspect) -> Answer:
    lines = ((chess.D4, chess.D5),) if aspect is Aspect.OPENED else ()
    return Answer(aspect, "words", (chess.D4,), lines)


def picture(*aspects: Aspect, palette: str = "mist") -> np.ndarray:
    squares = squares_scene(coordinates=False, palette=board_palette(palette))
    scene = (*squares, *answers_scene(answer(aspect) for aspect in aspects))
    svg = scene_svg(scene, board_bounds(coordinates=False), width=800, title="answers", description="")
    image = Image.open(io.BytesIO(cairosvg.svg2png(bytestring=svg.encode())))
    return np.asarray(image.convert("L")).astype(int)[300:500, 300:400]


@pytest.mark.parametrize(("one", "other"), list(itertools.combinations(Aspect, 2)))
def test_two_aspects_differ_without_colour(one: Aspect, other: Aspect) -> None:
    # A frame's line covers about 1,900 of the square's 10,000 pixels.
    assert (np.abs(picture(one) - picture(other)) > 60).sum() > 120


def test_looks_in_words_are_all_different() -> None:
    assert set(ANSWER_STYLES) == set(Aspect)
    assert len({style.look for style in ANSWER_STYLES.values()}) == len(Aspect)


@pytest.mark.parametrize("palette", board_palette_names())
@pytest.mark.parametrize("aspect", list(Aspect))
def test_each_is_seen_on_every_board(aspect: Aspect, palette: str) -> None:
    bare, drawn = picture(palette=palette), picture(aspect, palette=palette)
    assert (np.abs(bare - drawn) > 50).sum() > 120


def test_a_piece_that_is_attacked_and_attacks_back_shows_both() -> None:
    both = picture(Aspect.ATTACKS, Aspect.ATTACKED_BY)
    for alone in (Aspect.ATTACKS, Aspect.ATTACKED_BY):
        ink = picture(alone) < 130
        assert (both[ink] < 130).mean() > 0.9


def test_a_turned_board_turns_the_answers() -> None:
    assert answers_scene([answer(Aspect.ATTACKS)]) != answers_scene([answer(Aspect.ATTACKS)], flipped=True)
