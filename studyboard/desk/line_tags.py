"""Cues drawn as small tags inside the text of a spoken line."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import chess
from PySide6.QtCore import QPointF, QRect, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPen,
    QPyTextObject,
    QTextCharFormat,
    QTextDocument,
    QTextFormat,
)

from studyboard.desk.line_cues import Cued
from studyboard.desk.look import Look
from studyboard.desk.paint import paint_scene
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.picture.marks import MARK_STYLES, ground_marks_scene, marks_scene

#: What Qt calls the objects of this kind, and where their format keeps what they play or show.
TAG_TYPE = QTextFormat.ObjectTypes.UserObject + 1
_NODE = QTextFormat.Property.UserProperty + 1
_MARK = QTextFormat.Property.UserProperty + 2

_GAP = 0.28
"""Free space beside a tag, in heights of its text."""


@dataclass(frozen=True, slots=True)
class Tag:
    """What a tag shows.

    words: a move or a mark in the fewest words
    mark: the kind of mark, None for a move
    gone: True where what it plays or shows is not there any more
    """

    words: str
    mark: MarkKind | None = None
    gone: bool = False


def tag_format(cued: Cued) -> QTextCharFormat:
    """The format of the one character that stands for a cue."""
    tag = QTextCharFormat()
    tag.setObjectType(TAG_TYPE)
    tag.setVerticalAlignment(QTextCharFormat.VerticalAlignment.AlignBaseline)
    if cued.node is not None:
        tag.setProperty(_NODE, cued.node)
    if cued.mark is not None:
        tag.setProperty(_MARK, cued.mark)
    return tag


def cued_by(character: QTextFormat) -> Cued | None:
    """What the character with this format plays or shows; None where it is no cue."""
    if character.objectType() != TAG_TYPE:
        return None
    node, mark = character.property(_NODE), character.property(_MARK)
    return Cued(None if node is None else int(node), None if mark is None else int(mark))


class LineTags(QPyTextObject):
    """Measures and paints the tags; a move's is a rounded box, a mark's is a pennant with its sample."""

    def __init__(self, look: Look, tag: Callable[[Cued], Tag], parent: QTextDocument) -> None:
        super().__init__(parent)
        self._look = look
        self._tag = tag
        self._set_type()
        look.changed.connect(self._set_type)

    def _set_type(self) -> None:
        """Take the font of the look; a long text measures its tags at every letter."""
        self._font = self._look.move_font(0.92)
        self._metrics = QFontMetricsF(self._font)
        self._widths: dict[str, float] = {}

    def intrinsicSize(self, document: QTextDocument, position: int, character: QTextFormat) -> QSizeF:
        """See QTextObjectInterface."""
        tag = self._shown(character)
        height = QFontMetricsF(document.defaultFont()).height()
        width = self._widths.get(tag.words)
        if width is None:
            width = self._widths[tag.words] = self._metrics.horizontalAdvance(tag.words)
        return QSizeF(width + self._before(tag, height) + 0.9 * height, height)

    def drawObject(
        self, painter: QPainter, rect: QRectF | QRect, document: QTextDocument, position: int, character: QTextFormat
    ) -> None:
        """See QTextObjectInterface."""
        tag, look = self._shown(character), self._look
        box = QRectF(rect)
        height = box.height()
        box = box.adjusted(0.5, 1.0, -_GAP * height, -1.0)
        ink, border, ground = look.color("accent"), look.color("accent"), look.color("accent_soft")
        if tag.mark is not None:
            ink, border, ground = look.color("ink"), QColor(MARK_STYLES[tag.mark].colour), look.color("surface")
        if tag.gone:
            ink, border, ground = look.color("query"), look.color("query"), look.color("query_soft")
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = QPen(border, 1.4 if tag.mark else 1.0)
        if tag.gone:
            pen.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(pen)
        painter.setBrush(ground)
        painter.drawPath(_pennant(box) if tag.mark is not None else _rounded(box, 0.22 * height))
        before = self._before(tag, height)
        if tag.mark is not None:
            sample = QRectF(box.left() + 0.42 * height, box.top(), 1.05 * height, box.height())
            _paint_sample(painter, tag.mark, sample, QColor(look.board_palette.light))
        metrics = self._metrics
        painter.setFont(self._font)
        painter.setPen(ink)
        baseline = box.center().y() + (metrics.ascent() - metrics.descent()) / 2
        painter.drawText(QPointF(box.left() + before, baseline), tag.words)
        painter.restore()

    def _shown(self, character: QTextFormat) -> Tag:
        cued = cued_by(character)
        return self._tag(cued) if cued is not None else Tag("?", gone=True)

    @staticmethod
    def _before(tag: Tag, height: float) -> float:
        return 0.32 * height if tag.mark is None else 1.6 * height


def _rounded(box: QRectF, radius: float) -> QPainterPath:
    path = QPainterPath()
    path.addRoundedRect(box, radius, radius)
    return path


def _pennant(box: QRectF) -> QPainterPath:
    notch = box.height() * 0.32
    path = QPainterPath(box.topLeft())
    path.lineTo(box.topRight())
    path.lineTo(box.bottomRight())
    path.lineTo(box.bottomLeft())
    path.lineTo(QPointF(box.left() + notch, box.center().y()))
    path.closeSubpath()
    return path


def _paint_sample(painter: QPainter, kind: MarkKind, box: QRectF, ground: QColor) -> None:
    """A mark in little: one square with it, or the line from one square to the next."""
    single = SQUARES_OF[kind] == (1, 1)
    mark = Mark(kind, (chess.A8,) if single else (chess.A8, chess.B8))
    painter.save()
    painter.setClipRect(box)
    if single:
        side = min(box.width(), box.height() * 0.86)
        painter.translate(box.center().x() - side / 2, box.center().y() - side / 2)
        painter.fillRect(QRectF(0, 0, side, side), ground)
    else:
        side = 1.35 * box.height()
        painter.translate(box.center().x() - side, box.center().y() - side / 2)
    paint_scene(painter, ground_marks_scene((mark,)), side)
    paint_scene(painter, marks_scene((mark,)), side)
    painter.restore()
