"""Each piece can be told from every other one at any size, in colour and in grey, whatever draws it."""

from __future__ import annotations

import io
import itertools
import tomllib
import xml.etree.ElementTree as ElementTree

import cairosvg
import chess
import numpy as np
import pytest
from PIL import Image

from studyboard.picture.lathe import piece_files
from studyboard.picture.palette import board_palette, board_palette_names, relative_luminance
from studyboard.picture.pieces import PIECE_SETS, piece_code, piece_fragment, piece_svg
from studyboard.resources_path import resource

PIECES = [chess.Piece(kind, side) for side in chess.COLORS for kind in chess.PIECE_TYPES]
SETS = [name for name, _ in PIECE_SETS]
EACH_SET = pytest.mark.parametrize("piece_set", SETS)
EACH = pytest.mark.parametrize(
    ("piece", "piece_set"),
    [(piece, name) for name in SETS for piece in PIECES],
    ids=[f"{name}-{piece_code(piece)}" for name in SETS for piece in PIECES],
)


def rendered(piece, side, piece_set, ground="#FFFFFF"):
    """RGB values of the piece on a square, side × side × 3, 0 to 255."""
    png = cairosvg.svg2png(
        bytestring=piece_svg(piece, piece_set).encode(), output_width=side, output_height=side, background_color=ground
    )
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB")).astype(float)


def covered(piece, side, piece_set):
    png = cairosvg.svg2png(bytestring=piece_svg(piece, piece_set).encode(), output_width=side, output_height=side)
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGBA"))[..., 3] / 255.0


@EACH_SET
@pytest.mark.parametrize("side", chess.COLORS, ids=["white", "black"])
def test_every_two_pieces_of_a_side_differ_at_20_px(side, piece_set):
    # A pawn covers about 40 of the 400 pixels, a king 100; two pieces must differ by the worth of 12 whole pixels.
    shapes = {kind: covered(chess.Piece(kind, side), 20, piece_set) for kind in chess.PIECE_TYPES}
    for one, other in itertools.combinations(shapes, 2):
        assert np.abs(shapes[one] - shapes[other]).sum() > 12, (one, other)


@EACH_SET
@pytest.mark.parametrize("kind", chess.PIECE_TYPES, ids=chess.piece_name)
@pytest.mark.parametrize("size", [20, 64, 200])
def test_white_and_black_are_told_apart_in_grey(kind, size, piece_set):
    greys = []
    for side in chess.COLORS:
        inside = covered(chess.Piece(kind, side), size, piece_set) > 0.9
        grey = rendered(chess.Piece(kind, side), size, piece_set) @ np.array([0.299, 0.587, 0.114])
        greys.append(grey[inside].mean())
    white, black = greys
    assert white - black > 70


@EACH
@pytest.mark.parametrize("name", [name for name in board_palette_names() if name != "print"])
def test_the_outline_stands_out_from_every_square(piece, piece_set, name):
    outline = ElementTree.fromstring(piece_svg(piece, piece_set)).find("{http://www.w3.org/2000/svg}g").get("stroke")
    for square in (board_palette(name).light, board_palette(name).dark):
        ratio = (relative_luminance(square) + 0.05) / (relative_luminance(outline) + 0.05)
        assert ratio >= 3  # WCAG 2.2, 1.4.11


@EACH
def test_the_file_keeps_to_plain_paths(piece, piece_set):
    # SVG Tiny 1.2, as Qt reads it, has no style sheets, filters, clips or masks.
    root = ElementTree.fromstring(piece_svg(piece, piece_set))
    assert {element.tag.split("}")[1] for element in root.iter()} <= {"svg", "title", "g", "path"}
    assert root.get("viewBox") == "0 0 100 100"
    assert not any({"style", "class", "id"} & set(element.keys()) for element in root.iter())


@EACH
def test_qt_and_cairo_draw_the_same_piece(piece, piece_set, monkeypatch):
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    svg = pytest.importorskip("PySide6.QtSvg", exc_type=ImportError)
    gui = pytest.importorskip("PySide6.QtGui", exc_type=ImportError)
    side = 128
    image = gui.QImage(side, side, gui.QImage.Format.Format_RGBA8888)
    image.fill(gui.QColor("white"))
    painter = gui.QPainter(image)
    painter.setRenderHint(gui.QPainter.RenderHint.Antialiasing)
    svg.QSvgRenderer(piece_svg(piece, piece_set).encode()).render(painter)
    painter.end()
    by_qt = np.frombuffer(image.constBits(), dtype=np.uint8).reshape(side, side, 4)[..., :3].astype(float)
    assert np.abs(by_qt - rendered(piece, side, piece_set)).mean() < 2


@EACH
def test_a_fragment_can_be_embedded(piece, piece_set):
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">{piece_fragment(piece, piece_set)}</svg>'
    png = cairosvg.svg2png(bytestring=svg.encode(), output_width=64, output_height=64, background_color="white")
    assert np.array_equal(np.asarray(Image.open(io.BytesIO(png)).convert("RGB")), rendered(piece, 64, piece_set))


def test_a_rim_keeps_the_ground_away_from_the_piece():
    knight = chess.Piece(chess.KNIGHT, chess.WHITE)
    sizes = []
    for halo in (None, "#FF0000"):
        inside = piece_fragment(knight, halo=halo)
        svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">{inside}</svg>'
        png = cairosvg.svg2png(bytestring=svg.encode(), output_width=200, output_height=200)
        sizes.append((np.asarray(Image.open(io.BytesIO(png)))[..., 3] > 127).sum())
    assert sizes[1] > sizes[0] * 1.1


def test_an_unknown_set_is_named():
    with pytest.raises(FileNotFoundError, match="nonesuch"):
        piece_svg(chess.Piece(chess.KING, chess.WHITE), "nonesuch")


def test_the_bold_set_covers_more_of_its_squares():
    for piece in PIECES:
        assert covered(piece, 64, "bold").sum() > 1.15 * covered(piece, 64, "study").sum()


@EACH_SET
def test_the_files_are_what_the_shapes_say(piece_set):
    folder = resource("pieces", piece_set)
    drawn = piece_files(tomllib.loads((folder / "shapes.toml").read_text(encoding="utf-8")))
    assert {name: (folder / name).read_text(encoding="utf-8") for name in drawn} == drawn
