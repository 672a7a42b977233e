"""The dialog in which the author writes down how a word is said."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.desk.session import Session
from studyboard.model.edits import ChangePronunciations
from studyboard.translation import tr, tr_later


class PronunciationDialog(QDialog):
    """One word and how it is said, above the list of those that are known.

    State: the list as it is in the study. Each change is an edit of its own.
    """

    def __init__(self, session: Session, word: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.setWindowTitle(tr("Pronunciation"))
        line = self.fontMetrics().height()
        self.resize(QSize(26 * line, 22 * line).boundedTo(self.screen().availableSize() * 0.95))
        about = QLabel(
            tr("The prompter shows behind the word how it is said. Write it as you read it best, such as “GAR-vee”.")
        )
        about.setObjectName("quiet")
        about.setWordWrap(True)
        self.word = QLineEdit(word)
        self.said = QLineEdit(session.study.pronunciations.get(word, ""))
        self.list = QListWidget()
        self.list.setSpacing(2)
        self.list.setAccessibleName(tr("Words with a pronunciation"))
        self.forget_button = ActingButton(tr("&Forget"))
        buttons = DialogButtons(QDialogButtonBox.StandardButton.Save | QDialogButtonBox.StandardButton.Close)
        buttons.button(QDialogButtonBox.StandardButton.Save).setDefault(True)
        buttons.addButton(self.forget_button, QDialogButtonBox.ButtonRole.ActionRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self._save = buttons.button(QDialogButtonBox.StandardButton.Save)
        form = QFormLayout()
        form.addRow(tr("&Word"), self.word)
        form.addRow(tr("&Said"), self.said)
        layout = QVBoxLayout(self)
        layout.addWidget(about)
        layout.addLayout(form)
        layout.addWidget(self.list, 1)
        layout.addWidget(buttons)
        self.word.textEdited.connect(self._on_word)
        self.said.textEdited.connect(lambda _: self._enable())
        self.list.currentItemChanged.connect(self._on_chosen)
        self.forget_button.clicked.connect(self._forget)
        self._fill()
        (self.said if word else self.word).setFocus()

    def accept(self) -> None:
        """Store how the word is said; nothing said forgets it."""
        word, said = " ".join(self.word.text().split()), self.said.text().strip()
        if word and self._change(word, said or None):
            super().accept()

    def _forget(self) -> None:
        self._change(self.word.text().strip(), None)
        self.word.clear()
        self.said.clear()
        self._fill()

    def _change(self, word: str, said: str | None) -> bool:
        if self._session.study.pronunciations.get(word) == said:
            return True
        label = tr_later("Set how a word is said") if said else tr_later("Forget how a word is said")
        return self._session.do(ChangePronunciations(((word, said),), label))

    def _fill(self) -> None:
        self.list.clear()
        for word, said in sorted(self._session.study.pronunciations.items(), key=lambda pair: pair[0].casefold()):
            item = QListWidgetItem(f"{word}  –  {said}")
            item.setData(Qt.ItemDataRole.UserRole, word)
            self.list.addItem(item)
        self._enable()

    def _on_word(self, word: str) -> None:
        known = self._session.study.pronunciations.get(word.strip())
        if known is not None:
            self.said.setText(known)
        self._enable()

    def _on_chosen(self, item: QListWidgetItem | None) -> None:
        if item is not None:
            word = item.data(Qt.ItemDataRole.UserRole)
            self.word.setText(word)
            self.said.setText(self._session.study.pronunciations.get(word, ""))
            self._enable()

    def _enable(self) -> None:
        known = self.word.text().strip() in self._session.study.pronunciations
        self.forget_button.setEnabled(known)
        self._save.setEnabled(bool(self.word.text().strip()) and (known or bool(self.said.text().strip())))
