"""The board shows what a presenter's viewers must see, from either side."""

from __future__ import annotations

import io

import cairosvg
import chess
import numpy as np
import pytest
from PIL import Image

from studyboard.model.marks import Mark, MarkKind
from studyboard.picture.geometry import centre, corner
from studyboard.picture.marks import ground_marks_scene, marks_scene
from studyboard.picture.palette import board_palette, board_palette_names
from studyboard.picture.primitives import PieceAt, Segments, Text
from studyboard.picture.scene import (
    board_bounds,
    board_scene,
    indication_scene,
    pieces_scene,
    squares_scene,
)
from studyboard.picture.svg import scene_svg

CHECK = chess.Board("r1bqk2r/pppp1Bpp/2n2n2/2b1p3/4P3/5N2/PPPP1PPP/RNBQK2R b KQkq - 0 5")


def texts(scene):
    return {(part.text, part.x, part.y): part for part in scene if isinstance(part, Text)}


def picture(scene, palette):
    svg = scene_svg(scene, board_bounds(coordinates=False, palette=palette), width=400, title="t", description="")
    return np.asarray(Image.open(io.BytesIO(cairosvg.svg2png(bytestring=svg.encode()))).convert("RGB")).astype(int)


@pytest.mark.parametrize("name", board_palette_names())
@pytest.mark.parametrize("flipped", [False, True])
def test_the_last_move_changes_both_its_squares_and_no_other(name, flipped):
    palette = board_palette(name)
    ground = squares_scene(flipped=flipped, coordinates=False, palette=palette)
    move = chess.Move.from_uci("c4f7")
    shown = indication_scene(chess.Board(), flipped=flipped, last_move=move, palette=palette)
    rim = board_bounds(coordinates=False, palette=palette)
    scale = 400 / rim.width
    changed = np.abs(picture((*ground, *shown), palette) - picture(ground, palette)).max(axis=-1) > 40
    for square in chess.SQUARES:
        x, y = corner(square, flipped=flipped)
        left, top = round((x - rim.x) * scale), round((y - rim.y) * scale)
        touched = changed[top + 2 : top + round(scale) - 2, left + 2 : left + round(scale) - 2].sum()
        assert (touched > 60) == (square in (chess.C4, chess.F7)), chess.square_name(square)


def test_the_square_reached_is_told_from_the_square_left_without_colour():
    shown = indication_scene(chess.Board(), last_move=chess.Move.from_uci("e2e4"))
    strokes = [part for part in shown if isinstance(part, Segments)]
    assert [len(part.lines) for part in strokes] == [4, 4, 5, 5]
    assert strokes[3].stroke.width > strokes[1].stroke.width


def test_a_null_move_is_not_indicated():
    assert indication_scene(chess.Board(), last_move=chess.Move.null()) == ()


def test_a_check_is_indicated_around_the_king_that_stands_in_it():
    around = indication_scene(CHECK)
    assert around
    x, y = centre(chess.E8)
    for ring in around:
        points = getattr(ring, "points", ((getattr(ring, "x", x), getattr(ring, "y", y)),))
        assert all(abs(px - x) < 0.5 and abs(py - y) < 0.5 for px, py in points)


def test_a_check_can_be_left_unmarked_and_a_quiet_position_has_none():
    assert indication_scene(CHECK, check=False) == ()
    assert indication_scene(chess.Board()) == ()


def test_a_board_without_kings_can_be_drawn():
    board = chess.Board(None)
    board.set_piece_at(chess.E4, chess.Piece(chess.PAWN, chess.WHITE))
    assert sum(isinstance(part, PieceAt) for part in board_scene(board)) == 1


def test_turning_the_board_turns_every_piece_about_its_centre():
    board = chess.Board()
    upright = {(part.x, part.y, part.piece) for part in pieces_scene(board)}
    turned = {(7 - part.x, 7 - part.y, part.piece) for part in pieces_scene(board, flipped=True)}
    assert upright == turned
    assert len(upright) == 32


def test_a_piece_in_the_hand_leaves_its_square_empty():
    shown = pieces_scene(chess.Board(), without=[chess.E2])
    assert len(shown) == 31
    assert all((part.x, part.y) != corner(chess.E2) for part in shown)


def test_coordinates_turn_with_the_board():
    def rows(scene, names):
        return [part.text for part in sorted(texts(scene).values(), key=lambda t: (t.y, t.x)) if part.text in names]

    assert rows(squares_scene(), chess.RANK_NAMES) == list("87654321")
    assert rows(squares_scene(flipped=True), chess.RANK_NAMES) == list("12345678")
    assert rows(squares_scene(), chess.FILE_NAMES) == list("abcdefgh")
    assert rows(squares_scene(flipped=True), chess.FILE_NAMES) == list("hgfedcba")


def test_coordinates_can_be_left_out():
    assert not texts(squares_scene(coordinates=False))
    assert board_bounds(coordinates=False, palette=board_palette("print")).width < 8.1


@pytest.mark.parametrize("flipped", [False, True])
def test_coordinates_take_the_colour_that_reads_on_their_square(flipped):
    palette = board_palette()
    for part in texts(squares_scene(flipped=flipped, palette=palette)).values():
        light = (int(part.x - 0.001) + int(part.y)) % 2 == 0
        assert part.colour == (palette.coordinate_on_light if light else palette.coordinate_on_dark)


def test_print_puts_coordinates_outside_the_board():
    palette = board_palette("print")
    bounds = board_bounds(palette=palette)
    for part in texts(squares_scene(palette=palette)).values():
        assert part.x < 0 or part.y > 8
        assert bounds.x < part.x < bounds.x + bounds.width
        assert bounds.y < part.y < bounds.y + bounds.height


def test_print_hatches_the_dark_squares_only():
    palette = board_palette("print")
    image = picture(squares_scene(coordinates=False, palette=palette), palette).min(axis=-1)
    bounds = board_bounds(coordinates=False, palette=palette)
    scale = 400 / bounds.width
    for square in chess.SQUARES:
        x, y = centre(square)
        left, top = round((x - bounds.x - 0.3) * scale), round((y - bounds.y - 0.3) * scale)
        inked = (image[top : top + 30, left : left + 30] < 200).any()
        assert inked == bool(chess.BB_DARK_SQUARES & chess.BB_SQUARES[square])


def test_layers_lie_ground_indication_pieces_marks():
    marks = [Mark(MarkKind.THREAT, (chess.A1, chess.H8)), Mark(MarkKind.KEY_SQUARE, (chess.D4,))]
    scene = board_scene(CHECK, marks=marks, last_move=chess.Move.from_uci("c4f7"))
    squares, ground = squares_scene(), ground_marks_scene(marks)
    pieces = pieces_scene(CHECK)
    above = marks_scene(marks)
    assert scene[: len(squares) + len(ground)] == (*squares, *ground)
    assert scene[-len(pieces) - len(above) :] == (*pieces, *above)
    assert len(scene) > len(squares) + len(ground) + len(pieces) + len(above)
