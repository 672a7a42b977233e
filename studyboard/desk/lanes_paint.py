"""Painting the lanes: cells with their signs and time bars, rails, headings."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen

from studyboard.desk.lanes_geometry import Box, TextHeights
from studyboard.desk.lanes_rows import PLAIN_GLYPHS, RowText, short_seconds
from studyboard.desk.lanes_times import RowTime
from studyboard.desk.look import Look

#: How long a time bar is in a cell of at least that width (px), and how high (px).
_BAR_LENGTHS = ((240, 56), (190, 40), (0, 24))
_BAR_HEIGHT = 6
#: Radius of the curve in which a rail leaves (px), and of the disc of a move on it.
_CURVE = 10.0
_DISC = 4.0

_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_CENTRE = Qt.AlignmentFlag.AlignCenter


@dataclass(frozen=True, slots=True)
class CellState:
    """How one cell is to be painted.

    current: it is shown on the board
    on_path: it lies on the way to the node that is shown
    hovered: the pointer is over it
    hidden: its side-line is not told
    focused: the lanes have the keyboard
    """

    current: bool = False
    on_path: bool = False
    hovered: bool = False
    hidden: bool = False
    focused: bool = False


class LanePainter:
    """Paints parts of the lanes in one look.

    State: fonts, measures and shortened texts, made anew when the look changes.
    """

    def __init__(self, look: Look) -> None:
        self._look = look
        self.refresh()

    def refresh(self) -> None:
        """Take over the fonts and colours of the look as they are now."""
        self._move = _aligned_figures(self._look.move_font())
        self._spoken = self._look.spoken_font(1.06)
        self._small = _aligned_figures(self._look.ui_font(0.88))
        self._bold_small = _aligned_figures(self._look.move_font(0.88))
        self._placeholder = QFont(self._spoken)
        self._placeholder.setItalic(True)
        self._move_width = QFontMetricsF(self._move)
        self._spoken_width = QFontMetricsF(self._spoken)
        self._small_width = QFontMetricsF(self._small)
        self._bold_small_width = QFontMetricsF(self._bold_small)
        self._shortened: dict[tuple[str, int], str] = {}
        self._seconds_width = max(self._small_width.horizontalAdvance(text) for text in ("88 s", "8:88"))
        self.heights = TextHeights(
            round(self._move_width.height()), round(self._spoken_width.height()), round(self._small_width.height())
        )

    # -- cells

    def cell(
        self, p: QPainter, box: Box, middle: float, row: RowText, time: RowTime | None, scale: float, state: CellState
    ) -> None:
        """One cell: its ground where it is chosen, its move, signs, seconds, and the beginning of its line."""
        self._ground(p, box, state)
        left, right = box.left + 8, box.right - 10
        label = row.label + self._printable(row.glyphs)
        label_end = left + self._move_width.horizontalAdvance(label)
        end = right
        if time is not None:
            length = next(length for least, length in _BAR_LENGTHS if box.width >= least)
            end = self._time(p, right, middle, length, label_end + 12, time, scale, silent=not row.words)
        p.setFont(self._move)
        p.setPen(self._ink(state, "ink"))
        p.drawText(QRectF(left, middle - 12, max(label_end, end) - left, 24), _LEFT, label)
        self._signs(p, label_end + 8, end - 8, middle, row)
        if row.words:
            self._words(p, box, middle, row.words, state)

    def placeholder(self, p: QPainter, box: Box, middle: float, name: str, text: str, state: CellState) -> None:
        """The cell of a part of the talk in which nothing is said yet."""
        self._ground(p, box, state)
        p.setPen(self._ink(state, "ink_quiet"))
        p.setFont(self._move)
        p.drawText(QRectF(box.left + 8, middle - 12, box.width - 16, 24), _LEFT, name)
        p.setFont(self._placeholder)
        p.setPen(self._look.color("ink_quiet"))
        p.drawText(self._second_line(box, middle), _LEFT, text)

    def _ground(self, p: QPainter, box: Box, state: CellState) -> None:
        if not (state.current or state.hovered):
            return
        rect = QRectF(box.left + 0.5, box.top + 0.5, box.width - 1, box.height - 1)
        if state.current:
            width = 2.0 if state.focused else 1.25
            rect.adjust(0.5, 0.5, -0.5, -0.5)
            p.setPen(QPen(self._look.color("focus" if state.focused else "accent"), width))
            p.setBrush(self._look.color("accent_soft"))
        else:
            p.setPen(Qt.PenStyle.NoPen)
            p.setBrush(self._look.color("paper"))
        p.drawRoundedRect(rect, 6, 6)

    def _printable(self, glyphs: str) -> str:
        """The glyphs with plain ones for those that the font lacks."""
        if glyphs.isascii():
            return glyphs
        return "".join(
            glyph if self._move_width.inFontUcs4(ord(glyph)) else PLAIN_GLYPHS.get(glyph, "?") for glyph in glyphs
        )

    def _words(self, p: QPainter, box: Box, middle: float, words: str, state: CellState) -> None:
        rect = self._second_line(box, middle)
        p.setFont(self._spoken)
        p.setPen(self._look.color("ink" if state.current else "ink_quiet"))
        p.drawText(rect, _LEFT, self._short(words, int(rect.width())))

    def _second_line(self, box: Box, middle: float) -> QRectF:
        top = middle + self.heights.move / 2 + 1
        return QRectF(box.left + 8, top, box.width - 18, self.heights.spoken + 2)

    def _time(
        self,
        p: QPainter,
        right: float,
        middle: float,
        length: int,
        least: float,
        time: RowTime,
        scale: float,
        *,
        silent: bool,
    ) -> float:
        """The bar and its seconds, right-aligned; where their left end is.

        A silent move has no bar of its own, and a cell none in which the seconds would begin left of *least*.
        """
        text = short_seconds(time.planned)
        over = f"+{max(1, round(time.over))}" if time.over else ""
        width = max(self._seconds_width, self._small_width.horizontalAdvance(text))
        if over:
            width += self._bold_small_width.horizontalAdvance(over) + 6
        end = right - length - 8
        if end - width < least:
            end = right
        elif not silent or time.intended is not None:
            self._bar(p, QRectF(right - length, middle - _BAR_HEIGHT / 2, length, _BAR_HEIGHT), time, scale)
        p.setFont(self._small)
        p.setPen(self._look.color("ink_quiet"))
        p.drawText(QRectF(end - 80, middle - 12, 80, 24), _RIGHT, text)
        if over:
            p.setFont(self._bold_small)
            p.setPen(self._look.color("over"))
            p.drawText(QRectF(end - width, middle - 12, width, 24), _LEFT, over)
        return end - width

    def _bar(self, p: QPainter, bar: QRectF, time: RowTime, scale: float) -> None:
        """The words' length on a track; what is over the intended length goes on as an arrow in another colour."""
        radius = bar.height() / 2
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(self._look.color("track"))
        p.drawRoundedRect(bar, radius, radius)
        per_second = bar.width() / scale
        length = min(bar.width(), max(bar.height(), time.estimated * per_second))
        if not time.over or time.intended is None:
            p.setBrush(self._look.color("accent"))
            p.drawRoundedRect(QRectF(bar.left(), bar.top(), length, bar.height()), radius, radius)
        else:
            length = min(bar.width(), max(length, 18.0))
            fits = min(length - 12.0, max(bar.height(), time.intended * per_second))
            p.setBrush(self._look.color("accent"))
            p.drawRoundedRect(QRectF(bar.left(), bar.top(), fits, bar.height()), radius, radius)
            p.setBrush(self._look.color("over"))
            p.drawPath(_arrow(bar.left() + fits + 2, bar.left() + length, bar.center().y(), bar.height()))
        if time.intended is not None and not time.over:
            at = bar.left() + min(bar.width(), time.intended * per_second)
            p.setPen(QPen(self._look.color("ink_quiet"), 1.5))
            p.drawLine(QPointF(at, bar.top() - 2), QPointF(at, bar.bottom() + 2))

    # -- signs

    def _signs(self, p: QPainter, left: float, end: float, middle: float, row: RowText) -> None:
        """Tags and signs beside the move, as many as there is room for: the think pause first."""
        if row.think:
            left = self._think(p, left, end, middle, row.think)
        for wanted, draw in ((bool(row.marks), _draw_mark_sign), (row.note, _draw_note_sign)):
            if wanted and left + 14 <= end:
                p.setPen(QPen(self._look.color("ink_quiet"), 1.25))
                p.setBrush(Qt.BrushStyle.NoBrush)
                draw(p, round(left) + 0.5, round(middle) + 0.5)
                left += 18

    def _think(self, p: QPainter, left: float, end: float, middle: float, seconds: float) -> float:
        height = self.heights.small + 2
        for text in (f"think {short_seconds(seconds)}", "think", ""):
            width = self._bold_small_width.horizontalAdvance(text) + 14 if text else height + 4
            if left + width <= end:
                break
        else:
            return left
        rect = QRectF(left, middle - height / 2, width, height)
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(self._look.color("think_soft"))
        p.drawRoundedRect(rect, height / 2, height / 2)
        if text:
            p.setPen(self._look.color("think"))
            p.setFont(self._bold_small)
            p.drawText(rect, _CENTRE, text)
        else:
            p.setBrush(self._look.color("think"))
            for x in (-3.5, 1.5):
                p.drawRect(QRectF(rect.center().x() + x, middle - 4, 2, 8))
        return left + width + 8

    # -- rails

    def rail(self, p: QPainter, x: float, top: float, bottom: float, token: str, dashed: bool, width: float) -> None:
        """A straight piece of rail."""
        p.setPen(self._rail_pen(token, dashed, width))
        p.drawLine(QPointF(x, top), QPointF(x, bottom))

    def turnout(
        self, p: QPainter, start: float, x: float, top: float, bottom: float, token: str, dashed: bool, width: float
    ) -> None:
        """The rail of a side-line from the node that it leaves: across, round the curve and down to its first disc."""
        path = QPainterPath(QPointF(start, top))
        path.lineTo(x - _CURVE, top)
        path.quadTo(x, top, x, top + _CURVE)
        path.lineTo(x, bottom)
        p.setPen(self._rail_pen(token, dashed, width))
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.drawPath(path)

    def _rail_pen(self, token: str, dashed: bool, width: float) -> QPen:
        pen = QPen(self._look.color(token), width)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap if dashed else Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        if dashed:
            pen.setDashPattern([3.0, 2.5])
        return pen

    def disc(self, p: QPainter, x: float, y: float, white: bool | None, token: str, state: CellState) -> None:
        """A move on its rail: open for White's, filled for Black's, a square for what is no move."""
        color = self._look.color("accent" if state.on_path or state.current else token)
        ground = self._look.color("surface")
        p.setPen(QPen(color, 1.75))
        p.setBrush(color if white is False else ground)
        radius = _DISC + (1.0 if state.current else 0.0)
        if white is None:
            p.drawRoundedRect(QRectF(x - radius, y - radius, 2 * radius, 2 * radius), 1.5, 1.5)
        else:
            p.drawEllipse(QPointF(x, y), radius, radius)

    def knob(self, p: QPainter, box: Box, token: str, folded: int, hovered: bool) -> None:
        """The place where side-lines leave: minus to fold them, plus and their number where they are folded."""
        x, y = box.left + box.width / 2, box.top + box.height / 2
        color = self._look.color(token)
        p.setPen(QPen(color, 1.5))
        p.setBrush(self._look.color("accent_soft" if hovered else "surface"))
        if folded:
            text = f"+{folded}"
            width = max(18.0, self._bold_small_width.horizontalAdvance(text) + 8)
            rect = QRectF(x - width / 2, y - 8, width, 16)
            p.drawRoundedRect(rect, 8, 8)
            p.setFont(self._bold_small)
            p.setPen(color)
            p.drawText(rect, _CENTRE, text)
            return
        p.drawEllipse(QPointF(x, y), 6, 6)
        p.drawLine(QPointF(x - 2.5, y), QPointF(x + 2.5, y))

    # -- headings

    def heading(self, p: QPainter, box: Box, name: str, details: str, hidden: bool, hovered: bool) -> None:
        """The name of a side-line above its first row, with its seconds or when it is told."""
        left = box.left + 8
        rect = QRectF(left, box.top, box.right - left - 10, box.height)
        p.setFont(self._bold_small)
        p.setPen(self._look.color("ink_quiet" if hidden else "accent" if hovered else "side_line"))
        gap = 8.0
        needed = self._small_width.horizontalAdvance(details) + gap if details else 0.0
        room = max(rect.width() - needed, 0.6 * rect.width())
        width = min(self._bold_small_width.horizontalAdvance(name), room)
        p.drawText(rect, _LEFT, self._bold_small_width.elidedText(name, Qt.TextElideMode.ElideRight, width + 1))
        if details:
            rect.setLeft(left + width + gap)
            p.setFont(self._small)
            p.setPen(self._look.color("ink_quiet"))
            text = self._small_width.elidedText(details, Qt.TextElideMode.ElideRight, rect.width())
            p.drawText(rect, _LEFT, text)

    def drop(self, p: QPainter, x: float, top: float, bottom: float) -> None:
        """Where a side-line that is being dragged would go."""
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(self._look.color("focus"))
        p.drawRoundedRect(QRectF(x - 1.5, top, 3, bottom - top), 1.5, 1.5)
        p.drawEllipse(QPointF(x, top), 4, 4)

    def strip(self, p: QPainter, width: float, height: float) -> None:
        """The ground of the strip above the lanes."""
        p.fillRect(QRectF(0, 0, width, height), self._look.color("surface"))
        p.setPen(QPen(self._look.color("rule"), 1.0))
        p.drawLine(QPointF(0, height - 0.5), QPointF(width, height - 0.5))

    def strip_name(self, p: QPainter, left: float, width: float, height: float, name: str, main: bool) -> None:
        """The name of the line that fills the lane below."""
        p.setFont(self._bold_small)
        p.setPen(self._look.color("ink_quiet" if main else "side_line"))
        text = self._bold_small_width.elidedText(name, Qt.TextElideMode.ElideRight, width)
        p.drawText(QRectF(left, 0, width, height - 1), _LEFT, text)

    def _ink(self, state: CellState, token: str) -> QColor:
        return self._look.color("ink_quiet" if state.hidden and token == "ink" and not state.current else token)

    def _short(self, text: str, width: int) -> str:
        key = (text, width)
        found = self._shortened.get(key)
        if found is None:
            if len(self._shortened) > 4000:
                self._shortened.clear()
            found = self._shortened[key] = self._spoken_width.elidedText(text, Qt.TextElideMode.ElideRight, width)
        return found


