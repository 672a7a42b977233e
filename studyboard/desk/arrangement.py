"""How the desk's panes are arranged in its window."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QSplitter, QStackedWidget, QVBoxLayout, QWidget

#: Width of what stands beside the board (px).
_BESIDE = 132


class Arrangement(QWidget):
    """Lanes or run-through on the left, board and spoken line on the right, the ruler below.

    State: which of the two is on the left, and where the user has put the dividers.
    """

    def __init__(
        self,
        *,
        top: QWidget,
        notice: QWidget,
        lanes: QWidget,
        board: QWidget,
        facts: QWidget,
        marks: QWidget,
        line: QWidget,
        ruler: QWidget,
    ) -> None:
        super().__init__()
        self.setObjectName("paper")
        self._beside_board = (facts, marks)
        run_through = QWidget()
        self._run_through = QVBoxLayout(run_through)
        self._run_through.setContentsMargins(0, 0, 0, 0)
        self._run_through.setSpacing(12)
        self._left = QStackedWidget()
        self._left.addWidget(card(lanes, margin=6))
        self._left.addWidget(run_through)
        self._line = card(line, margin=8)
        right = _split(Qt.Orientation.Vertical, self._board_card(board), self._line, stretch=(1, 0), sizes=(400, 180))
        middle = _split(Qt.Orientation.Horizontal, self._left, right, stretch=(4, 3), sizes=(760, 590))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(14, 4, 14, 8)
        layout.setSpacing(8)
        layout.addWidget(top)
        layout.addWidget(notice)
        layout.addWidget(middle, 1)
        layout.addWidget(card(ruler, margin=6))

    def show_writing(self) -> None:
        """Lanes, facts, marks and the spoken line."""
        self._show(running=False)

    def show_run_through(self) -> None:
        """What was added for the run-through, and a larger board."""
        self._show(running=True)

    def add_to_run_through(self, widget: QWidget, *, stretch: int) -> None:
        """Put one more pane below the others of the run-through."""
        self._run_through.addWidget(widget, stretch)

    def _show(self, *, running: bool) -> None:
        self._left.setCurrentIndex(int(running))
        self._line.setVisible(not running)
        for widget in self._beside_board:
            widget.setVisible(not running)

    def _board_card(self, board: QWidget) -> QFrame:
        frame = QFrame()
        frame.setObjectName("card")
        inside = QHBoxLayout(frame)
        inside.setContentsMargins(8, 8, 8, 8)
        inside.setSpacing(10)
        inside.addWidget(board, 1)
        beside = QVBoxLayout()
        beside.setSpacing(8)
        facts, marks = self._beside_board
        beside.addWidget(facts, 1)
        beside.addWidget(marks)
        for widget in self._beside_board:
            widget.setFixedWidth(_BESIDE)
        inside.addLayout(beside)
        return frame


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
