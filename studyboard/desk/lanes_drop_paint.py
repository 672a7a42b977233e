"""Painting where a branch that is dragged would go."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from studyboard.desk.lanes_geometry import Box
from studyboard.desk.look import Look

#: From the pointer to the words beside it (px).
_BESIDE_POINTER = 16


def paint_beside(p: QPainter, look: Look, x: float, top: float, bottom: float) -> None:
    """The gap between two side-lines into which a third would go."""
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(look.color("focus"))
    p.drawRoundedRect(QRectF(x - 1.5, top, 3, bottom - top), 1.5, 1.5)
    p.drawEllipse(QPointF(x, top), 4, 4)


def paint_onto(p: QPainter, look: Look, box: Box, refused: bool) -> None:
    """The move after which it would go: a frame, broken where it does not fit."""
    style = Qt.PenStyle.DashLine if refused else Qt.PenStyle.SolidLine
    p.setPen(QPen(look.color("over" if refused else "focus"), 2.5, style))
    p.setBrush(Qt.BrushStyle.NoBrush)
    p.drawRoundedRect(QRectF(box.left + 1, box.top + 1, box.width - 2, box.height - 2), 6, 6)


def paint_words(p: QPainter, look: Look, x: float, y: float, words: str, seen: range, refused: bool) -> None:
    """What is held and where it would go, beside the pointer and inside what is *seen* of the picture (px)."""
    font = look.move_font(0.95)
    metrics = QFontMetricsF(font)
    sign = metrics.height() if refused else 0.0
    width, height = metrics.horizontalAdvance(words) + sign + 20, metrics.height() + 8
    left = max(float(seen.start) + 4, min(x + _BESIDE_POINTER, seen.stop - width - 4))
    rect = QRectF(left, y + _BESIDE_POINTER, width, height)
    ink = look.color("over" if refused else "ink")
    p.setPen(QPen(ink, 1.25))
    p.setBrush(look.color("surface"))
    p.drawRoundedRect(rect, 6, 6)
    if refused:
        middle, reach = QPointF(rect.left() + 10 + sign / 3, rect.center().y()), sign / 4
        p.setPen(QPen(ink, 2.0))
        p.drawLine(middle + QPointF(-reach, -reach), middle + QPointF(reach, reach))
        p.drawLine(middle + QPointF(-reach, reach), middle + QPointF(reach, -reach))
    p.setPen(ink)
    p.setFont(font)
    p.drawText(rect.adjusted(10 + sign, 0, -6, 0), Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, words)
