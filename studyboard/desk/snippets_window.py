"""The window in which recurring texts are written, and the file with the names is chosen."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.snippets import Snippets
from studyboard.translation import tr
from studyboard.writing.snippets import PLACES, Snippet


class SnippetsWindow(QDialog):
    """The snippets on the left, the chosen one with a preview on the right, the names below.

    State: the snippets as they are written here; they are kept when another one is chosen and when the window goes.

    insert_wanted: put this snippet at the cursor; carries it
    """

    insert_wanted = Signal(object)

    def __init__(self, snippets: Snippets, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._snippets = snippets
        self._loading = False
        self.setWindowTitle(tr("Snippets"))
        line = self.fontMetrics().height()
        self.resize(QSize(52 * line, 28 * line).boundedTo(self.screen().availableSize() * 0.95))
        self.list = QListWidget()
        self.list.setSpacing(2)
        self.list.setAccessibleName(tr("Snippets"))
        self.name = QLineEdit()
        self.name.setAccessibleName(tr("Name of the snippet"))
        self.name.setPlaceholderText(tr("Name"))
        self.text = QPlainTextEdit()
        self.text.setAccessibleName(tr("Words of the snippet"))
        self.text.setTabChangesFocus(True)
        places = ", ".join(f"{{{place}}}" for place in PLACES)
        about = QLabel(tr("Filled when it is inserted: {places}.", places=places))
        about.setObjectName("quiet")
        about.setWordWrap(True)
        self.preview = QLabel()
        self.preview.setWordWrap(True)
        self.preview.setTextFormat(Qt.TextFormat.PlainText)
        self.preview.setAccessibleName(tr("As it will be inserted"))
        self.names_file = ElidedLabel()
        choose = ActingButton(tr("&Names from a file…"))
        new, self.remove_button = ActingButton(tr("Ne&w")), ActingButton(tr("&Remove"))
        buttons = DialogButtons(QDialogButtonBox.StandardButton.Close)
        self.insert_button = buttons.addButton(tr("&Insert"), QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.accepted.connect(self._insert)
        buttons.rejected.connect(self.reject)
        left = QVBoxLayout()
        left.addWidget(self.list, 1)
        under = QHBoxLayout()
        under.addWidget(new)
        under.addWidget(self.remove_button)
        left.addLayout(under)
        right = QVBoxLayout()
        for widget, stretch in ((self.name, 0), (self.text, 2), (about, 0), (self.preview, 1)):
            right.addWidget(widget, stretch)
        both = QHBoxLayout()
        both.addLayout(left, 2)
        both.addLayout(right, 3)
        names = QHBoxLayout()
        names.addWidget(self.names_file, 1)
        names.addWidget(choose)
        layout = QVBoxLayout(self)
        layout.addLayout(both, 1)
        layout.addLayout(names)
        layout.addWidget(buttons)
        self.list.addItems([snippet.name for snippet in snippets.all()])
        self._kept = list(snippets.all())
        self.list.currentRowChanged.connect(self._show)
        self.name.textEdited.connect(self._on_edited)
        self.text.textChanged.connect(self._on_edited)
        new.clicked.connect(self._add)
        self.remove_button.clicked.connect(self._remove)
        choose.clicked.connect(self._choose_names)
        self._show_names()
        self.list.setCurrentRow(0)
        self._show(self.list.currentRow())

    def use_names(self, path: Path) -> None:
        """Take the names from this file from now on."""
        self._snippets.use_names(path)
        self._show_names()
        self._show_preview()

    def done(self, result: int) -> None:
        """Keep what was written, whichever way the window goes."""
        self._keep()
        super().done(result)

    def _show(self, row: int) -> None:
        self._keep()
        self._loading = True
        there = 0 <= row < len(self._kept)
        self.name.setText(self._kept[row].name if there else "")
        self.text.setPlainText(self._kept[row].text if there else "")
        for widget in (self.name, self.text, self.remove_button, self.insert_button):
            widget.setEnabled(there)
        self._loading = False
        self._show_preview()

    def _on_edited(self) -> None:
        row = self.list.currentRow()
        if self._loading or row < 0:
            return
        self._kept[row] = Snippet(self.name.text().strip() or tr("Without a name"), self.text.toPlainText())
        self.list.item(row).setText(self._kept[row].name)
        self._show_preview()

    def _show_preview(self) -> None:
        filled = self._snippets.filled(self.text.toPlainText())
        missing = tr("\n\nNot known: {places}", places=", ".join(filled.missing)) if filled.missing else ""
        self.preview.setText(filled.text + missing)

    def _add(self) -> None:
        self._kept.append(Snippet(tr("New snippet"), ""))
        self.list.addItem(self._kept[-1].name)
        self.list.setCurrentRow(self.list.count() - 1)
        self.name.selectAll()
        self.name.setFocus()

    def _remove(self) -> None:
        row = self.list.currentRow()
        if row >= 0:
            del self._kept[row]
            self.list.takeItem(row)
            self._show(self.list.currentRow())

    def _keep(self) -> None:
        if tuple(self._kept) != self._snippets.all():
            self._snippets.keep(self._kept)

    def _insert(self) -> None:
        row = self.list.currentRow()
        if row >= 0:
            self.accept()
            self.insert_wanted.emit(self._kept[row])

    def _choose_names(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self,
            tr("A file with names"),
            str(self._snippets.names_path.parent) if self._snippets.names_path else "",
            tr("Text and tables (*.txt *.csv *.tsv);;All files (*)"),
        )
        if name:
            self.use_names(Path(name))

    def _show_names(self) -> None:
        snippets = self._snippets
        if snippets.names_path is None:
            self.names_file.setText(tr("No file with names has been chosen: a text with one name a line, or a table."))
        elif snippets.names_problem:
            self.names_file.setText(snippets.names_problem)
        else:
            count = len(snippets.names)
            told = tr("1 name") if count == 1 else tr("{count} names", count=count)
            self.names_file.setText(tr("{told} from {file}", told=told, file=snippets.names_path.name))
