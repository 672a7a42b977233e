"""The level meter: how loud the microphone is, as a bar with its zones named."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from studyboard.desk.look import Look
from studyboard.translation import tr

_FLOOR = -60.0
#: Peaks above this are about to be cut off, RMS below the other is lost in room noise (dBFS): common practice.
_HOT, _QUIET = -3.0, -45.0
#: Size of the figures of the scale, in sizes of controls.
_FIGURES = 0.78
_MARKS = (-60, -40, -20, -12, -6, 0)


class LevelMeter(QWidget):
    """Peak and RMS of the sound that is coming in (dBFS), with the highest peak held until it is reset."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._peak = self._rms = self._held = _FLOOR
        self._clipped = False
        self.setAccessibleName(tr("Microphone level"))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)
        look.changed.connect(self.update)

    def sizeHint(self) -> QSize:
        """A bar with its scale below it."""
        return QSize(240, 14 + QFontMetrics(self._look.ui_font(_FIGURES)).height() + 4)

    def minimumSizeHint(self) -> QSize:
        """See sizeHint."""
        return QSize(140, self.sizeHint().height())

    def show_level(self, peak: float, rms: float) -> None:
        """Show a new reading (dBFS)."""
        self._peak, self._rms = max(_FLOOR, peak), max(_FLOOR, rms)
        self._held = max(self._held, self._peak)
        self.setAccessibleDescription(self.verdict)
        self.update()

    def show_clipped(self) -> None:
        """Remember that the microphone was overdriven."""
        self._clipped = True
        self.update()

    def reset(self) -> None:
        """Forget the highest peak and the clipping."""
        self._peak = self._rms = self._held = _FLOOR
        self._clipped = False
        self.update()

    @property
    def verdict(self) -> str:
        """What the level means, in words."""
        if self._clipped:
            return tr("cut off")
        if self._held > _HOT:
            return tr("very loud")
        if self._held <= _FLOOR:
            return tr("silent")
        return tr("too quiet") if self._held < _QUIET + 15 and self._rms < _QUIET else tr("good")

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw track, RMS, peak, the held peak and the scale."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look = self._look
        bar = QRectF(1, 2, self.width() - 2, 12)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look.color("track"))
        painter.drawRoundedRect(bar, 4, 4)
        hot = self._clipped or self._peak > _HOT
        painter.setBrush(look.color("side_line_soft" if not hot else "over_soft"))
        self._fill(painter, bar, self._peak)
        painter.setBrush(look.color("accent" if not hot else "over"))
        self._fill(painter, bar.adjusted(0, 2, 0, -2), self._rms)
        painter.setPen(QPen(look.color("over" if self._held > _HOT else "ink"), 2))
        if self._held > _FLOOR:
            x = bar.left() + self._share(self._held) * bar.width()
            painter.drawLine(int(x), 1, int(x), 15)
        painter.setFont(look.ui_font(_FIGURES))
        painter.setPen(look.color("ink_quiet"))
        metrics = painter.fontMetrics()
        for left, text in self._scale(metrics):
            painter.drawText(int(left), int(bar.bottom()) + metrics.ascent() + 2, text)
        painter.end()

    def _scale(self, metrics: QFontMetrics) -> list[tuple[float, str]]:
        """The figures of the scale with their left edges (px), the loud ones first where not all have room."""
        placed: list[tuple[float, str]] = []
        before = float(self.width() + metrics.height())
        for mark in reversed(_MARKS):
            text = str(mark).replace("-", "−")
            width = metrics.horizontalAdvance(text)
            left = 1 + self._share(mark) * (self.width() - 2) - width / 2
            left = min(max(left, 1.0), self.width() - width - 1.0)
            if left + width + metrics.height() / 3 <= before:
                placed.append((left, text))
                before = left
        return placed

    def _fill(self, painter: QPainter, bar: QRectF, level: float) -> None:
        width = self._share(level) * bar.width()
        if width > 1:
            painter.drawRoundedRect(QRectF(bar.left(), bar.top(), width, bar.height()), 4, 4)

    def _share(self, level: float) -> float:
        return min(1.0, max(0.0, (level - _FLOOR) / -_FLOOR))
