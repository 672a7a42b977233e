"""The user's snippets at one desk: read once, filled from the open study and from the chosen file of names."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QSettings, Signal
from PySide6.QtWidgets import QMenu

from studyboard.desk.session import Session
from studyboard.model.errors import StudyboardError
from studyboard.translation import tr
from studyboard.writing.names_file import read_names
from studyboard.writing.snippets import Filled, Snippet, fill, keep_snippets, read_snippets

_KEY = "script/names_file"
#: So many snippets of the menu have a figure as their key.
_FIGURES = 9


class Snippets(QObject):
    """What can be inserted, and what fills it.

    State: the snippets, the file of names that was chosen last and the names in it, or why there are none.

    names_changed: other names are known now
    """

    names_changed = Signal()

    def __init__(
        self, session: Session, settings: QSettings, language: Callable[[], str], parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._settings = settings
        self._language = language
        self._snippets: tuple[Snippet, ...] | None = None
        self._names: tuple[str, ...] = ()
        self._problem = ""
        self._read_names()

    @property
    def names_path(self) -> Path | None:
        """The file of names; None where none was chosen."""
        name = str(self._settings.value(_KEY, ""))
        return Path(name) if name else None

    @property
    def names(self) -> tuple[str, ...]:
        """The names in that file."""
        return self._names

    @property
    def names_problem(self) -> str:
        """Why there are no names although a file was chosen; empty where there are."""
        return self._problem

    def all(self) -> tuple[Snippet, ...]:
        """The snippets; none where they cannot be read, which is told."""
        if self._snippets is None:
            try:
                self._snippets = read_snippets(self._language())
            except StudyboardError as reason:
                self._session.refused.emit(str(reason))
                return ()
        return self._snippets

    def keep(self, snippets: Iterable[Snippet]) -> None:
        """Replace the snippets, or say why they cannot be kept."""
        kept = tuple(snippets)
        try:
            keep_snippets(kept)
        except StudyboardError as reason:
            self._session.refused.emit(str(reason))
        self._snippets = kept

    def use_names(self, path: Path) -> None:
        """Take the names from this file from now on; it is remembered and read again with each session."""
        self._settings.setValue(_KEY, str(path))
        self._read_names()

    def filled(self, text: str) -> Filled:
        """A text with its places filled from the study and the names as they are now."""
        return fill(text, self._session.study.headers, self._names, self._language())

    def menu(self, parent: QMenu, insert: Callable[[Snippet], None], edit: Callable[[], None]) -> None:
        """Fill a menu with every snippet, the first nine with a figure as their key, and the way to change them."""
        parent.clear()
        for number, snippet in enumerate(self.all(), start=1):
            figure = f"&{number}  " if number <= _FIGURES else ""
            action = parent.addAction(figure + snippet.name.replace("&", "&&"), partial(insert, snippet))
            action.setToolTip(self.filled(snippet.text).text)
        parent.setToolTipsVisible(True)
        parent.addSeparator()
        parent.addAction(tr("&Change snippets…"), edit)

    def _read_names(self) -> None:
        self._names, self._problem = (), ""
        path = self.names_path
        if path is not None:
            try:
                self._names = read_names(path)
            except StudyboardError as reason:
                self._problem = str(reason)
        self.names_changed.emit()
