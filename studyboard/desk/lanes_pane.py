"""The pane of the lanes: the find bar, where it is open, and the lanes below it."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from studyboard.desk.lanes import Lanes
from studyboard.desk.lanes_find_bar import FindBar
from studyboard.desk.look import Look
from studyboard.desk.session import Session


class LanesPane(QWidget):
    """The lanes and what is looked for in them.

    State: none of its own.
    """

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.lanes = Lanes(session, look)
        self.find_bar = FindBar(session, look)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self.find_bar)
        layout.addWidget(self.lanes, 1)
        self.find_bar.found.connect(self.lanes.mark_found)
        self.find_bar.wanted.connect(self.lanes.go_to)
        session.stepped.connect(self.find_bar.show_row)
        self.lanes.part_chosen.connect(self.find_bar.show_row)
        self.lanes.node_chosen.connect(self.find_bar.show_row)
