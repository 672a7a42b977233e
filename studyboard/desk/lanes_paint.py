"""Painting the lanes: cells with their signs and time bars, discs and knobs, headings."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen

from studyboard.desk.lanes_geometry import Box, TextHeights
from studyboard.desk.lanes_rows import PLAIN_GLYPHS, RowText, short_seconds
from studyboard.desk.lanes_times import RowTime
from studyboard.desk.look import Look
from studyboard.translation import tr

#: How long a time bar is in a cell of at least that width, and how high, in heights of a line of text.
_BAR_LENGTHS = ((17.0, 4.0), (13.5, 2.9), (0.0, 1.7))
_BAR_HEIGHT = 0.43
#: The height of a line of text for which signs, discs and knobs are drawn (px); they grow and shrink with it.
_DRAWN_FOR = 14.0
#: Radius of the disc of a move on its rail, of a knob, and the most of them that a rail has room for (px).
_DISC = 4.0
_KNOB = 6.0
_ROOM = 10.0

_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT_BOTTOM = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom
_CENTRE = Qt.AlignmentFlag.AlignCenter


@dataclass(frozen=True, slots=True)
class CellState:
    """How one cell is to be painted.

    current: it is shown on the board
    on_path: it lies on the way to the node that is shown
    hovered: the pointer is over it
    hidden: its side-line is not told
    focused: the lanes have the keyboard
    chosen: it is chosen together with others
    found: what is sought was found in it
    held: its branch is being dragged
    """

    current: bool = False
    on_path: bool = False
    hovered: bool = False
    hidden: bool = False
    focused: bool = False
    chosen: bool = False
    found: bool = False
    held: bool = False


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
        self._size = self.heights.move / _DRAWN_FOR

    # -- cells

    def cell(
        self, p: QPainter, box: Box, middle: float, row: RowText, time: RowTime | None, scale: float, state: CellState
    ) -> None:
        """One cell: its ground where it is chosen, its move, signs, seconds, and the beginning of its line."""
        self._ground(p, box, state)
        left, right = box.left + 8, box.right - 8
        label = row.label + self._printable(row.glyphs)
        label_end = left + self._move_width.horizontalAdvance(label)
        end = right
        if time is not None:
            line = self.heights.move
            length = round(next(length for least, length in _BAR_LENGTHS if box.width >= least * line) * line)
            end = self._time(p, right, middle, length, label_end + 12, time, scale, silent=not row.words)
        p.setFont(self._move)
        p.setPen(self._ink(state, "ink"))
        p.drawText(self._first_line(left, middle, max(label_end, end) - left), _LEFT, label)
        self._signs(p, label_end + 8, end - 8, middle, row)
        if row.words:
            self._words(p, box, middle, row.words, state)

    def placeholder(self, p: QPainter, box: Box, middle: float, name: str, text: str, state: CellState) -> None:
        """The cell of a part of the talk in which nothing is said yet."""
        self._ground(p, box, state)
        p.setPen(self._ink(state, "ink_quiet"))
        p.setFont(self._move)
        p.drawText(self._first_line(box.left + 8, middle, box.width - 16), _LEFT, name)
        p.setFont(self._placeholder)
        p.setPen(self._look.color("ink_quiet"))
        p.drawText(self._second_line(box, middle), _LEFT, text)

    def _ground(self, p: QPainter, box: Box, state: CellState) -> None:
        rect = QRectF(box.left + 0.5, box.top + 0.5, box.width - 1, box.height - 1)
        if state.current:
            width = 2.0 if state.focused else 1.25
            rect.adjust(0.5, 0.5, -0.5, -0.5)
            p.setPen(QPen(self._look.color("focus" if state.focused else "accent"), width))
            p.setBrush(self._look.color("accent_soft"))
        elif state.chosen:
            p.setPen(QPen(self._look.color("accent"), 1.25))
            p.setBrush(self._look.color("accent_soft"))
        elif state.hovered or state.found:
            p.setPen(Qt.PenStyle.NoPen)
            p.setBrush(self._look.color("selection" if state.found else "paper"))
        if state.current or state.chosen or state.hovered or state.found:
            p.drawRoundedRect(rect, 6, 6)
        if state.held:
            p.setPen(QPen(self._look.color("ink_quiet"), 1.25, Qt.PenStyle.DashLine))
            p.setBrush(Qt.BrushStyle.NoBrush)
            p.drawRoundedRect(rect, 6, 6)
        if state.found:
            # A bar at its left edge, so that it is told from the others without seeing colours.
            p.setPen(Qt.PenStyle.NoPen)
            p.setBrush(self._look.color("focus"))
            p.drawRoundedRect(QRectF(box.left, box.top + 3, 4, box.height - 6), 2, 2)

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

    def _first_line(self, left: float, middle: float, width: float) -> QRectF:
        return QRectF(left, middle - self.heights.move, width, 2 * self.heights.move)

    def _second_line(self, box: Box, middle: float) -> QRectF:
        top = middle + self.heights.move / 2 + 1
        return QRectF(box.left + 8, top, box.width - 16, self.heights.spoken + 2)

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
            height = 2 * round(_BAR_HEIGHT * self.heights.move / 2)
            self._bar(p, QRectF(right - length, middle - height / 2, length, height), time, scale)
        p.setFont(self._small)
        p.setPen(self._look.color("ink_quiet"))
        p.drawText(self._first_line(end - width, middle, width), _RIGHT, text)
        if over:
            p.setFont(self._bold_small)
            p.setPen(self._look.color("over"))
            p.drawText(self._first_line(end - width, middle, width), _LEFT, over)
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
            length = min(bar.width(), max(length, 3 * bar.height()))
            fits = min(length - 2 * bar.height(), max(bar.height(), time.intended * per_second))
            p.setBrush(self._look.color("accent"))
            p.drawRoundedRect(QRectF(bar.left(), bar.top(), fits, bar.height()), radius, radius)
            p.setBrush(self._look.color("over"))
            p.drawPath(_arrow(bar.left() + fits + 2, bar.left() + length, bar.center().y(), bar.height()))
        if time.intended is not None and not time.over:
            at = bar.left() + min(bar.width(), time.intended * per_second)
            p.setPen(QPen(self._look.color("ink_quiet"), 1.5))
            beyond = bar.height() / 3
            p.drawLine(QPointF(at, bar.top() - beyond), QPointF(at, bar.bottom() + beyond))

    # -- signs

    def _signs(self, p: QPainter, left: float, end: float, middle: float, row: RowText) -> None:
        """Tags and signs beside the move, as many as there is room for: the think pause first."""
        if row.think:
            left = self._think(p, left, end, middle, row.think)
        for wanted, draw in ((bool(row.marks), _draw_mark_sign), (row.note, _draw_note_sign)):
            if wanted and left + 14 * self._size <= end:
                p.setPen(QPen(self._look.color("ink_quiet"), 1.25))
                p.setBrush(Qt.BrushStyle.NoBrush)
                p.save()
                p.translate(round(left) + 0.5, round(middle) + 0.5)
                p.scale(self._size, self._size)
                draw(p)
                p.restore()
                left += 18 * self._size

    def _think(self, p: QPainter, left: float, end: float, middle: float, seconds: float) -> float:
        height = self.heights.small + 2
        for text in (tr("think {seconds}", seconds=short_seconds(seconds)), tr("think"), ""):
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
            bar = height / 8
            for x in (-1.75 * bar, 0.75 * bar):
                p.drawRect(QRectF(rect.center().x() + x, middle - 2 * bar, bar, 4 * bar))
        return left + width + 8

    # -- on the rails

    def disc(self, p: QPainter, x: float, y: float, white: bool | None, token: str, state: CellState) -> None:
        """A move on its rail: open for White's, filled for Black's, a square for no move; a tick where chosen."""
        if state.chosen:
            self.chosen(p, x, y, state)
            return
        color = self._look.color("accent" if state.on_path or state.current else token)
        ground = self._look.color("surface")
        p.setPen(QPen(color, 1.75))
        p.setBrush(color if white is False else ground)
        radius = min(_ROOM, _DISC * self._size) + (1.0 if state.current else 0.0)
        if white is None:
            p.drawRoundedRect(QRectF(x - radius, y - radius, 2 * radius, 2 * radius), 1.5, 1.5)
        else:
            p.drawEllipse(QPointF(x, y), radius, radius)

    def chosen(self, p: QPainter, x: float, y: float, state: CellState) -> None:
        """The tick of a row that is chosen together with others; nothing where it is not."""
        if not state.chosen:
            return
        side = min(_ROOM - 1, 1.8 * _DISC * self._size)
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(self._look.color("accent"))
        p.drawRoundedRect(QRectF(x - side, y - side, 2 * side, 2 * side), 3, 3)
        p.setPen(QPen(self._look.color("on_accent"), max(1.5, side / 4.5)))
        p.drawPolyline(
            [
                QPointF(x - 0.5 * side, y + 0.02 * side),
                QPointF(x - 0.12 * side, y + 0.42 * side),
                QPointF(x + 0.52 * side, y - 0.42 * side),
            ]
        )

    def knob(self, p: QPainter, box: Box, token: str, folded: int, hovered: bool) -> None:
        """The place where side-lines leave: minus to fold them, plus and their number where they are folded."""
        x, y = box.left + box.width / 2, box.top + box.height / 2
        color = self._look.color(token)
        p.setPen(QPen(color, 1.5))
        p.setBrush(self._look.color("accent_soft" if hovered else "surface"))
        if folded:
            text = f"+{folded}"
            height = max(16.0, self.heights.small + 3.0)
            width = max(height + 2, self._bold_small_width.horizontalAdvance(text) + height / 2)
            rect = QRectF(x - width / 2, y - height / 2, width, height)
            p.drawRoundedRect(rect, height / 2, height / 2)
            p.setFont(self._bold_small)
            p.setPen(color)
            p.drawText(rect, _CENTRE, text)
            return
        radius = min(_ROOM, _KNOB * self._size)
        p.drawEllipse(QPointF(x, y), radius, radius)
        p.drawLine(QPointF(x - 0.42 * radius, y), QPointF(x + 0.42 * radius, y))

    # -- headings

    def heading(self, p: QPainter, box: Box, name: str, details: str, hidden: bool, hovered: bool) -> None:
        """The name of a side-line above its first row, with its seconds or when it is told."""
        left = box.left + 8
        rect = QRectF(left, box.top, box.right - left - 8, box.height - 2)
        p.setFont(self._bold_small)
        p.setPen(self._look.color("ink_quiet" if hidden else "accent" if hovered else "side_line"))
        gap = 8.0
        needed = self._small_width.horizontalAdvance(details) + gap if details else 0.0
        room = max(rect.width() - needed, 0.6 * rect.width())
        width = min(self._bold_small_width.horizontalAdvance(name), room)
        p.drawText(rect, _LEFT_BOTTOM, self._bold_small_width.elidedText(name, Qt.TextElideMode.ElideRight, width + 1))
        if details:
            rect.setLeft(left + width + gap)
            p.setFont(self._small)
            p.setPen(self._look.color("ink_quiet"))
            text = self._small_width.elidedText(details, Qt.TextElideMode.ElideRight, rect.width())
            p.drawText(rect, _LEFT_BOTTOM, text)

    def strip(self, p: QPainter, width: float, height: float) -> None:
        """The ground of the strip above the lanes."""
        p.fillRect(QRectF(0, 0, width, height), self._look.color("surface"))
        p.setPen(QPen(self._look.color("rule"), 1.0))
        p.drawLine(QPointF(0, height - 0.5), QPointF(width, height - 0.5))

    def strip_count(self, p: QPainter, width: int, height: float, words: str) -> int:
        """How many rows are chosen, at the right of the strip; where that begins (px)."""
        needed = self._bold_small_width.horizontalAdvance(words) + 20
        rect = QRectF(width - needed - 8, 3, needed, height - 7)
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(self._look.color("accent"))
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.drawRoundedRect(rect, rect.height() / 2, rect.height() / 2)
        p.setFont(self._bold_small)
        p.setPen(self._look.color("on_accent"))
        p.drawText(rect, _CENTRE, words)
        return int(rect.left()) - 8

    def strip_name(self, p: QPainter, left: float, width: float, height: float, name: str, main: bool) -> None:
        """The name of the line that fills the lane below; nothing where only its first letters would fit."""
        if width < 5 * self.heights.small:
            return
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
    path.lineTo(right - tip, middle - height * 5 / 6)
    path.lineTo(right, middle)
    path.lineTo(right - tip, middle + height * 5 / 6)
    path.lineTo(right - tip, middle + height / 2)
    path.lineTo(left, middle + height / 2)
    path.closeSubpath()
    return path


def _draw_mark_sign(p: QPainter) -> None:
    p.drawLine(QPointF(1, 4), QPointF(9, -4))
    p.drawPolyline([QPointF(4, -4), QPointF(9, -4), QPointF(9, 1)])


def _draw_note_sign(p: QPainter) -> None:
    p.drawRoundedRect(QRectF(1, -5, 9, 10), 1.5, 1.5)
    for y in (-2, 1):
        p.drawLine(QPointF(3.5, y), QPointF(7.5, y))
