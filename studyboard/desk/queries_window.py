"""All queries of the script in one list."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.lanes_rows import part_name
from studyboard.desk.proofreader import Proofreader
from studyboard.desk.session import Session
from studyboard.model.script import Part
from studyboard.notation.labels import move_label
from studyboard.reading.findings import Finding
from studyboard.translation import tr


class QueriesWindow(QDialog):
    """Lists what the board contradicts, in the order of the talk; choosing one shows it on the desk.

    chosen: a query was chosen; carries the Finding
    """

    chosen = Signal(object)

    def __init__(self, session: Session, proofreader: Proofreader, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._proofreader = proofreader
        self.setWindowTitle(tr("Read-through"))
        line = self.fontMetrics().height()
        screen = self.screen().availableSize()
        self.resize(QSize(max(560, 32 * line), max(420, 22 * line)).boundedTo(screen * 0.95))
        self.summary = QLabel()
        self.summary.setWordWrap(True)
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Queries"))
        self.list.setWordWrap(True)
        self.list.setSpacing(3)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        again = ActingButton(tr("Read again"))
        self.leave_button = ActingButton(tr("Leave it"))
        close = ActingButton(tr("Close"))
        foot = QHBoxLayout()
        foot.addWidget(again)
        foot.addStretch(1)
        foot.addWidget(self.leave_button)
        foot.addWidget(close)
        layout = QVBoxLayout(self)
        layout.addWidget(self.summary)
        layout.addWidget(self.list, 1)
        layout.addLayout(foot)
        again.clicked.connect(proofreader.read_now)
        self.leave_button.clicked.connect(self._leave)
        close.clicked.connect(self.close)
        self.list.itemActivated.connect(lambda item: self.chosen.emit(item.data(Qt.ItemDataRole.UserRole)))
        self.list.itemClicked.connect(lambda item: self.chosen.emit(item.data(Qt.ItemDataRole.UserRole)))
        self.list.currentRowChanged.connect(lambda row: self.leave_button.setEnabled(row >= 0))
        proofreader.script_read.connect(self._fill)
        proofreader.reading.connect(lambda reading: self.summary.setText(tr("Reading …")) if reading else self._fill())
        self._fill()

    def _fill(self) -> None:
        queries = self._proofreader.queries
        found = self._proofreader.found
        row = self.list.currentRow()
        self.list.clear()
        for query in queries:
            item = QListWidgetItem(f"{self._where(query)}  “{query.quote}”\n{query.why} {query.do}".strip())
            item.setData(Qt.ItemDataRole.UserRole, query)
            self.list.addItem(item)
        self.list.setCurrentRow(max(0, min(row, self.list.count() - 1)))
        self.leave_button.setEnabled(self.list.currentRow() >= 0)
        count = {0: tr("No query"), 1: tr("One query")}.get(len(queries), tr("{count} queries", count=len(queries)))
        left = len(found.queries) - len(queries)
        also = tr(", {left} left", left=left) if left else ""
        self.summary.setText(
            tr(
                "{count}{also}. The board confirms {confirmed} statements; {unchecked} it cannot decide.",
                count=count,
                also=also,
                confirmed=len(found.confirmed),
                unchecked=len(found.unchecked),
            )
        )

    def _where(self, query: Finding) -> str:
        if isinstance(query.beat, Part):
            return part_name(query.beat)
        if query.beat is None or query.beat not in self._session.study.nodes:
            return ""
        return move_label(self._session.positions, query.beat)

    def _leave(self) -> None:
        item = self.list.currentItem()
        if item is not None:
            self._proofreader.leave(item.data(Qt.ItemDataRole.UserRole))
