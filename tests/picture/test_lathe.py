"""The pieces come off the lathe as their description says."""

from __future__ import annotations

import tomllib

import pytest

from studyboard.picture.lathe import ShapeError, between, path_data, piece_files, shape_of, steps_of, write_set
from studyboard.resources_path import resource

SET = resource("pieces", "study")


@pytest.fixture
def described():
    return tomllib.loads((SET / "shapes.toml").read_text(encoding="utf-8"))


def test_the_files_of_the_set_are_what_its_description_gives(described):
    files = piece_files(described)
    assert sorted(files) == sorted(colour + piece + ".svg" for colour in "wb" for piece in "KQRBNP")
    for name, text in files.items():
        assert (SET / name).read_text(encoding="utf-8") == text, name


def test_a_set_is_written_beside_its_description(tmp_path):
    (tmp_path / "shapes.toml").write_bytes((SET / "shapes.toml").read_bytes())
    assert len(write_set(tmp_path)) == 12
    assert (tmp_path / "wN.svg").read_text(encoding="utf-8") == (SET / "wN.svg").read_text(encoding="utf-8")


def test_a_turned_outline_is_mirrored_about_the_axis():
    profile = steps_of("M 0 10 L 4 10 C 5 8 5 2 4 0 L 0 0")
    assert path_data(between(profile, -1.0, 1.0), 100) == (
        "M50 90 L54 90 C55 92 55 98 54 100 L50 100 L46 100 C45 98 45 92 46 90 L50 90 Z"
    )


def test_a_band_lies_between_two_shares_of_the_radius():
    profile = steps_of("M 2 10 L 4 0")
    assert path_data(between(profile, 0.5, 1.0), 10) == "M52 0 L54 10 L52 10 L51 0 Z"


@pytest.mark.parametrize("outline", ["M 1 2 Q 3 4 5 6", "M 1 2 L 3", "C 1 2 3 4 5"])
def test_an_outline_that_cannot_be_drawn_is_refused(outline):
    with pytest.raises(ShapeError, match="outline"):
        steps_of(outline)


def test_a_set_without_a_queen_says_so(described):
    del described["queen"]
    with pytest.raises(ShapeError, match="queen"):
        shape_of("queen", described)
