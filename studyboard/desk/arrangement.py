"""How the desk's panes are arranged in its window."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QDataStream, QEvent, QIODevice, QObject, QRect, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from studyboard.desk.board_mark_palette import MarkPalette
from studyboard.desk.notice import Notice
from studyboard.desk.yielding import Yielding

#: The least width of the left pane (px).
_LEFT_LEAST = 240
#: Free space around the board, and between it and what stands beside it (px).
_MARGIN = 8
_GAP = 10
#: What stands beside the board is no wider than this many times its names need.
_BESIDE_MOST = 1.6
#: The names of the marks go where the facts would have less than this many times what they need at least.
_FACTS_LEAST = 2
#: The board's card gives height to a line that would have to scroll, down to this (px).
_BOARD_SPARES = 280
#: From the notice to the edges of the pane that it lies over, and its greatest width (px).
_NOTICE_MARGIN = 12
_NOTICE_MOST = 620


class Arrangement(QWidget):
    """Lanes or run-through on the left, board and spoken line on the right, the ruler below, a notice over them.

    State: which of the two is on the left, whether the board is alone, where the user has put the dividers, and how
    much height the board has lent to a line with much below it (px). No pane insists on more room than a small screen
    has: what does not fit scrolls.
    """

    def __init__(
        self,
        *,
        top: QWidget,
        notice: Notice,
        lanes: QWidget,
        board: QWidget,
        facts: QWidget,
        marks: MarkPalette,
        line: QWidget,
        ruler: QWidget,
    ) -> None:
        super().__init__()
        self.setObjectName("paper")
        run_through = QWidget()
        self._run_through = QVBoxLayout(run_through)
        self._run_through.setContentsMargins(0, 0, 0, 0)
        self._run_through.setSpacing(10)
        self._left = QStackedWidget()
        self._left.setMinimumWidth(_LEFT_LEAST)
        self._left.addWidget(card(lanes, margin=6))
        self._left.addWidget(run_through)
        self._board = _BoardCard(board, facts, marks)
        self._writing = Yielding(line)
        self._line = card(self._writing, margin=8)
        self._right = _split(Qt.Orientation.Vertical, self._board, self._line, stretch=(1, 0), sizes=(400, 180))
        middle = _split(Qt.Orientation.Horizontal, self._left, self._right, stretch=(4, 3), sizes=(760, 590))
        self._dividers = (middle, self._right)
        self._lent = 0
        self._right.splitterMoved.connect(self._keep_dividers)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(14, 4, 14, 8)
        layout.setSpacing(8)
        layout.addWidget(top)
        layout.addWidget(middle, 1)
        self._ruler = card(ruler, margin=6)
        layout.addWidget(self._ruler)
        self._below: QWidget | None = None
        self._top = top
        self._running = self._alone = False
        self._notice = notice
        notice.setParent(self)
        notice.hide()
        notice.installEventFilter(self)
        self._left.installEventFilter(self)
        self._writing.installEventFilter(self)
        # What was lent is asked back when the line has been laid out, not while it is.
        self._writing.laid_out.connect(self._make_room_for_line, Qt.ConnectionType.QueuedConnection)

    def show_writing(self) -> None:
        """Lanes, facts, marks and the spoken line."""
        self._show(running=False)

    def show_run_through(self) -> None:
        """What was added for the run-through, and a larger board."""
        self._show(running=True)

    def show_board_only(self, alone: bool) -> None:
        """Show nothing but the board, or everything again."""
        self._alone = alone
        for pane in (self._top, self._left, self._ruler):
            pane.setHidden(alone)
        if self._below is not None and alone:
            self._below.hide()
        self._show(running=self._running)
        self._place_notice()

    def show_answers(self, shown: bool) -> None:
        """Leave the room beside the board to what somebody has asked, or give the marks theirs again."""
        self._board.show_answers(shown)

    def dividers(self) -> QByteArray:
        """Where the user has put the dividers, to be given to `set_dividers` another day."""
        places = QByteArray()
        stream = QDataStream(places, QIODevice.OpenModeFlag.WriteOnly)
        above, below = self._right.sizes()
        if self._lent:
            self._right.setSizes([above + self._lent, below - self._lent])
        for splitter in self._dividers:
            stream << splitter.saveState()
        if self._lent:
            self._right.setSizes([above, below])
        return places

    def set_dividers(self, places: QByteArray) -> None:
        """Put the dividers where they were."""
        stream = QDataStream(places, QIODevice.OpenModeFlag.ReadOnly)
        for splitter in self._dividers:
            state = QByteArray()
            stream >> state
            splitter.restoreState(state)

    def add_to_run_through(self, widget: QWidget, *, stretch: int) -> None:
        """Put one more pane below the others of the run-through.

        stretch: 0 for a pane that takes what it needs and scrolls where that is not there
        """
        self._run_through.addWidget(widget if stretch else Yielding(widget), stretch)

    def add_below_ruler(self, widget: QWidget) -> None:
        """Put one more pane below the ruler, which scrolls where there is little room for it."""
        self._below = card(Yielding(widget, lines=2.0), margin=6)
        layout = self.layout()
        assert layout is not None
        layout.addWidget(self._below)

    def show_below_ruler(self, shown: bool) -> None:
        """Show that pane, or hide it."""
        if self._below is not None:
            self._below.setVisible(shown)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the notice where it belongs, and all that belongs to the line in view while the board can spare it."""
        if watched is self._writing:
            if event.type() in (QEvent.Type.LayoutRequest, QEvent.Type.Show):
                self._make_room_for_line()
            return super().eventFilter(watched, event)
        # The notice's own Resize is what comes of placing it.
        moved = (QEvent.Type.Resize, QEvent.Type.Move) if watched is self._left else ()
        if event.type() in (QEvent.Type.Show, QEvent.Type.LayoutRequest, *moved):
            self._place_notice()
        return super().eventFilter(watched, event)

    def _make_room_for_line(self) -> None:
        above, below = self._right.sizes()
        more = min(self._writing.short_by, above - _BOARD_SPARES)
        if self._line.isHidden():
            return
        if more > 0:
            self._lent += more
        else:
            more = -min(self._lent, self._writing.spare)
            self._lent += more
        if more:
            self._right.setSizes([above - more, below + more])

    def _keep_dividers(self) -> None:
        """The user has moved them: what the board has lent to the line stays there."""
        self._lent = 0

    def _place_notice(self) -> None:
        """Over the foot of the left pane, where it hides neither the board nor the ruler; beside a lone board."""
        notice, left = self._notice, self if self._alone else self._left
        if notice.isHidden():
            return
        corner = left.mapTo(self, left.rect().topLeft())
        width = min(_NOTICE_MOST, left.width() - 2 * _NOTICE_MARGIN)
        if self._alone:
            width = min(width, max(_LEFT_LEAST, (left.width() - left.height()) // 2))
        height = min(left.height(), max(notice.heightForWidth(width), notice.minimumSizeHint().height()))
        x = corner.x() + (_NOTICE_MARGIN if self._alone else (left.width() - width) // 2)
        y = corner.y() + left.height() - height - _NOTICE_MARGIN
        notice.setGeometry(QRect(x, max(corner.y(), y), width, height))
        notice.raise_()

    def _show(self, *, running: bool) -> None:
        self._running = running
        self._left.setCurrentIndex(int(running))
        self._line.setVisible(not running and not self._alone)
        self._board.show_beside(not running and not self._alone)


class _BoardCard(QFrame):
    """The board as large as it gets, and beside it, in what is left, facts and marks."""

    def __init__(self, board: QWidget, facts: QWidget, marks: MarkPalette) -> None:
        super().__init__()
        self.setObjectName("card")
        self._board, self._facts, self._marks = board, facts, marks
        self._answering = False
        for widget in (board, facts, marks):
            widget.setParent(self)

    def show_beside(self, shown: bool) -> None:
        """Show facts and marks, or leave the room to the board."""
        self._facts.setVisible(shown)
        self._marks.setVisible(shown)
        self.updateGeometry()
        self._place()

    def show_answers(self, shown: bool) -> None:
        """Leave the whole column beside the board to the facts, or give the marks their part again."""
        self._answering = shown
        self._place()

    def sizeHint(self) -> QSize:
        """The board as it likes to be, with what stands beside it."""
        side = self._board.sizeHint().height()
        return QSize(side + self._room_beside(self._marks.sizeHint().width()), side + 2 * _MARGIN)

    def minimumSizeHint(self) -> QSize:
        """The smallest board, with the narrowest palette beside it."""
        least = self._board.minimumSize()
        width = least.width() + self._room_beside(self._marks.minimumSizeHint().width())
        return QSize(width, least.height() + 2 * _MARGIN)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See QWidget."""
        super().resizeEvent(event)
        self._place()

    def event(self, event: QEvent) -> bool:
        """Other fonts need other widths."""
        if event.type() == QEvent.Type.LayoutRequest:
            self.updateGeometry()
            self._place()
        return super().event(event)

    def _room_beside(self, width: int) -> int:
        return 2 * _MARGIN + (0 if self._marks.isHidden() else width + _GAP)

    def _place(self) -> None:
        box = self.rect().adjusted(_MARGIN, _MARGIN, -_MARGIN, -_MARGIN)
        if self._marks.isHidden():
            self._board.setGeometry(box)
            return
        wanted, least = self._marks.sizeHint().width(), self._marks.minimumSizeHint().width()
        free = box.width() - _GAP - box.height()
        # The board gives way to the names of the marks while it stays much larger than they are.
        floor = wanted if box.width() - _GAP - wanted >= 2 * wanted else least
        beside = min(max(free, floor), round(_BESIDE_MOST * wanted), box.width() - _GAP - self._board.minimumWidth())
        column = QRect(box.right() + 1 - beside, box.top(), beside, box.height())
        words = _FACTS_LEAST * self._facts.minimumSizeHint().height() + _MARGIN
        marks = self._marks.height_within(beside, column.height() - words)
        if self._answering:
            marks = -_MARGIN
        self._marks.setGeometry(column.adjusted(0, column.height() - max(0, marks), 0, 0))
        self._facts.setGeometry(column.adjusted(0, 0, 0, -marks - _MARGIN))
        self._board.setGeometry(box.adjusted(0, 0, -beside - _GAP, 0))


def card(widget: QWidget, *, margin: int) -> QFrame:
    """The widget on a quiet ground with a hairline around it; *margin* in px."""
    frame = QFrame()
    frame.setObjectName("card")
    layout = QVBoxLayout(frame)
    layout.setContentsMargins(margin, margin, margin, margin)
    layout.addWidget(widget)
    return frame


def _split(
    orientation: Qt.Orientation, *widgets: QWidget, stretch: tuple[int, ...], sizes: tuple[int, ...]
) -> QSplitter:
    splitter = QSplitter(orientation)
    for place, widget in enumerate(widgets):
        splitter.addWidget(widget)
        splitter.setStretchFactor(place, stretch[place])
    splitter.setSizes(list(sizes))
    splitter.setChildrenCollapsible(False)
    splitter.setHandleWidth(11)
    return splitter
