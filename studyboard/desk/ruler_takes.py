"""Painting the latest takes above the talk, each beat with its distance from the plan."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter

from studyboard.desk.look import Look
from studyboard.desk.ruler_rows import NARROW, RulerRows
from studyboard.desk.ruler_scale import RulerScale
from studyboard.desk.ruler_talk import Talk
from studyboard.model.script import BeatKey
from studyboard.translation import written_number

#: A beat that was told this much longer than planned is written in the colour of what is over (s).
_TOO_LONG = 1.0
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class TakesPainter:
    """Paints the strips of the takes in one look.

    State: the font and its measures, made anew when the look changes.
    """

    def __init__(self, look: Look) -> None:
        self._look = look
        self.refresh()

    def refresh(self) -> None:
        """Take over the font of the look as it is now."""
        self._font = self._look.ui_font(0.85)
        self._font.setFeature(QFont.Tag("tnum"), 1)
        self._width = QFontMetricsF(self._font)

    def takes(self, p: QPainter, rows: RulerRows, scale: RulerScale, talk: Talk) -> None:
        """The latest takes to the scale of the talk, cut where beats begin."""
        for strip, (top, height) in zip(talk.takes, rows.takes, strict=True):
            left, right = scale.x(strip.start), scale.x(strip.end)
            p.fillRect(QRectF(left, top, right - left, height), self._look.color("track"))
            p.fillRect(QRectF(left, top + height - 1, right - left, 1), self._look.color("wave"))
            edge = -100.0
            for piece in strip.pieces:
                x, end = scale.x(piece.start), scale.x(piece.end)
                if end < 0 or x > scale.left * 2 + scale.width:
                    continue
                if x - edge >= NARROW:
                    p.fillRect(QRectF(x, top, 1, height), self._look.color("wave"))
                    edge = x
                self._distance(p, QRectF(x + 4, top, end - x - 5, height - 1), piece.over)
            if right + self._width.horizontalAdvance(strip.name) + 16 < scale.left + scale.width:
                p.setFont(self._font)
                p.setPen(self._look.color("ink_quiet"))
                p.drawText(QRectF(right + 8, top, 400, height), _LEFT, strip.name)

    def _distance(self, p: QPainter, box: QRectF, over: float | None) -> None:
        """How much longer (+) or shorter (−) than planned a beat was told, where there is room for it."""
        if over is None or abs(over) < 0.05:
            return
        text = ("+" if over > 0 else "−") + written_number(abs(over), ".1f")
        if self._width.horizontalAdvance(text) <= box.width():
            p.setFont(self._font)
            p.setPen(self._look.color("over" if over > _TOO_LONG else "ink_quiet"))
            p.drawText(box, _LEFT, text)

    def current(self, p: QPainter, rows: RulerRows, scale: RulerScale, talk: Talk, key: BeatKey) -> None:
        """The parts of the takes that tell the current beat."""
        for strip, (top, height) in zip(talk.takes, rows.takes, strict=True):
            for piece in strip.pieces:
                if piece.key == key:
                    left, right = scale.x(piece.start), scale.x(piece.end)
                    p.fillRect(QRectF(left, top + height - 3, max(NARROW, right - left), 3), self._look.color("accent"))
