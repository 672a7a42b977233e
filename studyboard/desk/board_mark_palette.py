"""The kinds of marks to choose from, each named and shown as it is drawn."""

from __future__ import annotations

import chess
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QSizePolicy, QToolButton, QVBoxLayout, QWidget

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
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        self._buttons: dict[MarkKind, MarkButton] = {}
        for number, kind in enumerate(KINDS, 1):
            button = MarkButton(kind, number, look)
            button.clicked.connect(lambda checked, kind=kind: self._choose(kind, checked))
            self._buttons[kind] = button
            self._group.addButton(button)
            layout.addWidget(button)
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
    """One kind of mark: a sample of how it is drawn, its name and its number key."""

    def __init__(self, kind: MarkKind, number: int, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kind = kind
        self._number = number
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
        width = self._sample.right() + metrics.horizontalAdvance(self.text() + "mm") + 12
        return QSize(round(width), round(self._sample.height() + 8))

    def minimumSizeHint(self) -> QSize:
        """See QWidget."""
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        """See QWidget."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, box, chosen = self._look, QRectF(self.rect()).adjusted(1, 1, -1, -1), self.isChecked()
        if chosen or self.underMouse() or self.hasFocus():
            painter.setBrush(look.color("accent_soft") if chosen or self.underMouse() else Qt.BrushStyle.NoBrush)
            pen = QPen(look.color("focus" if self.hasFocus() else "accent" if chosen else "rule"))
            pen.setWidthF(2.0 if self.hasFocus() else 1.0)
            painter.setPen(pen)
            painter.drawRoundedRect(box, 5, 5)
        if chosen:
            # A pressed button is told from the others by a bar too, not by its colour alone.
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look.color("accent"))
            painter.drawRoundedRect(QRectF(box.left(), box.top() + 5, 3, box.height() - 10), 1.5, 1.5)
        self._paint_sample(painter)
        painter.setFont(self.font())
        words = QRectF(self._sample.right() + 8, 0, self.width() - self._sample.right() - 16, self.height())
        painter.setPen(look.color("ink"))
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self.text())
        painter.setPen(look.color("ink_quiet"))
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight, str(self._number))
        painter.end()

    @property
    def _sample(self) -> QRectF:
        height = max(20.0, 1.5 * self.fontMetrics().height())
        return QRectF(7, 4, 1.75 * height, height)

    def _paint_sample(self, painter: QPainter) -> None:
        """A small piece of board with the mark on it: one square, or from one square to the next."""
        box, palette = self._sample, self._look.board_palette
        single = SQUARES_OF[self._kind] == (1, 1)
        mark = Mark(self._kind, (chess.A8,) if single else (chess.A8, chess.B8))
        painter.save()
        painter.setClipRect(box)
        painter.fillRect(box, palette.light)
        side = box.height() if single else 1.45 * box.height()
        painter.translate(box.center())
        painter.translate(-side / 2 if single else -side, -side / 2)
        if single:
            painter.fillRect(QRectF(0, 0, side, side), palette.dark)
        else:
            painter.fillRect(QRectF(side, 0, side, side), palette.dark)
            painter.translate(0.02 * side, 0)
        paint_scene(painter, ground_marks_scene((mark,)), side)
        paint_scene(painter, marks_scene((mark,)), side)
        painter.restore()

    def _dress(self) -> None:
        self.setFont(self._look.ui_font(0.95))
        self.updateGeometry()
        self.update()
