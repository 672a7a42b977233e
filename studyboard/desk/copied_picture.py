"""Positions as one picture for other programs: boards below each other, each with its move."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter

from studyboard.desk.look import Look
from studyboard.desk.paint import PiecePixmaps, paint_scene
from studyboard.model.positions import Positions
from studyboard.notation.labels import move_label
from studyboard.picture.scene import board_bounds, board_scene

#: More boards than this would make a picture that other programs refuse.
MOST = 24
#: The side of a square, and free space around each board (px).
_SQUARE = 72
_MARGIN = 24
#: Pictures are pasted on white pages, whatever theme the desk has.
_PAPER, _INK = "#ffffff", "#1b1b1b"


def boards_picture(positions: Positions, nodes: Sequence[int], look: Look, *, flipped: bool = False) -> QImage:
    """The positions of these nodes with their marks, below each other, with the move that leads there above each.

    Raises ValueError for no node at all and for more than MOST.
    """
    if not 0 < len(nodes) <= MOST:
        raise ValueError(f"A picture has 1 to {MOST} boards.")
    palette = look.board_palette
    bounds = board_bounds(coordinates=True, palette=palette)
    font = look.move_font()
    font.setPixelSize(round(0.4 * _SQUARE))
    metrics = QFontMetricsF(font)
    caption = round(metrics.height() + 10)
    width, height = round(bounds.width * _SQUARE), round(bounds.height * _SQUARE)
    each = caption + height + _MARGIN
    image = QImage(width + 2 * _MARGIN, each * len(nodes) + _MARGIN, QImage.Format.Format_RGB32)
    image.fill(QColor(_PAPER))
    pieces = PiecePixmaps()
    pieces.piece_set = look.piece_set
    p = QPainter(image)
    for place, node_id in enumerate(nodes):
        node = positions.study.nodes[node_id]
        top = _MARGIN + place * each
        p.setFont(font)
        p.setPen(QColor(_INK))
        p.drawText(
            QRectF(_MARGIN, top, width, caption - 10),
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter,
            move_label(positions, node_id),
        )
        scene = board_scene(
            positions.board(node_id),
            flipped=flipped,
            marks=node.marks,
            last_move=node.move,
            coordinates=True,
            palette=palette,
        )
        p.save()
        p.translate(QPointF(_MARGIN - bounds.x * _SQUARE, top + caption - bounds.y * _SQUARE))
        paint_scene(p, scene, _SQUARE, pieces)
        p.restore()
    p.end()
    return image
