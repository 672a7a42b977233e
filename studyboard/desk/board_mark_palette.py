"""The kinds of marks to choose from, each named and shown as it is drawn."""

from __future__ import annotations

import chess
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QSizePolicy, QToolButton, QWidget

from studyboard.desk.board_marking import KINDS
from studyboard.desk.board_view import BoardView
from studyboard.desk.edit_labels import kind_name
from studyboard.desk.look import Look
from studyboard.desk.paint import paint_scene
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.picture.marks import ground_marks_scene, marks_scene
from studyboard.translation import tr, tr_later

#: What each kind of mark is for, in one sentence.
PURPOSES = {
    MarkKind.THREAT: tr_later("What is about to happen: drag from the piece to its aim."),
    MarkKind.TARGET: tr_later("What is aimed at: click its square."),
    MarkKind.ROUTE: tr_later("The way of a piece: drag from stop to stop."),
    MarkKind.KEY_SQUARE: tr_later("The square that matters: click it."),
    MarkKind.GUARD: tr_later("What protects what: drag from the guard to what it guards."),
}
#: Space between two buttons, and at the sides of a button's sample, name and key (px).
_GAP = 2
_SIDE = 7
#: A sample is drawn no higher than this, however large the text is (px).
_SAMPLE_MOST = 30.0


