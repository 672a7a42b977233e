"""Painting the primitives of a picture with Qt."""

from __future__ import annotations

from collections.abc import Iterable

import chess
from PySide6.QtCore import QByteArray, QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QGuiApplication,
    QPainter,
    QPainterPath,
    QPen,
    QPixmap,
    QPolygonF,
)
from PySide6.QtSvg import QSvgRenderer

from studyboard.picture.pieces import DEFAULT_SET, GRID, piece_fragment
from studyboard.picture.primitives import (
    Circle,
    Curve,
    Fill,
    PieceAt,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Rect,
    Segments,
    Stroke,
    Text,
)

_CAPS = {"butt": Qt.PenCapStyle.FlatCap, "round": Qt.PenCapStyle.RoundCap}
_JOINS = {"miter": Qt.PenJoinStyle.MiterJoin, "round": Qt.PenJoinStyle.RoundJoin}
_EM_GRID = 64
"""Text is laid out at this em and scaled, so that it sits in the picture as in an SVG of it (px)."""


class PiecePixmaps:
    """The pieces as pixmaps.

    State: the pixmaps of one set, size and pixel ratio; another one throws them away.
    """

    def __init__(self) -> None:
        self.piece_set = DEFAULT_SET
        self._size = ("", 0.0, 0.0)
        self._pixmaps: dict[tuple[chess.PieceType, chess.Color, str | None], QPixmap] = {}

    def pixmap(self, piece: chess.Piece, side: float, ratio: float, halo: str | None = None) -> QPixmap:
        """*piece* on a square of *side* px at this device pixel ratio, drawn once and kept."""
        if self._size != (self.piece_set, side, ratio):
            self._size = (self.piece_set, side, ratio)
            self._pixmaps.clear()
        key = (piece.piece_type, piece.color, halo)
        pixmap = self._pixmaps.get(key)
        if pixmap is None:
            pixmap = self._pixmaps[key] = piece_pixmap(piece, side, ratio, halo, self.piece_set)
        return pixmap


def piece_pixmap(
    piece: chess.Piece, side: float, ratio: float = 1.0, halo: str | None = None, piece_set: str = DEFAULT_SET
) -> QPixmap:
    """A new pixmap of *piece*, *side* px wide at this device pixel ratio, transparent around it."""
    inside = piece_fragment(piece, piece_set, halo)
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {GRID} {GRID}">{inside}</svg>'
    pixels = max(1, round(side * ratio))
    pixmap = QPixmap(QSize(pixels, pixels))
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    QSvgRenderer(QByteArray(svg.encode())).render(painter, QRectF(0, 0, pixels, pixels))
    painter.end()
    pixmap.setDevicePixelRatio(ratio)
    return pixmap


def paint_scene(painter: QPainter, scene: Iterable[Primitive], side: float, pieces: PiecePixmaps | None = None) -> None:
    """Paint *scene* with the painter's origin as its 0, 0.

    side: of one square (px)
    pieces: where drawn pieces are kept; needed where the scene has any
    """
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for primitive in scene:
        if isinstance(primitive, PieceAt):
            if pieces is not None:
                _paint_piece(painter, primitive, side, pieces)
        elif isinstance(primitive, Text):
            _paint_text(painter, primitive, side)
        else:
            _paint_shape(painter, primitive, side)
    painter.restore()


def pen_of(stroke: Stroke | None, side: float) -> QPen:
    """The pen that draws *stroke* where a square is *side* px."""
    if stroke is None:
        return QPen(Qt.PenStyle.NoPen)
    color = QColor(stroke.colour)
    color.setAlphaF(stroke.opacity)
    pen = QPen(color, stroke.width * side)
    pen.setCapStyle(_CAPS[stroke.cap])
    pen.setJoinStyle(_JOINS[stroke.join])
    if stroke.dash:
        lengths = stroke.dash if len(stroke.dash) % 2 == 0 else stroke.dash * 2
        # Qt counts dashes in pen widths.
        pen.setDashPattern([length / stroke.width for length in lengths])
    return pen


def _paint_piece(painter: QPainter, at: PieceAt, side: float, pieces: PiecePixmaps) -> None:
    ratio = painter.device().devicePixelRatioF()
    painter.drawPixmap(QPointF(at.x * side, at.y * side), pieces.pixmap(at.piece, side, ratio, at.halo))


def _paint_shape(painter: QPainter, shape: Rect | Circle | Polygon | Polyline | Segments | Curve, side: float) -> None:
    painter.setPen(pen_of(shape.stroke, side))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    match shape:
        case Rect(x, y, width, height, fill, stroke, radius):
            _set_fill(painter, fill)
            box = QRectF(x * side, y * side, width * side, height * side)
            if radius:
                painter.drawRoundedRect(box, radius * side, radius * side)
                return
            # Squares meet without a seam only where their edges are not smoothed.
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, stroke is not None)
            painter.drawRect(box)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        case Circle(x, y, radius, fill, _):
            _set_fill(painter, fill)
            painter.drawEllipse(QPointF(x * side, y * side), radius * side, radius * side)
        case Polygon(points, fill, _):
            _set_fill(painter, fill)
            painter.drawPolygon(_polygon(points, side))
        case Polyline(points, _):
            painter.drawPolyline(_polygon(points, side))
        case Segments(lines, _):
            if all(len(line) == 2 for line in lines):
                painter.drawLines([QLineF(_point(line[0], side), _point(line[1], side)) for line in lines])
            else:
                for line in lines:
                    painter.drawPolyline(_polygon(line, side))
        case Curve(start, cubics, _):
            path = QPainterPath(_point(start, side))
            for one, two, end in cubics:
                path.cubicTo(_point(one, side), _point(two, side), _point(end, side))
            painter.drawPath(path)


def _paint_text(painter: QPainter, text: Text, side: float) -> None:
    font = QFont(QGuiApplication.font())
    font.setPixelSize(_EM_GRID)
    font.setBold(text.bold)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    scale = text.size * side / _EM_GRID
    width = QFontMetricsF(font).horizontalAdvance(text.text)
    before = {"start": 0.0, "middle": width / 2, "end": width}[text.anchor]
    painter.save()
    painter.translate(text.x * side, text.y * side)
    painter.scale(scale, scale)
    painter.setFont(font)
    painter.setPen(QColor(text.colour))
    painter.drawText(QPointF(-before, 0.0), text.text)
    painter.restore()


def _set_fill(painter: QPainter, fill: Fill | None) -> None:
    if fill is None:
        return
    color = QColor(fill.colour)
    color.setAlphaF(fill.opacity)
    painter.setBrush(color)


def _point(point: Point, side: float) -> QPointF:
    return QPointF(point[0] * side, point[1] * side)


def _polygon(points: Iterable[Point], side: float) -> QPolygonF:
    return QPolygonF([_point(point, side) for point in points])
