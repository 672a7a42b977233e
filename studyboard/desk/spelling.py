"""Spelling at the desk: dotted lines under words that no dictionary has, and what can be done with them."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from PySide6.QtCore import QObject, QSettings, QThreadPool, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from studyboard.desk.language import language_in_use
from studyboard.desk.session import Session
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.edits import ChangeWords
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Changed
from studyboard.translation import tr, tr_later
from studyboard.writing.dictionaries import NoDictionaryError, closest, languages, open_dictionary
from studyboard.writing.spelling import Speller, keep_own_words, known_words, own_words
from studyboard.writing.written_words import WrittenWord, word_at

_KEY = "script/spelling"


class Spelling(QObject):
    """Knows which words of the open study are misspelt.

    State: whether spelling is wanted, the dictionary of the script's language once it has been read in, which takes
    place off the window's thread, and why there is none.

    renewed: words may be judged otherwise now
    """

    renewed = Signal()
    _opened = Signal(str, object)

    def __init__(self, session: Session, settings: QSettings, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._settings = settings
        self._on = str(settings.value(_KEY, "true")) == "true"
        self._names: tuple[str, ...] = ()
        self._language = ""
        self._speller: Speller | None = None
        self._problem = ""
        self._pool = QThreadPool(self)
        self._opened.connect(self._take)
        session.changed.connect(self._on_changed)
        session.opened.connect(self.refresh)

    @property
    def on(self) -> bool:
        """True where misspelt words are marked."""
        return self._on

    @property
    def language(self) -> str:
        """The language whose dictionary is used, such as "en_GB"."""
        return closest(self._session.study.language or language_in_use(self._settings), languages())

    @property
    def problem(self) -> str:
        """Why nothing can be checked, with what to install; empty where it can."""
        return self._problem

    @property
    def ready(self) -> bool:
        """True once words can be checked."""
        return self._on and self._speller is not None

    def turn(self, on: bool) -> None:
        """Mark misspelt words, or do not; it is remembered."""
        self._on = on
        self._settings.setValue(_KEY, "true" if on else "false")
        self.refresh()

    def learn_names(self, names: Iterable[str]) -> None:
        """Take these names for right beside those of the headers."""
        self._names = tuple(names)
        self._learn()

    def refresh(self) -> None:
        """Read in the dictionary that the study asks for, where it is another one, and learn its words."""
        language = self.language
        if not self._on or (language == self._language and (self._speller is not None or not self._problem)):
            self._learn()
            return
        self._language, self._speller, self._problem = language, None, ""

        def work() -> None:
            try:
                found: Speller | str = Speller(open_dictionary(language), language)
            except NoDictionaryError as reason:
                found = str(reason)
            self._opened.emit(language, found)

        self._pool.start(WorkBeside(work))

    def stop(self) -> None:
        """Wait until nothing is read in any more."""
        self._pool.waitForDone()

    def unknown(self, text: str) -> tuple[WrittenWord, ...]:
        """The misspelt words of a text; none while nothing can be checked."""
        return self._speller.unknown(text) if self._on and self._speller is not None else ()

    def offer(self, menu: QMenu, text: str, character: int, put: Callable[[int, int, str], None]) -> None:
        """Put what may be meant by the word at this character of *text* on top of a menu.

        put: called with start and end of the word and what shall stand there
        """
        word = word_at(text, character)
        if word is None or self._speller is None or not self._on or word not in self.unknown(text):
            return
        actions: list[QAction] = []
        for suggestion in self._speller.suggestions(word.text):
            action = QAction(suggestion, menu)
            action.triggered.connect(lambda _=False, by=suggestion: put(word.start, word.end, by))
            actions.append(action)
        if not actions:
            nothing = QAction(tr("No suggestion"), menu)
            nothing.setEnabled(False)
            actions.append(nothing)
        else:
            font = actions[0].font()
            font.setBold(True)
            actions[0].setFont(font)
        for label, add in (
            (tr("Add “{word}” to the words of this study", word=word.text), self.add_to_study),
            (tr("Add “{word}” to my words", word=word.text), self.add_to_own),
        ):
            action = QAction(label, menu)
            action.triggered.connect(lambda _=False, add=add: add(word.text))
            actions.append(action)
        put_on_top(menu, actions)

    def add_to_study(self, word: str) -> None:
        """Take a word for right in this study; undo takes it back."""
        words = tuple(sorted({*self._session.study.words, _stem(word)}))
        self._session.do(ChangeWords(words, tr_later("Add a word to this study")))

    def add_to_own(self, word: str) -> None:
        """Take a word for right in all studies."""
        self.keep_own({*self.own, _stem(word)})

    @property
    def own(self) -> frozenset[str]:
        """The user's words for all studies; none where they cannot be read."""
        try:
            return own_words()
        except StudyboardError:
            return frozenset()

    def keep_own(self, words: Iterable[str]) -> None:
        """Replace the user's words for all studies, or say why they cannot be kept."""
        try:
            keep_own_words(words)
        except StudyboardError as reason:
            self._session.refused.emit(str(reason))
        self._learn()

    def _take(self, language: str, found: Speller | str) -> None:
        if language != self._language:
            return
        if isinstance(found, str):
            self._problem = found
        else:
            self._speller = found
        self._learn()

    def _learn(self) -> None:
        if self._speller is not None:
            self._speller.learn(known_words(self._session.study, self._names) | self.own)
        self.renewed.emit()

    def _on_changed(self, changed: Changed) -> None:
        if changed.headers or changed.settings or changed.pronunciations:
            self.refresh()


def put_on_top(menu: QMenu, actions: Iterable[QAction]) -> None:
    """Put actions above the others of a menu, with a line below them."""
    below = menu.actions()
    for action in below:
        menu.removeAction(action)
    menu.addActions(list(actions))
    menu.addSeparator()
    menu.addActions(below)


def _stem(word: str) -> str:
    return word.removesuffix("'s").removesuffix("’s")
