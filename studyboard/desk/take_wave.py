"""The sound of a take as a picture, in which a stretch is chosen by pointer or keys."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from studyboard.desk.board_accessible import show_as_picture
from studyboard.desk.look import Look
from studyboard.desk.parts_accessible import NoParts
from studyboard.model.takes import Span
from studyboard.sound.silences import phrase_at
from studyboard.translation import tr

#: How far the arrows go, alone, with Ctrl, and the page keys (s).
_STEP, _FINE, _COARSE = 0.05, 0.005, 1.0
#: How much louder than its loudest sample the picture can show (dBFS at full height): quiet takes fill it too.
_QUIETEST_FULL = 0.05
_FIGURES = 0.78


class TakeWave(QWidget):
    """One stretch of a take.

    State: the samples that are shown, which of them are left out or picked up, where the cursor stands, where the
    choice began, and what is being heard. Places are samples of the take.

    moved: the cursor stands elsewhere, or another stretch is chosen
    play_wanted: the space bar was pressed
    """

    moved = Signal()
    play_wanted = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._shown = Span(0, 1)
        self._rate = 48_000
        self._samples: NDArray[np.int16] = np.zeros(0, np.int16)
        self._left_out: tuple[Span, ...] = ()
        self._picked_up: tuple[Span, ...] = ()
        self._cursor = 0
        self._anchor: int | None = None
        self._heard: int | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.IBeamCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(tr("Sound of the take"))
        show_as_picture(self, NoParts())
        look.changed.connect(self.update)

    def sizeHint(self) -> QSize:
        """Wide and low."""
        return QSize(560, 7 * self.fontMetrics().height())

    def minimumSizeHint(self) -> QSize:
        """See sizeHint."""
        return QSize(200, 4 * self.fontMetrics().height())

    def show_sound(
        self, shown: Span, rate: int, pcm: bytes, left_out: tuple[Span, ...] = (), picked_up: tuple[Span, ...] = ()
    ) -> None:
        """Show this stretch of a take; the choice stays where it is inside of it.

        pcm: its 16-bit sound; left_out, picked_up: what of the take is not heard, and what is heard anew
        """
        same = shown == self._shown and rate == self._rate
        self._shown, self._rate = shown, rate
        self._samples = np.frombuffer(pcm, "<i2")
        self._left_out, self._picked_up = left_out, picked_up
        if not same:
            self._cursor, self._anchor, self._heard = shown.start, None, None
            self.moved.emit()
        self._tell()
        self.update()

    @property
    def cursor_sample(self) -> int:
        """Where the cursor stands."""
        return self._cursor

    @property
    def chosen(self) -> Span | None:
        """The stretch that is chosen, None where there is none."""
        if self._anchor is None or self._anchor == self._cursor:
            return None
        return Span(min(self._anchor, self._cursor), max(self._anchor, self._cursor))

    def choose(self, span: Span | None) -> None:
        """Choose a stretch, or none."""
        if span is None:
            self._anchor = None
        else:
            self._anchor, self._cursor = self._inside(span.start), self._inside(span.end)
        self._changed()

    def show_heard(self, sample: int | None) -> None:
        """Show which sample is being heard, None for none."""
        if sample != self._heard:
            self._heard = sample
            self.update()

    @property
    def words(self) -> str:
        """Where the cursor stands and what is chosen, in words. Seconds count from the start of the take."""
        chosen = self.chosen
        if chosen is None:
            return tr("At {seconds:.2f} s. Shift and the arrows choose a stretch.", seconds=self._cursor / self._rate)
        return tr(
            "Chosen: {start:.2f} to {end:.2f} s, {length:.2f} s long.",
            start=chosen.start / self._rate,
            end=chosen.end / self._rate,
            length=chosen.samples / self._rate,
        )

    # ---- keys and pointer -------------------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows and page keys move, with Shift they choose; Space plays; Escape leaves the choice."""
        step = _FINE if event.modifiers() & Qt.KeyboardModifier.ControlModifier else _STEP
        places = {
            Qt.Key.Key_Left: self._cursor - round(step * self._rate),
            Qt.Key.Key_Right: self._cursor + round(step * self._rate),
            Qt.Key.Key_PageUp: self._cursor - round(_COARSE * self._rate),
            Qt.Key.Key_PageDown: self._cursor + round(_COARSE * self._rate),
            Qt.Key.Key_Home: self._shown.start,
            Qt.Key.Key_End: self._shown.end,
        }
        key = Qt.Key(event.key())
        if key in places:
            self._go(places[key], choosing=bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        elif key == Qt.Key.Key_Space:
            self.play_wanted.emit()
        elif key == Qt.Key.Key_Escape and self.chosen is not None:
            self.choose(None)
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The cursor goes to the pointer; with Shift the choice does."""
        if event.button() is Qt.MouseButton.LeftButton:
            shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self._go(self._sample(event.position().x()), choosing=shift)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Dragging chooses."""
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._go(self._sample(event.position().x()), choosing=True)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """All that is between two silences is chosen: mostly a phrase."""
        self.choose(self._phrase(self._sample(event.position().x())))

    def _go(self, sample: int, *, choosing: bool) -> None:
        if not choosing:
            self._anchor = None
        elif self._anchor is None:
            self._anchor = self._cursor
        self._cursor = self._inside(sample)
        self._changed()

    def _changed(self) -> None:
        self._tell()
        self.update()
        self.moved.emit()

    def _tell(self) -> None:
        self.setAccessibleDescription(self.words)

    def _inside(self, sample: int) -> int:
        return max(self._shown.start, min(sample, self._shown.end))

    def _phrase(self, sample: int) -> Span | None:
        found = phrase_at(self._samples, sample - self._shown.start, self._rate)
        return None if found is None else Span(self._shown.start + found[0], self._shown.start + found[1])

    # ---- picture ----------------------------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the sound, what is not heard of it, the choice, the cursor and a scale."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look = self._look
        scale = QFontMetrics(look.ui_font(_FIGURES)).height() + 4
        box = QRectF(1, 1, self.width() - 2, self.height() - scale - 2)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look.color("track"))
        painter.drawRoundedRect(box, 4, 4)
        chosen = self.chosen
        if chosen is not None:
            painter.setBrush(look.color("side_line_soft"))
            painter.drawRect(self._rect(chosen, box))
        self._paint_sound(painter, box)
        for span in self._left_out:
            self._paint_left_out(painter, self._rect(span, box))
        for span in self._picked_up:
            rect = self._rect(span, box)
            painter.setPen(QPen(look.color("accent"), 3))
            painter.drawLine(QPointF(rect.left() + 1, box.bottom() - 2), QPointF(rect.right() - 1, box.bottom() - 2))
        painter.setPen(QPen(look.color("ink"), 2))
        x = self._x(self._cursor)
        painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()))
        if self._heard is not None:
            painter.setPen(QPen(look.color("over"), 2))
            x = self._x(self._heard)
            painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()))
        self._paint_scale(painter, box)
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(look.color("accent"), 2))
            painter.drawRoundedRect(box, 4, 4)
        painter.end()

    def _paint_sound(self, painter: QPainter, box: QRectF) -> None:
        columns = max(1, int(box.width()))
        if not len(self._samples):
            return
        edges = np.linspace(0, len(self._samples), columns + 1).astype(int)[:-1]
        high = np.maximum.reduceat(self._samples, edges).astype(np.float64)
        low = np.minimum.reduceat(self._samples, edges).astype(np.float64)
        full = max(_QUIETEST_FULL * 32_768, float(max(high.max(), -low.min())))
        middle, reach = box.center().y(), box.height() / 2 - 3
        xs = box.left() + (np.arange(columns) + 0.5) * box.width() / columns
        share = len(self._samples) / max(1, self._shown.samples)
        xs = box.left() + (xs - box.left()) * share
        upper = [QPointF(x, middle - reach * y / full - 0.5) for x, y in zip(xs, high, strict=True)]
        lower = [QPointF(x, middle - reach * y / full + 0.5) for x, y in zip(xs, low, strict=True)]
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._look.color("ink_quiet"))
        painter.drawPolygon(QPolygonF(upper + lower[::-1]))

    def _paint_left_out(self, painter: QPainter, rect: QRectF) -> None:
        """Veiled and struck through, so that it is seen without its colour."""
        veil = self._look.color("track")
        veil.setAlpha(200)
        painter.fillRect(rect, veil)
        painter.save()
        painter.setClipRect(rect)
        painter.setPen(QPen(self._look.color("over"), 1))
        x = rect.left() - rect.height()
        while x < rect.right():
            painter.drawLine(QPointF(x, rect.bottom()), QPointF(x + rect.height(), rect.top()))
            x += 10
        painter.restore()

    def _paint_scale(self, painter: QPainter, box: QRectF) -> None:
        painter.setFont(self._look.ui_font(_FIGURES))
        painter.setPen(self._look.color("ink_quiet"))
        metrics = painter.fontMetrics()
        seconds = self._shown.samples / self._rate
        room = metrics.horizontalAdvance("00:00.0") * 1.6
        step = next(
            (one for one in (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 60, 120, 300) if one * box.width() >= room * seconds), 600
        )
        first = int(np.ceil(self._shown.start / self._rate / step - 1e-9))
        for number in range(first, first + int(seconds / step) + 2):
            x = self._x(round(number * step * self._rate))
            text = f"{number * step:.1f}" if step < 1 else f"{number * step:.0f}"
            width = metrics.horizontalAdvance(text)
            if x - width / 2 < 0 or x + width / 2 > self.width():
                continue
            painter.drawLine(QPointF(x, box.bottom()), QPointF(x, box.bottom() + 3))
            painter.drawText(QPointF(x - width / 2, box.bottom() + 3 + metrics.ascent()), text)

    def _rect(self, span: Span, box: QRectF) -> QRectF:
        left, right = max(box.left(), self._x(span.start)), min(box.right(), self._x(span.end))
        return QRectF(left, box.top(), max(0.0, right - left), box.height())

    def _x(self, sample: int) -> float:
        return 1 + (sample - self._shown.start) / max(1, self._shown.samples) * (self.width() - 2)

    def _sample(self, x: float) -> int:
        return self._shown.start + round((x - 1) / max(1, self.width() - 2) * self._shown.samples)
