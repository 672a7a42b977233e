"""Palettes are read whole or refused with a sentence."""

from __future__ import annotations

import pytest

from studyboard.picture import palette as palettes
from studyboard.picture.palette import (
    PaletteError,
    blend,
    board_palette,
    board_palette_names,
    contrast_ratio,
    relative_luminance,
    theme,
    theme_names,
)


def test_the_everyday_board_comes_first_and_print_last():
    names = board_palette_names()
    assert names[0] == board_palette().name == "mist"
    assert names[-1] == "print"
    assert len(names) == 4


def test_only_print_is_hatched():
    assert [name for name in board_palette_names() if board_palette(name).hatch] == ["print"]
    assert board_palette("print").light == board_palette("print").dark == "#FFFFFF"


def test_there_is_a_light_and_a_dark_theme():
    assert theme_names() == ("light", "dark")
    assert relative_luminance(theme("light").paper) > 0.8
    assert relative_luminance(theme("dark").paper) < 0.05


def test_what_is_not_there_is_named_with_what_is():
    with pytest.raises(PaletteError, match=r"'marble'.*mist"):
        board_palette("marble")
    with pytest.raises(PaletteError, match=r"'dusk'.*light, dark"):
        theme("dusk")
    with pytest.raises(PaletteError, match="'themes'"):
        board_palette("themes")


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        ('light = "#FFFFFF"', "not complete"),
        ('light = "white"', "light = 'white'"),
        ('colour_of_luck = "#FFFFFF"', "colour_of_luck"),
    ],
)
def test_a_palette_that_cannot_be_used_says_why(tmp_path, monkeypatch, text, complaint):
    (tmp_path / "odd.toml").write_text(text, encoding="utf-8")
    monkeypatch.setattr(palettes, "resource", lambda *parts: tmp_path.joinpath(*parts[1:]))
    monkeypatch.setattr(palettes, "board_palette_names", lambda: ("odd",))
    with pytest.raises(PaletteError, match=complaint):
        board_palette.__wrapped__("odd")


def test_contrast_does_not_depend_on_the_order():
    assert contrast_ratio("#123456", "#FEDCBA") == contrast_ratio("#FEDCBA", "#123456")


def test_something_that_is_no_colour_is_refused():
    with pytest.raises(PaletteError, match="'grey'"):
        contrast_ratio("grey", "#FFFFFF")


def test_a_colour_laid_half_over_another_is_half_way_between():
    assert blend("#FFFFFF", "#000000", 0.5) == "#808080"
    assert blend("#E69F00", "#FFFFFF", 0.0) == "#FFFFFF"
