"""Every meaning has a look of its own, and no mark hides another."""

from __future__ import annotations

import io
import itertools
import math
from dataclasses import replace

import cairosvg
import chess
import numpy as np
import pytest
from PIL import Image

from studyboard.model.marks import Mark, MarkKind
from studyboard.picture.marks import MARK_STYLES, NUMBER_DISC, ground_marks_scene, mark_drawings, mark_path, marks_scene
from studyboard.picture.primitives import Polyline, Text
from studyboard.picture.scene import board_bounds, squares_scene
from studyboard.picture.svg import scene_svg

SQUARES = {
    MarkKind.THREAT: (chess.B2, chess.F6),
    MarkKind.TARGET: (chess.D4,),
    MarkKind.ROUTE: (chess.B2, chess.F6),
    MarkKind.KEY_SQUARE: (chess.D4,),
    MarkKind.GUARD: (chess.B2, chess.F6),
}


def picture(marks, *, grey=False):
    scene = (*squares_scene(coordinates=False), *ground_marks_scene(marks), *marks_scene(marks))
    svg = scene_svg(scene, board_bounds(coordinates=False), width=800, title="marks", description="")
    image = Image.open(io.BytesIO(cairosvg.svg2png(bytestring=svg.encode())))
    return np.asarray(image.convert("L" if grey else "RGB")).astype(int)


def pixels_of(image, colour):
    wanted = [int(colour[at : at + 2], 16) for at in (1, 3, 5)]
    return (np.abs(image - wanted).max(axis=-1) < 12).sum()


def test_colour_line_and_shape_are_different_for_every_kind():
    assert set(MARK_STYLES) == set(MarkKind)
    for part in ("colour", "dash", "shape"):
        assert len({getattr(style, part) for style in MARK_STYLES.values()}) == len(MarkKind), part


@pytest.mark.parametrize(
    ("one", "other"), list(itertools.combinations((MarkKind.THREAT, MarkKind.ROUTE, MarkKind.GUARD), 2))
)
def test_kinds_on_the_same_squares_differ_without_colour(one, other):
    pictures = [picture([Mark(kind, SQUARES[kind])], grey=True) for kind in (one, other)]
    # A mark's line covers about 4,800 pixels here; a third of that must be clearly lighter or darker.
    assert (np.abs(pictures[0] - pictures[1]) > 60).sum() > 1600


def test_target_and_key_square_differ_without_colour():
    pictures = [picture([Mark(kind, (chess.D4,))], grey=True) for kind in (MarkKind.TARGET, MarkKind.KEY_SQUARE)]
    assert (np.abs(pictures[0] - pictures[1]) > 60).sum() > 1200


@pytest.mark.parametrize(("one", "other"), list(itertools.combinations(MarkKind, 2)))
def test_two_marks_on_the_same_squares_both_stay_visible(one, other):
    alone = [picture([Mark(kind, SQUARES[kind])]) for kind in (one, other)]
    both = picture([Mark(kind, SQUARES[kind]) for kind in (one, other)])
    for kind, image in zip((one, other), alone, strict=True):
        colour = MARK_STYLES[kind].colour
        assert pixels_of(both, colour) > 0.6 * pixels_of(image, colour) > 0, kind


def test_a_threat_and_its_answer_run_side_by_side():
    marks = [Mark(MarkKind.THREAT, (chess.A1, chess.H8)), Mark(MarkKind.THREAT, (chess.H8, chess.A1))]
    lines = [part for part in marks_scene(marks) if isinstance(part, Polyline) and part.stroke.dash]
    (first, second) = (line.points[0][0] + line.points[0][1] for line in lines)
    assert first + second == pytest.approx(16)
    offsets = [line.points[0][0] - (8 - line.points[0][1]) for line in lines]
    assert abs(offsets[0] - offsets[1]) > 0.15


def test_a_mark_given_twice_is_drawn_once():
    threat = Mark(MarkKind.THREAT, (chess.A1, chess.H8))
    assert marks_scene([threat, threat]) == marks_scene([threat])


@pytest.mark.parametrize(
    ("there", "corner"),
    [(chess.F3, chess.G3), (chess.E2, chess.E1), (chess.H3, chess.G3)],
)
def test_a_knights_way_bends_after_its_long_leg(there, corner):
    path = mark_path(Mark(MarkKind.ROUTE, (chess.G1, there)))
    assert path == tuple(
        (chess.square_file(square) + 0.5, 7.5 - chess.square_rank(square)) for square in (chess.G1, corner, there)
    )


def test_other_ways_are_straight():
    assert len(mark_path(Mark(MarkKind.THREAT, (chess.D8, chess.H4)))) == 2


def test_only_key_squares_lie_under_the_pieces():
    marks = [Mark(kind, squares) for kind, squares in SQUARES.items()]
    assert ground_marks_scene(marks) == ground_marks_scene([Mark(MarkKind.KEY_SQUARE, (chess.D4,))])
    assert marks_scene([Mark(MarkKind.KEY_SQUARE, (chess.D4,))]) == ()


def test_a_mark_from_a_square_to_itself_is_still_drawn():
    # Nothing in the model forbids it, and an edited file may hold one.
    for kind in (MarkKind.THREAT, MarkKind.ROUTE, MarkKind.GUARD):
        assert marks_scene([Mark(kind, (chess.E4, chess.E4))])


NUMBERED = [Mark(kind, squares, place) for place, (kind, squares) in enumerate(SQUARES.items(), 1)]


def test_marks_one_by_one_are_those_of_the_whole_picture():
    marks = [replace(Mark(kind, SQUARES[kind]), number=place + 1) for place, kind in enumerate(MarkKind)]
    drawings = mark_drawings(marks)
    assert [one.mark for one in drawings] == marks
    assert tuple(part for one in drawings for part in one.ground) == ground_marks_scene(marks)
    lines, numbers = ([part for one in drawings for part in getattr(one, name)] for name in ("lines", "number"))
    assert (*lines, *numbers) == marks_scene(marks)


def test_a_sequence_shows_its_numbers_over_everything_else():
    texts = [part for part in marks_scene(NUMBERED) if isinstance(part, Text)]
    assert [text.text for text in texts] == ["1", "2", "3", "4", "5"]
    assert not any(isinstance(part, Text) for part in marks_scene([replace(mark, number=None) for mark in NUMBERED]))


def test_numbers_stand_at_the_beginning_of_a_line_and_in_the_corner_of_a_square():
    (at_line,) = [part for part in marks_scene([NUMBERED[0]]) if isinstance(part, Text)]
    assert math.dist((at_line.x, at_line.y), (1.5, 6.5)) < 0.6
    (in_corner,) = [part for part in marks_scene([NUMBERED[1]]) if isinstance(part, Text)]
    assert 3.5 < in_corner.x < 4
    assert 4 < in_corner.y < 4.5


def test_numbers_of_lines_from_one_square_do_not_hide_each_other():
    threats = [
        Mark(MarkKind.THREAT, (chess.D4, to), place) for place, to in enumerate((chess.D8, chess.H8, chess.H4), 1)
    ]
    places = [(part.x, part.y) for part in marks_scene(threats) if isinstance(part, Text)]
    assert all(math.dist(one, other) > 1.7 * NUMBER_DISC for one, other in itertools.combinations(places, 2))


def test_a_number_is_ink_on_paper():
    drawn = picture([NUMBERED[1]], grey=True)[400:500, 300:400][:40, 60:]
    assert drawn.min() < 60
    assert drawn.max() > 240
