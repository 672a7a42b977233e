"""A board as SVG can be read by programs and by people who do not see it."""

from __future__ import annotations

import io
import xml.etree.ElementTree as ElementTree

import cairosvg
import chess
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.picture.palette import board_palette, board_palette_names
from studyboard.picture.svg import board_svg

SVG = "{http://www.w3.org/2000/svg}"

squares = st.integers(0, 63)


@st.composite
def marks(draw):
    kind = draw(st.sampled_from(MarkKind))
    least, most = SQUARES_OF[kind]
    return Mark(kind, tuple(draw(st.lists(squares, min_size=least, max_size=most or 5))))


@st.composite
def boards(draw):
    board = chess.Board()
    for choice in draw(st.lists(st.integers(0, 300), max_size=40)):
        legal = list(board.legal_moves)
        if not legal:
            break
        board.push(legal[choice % len(legal)])
    return board


@settings(max_examples=40, deadline=None)
@given(boards(), st.lists(marks(), max_size=4), st.booleans(), st.sampled_from(board_palette_names()))
def test_every_position_with_any_marks_is_well_formed(board, drawn, flipped, name):
    last = board.move_stack[-1] if board.move_stack else None
    root = ElementTree.fromstring(
        board_svg(board, marks=drawn, flipped=flipped, last_move=last, palette=board_palette(name))
    )
    assert len(root.findall(f"{SVG}use")) == len(board.piece_map())
    defined = {group.get("id") for group in root.find(f"{SVG}defs")}
    used = {use.get("{http://www.w3.org/1999/xlink}href").removeprefix("#") for use in root.findall(f"{SVG}use")}
    assert defined == used


@pytest.mark.parametrize("name", board_palette_names())
def test_cairo_draws_each_piece_in_its_place(name):
    board = chess.Board()
    empty = chess.Board(None)
    images = []
    for shown in (board, empty):
        svg = board_svg(shown, coordinates=False, palette=board_palette(name), width=400)
        images.append(
            np.asarray(Image.open(io.BytesIO(cairosvg.svg2png(bytestring=svg.encode()))).convert("L")).astype(int)
        )
    changed = np.abs(images[0] - images[1]) > 40
    side = changed.shape[0] / 8
    for square in chess.SQUARES:
        row, column = 7 - chess.square_rank(square), chess.square_file(square)
        inside = changed[
            round(row * side) + 4 : round((row + 1) * side) - 4,
            round(column * side) + 4 : round((column + 1) * side) - 4,
        ]
        assert inside.any() == (board.piece_at(square) is not None), chess.square_name(square)


def test_the_picture_is_described_in_words():
    board = chess.Board("6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1")
    root = ElementTree.fromstring(
        board_svg(board, marks=[Mark(MarkKind.THREAT, (chess.D1, chess.D8))], title="Back <rank>")
    )
    assert root.get("role") == "img"
    assert root.find(f"{SVG}title").text == "Back <rank>"
    assert root.find(f"{SVG}desc").text == (
        "White: king g1, rook d1, pawns f2, g2 and h2. Black: king g8, pawns f7, g7 and h7. White to move. "
        "Threat from d1 to d8."
    )


def test_a_margin_makes_the_picture_as_high_as_it_is_wide():
    root = ElementTree.fromstring(board_svg(chess.Board(), palette=board_palette("print"), width=300))
    assert root.get("width") == root.get("height") == "300"


def test_typst_and_cairo_draw_the_same_board(tmp_path):
    typst = pytest.importorskip("typst")
    svg = board_svg(chess.Board(), coordinates=False, palette=board_palette("print"))
    (tmp_path / "board.svg").write_text(svg, encoding="utf-8")
    page = tmp_path / "page.typ"
    page.write_text(
        '#set page(width: 80mm, height: 80mm, margin: 0mm)\n#image("board.svg", width: 100%)', encoding="utf-8"
    )
    by_typst = np.asarray(Image.open(io.BytesIO(typst.compile(str(page), format="png", ppi=160))).convert("L"))
    side = by_typst.shape[0]
    png = cairosvg.svg2png(bytestring=svg.encode(), output_width=side, output_height=side, background_color="white")
    by_cairo = np.asarray(Image.open(io.BytesIO(png)).convert("L"))
    assert by_typst.shape == by_cairo.shape
    assert by_cairo.std() > 50
    assert np.abs(by_typst.astype(int) - by_cairo).mean() < 6
