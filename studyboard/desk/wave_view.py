"""The wave of a take with its beats, moves and words; the board follows wherever one goes in it."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QPolygonF,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from studyboard.desk.announcing import announce
from studyboard.desk.board_accessible import show_as_list
from studyboard.desk.look import Look
from studyboard.desk.painted_parts import MomentParts
from studyboard.desk.ruler_scale import RulerScale, fitting, tick_step, ticks
from studyboard.desk.wave_talk import WaveTalk, in_view
from studyboard.sound.peaks import Peaks
from studyboard.timing.clock import clock
from studyboard.translation import tr

_MARGIN = 20
_ZOOM = 1.25
#: One press of an arrow (s), and with Alt.
_STEP, _FINE = 1.0, 0.1
_WAVE = 48
_SOFTENED = 0.7
#: Below this many px to a second, words would stand too far apart to be read as a line.
_WORDS_FROM = 30.0
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_CENTRE = Qt.AlignmentFlag.AlignCenter


class WaveView(QWidget):
    """One take to scale.

    State: the take's wave and talk, which seconds are in view, and where one stands.

    moved_to: the user went to another second of the take; carries it
    """

    moved_to = Signal(float)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._peaks: Peaks | None = None
        self._talk: WaveTalk | None = None
        self._rate = 48_000
        self._note = ""
        self._at = 0.0
        self._scale = fitting(1.0, 100.0, _MARGIN)
        self._fits = True
        self._still: QPixmap | None = None
        self._scrubbing = False
        self._pan_from: float | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Wave of the take"))
        show_as_list(self, MomentParts(self))
        self.setToolTip(
            tr(
                "Arrows: a second, with Alt a tenth. Ctrl: word by word. Page keys: move by move. "
                "Ctrl and page keys: beat by beat. + and - zoom, 0 shows all. Space plays."
            )
        )
        look.changed.connect(self._relook)
        self._relook()

    @property
    def at(self) -> float:
        """The second at which one stands."""
        return self._at

    @property
    def place(self) -> str:
        """Where one stands, in words."""
        return tr("No take yet") if self._talk is None else self._talk.told(self._at)

    @property
    def scale(self) -> RulerScale:
        """Which seconds are in view."""
        return self._scale

    def show_take(self, talk: WaveTalk | None, rate: int = 48_000, *, anew: bool = True) -> None:
        """Show another take, or the same one after an edit. anew: from its beginning, all of it"""
        self._talk, self._rate = talk, rate
        if anew:
            self._peaks = None
            self._fits = True
            self._at = 0.0
        self._rescale()
        self._tell()

    def show_peaks(self, peaks: Peaks | None, note: str = "") -> None:
        """Show the wave itself, or a sentence for as long as there is none."""
        self._peaks, self._note = peaks, note
        self._repaint_all()

    def stand_at(self, seconds: float) -> None:
        """Stand at this second, as playback goes on; nothing is told to others."""
        if self._talk is None:
            return
        self._at = min(max(0.0, seconds), self._talk.seconds)
        self._keep_in_view()
        self.update()

    def go_to(self, seconds: float) -> None:
        """Go to this second; the board follows."""
        if self._talk is None:
            return
        self.stand_at(seconds)
        self._tell()
        self.moved_to.emit(self._at)

    def zoom(self, factor: float, x: float | None = None) -> None:
        """Make seconds that many times wider around *x* (px), or around where one stands."""
        self._fits = False
        self._scale = self._scale.zoomed(factor, self._scale.x(self._at) if x is None else x)
        self._rescale()

    def fit(self) -> None:
        """Show the whole take."""
        self._fits = True
        self._rescale()

    # ---- for assistive programs -------------------------------------------------------------------------------------

    @property
    def moments(self) -> int:
        """How many moments there are at which the board changes."""
        return 0 if self._talk is None else len(self._talk.moves)

    @property
    def current_moment(self) -> int | None:
        """Index of the last of them up to where one stands."""
        talk = self._talk
        move = None if talk is None else talk.move_at(self._at)
        return None if talk is None or move is None else talk.moves.index(move)

    def moment_in_words(self, index: int) -> str:
        """One of them for someone who does not see it."""
        return "" if self._talk is None else self._talk.told(self._talk.moves[index].at)

    def moment_rect(self, index: int) -> QRect:
        """Where its line and its move stand; empty where that is out of view."""
        if self._talk is None:
            return QRect()
        move = self._talk.moves[index]
        x, top = round(self._scale.x(move.at)), self._rows()[2]
        width = max(8, round(self._move_measure.horizontalAdvance(move.label)))
        return QRect(x, top, width, self._rows()[4] - top).intersected(self.rect())

    # ---- where things lie -------------------------------------------------------------------------------------------

    def _relook(self) -> None:
        self._small = self._look.ui_font(0.85)
        self._move_font = self._look.move_font(0.85)
        self._measure, self._move_measure = QFontMetricsF(self._small), QFontMetricsF(self._move_font)
        self._text = round(self._measure.height())
        self.updateGeometry()
        self._repaint_all()

    def _rows(self) -> tuple[int, int, int, int, int]:
        """Tops of the ticks, of the beats, of the moves, of the wave, and of the words (px)."""
        line = self._text + 2
        return 2, 4 + line, 4 + 2 * line, 4 + 3 * line, 4 + 3 * line + _WAVE + 2

    def sizeHint(self) -> QSize:
        """As high as its rows."""
        return QSize(800, self._rows()[4] + self._text + 6)

    def minimumSizeHint(self) -> QSize:
        """As high as its rows."""
        return QSize(240, self.sizeHint().height())

    def _rescale(self) -> None:
        width = max(1.0, self.width() - 2.0 * _MARGIN)
        reach = self._talk.seconds if self._talk is not None else 1.0
        if self._fits:
            self._scale = fitting(reach, width, _MARGIN)
        else:
            self._scale = RulerScale(self._scale.start, self._scale.per_second, width, _MARGIN).within(reach)
        self._repaint_all()

    def _keep_in_view(self) -> None:
        x = self._scale.x(self._at)
        if not self._fits and not _MARGIN <= x <= self.width() - _MARGIN:
            start = self._at - 0.2 * self._scale.width / self._scale.per_second
            self._scale = RulerScale(start, self._scale.per_second, self._scale.width, _MARGIN)
            self._rescale()

    def _tell(self) -> None:
        announce(self, self.place)

    def _repaint_all(self) -> None:
        self._still = None
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The take fills the new width."""
        super().resizeEvent(event)
        self._rescale()

    # ---- painting ---------------------------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """The still picture, and where one stands."""
        p = QPainter(self)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.drawPixmap(0, 0, self._still_picture())
        if self._talk is not None:
            x, ink = self._scale.x(self._at), self._look.color("ink")
            p.setPen(QPen(ink, 1.5))
            p.drawLine(QPointF(x, self._rows()[2]), QPointF(x, self.height() - 3))
            p.setPen(Qt.PenStyle.NoPen)
            p.setBrush(ink)
            top = self._rows()[2] - 4
            p.drawPolygon(QPolygonF([QPointF(x - 5, top), QPointF(x + 5, top), QPointF(x, top + 7)]))
        if self.hasFocus():
            p.setPen(QPen(self._look.color("focus"), 2.0))
            p.setBrush(Qt.BrushStyle.NoBrush)
            p.drawRoundedRect(QRectF(1, 1, self.width() - 2, self.height() - 2), 7, 7)
        p.end()

    def _still_picture(self) -> QPixmap:
        if self._still is None:
            ratio = self.devicePixelRatioF()
            self._still = QPixmap(self.size() * ratio)
            self._still.setDevicePixelRatio(ratio)
            self._still.fill(self._look.color("surface"))
            p = QPainter(self._still)
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self._talk is not None:
                self._paint_beats(p, self._talk)
                self._paint_wave(p)
                self._paint_moves(p, self._talk)
                self._paint_words(p, self._talk)
            else:
                self._paint_note(p, tr("There is no take yet: record one, or take in a sound file."))
            p.end()
        return self._still

    def _paint_note(self, p: QPainter, text: str) -> None:
        p.setFont(self._small)
        p.setPen(self._look.color("ink_quiet"))
        p.drawText(QRectF(0, self._rows()[3], self.width(), _WAVE), _CENTRE, text)

    def _paint_beats(self, p: QPainter, talk: WaveTalk) -> None:
        """Beats as alternating grounds with their names; ticks with the seconds between."""
        scale, (times, top, _, wave, words) = self._scale, self._rows()
        soft = QColor(self._look.color("track"))
        soft.setAlphaF(0.45)
        step = tick_step(scale.per_second, self._measure.horizontalAdvance("88:88") + 28)
        free = -1e9
        for number, beat in enumerate(talk.beats):
            left, right = scale.x(beat.start), scale.x(beat.end)
            if right < 0 or left > self.width():
                continue
            if number % 2:
                p.fillRect(QRectF(left, wave, right - left, words - wave), soft)
            shown = max(left, float(_MARGIN)) + 4
            width = self._measure.horizontalAdvance(beat.label)
            if shown + width < right and shown > free:
                p.setFont(self._small)
                p.setPen(self._look.color("ink"))
                p.drawText(QRectF(shown, top, width + 4, self._text), _LEFT, beat.label)
                free = shown + width + 8
        for at in ticks(scale, step):
            x = round(scale.x(at)) + 0.5
            p.setPen(QPen(self._look.color("rail"), 1.0))
            p.drawLine(QPointF(x, times + self._text - 1), QPointF(x, times + self._text + 3))
            p.setFont(self._small)
            p.setPen(self._look.color("ink_quiet"))
            p.drawText(QRectF(x, times - 1, 80, self._text), _LEFT, clock(at))

    def _paint_wave(self, p: QPainter) -> None:
        if self._peaks is None or not self._peaks.samples:
            self._paint_note(p, self._note)
            return
        scale, top = self._scale, self._rows()[3]
        ratio = self.devicePixelRatioF()
        count = round(scale.width * ratio)
        low, high = self._peaks.columns(scale.start * self._rate, scale.end * self._rate, count)
        middle, half = top + _WAVE / 2, _WAVE / 2 - 1
        # Speech is mostly far below full scale: a power below 1 shows quiet words too.
        lower = np.abs(np.minimum(low, 0.0)) ** _SOFTENED * half
        upper = np.maximum(high, 0.0) ** _SOFTENED * half
        p.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        p.setPen(QPen(self._look.color("wave"), 1.0 / ratio))
        lines = [
            QLineF(scale.left + place / ratio, middle - up, scale.left + place / ratio, middle + down + 0.5)
            for place, (up, down) in enumerate(zip(upper.tolist(), lower.tolist(), strict=True))
        ]
        p.drawLines(lines)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)

    def _paint_moves(self, p: QPainter, talk: WaveTalk) -> None:
        """Where the board changes: a line through the wave, the move above it where there is room."""
        scale, (_, _, top, _, words) = self._scale, self._rows()
        free = -1e9
        p.setFont(self._move_font)
        for move in in_view(talk.moves, scale.start, scale.end):
            x = scale.x(move.at)
            p.setPen(QPen(self._look.color("accent"), 1.2))
            p.drawLine(QPointF(x, top + self._text), QPointF(x, words - 1))
            width = self._move_measure.horizontalAdvance(move.label)
            if x > free:
                p.drawText(QRectF(x + 2, top, width + 4, self._text), _LEFT, move.label)
                free = x + width + 8

    def _paint_words(self, p: QPainter, talk: WaveTalk) -> None:
        """The words below; those whose time is only reckoned are slanted and quiet."""
        scale, top = self._scale, self._rows()[4]
        if scale.per_second < _WORDS_FROM:
            p.setFont(self._small)
            p.setPen(self._look.color("ink_quiet"))
            p.drawText(QRectF(0, top, self.width(), self._text), _CENTRE, tr("Words are seen from closer by (+)"))
            return
        slanted = self._look.ui_font(0.85)
        slanted.setItalic(True)
        free = -1e9
        for word in in_view(talk.words, scale.start, scale.end):
            x = scale.x(word.at)
            if x < free:
                continue
            p.setFont(self._small if word.found else slanted)
            p.setPen(self._look.color("ink" if word.found else "ink_quiet"))
            width = self._measure.horizontalAdvance(word.text)
            p.drawText(QRectF(x, top, width + 6, self._text), _LEFT, word.text)
            free = x + width + 6

    # ---- keys and pointer -------------------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See the tool tip."""
        talk, key = self._talk, event.key()
        modifiers = event.modifiers()
        ctrl = bool(modifiers & Qt.KeyboardModifier.ControlModifier)
        if talk is None:
            super().keyPressEvent(event)
        elif key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            step = 1 if key == Qt.Key.Key_Right else -1
            if ctrl:
                self._go_beyond(talk, step, "words")
            else:
                fine = modifiers & (Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ShiftModifier)
                self.go_to(self._at + step * (_FINE if fine else _STEP))
        elif key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            self._go_beyond(talk, 1 if key == Qt.Key.Key_PageDown else -1, "beats" if ctrl else "moves")
        elif key == Qt.Key.Key_Home:
            self.go_to(0.0)
        elif key == Qt.Key.Key_End:
            self.go_to(talk.seconds)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom(_ZOOM)
        elif key == Qt.Key.Key_Minus:
            self.zoom(1 / _ZOOM)
        elif key == Qt.Key.Key_0:
            self.fit()
        else:
            super().keyPressEvent(event)

    def _go_beyond(self, talk: WaveTalk, step: int, of: str) -> None:
        at = talk.stop_beyond(self._at, step, of)
        self.go_to((0.0 if step < 0 else talk.seconds) if at is None else at)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go where the pointer is, and with it while the button is held; the middle button pans."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._scrubbing = True
            self.go_to(self._scale.seconds(event.position().x()))
        elif event.button() == Qt.MouseButton.MiddleButton:
            self._pan_from = event.position().x()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """See mousePressEvent."""
        if self._scrubbing:
            self.go_to(self._scale.seconds(event.position().x()))
        elif self._pan_from is not None:
            self._pan(self._pan_from - event.position().x())
            self._pan_from = event.position().x()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """See mousePressEvent."""
        self._scrubbing = False
        self._pan_from = None

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom with Ctrl, else pan."""
        delta = event.angleDelta()
        turned = delta.y() or delta.x()
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(_ZOOM ** (turned / 120), event.position().x())
        elif not self._fits:
            self._pan(-turned * 0.6)
        else:
            event.ignore()
            return
        event.accept()

    def _pan(self, pixels: float) -> None:
        scale = self._scale
        self._scale = RulerScale(scale.start + pixels / scale.per_second, scale.per_second, scale.width, scale.left)
        self._fits = False
        self._rescale()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The wave shows that it has the keyboard."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The wave shows that it has the keyboard no more."""
        super().focusOutEvent(event)
        self.update()
