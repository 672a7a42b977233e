"""Opening what the user names, drops or chooses: a study, or games in PGN of which a study is made."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from studyboard.desk.folders import new_path
from studyboard.desk.game_chooser import GameChooser
from studyboard.desk.opened_words import problem_words
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.notation.pgn_games import GameEntry, index_games
from studyboard.notation.pgn_reader import Problem, read_game_at
from studyboard.store.errors import ReadOnlyStudyError
from studyboard.store.study_file import StudyFile
from studyboard.translation import tr

_SQLITE = b"SQLite format 3\x00"


@dataclass(frozen=True, slots=True)
class Opened:
    """A study that can be shown, and what of its game could not be read."""

    file: StudyFile
    problems: tuple[Problem, ...] = ()

    @property
    def words(self) -> str:
        """What has to be said about it at once; empty where there is nothing."""
        if self.file.read_only:
            return tr(
                "“{name}” lies where nothing can be written, so it is open to be read only. "
                "Study › Save as goes on with a copy.",
                name=self.file.path.name,
            )
        return problem_words(self.problems)


def open_path(path: Path, parent: QWidget | None = None) -> Opened | None:
    """Open a study, or make one from a game of a PGN file; None where the user chose none.

    Raises StudyboardError with a sentence for the user.
    """
    if is_study(path):
        return Opened(open_study(path))
    entries = _games(path)
    if len(entries) == 1:
        return game_study(path, entries[0])
    chooser = GameChooser(path, entries, parent)
    if chooser.exec() != QDialog.DialogCode.Accepted:
        return None
    entry = chooser.chosen()
    return None if entry is None else game_study(path, entry)


def open_study(path: Path) -> StudyFile:
    """A study file to be worked on, or where that is not possible because nothing can be written there, to be read.

    Raises StudyboardError.
    """
    try:
        return StudyFile.open(path)
    except ReadOnlyStudyError:
        return StudyFile.open(path, read_only=True)


def game_study(path: Path, entry: GameEntry) -> Opened:
    """A new study, stored in the studies folder, from one game of a file. Raises StudyboardError."""
    game = read_game_at(path, entry)
    if len(game.study.nodes) == 1 and not entry.headers:
        raise _no_game(path)
    return Opened(new_study(game.study), tuple(game.problems))


def new_study(study: Study) -> StudyFile:
    """Store a new study in the studies folder under a name of its own. Raises StudyboardError."""
    try:
        path = new_path(study)
    except OSError as reason:
        raise StudyboardError(
            tr(
                "The folder for new studies cannot be made: {reason}. "
                "Set the environment variable STUDYBOARD_STUDIES to another one.",
                reason=reason.strerror or reason,
            )
        ) from reason
    return StudyFile.create(path, study)


def is_study(path: Path) -> bool:
    """True for a study, by what the file holds or else by its name. Raises StudyboardError where it is none at all."""
    try:
        with path.open("rb") as stream:
            head = stream.read(len(_SQLITE))
    except OSError as reason:
        raise StudyboardError(
            tr("“{name}” cannot be opened: {reason}.", name=path.name, reason=reason.strerror or reason)
        ) from reason
    return head == _SQLITE or path.suffix.lower() == ".studyboard"


def _games(path: Path) -> list[GameEntry]:
    QApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
    try:
        entries = index_games(path)
    except OSError as reason:
        raise StudyboardError(
            tr("“{name}” cannot be read: {reason}.", name=path.name, reason=reason.strerror or reason)
        ) from reason
    finally:
        QApplication.restoreOverrideCursor()
    if not entries:
        raise _no_game(path)
    return entries


def _no_game(path: Path) -> StudyboardError:
    return StudyboardError(
        tr("“{name}” holds no game: a PGN file has tags in square brackets, then moves.", name=path.name)
    )
