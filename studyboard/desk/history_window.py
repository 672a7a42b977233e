"""Everything that was done to the study, in words; going back and forth in it."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLabel, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.desk.edit_labels import label_words
from studyboard.desk.moments import moment
from studyboard.desk.session import Session
from studyboard.translation import tr


class HistoryWindow(QDialog):
    """Lists every edit, the newest at the top; choosing one makes the study what it was right after it.

    State: the entries as they were last listed.
    """

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.setWindowTitle(tr("History"))
        line = self.fontMetrics().height()
        self.resize(QSize(30 * line, 28 * line).boundedTo(self.screen().availableSize() * 0.95))
        about = QLabel(
            tr(
                "The study as it was after the edit that is chosen. "
                "Nothing is lost: what lies above it can be done again."
            )
        )
        about.setWordWrap(True)
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Edits, the newest first"))
        self.list.setSpacing(3)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        buttons = DialogButtons(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addWidget(about)
        layout.addWidget(self.list, 1)
        layout.addWidget(buttons)
        self.list.itemActivated.connect(self._go)
        self.list.itemClicked.connect(self._go)
        self._fill()

    def _fill(self) -> None:
        entries = self._session.file.history()
        position = sum(entry.done for entry in entries)
        self.list.clear()
        for entry in reversed(entries):
            self._add(
                entry.seq, label_words(entry.label), moment(entry.when), done=entry.done, here=entry.seq == position
            )
        self._add(0, tr("As it was at first"), "", done=True, here=position == 0)

    def _add(self, seq: int, label: str, when: str, *, done: bool, here: bool) -> None:
        state = tr("now") if here else "" if done else tr("taken back")
        item = QListWidgetItem(" · ".join(filter(None, (label, when, state))))
        item.setData(Qt.ItemDataRole.UserRole, seq)
        font = item.font()
        font.setBold(here)
        font.setItalic(not done)
        item.setFont(font)
        self.list.addItem(item)
        if here:
            self.list.setCurrentItem(item)
            self.list.scrollToItem(item)

    def _go(self, item: QListWidgetItem) -> None:
        wanted = item.data(Qt.ItemDataRole.UserRole)
        QGuiApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
        try:
            self._session.travel(wanted)
        finally:
            QGuiApplication.restoreOverrideCursor()
        self._fill()
