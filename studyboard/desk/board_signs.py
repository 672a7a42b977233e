"""What the board shows of the hand that plays on it: held piece, legal targets, cursor, return."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

import chess
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPixmap

from studyboard.board.on_demand import Aspect
from studyboard.desk.board_geometry import BoardPlace
from studyboard.desk.paint import paint_scene
from studyboard.picture.answers import square_scene
from studyboard.picture.motion import unwound
from studyboard.picture.palette import BoardPalette


def paint_held(painter: QPainter, square: chess.Square, place: BoardPlace, palette: BoardPalette) -> None:
    """Tint the square whose piece is held."""
    tint = QColor(palette.last_move)
    tint.setAlphaF(0.28)
    painter.fillRect(place.square_rect(square), tint)


def paint_targets(
    painter: QPainter,
    targets: Iterable[chess.Square],
    occupied: chess.Bitboard,
    hovered: chess.Square | None,
    place: BoardPlace,
    palette: BoardPalette,
) -> None:
    """Show where the held piece may go, by the print that its base would leave there.

    A filled print stands for a free square, an open one around the base of a piece for a capture.
    """
    ink, paper, side = QColor(palette.last_move), QColor(palette.light), place.side
    for square in targets:
        rect = place.square_rect(square)
        if square == hovered:
            _outline(painter, rect, ink, paper, max(2.0, side * 0.05))
        centre = QPointF(rect.center().x(), rect.top() + 0.86 * side)
        if chess.BB_SQUARES[square] & occupied:
            wide, high = 0.4 * side, 0.115 * side
            painter.setBrush(Qt.BrushStyle.NoBrush)
            for color, width in ((paper, 0.1), (ink, 0.05)):
                painter.setPen(QPen(color, max(1.5, side * width)))
                painter.drawEllipse(centre, wide, high)
        else:
            painter.setPen(QPen(paper, max(1.0, side * 0.025)))
            painter.setBrush(ink)
            painter.drawEllipse(centre, 0.19 * side, 0.065 * side)


def paint_pointed(painter: QPainter, squares: Iterable[chess.Square], place: BoardPlace, palette: BoardPalette) -> None:
    """Outline squares that something else on the desk speaks of, the first one thicker."""
    for number, square in enumerate(squares):
        width = place.side * (0.06 if number == 0 else 0.035)
        _outline(painter, place.square_rect(square), QColor(palette.last_move), QColor(palette.light), max(1.5, width))


def paint_cursor(painter: QPainter, square: chess.Square | None, place: BoardPlace, color: QColor) -> None:
    """The keyboard's cursor: a frame in two tones, seen on any square."""
    if square is None:
        return
    rect = place.square_rect(square)
    width = max(2.5, place.side * 0.06)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for tone, pen, inset in ((QColor("#FFFFFF"), width * 2, width), (color, width, width / 2)):
        painter.setPen(_square_pen(tone, pen))
        painter.drawRect(rect.adjusted(inset, inset, -inset, -inset))


def paint_frame(painter: QPainter, place: BoardPlace, color: QColor) -> None:
    """A line around the whole board: it has the focus, or marks are being drawn on it."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(_square_pen(color, 2.0))
    painter.drawRect(place.rect.adjusted(-3, -3, 3, 3))


def paint_return(painter: QPainter, place: BoardPlace, progress: float, color: QColor) -> None:
    """A line around the board that unwinds against the clock, as the board steps back."""
    rect = place.rect
    inset = max(1.5, place.side * 0.03)
    rect = rect.adjusted(inset, inset, -inset, -inset)
    pen = QPen(color, 2 * inset)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    points = [QPointF(rect.x() + x * rect.width(), rect.y() + y * rect.height()) for x, y in unwound(progress)]
    for start, end in pairwise(points):
        painter.drawLine(start, end)


def answer_sample(aspect: Aspect, side: float, ratio: float, palette: BoardPalette) -> QPixmap:
    """One light square of *side* px, with what stands for *aspect* on it; *ratio* device pixels per px."""
    pixmap = QPixmap(round(side * ratio), round(side * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(QColor(palette.light))
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint_scene(painter, square_scene(aspect, (0.0, 0.0)), side)
    painter.end()
    return pixmap


def _outline(painter: QPainter, rect: QRectF, ink: QColor, paper: QColor, width: float) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for color, pen in ((paper, 2 * width), (ink, width)):
        painter.setPen(_square_pen(color, pen))
        half = width
        painter.drawRect(rect.adjusted(half, half, -half, -half))


def _square_pen(color: QColor, width: float) -> QPen:
    pen = QPen(color, width)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    return pen
