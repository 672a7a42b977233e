"""Painting the time ruler: ticks, blocks, returns, the slot's end, the playhead."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen, QPolygonF

from studyboard.desk.look import Look
from studyboard.desk.ruler_rows import NARROW, RulerRows
from studyboard.desk.ruler_scale import RulerScale, Run, in_view, runs, tick_step, ticks
from studyboard.desk.ruler_talk import Talk, slot_text
from studyboard.model.script import Part
from studyboard.timing.clock import clock, over_or_under
from studyboard.timing.timeline import Stretch

#: Space between blocks (px).
_GAP = 1.0
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_CENTRE = Qt.AlignmentFlag.AlignCenter


class RulerPainter:
    """Paints the ruler in one look.

    State: fonts and measures, made anew when the look changes.
    """

    def __init__(self, look: Look) -> None:
        self._look = look
        self.refresh()

    def refresh(self) -> None:
        """Take over the fonts and colours of the look as they are now."""
        self._small = self._figures(self._look.ui_font(0.85))
        self._bold = self._figures(self._look.move_font(0.85))
        self._small_width = QFontMetricsF(self._small)
        self._bold_width = QFontMetricsF(self._bold)
        self.text_height = round(self._small_width.height())

    # -- ticks and slot

    def ticks(self, p: QPainter, rows: RulerRows, scale: RulerScale, free: Callable[[float, float], bool]) -> None:
        """Labelled ticks at sensible steps with finer ones between; labels only where there is room for them."""
        width = self._small_width.horizontalAdvance("88:88")
        step = tick_step(scale.per_second, width + 28)
        fine = next(part for part in (step / 5, step / 2, step) if part * scale.per_second >= 8 or part == step)
        rule, rail = QPen(self._look.color("rule"), 1.0), QPen(self._look.color("rail"), 1.0)
        p.setFont(self._small)
        base = rows.ticks - 4
        for at in ticks(scale, fine):
            x = round(scale.x(at)) + 0.5
            labelled = abs(at / step - round(at / step)) < 1e-6
            p.setPen(rail if labelled else rule)
            p.drawLine(QPointF(x, base - (5 if labelled else 3)), QPointF(x, base))
            text = clock(at)
            left = x - 0.5
            if labelled and free(left - 6, left + self._small_width.horizontalAdvance(text) + 6):
                p.setPen(self._look.color("ink_quiet"))
                p.drawText(QRectF(left, 4, 80, self.text_height), _LEFT, text)

    def slot_box(self, scale: RulerScale, talk: Talk) -> tuple[float, float, float]:
        """The slot's line and the left and right end of its label (px)."""
        assert talk.slot is not None
        x = scale.x(talk.slot)
        label, distance = slot_text(talk.slot), over_or_under(talk.seconds - talk.slot)
        before = self._bold_width.horizontalAdvance(label) + 8
        after = self._bold_width.horizontalAdvance(distance) + 8
        edge = scale.left + scale.width + 12
        if x + after > edge:
            return x, x - before - after - 4, x
        return x, x - before, x + after

    def slot(self, p: QPainter, rows: RulerRows, scale: RulerScale, talk: Talk) -> None:
        """The slot's end as a dashed line, what is over it on a ground of its own, the distance in words."""
        if talk.slot is None:
            return
        over = talk.seconds - talk.slot
        late = round(over) > 0
        x, left, right = self.slot_box(scale, talk)
        end = scale.x(talk.seconds)
        if late:
            p.fillRect(QRectF(x, rows.ticks - 4, end - x, rows.height - rows.ticks), self._look.color("over_soft"))
        elif round(over) < 0:
            ground = QColor(self._look.color("paper"))
            ground.setAlphaF(0.6)
            p.fillRect(QRectF(end, rows.ticks - 4, x - end, rows.height - rows.ticks), ground)
        color = self._look.color("over" if late else "accent")
        pen = QPen(color, 1.5)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        pen.setDashPattern([3.0, 2.5])
        p.setPen(pen)
        line = round(x) + 0.5
        p.drawLine(QPointF(line, 4), QPointF(line, rows.height - 2))
        p.setFont(self._bold)
        p.setPen(color)
        label, distance = slot_text(talk.slot), over_or_under(over)
        if right > x:
            p.drawText(QRectF(left, 4, x - left - 6, self.text_height), _RIGHT, label)
            p.drawText(QRectF(x + 6, 4, right - x, self.text_height), _LEFT, distance)
        else:
            p.drawText(QRectF(left - 20, 4, x - left + 14, self.text_height), _RIGHT, f"{label} · {distance}")

    # -- beats

    def beats(
        self, p: QPainter, rows: RulerRows, scale: RulerScale, talk: Talk, label: Callable[[Stretch], str]
    ) -> None:
        """The beats in view, with the returns between their rows."""
        margin = scale.left + _GAP
        seen = in_view(talk.starts, scale, scale.left - margin, scale.left + scale.width + margin)
        by_row: list[list[tuple[int, float, float]]] = [[] for _ in rows.blocks]
        for index in seen:
            stretch = talk.stretches[index]
            by_row[talk.rows[index]].append((index, scale.x(stretch.start), scale.x(stretch.end)))
        self._connectors(p, rows, scale, talk, seen)
        for row, blocks in enumerate(by_row):
            for run in runs(blocks, NARROW):
                if run.right - run.left < NARROW or run.first != run.last:
                    self._joined(p, rows, row, run)
                else:
                    self._block(p, rows, scale, talk, run.first, label)
        self._rehearsed(p, rows, scale, talk, seen)

    def current(
        self, p: QPainter, rows: RulerRows, scale: RulerScale, talk: Talk, index: int, label: Callable[[Stretch], str]
    ) -> None:
        """The beat that is current, over its block."""
        stretch = talk.stretches[index]
        if (stretch.end - stretch.start) * scale.per_second >= NARROW:
            self._block(p, rows, scale, talk, index, label, current=True)
            return
        top, height = rows.blocks[talk.rows[index]]
        p.fillRect(QRectF(scale.x(stretch.start) - 1, top - 2, NARROW, height + 4), self._look.color("accent"))

    def hovered(self, p: QPainter, rows: RulerRows, scale: RulerScale, talk: Talk, index: int) -> None:
        """A line around the block under the pointer."""
        row = talk.rows[index]
        rect = self._block_rect(rows, scale, talk, index)
        p.setPen(QPen(self._look.color("side_line" if row else "accent"), 1.5))
        p.setBrush(Qt.BrushStyle.NoBrush)
        radius = min(4.0, rect.width() / 2)
        p.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), radius, radius)

    def _block_rect(self, rows: RulerRows, scale: RulerScale, talk: Talk, index: int) -> QRectF:
        stretch = talk.stretches[index]
        top, height = rows.blocks[talk.rows[index]]
        left = scale.x(stretch.start + talk.backs[index]) + _GAP / 2
        return QRectF(left, top, max(1.5, scale.x(stretch.end) - left - _GAP / 2), height)

    def _joined(self, p: QPainter, rows: RulerRows, row: int, run: Run) -> None:
        top, height = rows.blocks[row]
        token = "side_line" if row else "accent"
        width = max(1.0, run.right - run.left)
        p.fillRect(QRectF(run.left, top, width, height), self._look.color(f"{token}_soft"))
        p.fillRect(QRectF(run.left, top + height - 2, width, 2), self._look.color(token))

    def _block(
        self,
        p: QPainter,
        rows: RulerRows,
        scale: RulerScale,
        talk: Talk,
        index: int,
        label: Callable[[Stretch], str],
        *,
        current: bool = False,
    ) -> None:
        stretch, row = talk.stretches[index], talk.rows[index]
        rect = self._block_rect(rows, scale, talk, index)
        token = "side_line" if row else "rail" if isinstance(stretch.key, Part) else "accent"
        ground = "track" if isinstance(stretch.key, Part) else f"{token}_soft"
        shape = QPainterPath()
        radius = min(4.0, rect.width() / 2)
        shape.addRoundedRect(rect, radius, radius)
        p.save()
        p.setClipPath(shape, Qt.ClipOperation.IntersectClip)
        p.fillRect(rect, self._look.color("accent" if current else ground))
        if stretch.think > 0:
            self._think(p, rect, scale, stretch, current)
        if not current:
            p.fillRect(QRectF(rect.left(), rect.bottom() - 2, rect.width(), 2), self._look.color(token))
        if talk.locked[index] and rect.width() >= 8:
            self._stops(p, rect, self._look.color("on_accent" if current else token))
        p.restore()
        text = rect.adjusted(5, 0, -stretch.think * scale.per_second - 4, -1)
        if text.width() >= 16:
            full = label(stretch)
            width = self._bold_width if current else self._small_width
            names = (full, full.rpartition(" ")[2])
            name = next((name for name in names if width.horizontalAdvance(name) <= text.width()), "")
            if name:
                p.setFont(self._bold if current else self._small)
                p.setPen(self._look.color("on_accent" if current else "ink"))
                p.drawText(text, _LEFT, name)

    def _stops(self, p: QPainter, rect: QRectF, color: QColor) -> None:
        """A locked length: a stop at each end of its block."""
        for x in (rect.left(), rect.right() - 3):
            p.fillRect(QRectF(x, rect.top(), 3, rect.height()), color)

    def _think(self, p: QPainter, rect: QRectF, scale: RulerScale, stretch: Stretch, current: bool) -> None:
        width = min(rect.width(), stretch.think * scale.per_second)
        area = QRectF(rect.right() - width, rect.top(), width, rect.height())
        p.fillRect(area, self._look.color("think_soft"))
        p.setClipRect(area, Qt.ClipOperation.IntersectClip)
        p.setPen(QPen(self._look.color("think"), 1.25))
        x = area.left() - area.height()
        while x < area.right():
            p.drawLine(QPointF(x, area.bottom()), QPointF(x + area.height(), area.top()))
            x += 6
        if current:
            p.fillRect(QRectF(area.left(), area.bottom() - 4, area.width(), 4), self._look.color("accent"))

    def _connectors(self, p: QPainter, rows: RulerRows, scale: RulerScale, talk: Talk, seen: range) -> None:
        """Where the talk goes down into a side-line, and where the board steps back up out of it."""
        down = QPen(self._look.color("side_line"), 1.5)
        down.setCapStyle(Qt.PenCapStyle.RoundCap)
        p.setBrush(Qt.BrushStyle.NoBrush)
        last = -100.0
        for index in seen:
            row, was, back = talk.rows[index], talk.rows[index - 1] if index else 0, talk.backs[index]
            if not back and row <= was:
                continue
            start = talk.starts[index]
            x = scale.x(start)
            if x - last < NARROW:
                continue
            last = x
            p.setPen(down)
            if row > was:
                p.drawLine(QPointF(x + 0.5, _bottom(rows, was)), QPointF(x + 0.5, rows.blocks[row][0] + 4))
            if back:
                self._return(p, rows, x, scale.x(start + back), was, row)

    def _return(self, p: QPainter, rows: RulerRows, left: float, right: float, was: int, row: int) -> None:
        """A return: from the row that is left, up to where the line goes on, with an arrow's head."""
        top, height = rows.blocks[row]
        tip = QPointF(max(right - 1, left + 2), top + height / 2)
        start = QPointF(left + 1, rows.blocks[was][0] + rows.blocks[was][1] / 2 if was > row else tip.y())
        path = QPainterPath(start)
        if was > row:
            path.cubicTo(QPointF(start.x() + (tip.x() - start.x()) * 0.7, start.y()), QPointF(start.x(), tip.y()), tip)
        else:
            path.lineTo(tip)
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.drawPath(path)
        size = min(4.0, max(2.0, (right - left) / 2))
        p.setBrush(self._look.color("side_line"))
        barbs = [QPointF(tip.x() - size, tip.y() + side * size * 0.8) for side in (-1, 1)]
        p.drawPolygon(QPolygonF([tip, *barbs]))

    def _rehearsed(self, p: QPainter, rows: RulerRows, scale: RulerScale, talk: Talk, seen: range) -> None:
        """How long each beat took when it was last rehearsed: a small pointer under its row."""
        if not talk.rehearsed:
            return
        p.setPen(Qt.PenStyle.NoPen)
        for index in seen:
            stretch = talk.stretches[index]
            seconds = talk.rehearsed.get(stretch.key)
            if seconds is None or stretch.seconds * scale.per_second < 8:
                continue
            p.setBrush(self._look.color("over" if seconds > stretch.seconds + 0.5 else "ink_quiet"))
            x, y = scale.x(stretch.start + seconds), _bottom(rows, talk.rows[index]) + 1
            p.drawPolygon(QPolygonF([QPointF(x, y), QPointF(x - 3, y + 5), QPointF(x + 3, y + 5)]))

    # -- the end in the hand, and the playhead

    def edge(self, p: QPainter, rows: RulerRows, x: float, words: str) -> None:
        """The end of a beat that is being dragged, with the length that it would have."""
        accent = self._look.color("accent")
        p.setPen(QPen(accent, 2.0))
        p.drawLine(QPointF(x, rows.ticks - 4), QPointF(x, rows.height - 2))
        width = self._bold_width.horizontalAdvance(words) + 12
        box = QRectF(max(2.0, x - width - 4), rows.height - self.text_height - 8, width, self.text_height + 4)
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(accent)
        p.drawRoundedRect(box, 4, 4)
        p.setFont(self._bold)
        p.setPen(self._look.color("on_accent"))
        p.drawText(box, _CENTRE, words)

    def playhead(self, p: QPainter, rows: RulerRows, x: float) -> None:
        """Where playback is."""
        ink = self._look.color("ink")
        p.setPen(QPen(ink, 1.5))
        p.drawLine(QPointF(x, rows.ticks - 6), QPointF(x, rows.height - 2))
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(ink)
        top = rows.ticks - 10
        p.drawPolygon(QPolygonF([QPointF(x - 5, top), QPointF(x + 5, top), QPointF(x, top + 7)]))

    def nothing(self, p: QPainter, width: float, height: float, text: str) -> None:
        """What is written where there is no talk yet."""
        p.setFont(self._small)
        p.setPen(self._look.color("ink_quiet"))
        p.drawText(QRectF(0, 0, width, height), _CENTRE, text)

    def focus(self, p: QPainter, width: float, height: float) -> None:
        """A ring that says: the ruler has the keyboard."""
        p.setPen(QPen(self._look.color("focus"), 2.0))
        p.setBrush(QBrush(Qt.BrushStyle.NoBrush))
        p.drawRoundedRect(QRectF(1, 1, width - 2, height - 2), 7, 7)

    def surface(self) -> QColor:
        """The ground of the ruler."""
        return self._look.color("surface")

    @staticmethod
    def _figures(font: QFont) -> QFont:
        font.setFeature(QFont.Tag("tnum"), 1)
        return font


def _bottom(rows: RulerRows, row: int) -> float:
    top, height = rows.blocks[row]
    return top + height
