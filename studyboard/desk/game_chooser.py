"""The chooser for a file with many games."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QPersistentModelIndex,
    QSize,
    QSortFilterProxyModel,
    Qt,
)
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPushButton,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.notation.pgn_games import GameEntry
from studyboard.translation import tr, tr_later

_COLUMNS = (
    "",
    tr_later("White"),
    tr_later("Black"),
    tr_later("Result"),
    tr_later("Event"),
    tr_later("Round"),
    tr_later("Date"),
    "ECO",
)
#: Widths of the columns, in heights of a line of text; the event takes what is left.
_WIDTHS = (3.5, 11, 11, 4.8, 10, 4.8, 6.8, 4)
_Index = QModelIndex | QPersistentModelIndex


class GamesModel(QAbstractTableModel):
    """The games of a file as rows."""

    def __init__(self, entries: Sequence[GameEntry], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._entries = entries

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """One row a game."""
        return 0 if parent.isValid() else len(self._entries)

    def columnCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """One column for each tag that helps to choose."""
        return 0 if parent.isValid() else len(_COLUMNS)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The tag's value as far as it is known; numbers keep their order when sorted."""
        if role == Qt.ItemDataRole.DisplayRole:
            entry = self._entries[index.row()]
            return entry.number if index.column() == 0 else _known(entry, _COLUMNS[index.column()])
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() == 0:
            return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The tag's name."""
        if role == Qt.ItemDataRole.DisplayRole and orientation == Qt.Orientation.Horizontal:
            return tr(_COLUMNS[section]) if section else ""
        return None


def _known(entry: GameEntry, tag: str) -> str:
    """The value of a tag without the question marks that PGN puts for what nobody knows (section 8.1.1, 1994)."""
    value = entry.headers.get(tag, "")
    if tag == "Date":
        value = value.replace(".??", "").removeprefix("????")
    return "" if value == "?" else value


class _AnyColumn(QSortFilterProxyModel):
    """Rows in which every word of the filter is found in some column."""

    words: tuple[str, ...] = ()

    def choose(self, text: str) -> None:
        self.words = tuple(text.casefold().split())
        self.invalidate()

    def filterAcceptsRow(self, source_row: int, source_parent: _Index) -> bool:
        if not self.words:
            return True
        model = self.sourceModel()
        row = " ".join(
            str(model.data(model.index(source_row, column))) for column in range(model.columnCount())
        ).casefold()
        return all(word in row for word in self.words)


class GameChooser(QDialog):
    """Lists the games of a file, finds by any word of their tags, and returns the chosen one."""

    def __init__(self, path: Path, entries: Sequence[GameEntry], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Games in {name}", name=path.name))
        line = self.fontMetrics().height()
        screen = self.screen().availableSize()
        self.resize(QSize(max(860, 56 * line), max(520, 26 * line)).boundedTo(screen * 0.95))
        self._entries = entries
        self.filter = QLineEdit()
        self.filter.setPlaceholderText(tr("Find by player, event, result …"))
        self.filter.setClearButtonEnabled(True)
        self.filter.setAccessibleName(tr("Find games"))
        self._proxy = _AnyColumn(self)
        self._proxy.setSourceModel(GamesModel(entries, self))
        self.table = QTableView()
        self.table.setAccessibleName(tr("Games"))
        self.table.setModel(self._proxy)
        # Tab leaves the table; the arrows go from game to game.
        self.table.setTabKeyNavigation(False)
        self.table.setSortingEnabled(True)
        self.table.sortByColumn(0, Qt.SortOrder.AscendingOrder)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.table.setAlternatingRowColors(True)
        self.table.setShowGrid(False)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 10)
        header = self.table.horizontalHeader()
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setHighlightSections(False)
        for column, width in enumerate(_WIDTHS):
            self.table.setColumnWidth(column, round(width * line))
        header.setSectionResizeMode(4, QHeaderView.ResizeMode.Stretch)
        self.count = QLabel()
        self.count.setObjectName("quiet")
        buttons = DialogButtons(QDialogButtonBox.StandardButton.Cancel)
        self.choose_button = QPushButton(tr("Open this game"))
        self.choose_button.setDefault(True)
        buttons.addButton(self.choose_button, QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        foot = QHBoxLayout()
        foot.addWidget(self.count, 1)
        foot.addWidget(buttons)
        layout = QVBoxLayout(self)
        layout.addWidget(self.filter)
        layout.addWidget(self.table, 1)
        layout.addLayout(foot)
        self.filter.textChanged.connect(self._filter)
        self.table.doubleClicked.connect(lambda _: self.accept())
        self._filter("")

    def chosen(self) -> GameEntry | None:
        """The game that is selected."""
        rows = self.table.selectionModel().selectedRows()
        return self._entries[self._proxy.mapToSource(rows[0]).row()] if rows else None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and Down choose while the filter is being typed."""
        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down) and self.filter.hasFocus():
            self.table.setFocus()
            QApplication.sendEvent(self.table, event)
            return
        super().keyPressEvent(event)

    def _filter(self, text: str) -> None:
        self._proxy.choose(text)
        shown, total = self._proxy.rowCount(), len(self._entries)
        self.count.setText(
            tr("{total:,} games", total=total)
            if shown == total
            else tr("{shown:,} of {total:,} games", shown=shown, total=total)
        )
        if shown:
            self.table.selectRow(0)
        self.choose_button.setEnabled(bool(shown))
