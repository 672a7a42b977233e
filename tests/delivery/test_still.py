"""The title picture as somebody sees it who has to be won over by it."""

from __future__ import annotations

import io
import subprocess
import sys
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from PIL import Image

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.still import painted_still, still_pictures
from studyboard.delivery.still_options import StillDesign, StillOptions, StillShape
from studyboard.model.edits import ChangeHeaders, ChangeLanguage, apply
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.picture.palette import theme_names

DESIGNS = pytest.mark.parametrize("design", list(StillDesign))
SHAPES = pytest.mark.parametrize("shape", [StillShape.WIDE, StillShape.TALL])

#: Places where a line may end, and spaces where it may not.
UNSEEN = {0x200B: None, 0xAD: None, 0xA0: " "}

WITHOUT_CAIRO = """
import ctypes.util, cffi
ctypes.util.find_library = lambda name: None

class Missing(cffi.FFI):
    def dlopen(self, *names):
        raise OSError("cannot load library")

cffi.FFI = Missing
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.still import still_pictures
from studyboard.model.study import Study
try:
    still_pictures(Study())
except DeliveryError as reason:
    print(reason)
"""


def painted(study, design, shape, *, worded=True, **options):
    return painted_still(study, Positions(study), StillOptions(design=design, **options), shape, worded=worded)


def pixels(canvas) -> np.ndarray:
    """Rows of red, green and blue, 0 to 255."""
    rows = np.frombuffer(canvas.bgra(), np.uint8).reshape(canvas.height, -1)[:, : 4 * canvas.width]
    return rows.reshape(canvas.height, canvas.width, 4)[:, :, 2::-1].astype(float)


def luminance(rgb: np.ndarray) -> np.ndarray:
    """WCAG 2.2, definition of relative luminance."""
    share = rgb / 255.0
    linear = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    return linear @ np.array([0.2126, 0.7152, 0.0722])


def texts(still) -> dict[str, str]:
    return {one.role: one.text.lettering.text.translate(UNSEEN) for one in still.placed}


@DESIGNS
def test_wide_and_tall_have_the_sizes_that_were_asked_for(author, design):
    wide, tall = still_pictures(author.study, options=StillOptions(design=design, shape=StillShape.BOTH))
    assert Image.open(io.BytesIO(wide.png)).size == (1280, 720)
    assert Image.open(io.BytesIO(tall.png)).size == (1080, 1920)
    assert len(Image.open(io.BytesIO(wide.png)).convert("RGB").getcolors(1280 * 720) or []) > 50


@DESIGNS
@SHAPES
@pytest.mark.parametrize("theme", theme_names())
def test_every_text_is_legible_over_what_is_behind_it(author, design, shape, theme):
    """WCAG 2.2, 1.4.3: 4.5:1, against every pixel that lies behind the text, as it was painted."""
    options = {"theme": theme, "result": True, "at": "7... Nf3#"}
    still = painted(author.study, design, shape, **options)
    behind = luminance(pixels(painted(author.study, design, shape, worded=False, **options).canvas))
    assert {one.role for one in still.placed} == {"headline", "call", "white", "black", "occasion", "result"}
    for one in still.placed:
        colour = one.text.lettering.colour
        ink = float(luminance(np.array([int(colour[at : at + 2], 16) for at in (1, 3, 5)], float)))
        ground = behind[one.y : one.y + one.text.height, one.x : one.x + one.text.width]
        ratio = (np.maximum(ground, ink) + 0.05) / (np.minimum(ground, ink) + 0.05)
        assert ratio.min() >= 4.5, (one.role, ratio.min())


@DESIGNS
@SHAPES
def test_texts_do_not_touch_each_other_or_the_edge(author, design, shape):
    still = painted(author.study, design, shape, result=True, at="3... Nd4")
    boxes = [(one.x, one.y, one.x + one.text.width, one.y + one.text.height) for one in still.placed]
    for left, top, right, bottom in boxes:
        assert left >= 24
        assert top >= 24
        assert right <= still.canvas.width - 24
        assert bottom <= still.canvas.height - 4
    for number, (left, top, right, bottom) in enumerate(boxes):
        for other_left, other_top, other_right, other_bottom in boxes[:number]:
            assert right <= other_left or other_right <= left or bottom <= other_top or other_bottom <= top


def long_words():
    letters = st.characters(min_codepoint=32, max_codepoint=0x5FF, exclude_categories=("Cc", "Cs", "Cn"))
    return st.text(letters, min_size=1, max_size=300)


