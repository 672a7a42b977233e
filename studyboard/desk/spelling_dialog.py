"""The dialog about spelling: whether, in which language, and which words are right besides."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QLocale, QSize, Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QListWidget,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.desk.session import Session
from studyboard.desk.spelling import Spelling
from studyboard.model.edits import ChangeLanguage, ChangeWords
from studyboard.translation import tr, tr_later
from studyboard.writing.dictionaries import languages


class SpellingDialog(QDialog):
    """Whatever is chosen holds at once; the language and the study's words can be undone as any edit."""

    def __init__(self, session: Session, spelling: Spelling, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._spelling = spelling
        self.setWindowTitle(tr("Spelling"))
        line = self.fontMetrics().height()
        self.resize(QSize(28 * line, 28 * line).boundedTo(self.screen().availableSize() * 0.95))
        self.on = QCheckBox(tr("&Mark words that no dictionary has"))
        self.language = QComboBox()
        self.language.setAccessibleName(tr("Language of the script"))
        self.problem = QLabel()
        self.problem.setObjectName("over")
        self.problem.setWordWrap(True)
        self.problem.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.study_words = QListWidget()
        self.own_words = QListWidget()
        buttons = DialogButtons(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addWidget(self.on)
        form = QFormLayout()
        form.addRow(tr("&Language of the script"), self.language)
        layout.addLayout(form)
        layout.addWidget(self.problem)
        self._add_list(layout, tr("Words of this &study"), self.study_words, self._forget_study_words)
        self._add_list(layout, tr("M&y words, for all studies"), self.own_words, self._forget_own_words)
        about = QLabel(tr("Names in the headers, moves and squares are right anyway."))
        about.setObjectName("quiet")
        about.setWordWrap(True)
        layout.addWidget(about)
        layout.addWidget(buttons)
        self._fill()
        self.on.toggled.connect(spelling.turn)
        self.language.activated.connect(self._choose_language)
        spelling.renewed.connect(self._fill)

    def _add_list(self, layout: QVBoxLayout, title: str, words: QListWidget, forget: Callable[[], None]) -> None:
        label = QLabel(title)
        label.setBuddy(words)
        words.setAccessibleName(title.replace("&", ""))
        words.setSelectionMode(QListWidget.SelectionMode.ExtendedSelection)
        button = ActingButton(tr("Forget"))
        button.setAccessibleName(tr("Forget the chosen words"))
        button.setEnabled(False)
        words.itemSelectionChanged.connect(lambda: button.setEnabled(bool(words.selectedItems())))
        button.clicked.connect(forget)
        layout.addWidget(label)
        layout.addWidget(words, 1)
        layout.addWidget(button, 0, Qt.AlignmentFlag.AlignRight)

    def _fill(self) -> None:
        spelling, study = self._spelling, self._session.study
        self.on.setChecked(spelling.on)
        self.language.clear()
        there = languages()
        self.language.addItem(tr("As the desk ({language})", language=language_name(spelling.language)), "")
        for code in there if not study.language or study.language in there else (*there, study.language):
            self.language.addItem(language_name(code), code)
        self.language.setCurrentIndex(max(0, self.language.findData(study.language)))
        self.problem.setText(spelling.problem)
        self.problem.setVisible(bool(spelling.problem))
        for words, known in ((self.study_words, study.words), (self.own_words, spelling.own)):
            words.clear()
            words.addItems(sorted(known, key=str.casefold))

    def _choose_language(self) -> None:
        code = self.language.currentData()
        if code != self._session.study.language:
            self._session.do(ChangeLanguage(code))

    def _forget_study_words(self) -> None:
        gone = {item.text() for item in self.study_words.selectedItems()}
        left = tuple(sorted(self._session.study.words - gone))
        self._session.do(ChangeWords(left, tr_later("Forget words of this study")))

    def _forget_own_words(self) -> None:
        self._spelling.keep_own(self._spelling.own - {item.text() for item in self.own_words.selectedItems()})


def language_name(code: str) -> str:
    """A language under its own name, with its country: ``"British English"``; the code where Qt knows none."""
    locale = QLocale(code)
    name = locale.nativeLanguageName()
    return f"{name[:1].upper()}{name[1:]} ({locale.nativeTerritoryName()})" if name else code