def _aligned_figures(font: QFont) -> QFont:
    font.setFeature(QFont.Tag("tnum"), 1)
    return font


def _arrow(left: float, right: float, middle: float, height: float) -> QPainterPath:
    tip = min(height, right - left)
    path = QPainterPath(QPointF(left, middle - height / 2))
    path.lineTo(right - tip, middle - height / 2)
    path.lineTo(right - tip, middle - height / 2 - 2)
    path.lineTo(right, middle)
    path.lineTo(right - tip, middle + height / 2 + 2)
    path.lineTo(right - tip, middle + height / 2)
    path.lineTo(left, middle + height / 2)
    path.closeSubpath()
    return path


def _draw_mark_sign(p: QPainter, left: float, middle: float) -> None:
    p.drawLine(QPointF(left + 1, middle + 4), QPointF(left + 9, middle - 4))
    p.drawPolyline([QPointF(left + 4, middle - 4), QPointF(left + 9, middle - 4), QPointF(left + 9, middle + 1)])


def _draw_note_sign(p: QPainter, left: float, middle: float) -> None:
    p.drawRoundedRect(QRectF(left + 1, middle - 5, 9, 10), 1.5, 1.5)
    for y in (-2, 1):
        p.drawLine(QPointF(left + 3.5, middle + y), QPointF(left + 7.5, middle + y))
