"""The dialog in which the tags of a game are edited."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.desk.session import Session
from studyboard.model.edits import ChangeHeaders
from studyboard.model.study import SEVEN_TAG_ROSTER
from studyboard.notation.openings import opening_of
from studyboard.translation import tr

_USUAL = (*SEVEN_TAG_ROSTER, "WhiteElo", "BlackElo", "ECO", "Opening")


class HeadersDialog(QDialog):
    """Every tag pair in a row; a row without a value is left out of the study."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.setWindowTitle(tr("Headers"))
        line = self.fontMetrics().height()
        screen = self.screen().availableSize()
        self.resize(QSize(max(520, 30 * line), max(480, 22 * line)).boundedTo(screen * 0.95))
        hint = QLabel(tr("The tags of the game, as PGN has them. Empty values are left out."))
        hint.setObjectName("quiet")
        hint.setWordWrap(True)
        self.table = QTableWidget(0, 2)
        self.table.setAccessibleName(tr("Tags of the game"))
        self.table.setHorizontalHeaderLabels([tr("Tag"), tr("Value")])
        self.table.horizontalHeader().setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
        self.table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.table.horizontalHeader().setHighlightSections(False)
        self.table.setColumnWidth(0, 10 * line)
        self.table.verticalHeader().setDefaultSectionSize(line + 14)
        self.table.verticalHeader().hide()
        # Tab leaves the table; the arrows go from cell to cell.
        self.table.setTabKeyNavigation(False)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        headers = session.study.headers
        for name in (*(n for n in _USUAL if n not in headers), *headers):
            self._add(name, headers.get(name, ""))
        self._sort_roster_first()
        self.table.setCurrentCell(0, 1)
        more = QPushButton(tr("Add a tag"))
        more.clicked.connect(self._add_empty)
        self.name_opening = QPushButton(tr("Name the opening"))
        self.name_opening.setToolTip(tr("Fill in ECO and Opening from the positions of the game"))
        self._opening = opening_of(session.study, session.positions)
        self.name_opening.setEnabled(self._opening is not None)
        self.name_opening.clicked.connect(self._fill_in_opening)
        buttons = DialogButtons(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        row = QHBoxLayout()
        row.addWidget(more)
        row.addWidget(self.name_opening)
        row.addStretch(1)
        row.addWidget(buttons)
        layout = QVBoxLayout(self)
        layout.addWidget(hint)
        layout.addWidget(self.table)
        layout.addLayout(row)

    def accept(self) -> None:
        """Store the tags; the dialog stays open where they are refused."""
        headers = tuple((name, value) for name, value in self._rows() if name and value)
        if headers == tuple(self._session.study.headers.items()) or self._session.do(ChangeHeaders(headers)):
            super().accept()

    def _rows(self) -> list[tuple[str, str]]:
        rows: list[tuple[str, str]] = []
        for row in range(self.table.rowCount()):
            name, value = self.table.item(row, 0), self.table.item(row, 1)
            rows.append(("" if name is None else name.text().strip(), "" if value is None else value.text().strip()))
        return rows

    def _sort_roster_first(self) -> None:
        order = {name: place for place, name in enumerate(_USUAL)}
        rows = sorted(self._rows(), key=lambda row: order.get(row[0], len(order)))
        self.table.setRowCount(0)
        for name, value in rows:
            self._add(name, value)

    def _add(self, name: str, value: str) -> None:
        row = self.table.rowCount()
        self.table.insertRow(row)
        tag = QTableWidgetItem(name)
        if name in _USUAL:
            tag.setFlags(tag.flags() & ~Qt.ItemFlag.ItemIsEditable)
        self.table.setItem(row, 0, tag)
        self.table.setItem(row, 1, QTableWidgetItem(value))

    def _fill_in_opening(self) -> None:
        """Write the opening's code and name into their rows; nothing is stored before the dialog is accepted."""
        if self._opening is None:
            return
        values = {"ECO": self._opening[0].eco, "Opening": self._opening[0].name}
        for row in range(self.table.rowCount()):
            tag = self.table.item(row, 0)
            if tag is not None and tag.text() in values:
                self.table.setItem(row, 1, QTableWidgetItem(values[tag.text()]))
                self.table.setCurrentCell(row, 1)

    def _add_empty(self) -> None:
        self._add("", "")
        self.table.setCurrentCell(self.table.rowCount() - 1, 0)
        item = self.table.item(self.table.rowCount() - 1, 0)
        if item is not None:
            self.table.editItem(item)