@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(headline=long_words(), name=long_words(), design=st.sampled_from(StillDesign), shape=st.sampled_from(list("wt")))
@example("W" * 300, "W" * 120, StillDesign.CORNER, "w")
@example("Donaudampfschifffahrtsgesellschaftskapitän", "Ürgüplü-Öztürkoğlu, Şükrü", StillDesign.BAND, "t")
@example("Ян Ковач против всех", "Ковач, Ян", StillDesign.PAGE, "w")
@example("שלום לכולם", "Παπαδόπουλος", StillDesign.PAGE, "t")
@example("棋" * 60, "漢字", StillDesign.CORNER, "w")
def test_whatever_is_written_shrinks_and_breaks_and_is_never_cut_by_an_edge(author, headline, name, design, shape):
    apply(author.study, ChangeHeaders((("White", name), ("Black", name), ("Event", name), ("Date", "2026.02.17"))))
    kind = StillShape.WIDE if shape == "w" else StillShape.TALL
    still = painted(author.study, design, kind, headline=headline)
    for one in still.placed:
        assert one.y >= 0
        assert one.y + one.text.height <= still.canvas.height
        assert one.x + one.text.width <= still.canvas.width
        # The picture of a text ends where its room does: ink at its very edge would have been cut off.
        picture = still.canvas.letterer.picture(one.text.lettering)
        alpha = np.frombuffer(picture.get_data(), np.uint8).reshape(picture.get_height(), -1)[:, 3::4]
        assert not (alpha[:, : picture.get_width()][:, -1] > 128).sum() > picture.get_height() * 0.5
    cut = [one for one in still.placed if one.text.shortened]
    assert all(one.text.lettering.text.endswith("…") for one in cut)
    assert bool(cut) == still.shortened


@DESIGNS
@SHAPES
@pytest.mark.parametrize("headline", ["Größe", "The knight that took the long way round", "W" * 30, "Ein Wort " * 12])
def test_a_headline_of_usual_length_is_shown_whole(author, design, shape, headline):
    still = painted(author.study, design, shape, headline=headline)
    assert texts(still)["headline"] == " ".join(headline.split())
    assert not still.shortened


@DESIGNS
@SHAPES
def test_long_names_are_shown_whole(author, design, shape):
    white, black = "Hohenstaufen-Wittelsbach, Bartholomäus von", "Ramanathapuram Venkataraghavan Subramaniam"
    apply(author.study, ChangeHeaders((("White", white), ("Black", black))))
    still = painted(author.study, design, shape)
    assert texts(still)["white"] == "Bartholomäus von Hohenstaufen-Wittelsbach"
    assert texts(still)["black"] == black
    assert not still.shortened


def test_the_players_the_occasion_and_whose_move_it_is_are_on_it(author):
    still = painted(author.study, StillDesign.PAGE, StillShape.WIDE)
    assert texts(still) == {
        "headline": "Harbour Club Winter Evening",
        "call": "White to move",
        "white": "Maja Halvorse",
        "black": "Ade Nduka",
        "occasion": "Round 3  ·  Harbour Club  ·  17 January 2024",
    }


@DESIGNS
@SHAPES
def test_the_result_is_not_given_away_unless_asked(author, design, shape):
    assert "result" not in texts(painted(author.study, design, shape))
    assert not any("0–1" in text for text in texts(painted(author.study, design, shape)).values())
    assert texts(painted(author.study, design, shape, result=True))["result"] == "0–1"


def test_without_an_event_the_players_are_the_headline_and_without_them_there_is_still_a_picture(author):
    apply(author.study, ChangeHeaders((("White", "Halvorse, Maja"), ("Black", "Nduka, Ade"), ("Event", "?"))))
    assert texts(painted(author.study, StillDesign.PAGE, StillShape.WIDE))["headline"] == "Halvorse – Nduka"
    assert texts(painted(Study(), StillDesign.PAGE, StillShape.WIDE)) == {"headline": "Study", "call": "White to move"}


@DESIGNS
def test_the_marks_of_the_position_are_on_it(author, design):
    options = StillOptions(design=design, at="4... Qg5")
    marked = still_pictures(author.study, options=options)[0].png
    node = next(node for node in author.study.nodes.values() if node.marks and author.study.on_main_line(node.id))
    author.put(node.id, marks=())
    assert still_pictures(author.study, options=options)[0].png != marked


def test_the_board_can_be_seen_from_the_other_side_and_the_same_study_gives_the_same_bytes(author):
    options = StillOptions()
    once, again = (still_pictures(author.study, options=options)[0].png for _ in range(2))
    assert once == again
    assert still_pictures(author.study, options=replace(options, flipped=True))[0].png != once


def test_a_move_that_is_not_there_is_named(author):
    with pytest.raises(DeliveryError, match="No move “Qh8” is in the study"):
        still_pictures(author.study, options=StillOptions(at="Qh8"))


def test_without_cairo_the_missing_package_is_named():
    """The loader of the library is taken away in a process of its own; everything else there is real."""
    run = subprocess.run([sys.executable, "-c", WITHOUT_CAIRO], capture_output=True, text=True, check=False)
    assert "libcairo2" in run.stdout, run.stderr
    assert "Traceback" not in run.stderr


def test_a_still_speaks_the_language_of_the_script(author):
    apply(author.study, ChangeLanguage("de"))
    still = texts(painted(author.study, StillDesign.PAGE, StillShape.WIDE))
    assert still["call"] == "Weiß am Zug"
    assert still["occasion"] == "Runde 3  ·  Harbour Club  ·  17. Januar 2024"
