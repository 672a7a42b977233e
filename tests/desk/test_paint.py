from __future__ import annotations

import chess
import pytest
from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from studyboard.desk.paint import PiecePixmaps, paint_scene, pen_of, piece_pixmap
from studyboard.model.marks import Mark, MarkKind
from studyboard.picture.palette import board_palette, board_palette_names
from studyboard.picture.primitives import Stroke
from studyboard.picture.scene import board_bounds, board_scene
from studyboard.picture.svg import board_svg

MARKS = (
    Mark(MarkKind.THREAT, (chess.D8, chess.H4)),
    Mark(MarkKind.ROUTE, (chess.G1, chess.F3, chess.E5)),
    Mark(MarkKind.GUARD, (chess.B3, chess.D5)),
    Mark(MarkKind.TARGET, (chess.E5,)),
    Mark(MarkKind.KEY_SQUARE, (chess.D4,)),
)
POSITION = "r1bqk2r/pppp1ppp/2n2n2/2b1p3/2B1P3/2NP1N2/PPP2PPP/R1BQK2R b KQkq - 0 5"


def blank(width: int, height: int) -> QImage:
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    return image


def difference(one: QImage, other: QImage) -> float:
    """Mean distance of two pictures, 0 (equal) to 255."""
    assert one.size() == other.size()
    total = 0
    for y in range(0, one.height(), 2):
        for x in range(0, one.width(), 2):
            a, b = one.pixelColor(x, y), other.pixelColor(x, y)
            total += abs(a.red() - b.red()) + abs(a.green() - b.green()) + abs(a.blue() - b.blue())
    return total / (3 * (one.height() // 2) * (one.width() // 2))


@pytest.mark.parametrize("name", board_palette_names())
@pytest.mark.parametrize("flipped", [False, True])
def test_the_board_on_screen_is_the_board_in_print_and_video(qapp, name, flipped):
    board, palette = chess.Board(POSITION), board_palette(name)
    last, side = chess.Move.from_uci("d2d3"), 50
    options = {"flipped": flipped, "marks": MARKS, "last_move": last, "palette": palette, "coordinates": False}
    bounds = board_bounds(coordinates=False, palette=palette)
    width, height = round(bounds.width * side), round(bounds.height * side)

    painted = blank(width, height)
    painter = QPainter(painted)
    painter.translate(-bounds.x * side, -bounds.y * side)
    paint_scene(painter, board_scene(board, **options), side, PiecePixmaps())
    painter.end()

    drawn = blank(width, height)
    painter = QPainter(drawn)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    QSvgRenderer(QByteArray(board_svg(board, **options).encode())).render(painter, QRectF(0, 0, width, height))
    painter.end()
    # Hatching is all edges, and its frame puts the pieces half a pixel off the grid.
    assert difference(painted, drawn) < (4.0 if palette.hatch else 2.0)
    assert difference(painted, blank(width, height)) > 10.0


def test_dashes_keep_their_length_whatever_the_width(qapp):
    pen = pen_of(Stroke("#000000", 0.1, (0.3, 0.2)), 50)
    assert pen.widthF() == pytest.approx(5.0)
    assert [length * pen.widthF() for length in pen.dashPattern()] == pytest.approx([15.0, 10.0])


def test_a_piece_is_drawn_once_for_each_size(qapp):
    pieces = PiecePixmaps()
    knight = chess.Piece.from_symbol("N")
    first = pieces.pixmap(knight, 40, 1.0)
    assert pieces.pixmap(knight, 40, 1.0).cacheKey() == first.cacheKey()
    assert pieces.pixmap(knight, 41, 1.0).cacheKey() != first.cacheKey()


def test_a_piece_is_as_sharp_as_the_screen(qapp):
    pixmap = piece_pixmap(chess.Piece.from_symbol("q"), 40, 2.0)
    assert pixmap.width() == 80
    assert pixmap.deviceIndependentSize().width() == 40
