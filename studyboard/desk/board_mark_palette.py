"""The kinds of marks to choose from, each named and shown as it is drawn."""

from __future__ import annotations

import chess
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QSizePolicy, QToolButton, QWidget

from studyboard.desk.board_marking import KINDS
from studyboard.desk.board_view import BoardView
from studyboard.desk.look import Look
from studyboard.desk.paint import paint_scene
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.picture.marks import ground_marks_scene, marks_scene

#: What each kind of mark is for, in one sentence.
PURPOSES = {
    MarkKind.THREAT: "What is about to happen: drag from the piece to its aim.",
    MarkKind.TARGET: "What is aimed at: click its square.",
    MarkKind.ROUTE: "The way of a piece: drag from stop to stop.",
    MarkKind.KEY_SQUARE: "The square that matters: click it.",
    MarkKind.GUARD: "What protects what: drag from the guard to what it guards.",
}


class MarkPalette(QWidget):
    """Buttons for the kinds of marks, and one that wipes them all.

    State: none of its own; it shows and sets what the board draws. A pressed button means that pressing on the board
    draws this kind; pressing it again ends that.
    """

    def __init__(self, board: BoardView, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._board = board
        self.setAccessibleName("Marks")
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        self._buttons: dict[MarkKind, MarkButton] = {}
        for number, kind in enumerate(KINDS, 1):
            button = MarkButton(kind, number, look)
            button.clicked.connect(lambda checked, kind=kind: self._choose(kind, checked))
            self._buttons[kind] = button
            self._group.addButton(button)
            layout.addWidget(button, 1)
        self._wipe = QToolButton()
        self._wipe.setText("Wipe all")
        self._wipe.setToolTip("Wipe all marks of this position away")
        self._wipe.clicked.connect(board.clear_marks)
        layout.addWidget(self._wipe)
        board.marking_changed.connect(self._show)
        board.mark_kind_changed.connect(self._show)
        self._show()

    def button(self, kind: MarkKind) -> MarkButton:
        """The button of this kind."""
        return self._buttons[kind]

    def _choose(self, kind: MarkKind, on: bool) -> None:
        self._board.set_mark_kind(kind)
        self._board.set_marking(on)
        self._board.setFocus(Qt.FocusReason.OtherFocusReason)
        self._show()

    def _show(self, *_: object) -> None:
        for kind, button in self._buttons.items():
            button.setChecked(self._board.marking and kind is self._board.mark_kind)


class MarkButton(QAbstractButton):
    """One kind of mark: its name under a sample of how it is drawn."""

    def __init__(self, kind: MarkKind, number: int, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kind = kind
        self._look = look
        self.setCheckable(True)
        self.setText(str(kind).capitalize())
        self.setAccessibleName(f"Draw a {kind}")
        self.setAccessibleDescription(f"{PURPOSES[kind]} Key {number} on the board.")
        self.setToolTip(f"{PURPOSES[kind]}\nKey {number} on the board; Escape ends it.")
        self.setSizePolicy(QSizePolicy.Policy.MinimumExpanding, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        look.changed.connect(self._dress)
        self._dress()

    def sizeHint(self) -> QSize:
        """See QWidget."""
        metrics = self.fontMetrics()
        return QSize(
            max(58, metrics.horizontalAdvance(self.text()) + 14), self._sample_height() + metrics.height() + 10
        )

    def minimumSizeHint(self) -> QSize:
        """See QWidget."""
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        """See QWidget."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, box = self._look, QRectF(self.rect()).adjusted(1, 1, -1, -1)
        ground = "accent_soft" if self.isChecked() or self.underMouse() else "surface"
        painter.setBrush(look.color(ground))
        border = "focus" if self.hasFocus() else "accent" if self.isChecked() else "rule"
        painter.setPen(look.color(border))
        painter.drawRoundedRect(box, 6, 6)
        if self.isChecked():
            # A pressed button is told from the others by a bar too, not by its colour alone.
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look.color("accent"))
            painter.drawRoundedRect(QRectF(box.left() + 10, box.bottom() - 3, box.width() - 20, 3), 1.5, 1.5)
        self._paint_sample(painter)
        painter.setFont(self.font())
        painter.setPen(look.color("ink"))
        words = QRectF(0, self._sample_height() + 3, self.width(), self.fontMetrics().height() + 2)
        painter.drawText(words, Qt.AlignmentFlag.AlignCenter, self.text())
        painter.end()

    def _paint_sample(self, painter: QPainter) -> None:
        """A small piece of board with the mark on it: one square, or two and a half."""
        height = self._sample_height() - 6
        single = SQUARES_OF[self._kind] == (1, 1)
        palette = self._look.board_palette
        mark = Mark(self._kind, (chess.A8,) if single else (chess.A8, chess.C8))
        side = float(height)
        width = side if single else 2.3 * side
        corner = QPointF((self.width() - width) / 2, 5)
        painter.save()
        painter.setClipRect(QRectF(corner.x(), corner.y(), width, side))
        painter.fillRect(QRectF(corner.x(), corner.y(), width, side), palette.light)
        painter.translate(corner)
        if single:
            painter.fillRect(QRectF(0, 0, side, side), palette.dark)
        else:
            # The middle of the first square and of the last one lie just inside the sample.
            painter.fillRect(QRectF(0.65 * side, 0, side, side), palette.dark)
            painter.translate(-0.35 * side, 0)
        paint_scene(painter, ground_marks_scene((mark,)), side)
        paint_scene(painter, marks_scene((mark,)), side)
        painter.restore()

    def _sample_height(self) -> int:
        return max(26, round(self.fontMetrics().height() * 1.6)) + 6

    def _dress(self) -> None:
        self.setFont(self._look.ui_font(0.9))
        self.updateGeometry()
        self.update()