class MarkPalette(QWidget):
    """Buttons for the kinds of marks, one that numbers them as they are drawn, and one that wipes them all.

    State: whether there is room for the names of the kinds; without it the buttons show samples and keys only, and
    their names as tool tips. A pressed button means that pressing on the board draws this kind; pressing it again
    ends that.
    """

    def __init__(self, board: BoardView, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._board = board
        self.setAccessibleName(tr("Marks"))
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        self._buttons: dict[MarkKind, MarkButton] = {}
        for number, kind in enumerate(KINDS, 1):
            button = MarkButton(kind, number, look, self)
            button.clicked.connect(lambda checked, kind=kind: self._choose(kind, checked))
            self._buttons[kind] = button
            self._group.addButton(button)
        self._numbers = QToolButton(self)
        self._numbers.setCheckable(True)
        self._numbers.setText("1 2 3")
        self._numbers.setAccessibleName(tr("Number marks as they are drawn"))
        self._numbers.setToolTip(tr("Number marks as they are drawn: 1, 2, 3.\nKey 6 on the board."))
        self._numbers.clicked.connect(self._choose_numbers)
        self._wipe = QToolButton(self)
        self._wipe.setAccessibleName(tr("Wipe all marks"))
        self._wipe.setToolTip(tr("Wipe all marks of this position away"))
        self._wipe.clicked.connect(board.clear_marks)
        board.marking_changed.connect(self._show)
        board.mark_kind_changed.connect(self._show)
        look.changed.connect(self._dress)
        self._dress()
        self._show()

    def button(self, kind: MarkKind) -> MarkButton:
        """The button of this kind."""
        return self._buttons[kind]

    @property
    def numbers_button(self) -> QToolButton:
        """The button that numbers marks as they are drawn."""
        return self._numbers

    @property
    def named(self) -> bool:
        """True where the buttons show the names of their kinds."""
        return all(button.named for button in self._buttons.values())

    def sizeHint(self) -> QSize:
        """Every kind with its name, below each other."""
        sizes = [button.named_size for button in self._buttons.values()]
        numbers, wipe = self._numbers.sizeHint(), self._wipe.sizeHint()
        width = max(*(size.width() for size in sizes), numbers.width() + _GAP + wipe.width())
        foot = max(numbers.height(), wipe.height())
        return QSize(width, sum(size.height() + _GAP for size in sizes) + foot)

    def minimumSizeHint(self) -> QSize:
        """The samples in two columns."""
        cell = self._cell
        return QSize(2 * cell.width() + _GAP, 4 * cell.height() + 3 * _GAP)

    def height_within(self, width: int, most: int) -> int:
        """How high it is where it may be that wide, and *most* high if it can be helped (px)."""
        whole = self.sizeHint()
        if width >= whole.width() and whole.height() <= most:
            return whole.height()
        cell = self._cell
        return self._rows(width) * (cell.height() + _GAP) - _GAP

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The names go first where the room gets short."""
        super().resizeEvent(event)
        self._place()

    @property
    def _cell(self) -> QSize:
        samples = [button.sample_size for button in self._buttons.values()]
        sizes = [*samples, self._numbers.sizeHint(), self._wipe.sizeHint()]
        return QSize(max(size.width() for size in sizes), max(size.height() for size in sizes))

    def _rows(self, width: int) -> int:
        """Rows of samples without names in this width (px)."""
        columns = max(1, min(3, (width + _GAP) // (self._cell.width() + _GAP)))
        return -(-(len(self._buttons) + 2) // columns)

    def _place(self) -> None:
        whole = self.sizeHint()
        named = self.width() >= whole.width() and self.height() >= whole.height()
        for button in self._buttons.values():
            button.show_name(named)
        self._wipe.setText(tr("Wipe all") if named else tr("Wipe"))
        if named:
            top = self.height() - whole.height()
            for button in self._buttons.values():
                height = button.named_size.height()
                button.setGeometry(0, top, self.width(), height)
                top += height + _GAP
            numbers, wipe = self._numbers.sizeHint(), self._wipe.sizeHint()
            foot = max(numbers.height(), wipe.height())
            self._numbers.setGeometry(0, top, numbers.width(), foot)
            self._wipe.setGeometry(numbers.width() + _GAP, top, wipe.width(), foot)
            return
        cell, rows = self._cell, self._rows(self.width())
        columns = -(-(len(self._buttons) + 2) // rows)
        width = (self.width() - (columns - 1) * _GAP) // columns
        above = max(0, self.height() - rows * (cell.height() + _GAP) + _GAP)
        for place, cellmate in enumerate((*self._buttons.values(), self._numbers, self._wipe)):
            left, top = place % columns * (width + _GAP), above + place // columns * (cell.height() + _GAP)
            cellmate.setGeometry(left, top, width, cell.height())

    def _choose(self, kind: MarkKind, on: bool) -> None:
        self._board.set_mark_kind(kind)
        self._board.set_marking(on)
        self._board.setFocus(Qt.FocusReason.OtherFocusReason)
        self._show()

    def _choose_numbers(self, on: bool) -> None:
        self._board.pen.number(on)
        if on:
            self._board.set_marking(True)
        self._board.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show(self, *_: object) -> None:
        self._numbers.setChecked(self._board.pen.numbering)
        for kind, button in self._buttons.items():
            button.setChecked(self._board.marking and kind is self._board.mark_kind)

    def _dress(self) -> None:
        self.updateGeometry()
        self._place()


class MarkButton(QAbstractButton):
    """One kind of mark: a sample of how it is drawn, its name where there is room for it, and its number key."""

    def __init__(self, kind: MarkKind, number: int, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kind = kind
        self._number = number
        self._look = look
        self._named = True
        self._sizes: tuple[tuple[QFont, str], int, QSize] | None = None
        self.setCheckable(True)
        self.setText(kind_name(kind)[:1].upper() + kind_name(kind)[1:])
        self.setAccessibleName(tr("Draw a {kind}", kind=kind_name(kind)))
        self.setAccessibleDescription(
            tr("{purpose} Key {number} on the board.", purpose=tr(PURPOSES[kind]), number=number)
        )
        self.setToolTip(
            tr(
                "{text}. {purpose}\nKey {number} on the board; Escape ends it.",
                text=self.text(),
                purpose=tr(PURPOSES[kind]),
                number=number,
            )
        )
        self.setSizePolicy(QSizePolicy.Policy.MinimumExpanding, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        look.changed.connect(self._dress)
        self._dress()

    @property
    def named(self) -> bool:
        """True where the name is shown."""
        return self._named

    def show_name(self, named: bool) -> None:
        """Show the name, or the sample and the key only."""
        self._named = named
        self.update()

    @property
    def named_size(self) -> QSize:
        """Room for sample, name and key, none over the other."""
        words, sample = self._measured()[1:]
        return QSize(sample.width() + _SIDE + words, sample.height())

    @property
    def sample_size(self) -> QSize:
        """Room for sample and key."""
        return self._measured()[2]

    def _measured(self) -> tuple[tuple[QFont, str], int, QSize]:
        """Font and name, the width of the name, and the room for sample and key.

        Layouts ask for these many times over, and measuring a text takes its time.
        """
        of = (self.font(), self.text())
        if self._sizes is None or self._sizes[0] != of:
            metrics, sample = self.fontMetrics(), self._sample_size
            width = _SIDE + sample.width() + _SIDE + metrics.horizontalAdvance("8") + _SIDE
            room = QSize(width, max(sample.height(), metrics.height()) + 8)
            self._sizes = (of, metrics.horizontalAdvance(of[1]), room)
        return self._sizes

    def sizeHint(self) -> QSize:
        """See QWidget."""
        return self.named_size if self._named else self.sample_size

    def minimumSizeHint(self) -> QSize:
        """See QWidget."""
        return self.sample_size

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
        left = self._sample.right() + _SIDE
        words = QRectF(left, 0, self.width() - left - _SIDE, self.height())
        if self._named:
            painter.setPen(look.color("ink"))
            painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self.text())
        painter.setPen(look.color("ink_quiet"))
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight, str(self._number))
        painter.end()

    @property
    def _sample_size(self) -> QSize:
        height = min(_SAMPLE_MOST, max(20.0, 1.5 * self.fontMetrics().height()))
        return QSize(round(1.75 * height), round(height))

    @property
    def _sample(self) -> QRectF:
        size = self._sample_size
        return QRectF(_SIDE, (self.height() - size.height()) / 2, size.width(), size.height())

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
